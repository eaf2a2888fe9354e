//! Wood-cased pencils laid on slat sandwiches: the grooves, the wood, the slats to buy.
//!
//! Pure functions from plain data to plain data. Nothing here knows how it is shown or
//! kept: no screen, no storage, no clock but the time limit of a solve. A draft that may be
//! wrong is checked into a value that cannot be, and every broken rule is reported at once:
//!
//! ```
//! use solver::{BarrelDraft, RulesDraft, Seam, Setup, Shape, SlatDraft, WoodClass, lay_out};
//! let barrel = BarrelDraft::new("Office", Shape::Hexagonal).check().unwrap();
//! let slat = SlatDraft::new("74 × 5").check().unwrap();
//! let rules = RulesDraft::new().check().unwrap();
//! let turn = barrel.turn(Seam::ThroughFaces);
//! let layout = lay_out(&Setup { barrel: &barrel, turn, top: &slat, bottom: &slat, rules: &rules });
//! assert_eq!(layout.pencils(), 10);
//! assert!(layout.balance().unwrap().share(WoodClass::Pencils) > 0.45);
//! ```

pub mod entry;
pub mod figure;
pub mod measured;
pub mod order_plan;
pub mod purchase;
pub mod sawing;
pub mod tolerance;
pub mod wood;

mod accuracy;
mod barrel;
mod comparison;
mod csv;
mod cutter_plan;
mod cutter_set;
mod decimal;
mod drawing;
mod export;
mod feed;
mod field;
mod finish;
mod knife;
mod layout;
mod materials;
mod order_book;
mod order_job;
mod outline;
mod project;
mod quadrature;
mod quantity;
mod ranking;
mod rules;
mod saw_shop;
mod seam;
mod search;
mod search_rules;
mod sequence;
mod setting;
mod shape;
mod slat;
mod staircase;
mod supply;
mod threshold;
mod title_block;
mod tooling;
mod unit;

pub use accuracy::{Accuracy, AccuracyDraft, ErrorDraft, Offsets, Reading, Term};
pub use barrel::{Barrel, BarrelDraft, SizeHandle};
pub use comparison::{
    BarrelLine, BarrelTable, Laid, Line as ComparedLine, MOST_COMPARED, MOST_STOCKS, Part, Value,
    Verdict, compare, compare_barrels,
};
pub use cutter_plan::{
    CutterPlan, CutterQuestion, NewSet, OrderNow, Proposal, SetUse, plan_cutters,
};
pub use cutter_set::{CutterSet, CutterSetDraft};
pub use drawing::{
    Area as SheetArea, ArmMark, BarChart, Chart, ColumnChart, CurveChart, Dimension, Drawing, Edge,
    EndView, Grade, Grip, Handle, HistogramChart, Label, LimitLine, LimitSide, Marker, NodeMark,
    NodeMarks, PIXELS_PER_MILLIMETRE, Paper, PaperProblem, PaperSize, Pick, PickMark, Scale,
    ScaledDrawing, Shape as DrawnShape, Sheet, Size, StoreRow, Stride, Style, draw_barrel,
    draw_barrel_to_scale, draw_columns, draw_costs, draw_curve, draw_cut, draw_end_view,
    draw_gauge, draw_good_map, draw_head, draw_histogram, draw_knife, draw_nodes, draw_outlines,
    draw_pair, draw_pencil, draw_sandwich, draw_scatter, draw_stairs, draw_stores, draw_to_scale,
};
pub use export::{TrueSize, escaped_xml};
pub use feed::{FeedProblem, KnifeMarks};
pub use field::{Cause, Field, FieldProblem, Place, Problem, Spec, Typed};
pub use finish::{
    Body, Colour, Densities, Face, Fact, FactQuantity, Finish, FinishDraft, FinishedPencil,
    Imprint, Mass, Material, PencilFacts, Sight, Surface, Tin, TinRows, Viewpoint,
};
pub use knife::{Blade, Knife, KnifePoint, KnifeProblem, knife_stretch, knives};
pub use layout::{
    Check, Groove, GrooveShape, Layout, Measure, Outcome, Rule, Setup, WoodBalance, WoodClass,
    lay_out,
};
pub use materials::{
    ClampNeeds, CoatNeeds, GlueNeeds, LeadGrade, LeadNeeds, Run, RunDraft, RunNeeds, RunProblem,
    Stage, StageCount, StagePiece, WoodNeeds, run_needs,
};
pub use order_book::{BestSeam, OrderBook, Purchase, PurchaseList, RunLine, StockLine, Totals};
pub use order_job::{
    ClashLine, CostLine, LaidSetup, OrderAnswer, OrderEnd, OrderJob, OrderReckoning, PayingPrice,
    PeriodReckoning, PlanTotals, PlannedRun, SawnLot, SlackLine, SlatOrder, StoreAccount,
    SupplierTotal, WiderSlats, WorthLine, compare_plans,
};
pub use outline::{
    Arc, Arm, DrawnArc, DrawnPath, Edit, Extents, Joint, Line, MOST_PIECES, Node, Outline,
    PathProblem, Reach, Segment, Snap, Stretch, StretchKind, Symmetry, Undercut,
};
pub use project::{
    Entry, Id, LayoutDraft, LayoutParts, Order, OrderDraft, Project, ProjectDraft, SettingParts,
    Way,
};
pub use quantity::{Angle, Area, Direction, Length, Point, Volume};
pub use ranking::{Aim, Candidate, GROSS, GrossNeeds, rank};
pub use rules::{PitchRule, Rules, RulesDraft, Spacing};
pub use saw_shop::{BlankDraft, PlankDraft, SawShopDraft, SawnBlank, SawnReckoning};
pub use seam::Seam;
pub use search::{Answer, Found, Goal, Obstacle, Question, search};
pub use search_rules::{AxisChoice, Pairs, SearchDraft, SearchRules, Turns};
pub use setting::{Caution, KnifeHeight, Setting, SlatSetting, set_up};
pub use shape::Shape;
pub use slat::{Slat, SlatDraft, Supply};
pub use staircase::{Step, staircase, stairs_range};
pub use supply::{OfferDraft, PeriodDraft, SawnSlatsDraft, SupplyDraft, TierDraft};
pub use threshold::{
    Change, Gain, GainKind, GainLimits, GainProof, GainStep, Input, PAIR_STEPS, Threshold, Worth,
    nearest_gains, thresholds,
};
pub use title_block::{TitleBlock, TitleField};
pub use tooling::{Cut, CutDraft, Head, HeadDraft, HeadKind};
pub use unit::LengthUnit;
pub use wood::{
    Conditions, ConditionsDraft, MoistureSource, Sawing, Species, SpeciesDraft,
    equilibrium_moisture,
};
