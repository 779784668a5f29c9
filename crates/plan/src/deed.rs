//! What a step of the history is called.

use crate::{Edit, Plan, Run};

/// What a step did, for a list in words.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum Deed {
    /// Something without a word of its own.
    #[default]
    Change,
    /// The plan was named.
    Name,
    /// An outline was drawn anew.
    Outline,
    /// A corner was moved.
    MoveCorner,
    /// A corner was put in.
    InsertCorner,
    /// A corner was taken out.
    RemoveCorner,
    /// A run was added.
    AddRun,
    /// A run was taken out.
    RemoveRun,
    /// A run's particulars changed.
    Run,
    /// A run's faults changed.
    Faults,
    /// The grass on a run's line changed.
    Grass,
    /// A run's gates changed.
    Gates,
    /// A run's pins changed.
    Pins,
    /// A run's branches changed.
    Branches,
    /// A run's energizer, earth or leads changed.
    Feed,
    /// A run's strip to mow changed.
    Strip,
    /// The ground changed: its soil, its wind, how wet it is.
    Ground,
    /// The paddock changed.
    Paddock,
    /// Keep-outs or water changed.
    KeepOuts,
    /// Hazards changed.
    Hazards,
    /// The gateway changed.
    Gateway,
    /// Heights changed.
    Heights,
    /// Walls, hedges or fences changed.
    Walls,
    /// Shade changed.
    Shade,
    /// Damp ground changed.
    Damp,
    /// Known places changed.
    TapePoints,
    /// Words on the map changed.
    Labels,
    /// The picture beneath the map changed.
    Picture,
    /// The store changed.
    Store,
    /// The coop changed.
    Coop,
    /// The readings changed.
    Readings,
    /// Something whole was moved.
    Move,
    /// Something whole was turned.
    Turn,
    /// A second one of something was made.
    Duplicate,
    /// A side was given a length.
    SideLength,
    /// A run was made of whole panels.
    FitNets,
    /// A shape that was found became a run.
    TakeShape,
    /// A corner was cut over several posts.
    CutCorner,
    /// A corner got its brace.
    Brace,
    /// A corner's brace was taken back.
    TakeBrace,
    /// Something was taken out.
    Remove,
    /// Something was put in from the clipboard.
    Paste,
    /// Rolls were laid out as the plan's first run.
    LayOut,
    /// Something was hidden or shown.
    Hide,
    /// Something was locked or unlocked.
    Lock,
    /// Something was given a name.
    Rename,
    /// Something was read from another file.
    BringIn,
    /// A side was slid.
    SlideSide,
    /// A corner was moved and the line's length kept.
    KeepLength,
    /// A corner was moved along the arc of its angle.
    KeepAngle,
    /// An outline was squared up.
    SquareUp,
    /// Something whole was mirrored.
    Mirror,
    /// A second one was made beside, with a side in common.
    DuplicateBeside,
    /// A side was given a bearing.
    SideBearing,
    /// A side was given so many panels.
    SidePanels,
    /// A corner was given coordinates.
    CornerPlace,
    /// A corner was given a turn.
    CornerTurn,
    /// A corner was given figures while it was in the hand.
    CornerFigures,
}

impl Deed {
    /// What an edit of a plan is called by itself.
    pub fn of(edit: &Edit, plan: &Plan) -> Self {
        match edit {
            Edit::SetTitle { .. } => Self::Name,
            Edit::SetOutline { .. } => Self::Outline,
            Edit::MoveCorner { .. } => Self::MoveCorner,
            Edit::InsertCorner { .. } => Self::InsertCorner,
            Edit::RemoveCorner { .. } => Self::RemoveCorner,
            Edit::AddRun { .. } => Self::AddRun,
            Edit::RemoveRun { .. } => Self::RemoveRun,
            Edit::SetRun { run: to } => plan.run(&to.id).map_or(Self::Run, |from| Self::of_run(from, to)),
            Edit::SetSoil { .. } | Edit::SetWind { .. } | Edit::SetToday { .. } => Self::Ground,
            Edit::SetPaddock { .. } => Self::Paddock,
            Edit::SetKeepOuts { .. } => Self::KeepOuts,
            Edit::SetHazards { .. } => Self::Hazards,
            Edit::SetGateway { .. } => Self::Gateway,
            Edit::SetHeights { .. } | Edit::SetHeightGrid { .. } => Self::Heights,
            Edit::SetWalls { .. } => Self::Walls,
            Edit::SetShade { .. } => Self::Shade,
            Edit::SetDamp { .. } => Self::Damp,
            Edit::SetTapePoints { .. } => Self::TapePoints,
            Edit::SetLabels { .. } => Self::Labels,
            Edit::SetUnderlay { .. } => Self::Picture,
            Edit::SetStore { .. } => Self::Store,
            Edit::SetCoop { .. } | Edit::SetOtherCoops { .. } => Self::Coop,
            Edit::SetReadings { .. } => Self::Readings,
            Edit::SetOrigin { .. } | Edit::SetTarget { .. } | Edit::SetSeason { .. } => Self::Change,
        }
    }

