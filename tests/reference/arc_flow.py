"""Cutting stock to the proof, beside the arc-flow model on a general solver, in the same run.

    cargo build --release -p tests --bin cutting
    python3 arc_flow.py ../../target/release/cutting [--all]

Instances of published generators, their seeds shown: uniform sizes and triplets (Falkenauer 1996),
CUTGEN1 (Gau & Wäscher 1995), and planks cut up at random with their kerfs. Without `--all` a few of
each are also solved by HiGHS on the arc-flow model of Valério de Carvalho (1999), one thread, no gap,
at most a minute; with it 200 are solved by the program alone and those proved within ten seconds are
counted.
"""

import random
import subprocess
import sys
import time

LEHMER = 2147483647


def lehmer(seed):
    """The random numbers that CUTGEN1 prescribes."""
    while True:
        seed = seed * 16807 % LEHMER
        yield seed / LEHMER


def gathered(sizes):
    demand = {}
    for size in sizes:
        demand[size] = demand.get(size, 0) + 1
    return sorted(demand.items(), reverse=True)


def uniform(seed, count):
    dice = random.Random(seed)
    return 150, 0, gathered(dice.randint(20, 100) for _ in range(count))


def fine(seed, count):
    """Uniform sizes, so fine that hardly two are alike."""
    dice = random.Random(seed)
    return 10_000, 0, gathered(dice.randint(1_000, 7_000) for _ in range(count))


