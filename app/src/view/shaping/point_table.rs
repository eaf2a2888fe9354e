//! The points of a free outline as numbers.

use super::super::keyed::keyed;
use super::super::live::live;
use super::super::when::When;
use super::point_field::{PointField, Side};
use super::{Grip, Shaping};
use leptos::prelude::*;
use solver::Arm;

/// A table of the points and their arms, each with how far it lies across and up.
#[component]
pub(crate) fn PointTable() -> impl IntoView {
    let shaping = expect_context::<Shaping>();
    let bench = shaping.bench;
    let rows = Memo::new(move |_| {
        let path = shaping.path.read();
        let Some(path) = path.as_ref() else {
            return Vec::new();
        };
        let points = (0..path.nodes().len()).flat_map(|node| {
            let arms = [Arm::Arriving, Arm::Leaving].into_iter();
            let arms = arms.filter(move |arm| path.arm(node, *arm).is_some());
            let arms = arms.map(move |arm| Grip::Arm(node, arm));
            std::iter::once(Grip::Node(node)).chain(arms)
        });
        points.collect::<Vec<_>>()
    });
    let row = move |grip: Grip| {
        let kind = move || {
            let path = shaping.path.read();
            let node = match grip {
                Grip::Node(node) => *path.as_ref()?.nodes().get(node)?,
                _ => return None,
            };
            Some(node.onward.kind().label())
        };
        let name = match grip {
            Grip::Arm(_, Arm::Arriving) => "arm before".to_owned(),
            Grip::Arm(_, Arm::Leaving) => "arm after".to_owned(),
            other => other.name(),
        };
        let chosen = move || matches!(grip, Grip::Node(node) if shaping.chosen.get() == node);
        view! {
            <tr class:chosen=chosen>
                <th scope="row">{name}</th>
                <td class="figure"><PointField grip side=Side::Across/></td>
                <td class="figure"><PointField grip side=Side::Up/></td>
                <td>{live(kind)}</td>
            </tr>
        }
    };
    let holds = move || rows.with(|rows| !rows.is_empty());
    view! {
        <When holds=holds>
            <section class="result points" aria-labelledby="points-title">
                <h2 id="points-title">"Points of the outline"</h2>
                <div class="scroll tall" tabindex="0" role="group" aria-label="Points, from the lead axis">
                    <table>
                        <thead>
                            <tr>
                                <th scope="col">"Point"</th>
                                <th scope="col" class="figure">"Across, " {live(move || bench.unit.get().label())}</th>
                                <th scope="col" class="figure">"Up, " {live(move || bench.unit.get().label())}</th>
                                <th scope="col">"Leads on by"</th>
                            </tr>
                        </thead>
                        <tbody>{keyed(move || rows.get(), row)}</tbody>
                    </table>
                </div>
            </section>
        </When>
    }
}