    /// The one part of a run that changed, where it was no more than one.
    fn of_run(from: &Run, to: &Run) -> Self {
        if from == to {
            return Self::Run;
        }
        /// Gives a run that part of another.
        type Take = fn(&mut Run, &Run);
        let parts: [(Self, Take); 7] = [
            (Self::Faults, |run, of| {
                run.faults.clone_from(&of.faults);
                let branches = run.branches.iter_mut().zip(&of.branches);
                branches.for_each(|(branch, of)| branch.faults.clone_from(&of.faults));
            }),
            (Self::Grass, |run, of| {
                run.leakage_s_per_m = of.leakage_s_per_m;
                run.leakage_zones.clone_from(&of.leakage_zones);
                let branches = run.branches.iter_mut().zip(&of.branches);
                branches.for_each(|(branch, of)| branch.leakage_zones.clone_from(&of.leakage_zones));
            }),
            (Self::Gates, |run, of| run.gates.clone_from(&of.gates)),
            (Self::Pins, |run, of| run.pins.clone_from(&of.pins)),
            (Self::Branches, |run, of| run.branches.clone_from(&of.branches)),
            (Self::Feed, |run, of| {
                run.energizer.clone_from(&of.energizer);
                (run.feed_at, run.energizer_at) = (of.feed_at, of.energizer_at);
                run.earth_stakes.clone_from(&of.earth_stakes);
                run.earth_ohm = of.earth_ohm;
                (run.lead_ohm, run.lead_of, run.lead_m) = (of.lead_ohm, of.lead_of, of.lead_m);
            }),
            (Self::Strip, |run, of| {
                run.strip_width_m = of.strip_width_m;
                (run.strip_left_m, run.strip_right_m) = (of.strip_left_m, of.strip_right_m);
                run.mow_way = of.mow_way;
            }),
        ];
        let alone = |take: &Take| {
            let mut run = to.clone();
            take(&mut run, from);
            run == *from
        };
        parts.into_iter().find(|(_, take)| alone(take)).map_or(Self::Run, |(deed, _)| deed)
    }
}

#[cfg(test)]
mod tests {
    use super::Deed;
    use crate::{Branch, Edit, Fault, FaultKind, Gate, GateKind, Pin, PinKind, Plan, Point, Rest, Run};

    #[test]
    fn a_run_s_edit_is_called_by_the_one_part_that_it_changed() {
        let mut plan = Plan { runs: vec![Run { id: "run".to_owned(), ..Run::default() }], ..Plan::default() };
        let mut set = |run: Run| {
            let edit = Edit::SetRun { run: Box::new(run) };
            let deed = Deed::of(&edit, &plan);
            plan.apply(edit).expect("the run is there");
            deed
        };
        let broken = Fault {
            at: Point::new(1.0, 0.0),
            kind: FaultKind::Short,
            ohm: None,
            lines: None,
            cause: None,
            rest: Rest::default(),
        };
        let bare = Run { id: "run".to_owned(), ..Run::default() };
        let fault = Run { faults: vec![broken.clone()], ..bare.clone() };
        assert_eq!(set(fault.clone()), Deed::Faults);
        let fed = Run { feed_at: Some(Point::new(1.0, 2.0)), ..fault.clone() };
        assert_eq!(set(fed.clone()), Deed::Feed);
        let two = Run { gates: vec![Gate::new(GateKind::Foot)], faults: Vec::new(), ..fed };
        assert_eq!(set(two.clone()), Deed::Run, "gates and faults at once");
        assert_eq!(set(Run { gates: Vec::new(), ..two.clone() }), Deed::Gates);
        let mown = Run { gates: Vec::new(), leakage_s_per_m: Some(1e-5), ..two };
        assert_eq!(set(mown.clone()), Deed::Grass);
        assert_eq!(set(mown.clone()), Deed::Run, "nothing changed");
        let branch = Branch { from_m: 1.0, outline: vec![Point::new(0.0, 0.0)], ..Branch::default() };
        let branched = Run { branches: vec![branch.clone()], ..mown };
        assert_eq!(set(branched.clone()), Deed::Branches);
        let broken = Run { branches: vec![Branch { faults: vec![broken], ..branch }], ..branched };
        assert_eq!(set(broken.clone()), Deed::Faults, "on a branch");
        assert_eq!(set(Run { strip_left_m: Some(1.0), ..broken.clone() }), Deed::Strip);
        let pin = Pin::new(PinKind::Start, Point::new(0.0, 0.0));
        assert_eq!(set(Run { strip_left_m: Some(1.0), pins: vec![pin], ..broken }), Deed::Pins);
    }
}