def triplets(seed, planks):
    dice = random.Random(seed)
    sizes = []
    for _ in range(planks):
        first = dice.randint(380, 490)
        second = dice.randint(250, (1000 - first) // 2)
        sizes += [first, second, 1000 - first - second]
    return 1000, 0, gathered(sizes)


def planted(seed, planks):
    dice = random.Random(seed)
    length, kerf, sizes = 3600, 4, []
    for _ in range(planks):
        left = length
        while left > 2000:
            size = dice.randint(500, 1500)
            sizes.append(size)
            left -= size + kerf
        sizes.append(left)
    return length, kerf, gathered(sizes)


def cutgen(seed, kinds, low, high, mean):
    dice = lehmer(seed)
    sizes = sorted((int((low + (high - low) * u) * 1000 + u) for u in (next(dice) for _ in range(kinds))), reverse=True)
    parts = [next(dice) for _ in range(kinds)]
    total, all_parts = kinds * mean, sum(parts)
    demands = [max(1, int(part / all_parts * total + 0.5)) for part in parts[:-1]]
    demands.append(max(1, total - sum(demands)))
    merged = {}
    for size, demand in zip(sizes, demands):
        merged[max(size, 1)] = merged.get(max(size, 1), 0) + demand
    return 1000, 0, sorted(merged.items(), reverse=True)


def instances(everything):
    few = [
        *((f"uniform seed {s}", uniform(s, 200)) for s in (1, 2)),
        *((f"fine seed {s}", fine(s, 60)) for s in (1, 2)),
        *((f"triplets seed {s}", triplets(s, 20)) for s in (1, 2)),
        *((f"planted seed {s}", planted(s, 14)) for s in (1, 2)),
        *((f"CUTGEN1 seed {s}, 40 kinds", cutgen(s, 40, 0.1, 0.8, 10)) for s in (1994, 1995)),
    ]
    if not everything:
        return few
    many = [(f"uniform seed {s}", uniform(s, 120 + 20 * (s % 9))) for s in range(40)]
    many += [(f"fine seed {s}", fine(s, 60 + 15 * (s % 8))) for s in range(40)]
    many += [(f"triplets seed {s}", triplets(s, 20 + 5 * (s % 6))) for s in range(40)]
    many += [(f"planted seed {s}", planted(s, 14 + 4 * (s % 8))) for s in range(40)]
    classes = [(0.01, 0.2), (0.01, 0.8), (0.2, 0.8)]
    many += [
        (f"CUTGEN1 seed {1994 + s}", cutgen(1994 + s, 50 + 15 * (s % 11), *classes[s % 3], 10 if s % 2 else 100))
        for s in range(40)
    ]
    return many


def arc_flow(length, kerf, pieces):
    """Planks and whether that is proved, by HiGHS."""
    import highspy

    length, pieces = length + kerf, [(size + kerf, demand) for size, demand in pieces]
    # Arcs of longest pieces first; only nodes that are reached.
    reached, arcs = {0}, set()
    for kind, (size, demand) in enumerate(pieces):
        frontier = {node: 0 for node in reached}
        while frontier:
            onward = {}
            for node, used in frontier.items():
                if used < demand and node + size <= length:
                    arcs.add((node, node + size, kind))
                    if node + size not in reached:
                        onward[node + size] = used + 1
            reached |= set(onward)
            frontier = onward
    model = highspy.Highs()
    for option, value in (("output_flag", False), ("threads", 1), ("time_limit", 60.0), ("mip_rel_gap", 0.0), ("mip_abs_gap", 0.99)):
        model.setOptionValue(option, value)
    planks = model.addIntegral(lb=0, obj=1)
    into, out, made = {}, {}, [[] for _ in pieces]
    for tail, head, kind in sorted(arcs):
        flow = model.addIntegral(lb=0, ub=pieces[kind][1])
        out.setdefault(tail, []).append(flow)
        into.setdefault(head, []).append(flow)
        made[kind].append(flow)
    nodes = sorted(reached - {0})
    for node, after in zip([0] + nodes, nodes + [length]):
        # What is not cut is left at the end.
        loss = model.addVariable(lb=0)
        out.setdefault(node, []).append(loss)
        into.setdefault(after, []).append(loss)
    for node in nodes:
        if node < length:
            model.addConstr(sum(into[node]) == sum(out[node]))
    model.addConstr(sum(out[0]) == planks)
    for flows, (_, demand) in zip(made, pieces):
        model.addConstr(sum(flows) >= demand)
    begun = time.perf_counter()
    model.run()
    seconds = time.perf_counter() - begun
    proved = model.getModelStatus() == highspy.HighsModelStatus.kOptimal
    return round(model.getInfo().objective_function_value), proved, seconds


def main():
    program, everything = sys.argv[1], "--all" in sys.argv
    asked = instances(everything)
    rows = [
        f"{length} {kerf} " + ",".join(f"{size}:{demand}" for size, demand in pieces)
        for _, (length, kerf, pieces) in asked
    ]
    answer = subprocess.run([program], input="\n".join(rows), capture_output=True, text=True, check=True)
    answers = [row.split() for row in answer.stdout.splitlines()]
    if everything:
        tally = {}
        for (name, (_, _, pieces)), (planks, bound, seconds) in zip(asked, answers):
            group = name.split()[0]
            proved, count, longest = tally.get(group, (0, 0, 0.0))
            good = planks == bound and float(seconds) <= 10.0
            if not good:
                print(f"{name}: {len(pieces)} kinds, {planks} planks, bound {bound}, {float(seconds):.2f} s")
            tally[group] = (proved + good, count + 1, max(longest, float(seconds)))
        for group, (proved, count, longest) in tally.items():
            print(f"{group:10} {proved} of {count} proved, the longest {longest:.2f} s")
        print(f"in all {sum(one[0] for one in tally.values())} of {len(asked)}")
        return
    for (name, (length, kerf, pieces)), (planks, bound, seconds) in zip(asked, answers):
        least, proved, other = arc_flow(length, kerf, pieces)
        assert not proved or int(bound) <= least <= int(planks), name
        ours = "proved" if planks == bound else f"bound {bound}"
        theirs = f"{least} proved" if proved else f"{least} not proved"
        print(
            f"{name:26} {len(pieces):4} kinds: {planks} {ours} in {float(seconds):7.3f} s, "
            f"arc flow {theirs} in {other:7.3f} s, ratio {float(seconds) / other:.4f}"
        )


if __name__ == "__main__":
    main()
