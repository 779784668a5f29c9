//! Tools: what the pointer is for. A tool is a state and one step; it knows no egui.
//!
//! [`Tool::step`] takes what the hand did and returns the next state and, where something came of it, the
//! [`Edit`]. Esc leaves from every state.

use plan::{
    Coop, Damp, Edit, Gateway, Hazard, HazardKind, KeepOut, Label, Plan, Point, Rest, Run, Shade, Shape, SpotHeight,
    Wall, WallKind,
};
use words::texts::Faults;

/// What the pointer is for.
#[derive(Clone, Debug, Default, PartialEq)]
pub enum Tool {
    /// Pick and drag what is drawn.
    #[default]
    Pick,
    /// Draw an outline by its corners.
    Outline {
        /// What the outline will be.
        of: Drawn,
        /// The corners so far.
        corners: Vec<Point>,
        /// Where the pointer is.
        pointer: Option<Point>,
        /// What of the next corner was typed.
        typed: Typed,
    },
    /// Measure from place to place.
    Tape(Tape),
    /// Put a fault, or long grass, onto the netting of the run in hand.
    Try(Trial),
}

/// A tape that is laid from place to place.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Tape {
    /// The places so far.
    pub places: Vec<Point>,
    /// Where the hand is.
    pub pointer: Option<Point>,
    /// Whether it lies as it is: the next click begins anew.
    pub done: bool,
}

impl Tape {
    /// All places, the hand last while it is not done.
    pub fn all(&self) -> Vec<Point> {
        let hand = self.pointer.filter(|_| !self.done && !self.places.is_empty());
        let far = |hand: &Point| self.places.last().is_none_or(|&last| apart_m(last, *hand) > SAME_PLACE_M);
        self.places.iter().copied().chain(hand.filter(far)).collect()
    }

    fn step(mut self, hand: Hand) -> Self {
        match hand {
            Hand::Move(at) => self.pointer = Some(at),
            Hand::Click { at, .. } => self.set(at),
            Hand::Set => {
                if let Some(at) = self.pointer {
                    self.set(at);
                }
            }
            // The hand's own place is the last one.
            Hand::Close | Hand::CloseHere => {
                self.places = self.all();
                self.done = self.places.len() > 1;
            }
            Hand::Back => {
                self.places.pop();
                self.done = false;
            }
            Hand::Off => self.pointer = None,
            Hand::Type(_) | Hand::Leave => {}
        }
        self
    }

    fn set(&mut self, at: Point) {
        if self.done {
            *self = Self::default();
        }
        self.pointer = Some(at);
        if self.places.last().is_none_or(|&last| apart_m(last, at) > SAME_PLACE_M) {
            self.places.push(at);
        }
    }
}

/// What was typed of the next corner; what was not follows the pointer.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Typed {
    /// Length of its side, metres.
    pub side_m: Option<f64>,
    /// How far the line turns into its side, degrees, to whichever hand the pointer is; of a first side its bearing,
    /// clockwise from north.
    pub turn_deg: Option<f64>,
}

impl Typed {
    /// Where the next corner stands, with the pointer there.
    pub fn place(self, corners: &[Point], pointer: Point) -> Point {
        let (Some(&last), true) = (corners.last(), self != Self::default()) else { return pointer };
        let (east, north) = (pointer.east_m - last.east_m, pointer.north_m - last.north_m);
        let bearing_rad = match (self.turn_deg, corners) {
            (None, _) => east.atan2(north),
            (Some(bearing_deg), [_]) => bearing_deg.to_radians(),
            (Some(turn_deg), [.., before, last]) => {
                let (along_east, along_north) = (last.east_m - before.east_m, last.north_m - before.north_m);
                let to_the_right = along_north * east - along_east * north >= 0.0;
                along_east.atan2(along_north) + if to_the_right { turn_deg } else { -turn_deg }.to_radians()
            }
            (Some(_), []) => return pointer,
        };
        let side_m = self.side_m.unwrap_or_else(|| east.hypot(north));
        Point::new(last.east_m + side_m * bearing_rad.sin(), last.north_m + side_m * bearing_rad.cos())
    }
}

/// What is tried on a fence.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Trial {
    /// A fallen branch.
    Branch,
    /// Long grass along some metres.
    LongGrass,
    /// A peg on a live line.
    Peg,
    /// One live line broken.
    CutLine,
    /// A join that conducts badly.
    BadJoin,
    /// Every live line open.
    DeadNet,
}

impl Trial {
    /// What its button is called.
    pub fn name(self) -> Faults {
        match self {
            Self::Branch => Faults::Branch,
            Self::LongGrass => Faults::LongGrass,
            Self::Peg => Faults::Peg,
            Self::CutLine => Faults::CutLine,
            Self::BadJoin => Faults::BadJoin,
            Self::DeadNet => Faults::DeadNet,
        }
    }
}

/// What an outline is drawn for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Drawn {
    /// The paddock, drawn anew.
    Paddock,
    /// A further run.
    Run,
    /// A place that runs keep off.
    KeepOut,
    /// Water that runs keep off.
    Water,
    /// A thing that can hurt: a path, or one place.
    Hazard(HazardKind),
    /// The coop: one place.
    Coop,
    /// The way into the paddock: one place.
    Gateway,
    /// A spot whose height is known.
    Height,
    /// Netting that hangs on a run, from the line on.
    Branch,
    /// An earth stake of that run: one place.
    EarthStake(usize),
    /// A wall, a hedge or a permanent fence: a path.
    Wall(WallKind),
    /// Trees or a roof.
    Shade,
    /// Damp ground.
    Damp,
    /// Words: one place.
    Label,
    /// Where that run's rolls are put down: one place.
    Drop(usize),
    /// Where that run's lead meets its net: one place.
    Feed(usize),
    /// Where that run's energizer stands: one place.
    Energizer(usize),
    /// Two places of the picture beneath the map whose distance is known.
    Known,
}

impl Drawn {
    /// Fewest corners that make one.
    pub fn fewest(self) -> usize {
        match self {
            Self::Paddock | Self::Run | Self::KeepOut | Self::Water | Self::Shade | Self::Damp => FEWEST_CORNERS,
            Self::Hazard(HazardKind::ForeignEarth)
            | Self::Coop
            | Self::Gateway
            | Self::Height
            | Self::Label
            | Self::Drop(_)
            | Self::Feed(_)
            | Self::Energizer(_)
            | Self::EarthStake(_) => 1,
            Self::Hazard(_) | Self::Branch | Self::Wall(_) | Self::Known => 2,
        }
    }

    /// Whether one place is all of it.
    pub fn is_place(self) -> bool {
        self.fewest() == 1
    }

    /// Whether it closes at its first corner.
    pub fn closes(self) -> bool {
        self.fewest() == FEWEST_CORNERS
    }
}

/// What the hand did.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Hand {
    /// The pointer went somewhere.
    Move(Point),
    /// A click; `reach_m` is how near counts as on it.
    Click {
        /// Where.
        at: Point,
        /// How near the first corner closes the outline, metres.
        reach_m: f64,
    },
    /// What is typed of the next corner.
    Type(Typed),
    /// A corner where it would stand now.
    Set,
    /// A double click: done with the corners that are set.
    Close,
    /// Enter: done, with the corner at the pointer as it is shown.
    CloseHere,
    /// The pointer left the map.
    Off,
    /// Backspace: the last corner is taken up.
    Back,
    /// Esc: out of the tool.
    Leave,
}

/// Two corners nearer than this are one, metres.
const SAME_PLACE_M: f64 = 0.01;
/// Fewest corners of an outline.
pub const FEWEST_CORNERS: usize = 3;

impl Tool {
    /// The tool that draws an outline of that kind.
    pub fn outline(of: Drawn) -> Self {
        Self::Outline { of, corners: Vec::new(), pointer: None, typed: Typed::default() }
    }

    /// Where it was last: the corner set last, or else the pointer.
    pub fn last_place(&self) -> Option<Point> {
        match self {
            Self::Outline { corners, pointer, .. } => corners.last().copied().or(*pointer),
            Self::Tape(tape) => tape.places.last().copied().or(tape.pointer),
            Self::Pick | Self::Try(_) => None,
        }
    }

    /// Where its pointer is.
    pub fn pointer(&self) -> Option<Point> {
        match self {
            Self::Outline { pointer, .. } => *pointer,
            Self::Tape(tape) => tape.pointer,
            Self::Pick | Self::Try(_) => None,
        }
    }

    /// How many corners or places are set.
    pub fn set_count(&self) -> usize {
        match self {
            Self::Outline { corners, .. } => corners.len(),
            Self::Tape(tape) => tape.places.len(),
            Self::Pick | Self::Try(_) => 0,
        }
    }

    /// The corners of an outline with the one at the pointer, where that is no double of the last and not the first.
    pub fn corners_here(&self) -> Vec<Point> {
        let Self::Outline { of, corners, pointer, typed } = self else { return Vec::new() };
        let next = pointer.map(|pointer| typed.place(corners, pointer)).filter(|&next| {
            let off = |corner: Option<&Point>| corner.is_none_or(|&corner| apart_m(corner, next) > SAME_PLACE_M);
            off(corners.last()) && off(corners.first().filter(|_| of.closes()))
        });
        corners.iter().copied().chain(next).collect()
    }

    /// The tool that measures.
    pub fn tape() -> Self {
        Self::Tape(Tape::default())
    }

    /// Whether this tool draws that.
    pub fn draws(&self, what: Drawn) -> bool {
        matches!(self, Self::Outline { of, .. } if *of == what)
    }

    /// The run whose earth stakes it sets.
    pub fn stakes(&self) -> Option<usize> {
        match self {
            Self::Outline { of: Drawn::EarthStake(run), .. } => Some(*run),
            _ => None,
        }
    }

    /// The run whose energizer it sets down.
    pub fn energizer(&self) -> Option<usize> {
        match self {
            Self::Outline { of: Drawn::Energizer(run), .. } => Some(*run),
            _ => None,
        }
    }

    /// The next state, and what came of it.
    pub fn step(self, hand: Hand, plan: &Plan) -> (Self, Option<Edit>) {
        match (self, hand) {
            (Self::Pick, _) | (_, Hand::Leave) => (Self::Pick, None),
            (Self::Tape(tape), hand) => (Self::Tape(tape.step(hand)), None),
            // Where the netting lies, which a trial goes onto, is the editor's to know.
            (tool @ Self::Try(_), _)
            // What two known points say is typed.
            | (tool @ Self::Outline { of: Drawn::Known, .. }, Hand::Close | Hand::CloseHere)
            | (tool @ Self::Outline { pointer: None, .. }, Hand::Set) => (tool, None),
            (Self::Outline { of, corners, typed, .. }, Hand::Move(at)) => {
                (Self::Outline { of, corners, pointer: Some(at), typed }, None)
            }
            (Self::Outline { of, corners, pointer, .. }, Hand::Type(typed)) => {
                (Self::Outline { of, corners, pointer, typed }, None)
            }
            (Self::Outline { of, corners, pointer: Some(at), typed }, Hand::Set) => {
                let at = typed.place(&corners, at);
                Self::with_corner(of, corners, at, plan)
            }
            (Self::Outline { of, corners, typed, .. }, Hand::Click { at, reach_m }) => {
                let closes = of.closes() && corners.len() >= of.fewest() && apart_m(corners[0], at) <= reach_m;
                if closes {
                    return (Self::Pick, edit(of, corners, plan));
                }
                let at = typed.place(&corners, at);
                Self::with_corner(of, corners, at, plan)
            }
            (Self::Outline { of, corners, pointer, typed }, Hand::Close) => {
                if corners.len() < of.fewest() {
                    (Self::Outline { of, corners, pointer, typed }, None)
                } else {
                    (Self::Pick, edit(of, corners, plan))
                }
            }
            (tool @ Self::Outline { of, .. }, Hand::CloseHere) => {
                let outline = tool.corners_here();
                if outline.len() < of.fewest() { (tool, None) } else { (Self::Pick, edit(of, outline, plan)) }
            }
            // What is typed still leads from the last corner.
            (Self::Outline { of, corners, pointer, typed }, Hand::Off) => {
                let pointer = if typed == Typed::default() { corners.last().copied() } else { pointer };
                (Self::Outline { of, corners, pointer, typed }, None)
            }
            (Self::Outline { of, mut corners, pointer, .. }, Hand::Back) => {
                corners.pop();
                (Self::Outline { of, corners, pointer, typed: Typed::default() }, None)
            }
        }
    }

    /// The tool with a further corner, or what came of the last one.
    fn with_corner(of: Drawn, mut corners: Vec<Point>, at: Point, plan: &Plan) -> (Self, Option<Edit>) {
        // A third known point is a first one anew.
        if of == Drawn::Known && corners.len() >= of.fewest() {
            corners.clear();
        }
        // Typed home it closes, as a click there does.
        if of.closes() && corners.len() >= of.fewest() && apart_m(corners[0], at) <= SAME_PLACE_M {
            return (Self::Pick, edit(of, corners, plan));
        }
        if corners.last().is_none_or(|&last| apart_m(last, at) > SAME_PLACE_M) {
            corners.push(at);
        }
        if of.is_place() {
            return (Self::Pick, edit(of, corners, plan));
        }
        (Self::Outline { of, corners, pointer: Some(at), typed: Typed::default() }, None)
    }
}

/// What a drawn outline states; `None` where there is nothing to hang it on.
fn edit(of: Drawn, outline: Vec<Point>, plan: &Plan) -> Option<Edit> {
    Some(match of {
        Drawn::Paddock => Edit::SetOutline { shape: Shape::Boundary, outline },
        Drawn::Run => {
            let run = Run { id: free_run_id(plan), outline, ..Run::default() };
            Edit::AddRun { index: plan.runs.len(), run: Box::new(run) }
        }
        Drawn::KeepOut | Drawn::Water => {
            let keep_out = KeepOut {
                name: String::new(),
                outline,
                clearance_m: None,
                may_enclose: None,
                water: of == Drawn::Water,
                hidden: false,
                locked: false,
                rest: Rest::new(),
            };
            Edit::SetKeepOuts { keep_outs: with(&plan.ground.keep_outs, keep_out) }
        }
        Drawn::Hazard(kind) => {
            let hazard = Hazard {
                kind,
                name: String::new(),
                path: outline,
                line_voltage_kv: None,
                signed: false,
                unpowered_gate: false,
                hidden: false,
                locked: false,
                rest: Rest::new(),
            };
            Edit::SetHazards { hazards: with(&plan.ground.hazards, hazard) }
        }
        Drawn::Wall(kind) => {
            let wall = Wall { kind: Some(kind), path: outline, ..Wall::default() };
            Edit::SetWalls { walls: with(&plan.walls, wall) }
        }
        Drawn::Shade => Edit::SetShade { shade: with(&plan.ground.shade, Shade { outline, ..Shade::default() }) },
        Drawn::Damp => Edit::SetDamp { damp: with(&plan.ground.damp, Damp { outline, ..Damp::default() }) },
        Drawn::Label => {
            let label = Label { at: outline.first().copied()?, ..Label::default() };
            Edit::SetLabels { labels: with(&plan.labels, label) }
        }
        Drawn::Drop(index) => {
            let run = Run { drop_at: outline.first().copied(), ..plan.runs.get(index)?.clone() };
            Edit::SetRun { run: Box::new(run) }
        }
        Drawn::Feed(index) => {
            let run = Run { feed_at: outline.first().copied(), ..plan.runs.get(index)?.clone() };
            Edit::SetRun { run: Box::new(run) }
        }
        Drawn::Energizer(index) => {
            let run = Run { energizer_at: outline.first().copied(), ..plan.runs.get(index)?.clone() };
            Edit::SetRun { run: Box::new(run) }
        }
        Drawn::Known => return None,
        Drawn::Gateway => {
            let at = outline.first().copied().unwrap_or_default();
            let rest = plan.ground.gateway.as_ref().map(|gateway| gateway.rest.clone()).unwrap_or_default();
            Edit::SetGateway { gateway: Some(Gateway { at, rest }) }
        }
        Drawn::Height => {
            let at = outline.first().copied().unwrap_or_default();
            // As high as the spot nearest to it until it is typed: nothing slopes that nobody stated.
            let off_m = |height: &&SpotHeight| apart_m(height.at, at);
            let nearest = plan.heights.iter().min_by(|a, b| off_m(a).total_cmp(&off_m(b)));
            let up_m = nearest.map_or(0.0, |height| height.up_m);
            let height = SpotHeight { at, up_m, rest: Rest::new() };
            Edit::SetHeights { heights: with(&plan.heights, height) }
        }
        Drawn::Coop => {
            let at = outline.first().copied().unwrap_or_default();
            let coop = match &plan.coop {
                Some(coop) => Coop { at, ..coop.clone() },
                None => Coop::new(free_coop_id(plan), at),
            };
            Edit::SetCoop { coop: Some(coop) }
        }
        Drawn::EarthStake(index) => {
            let (run, at) = (plan.runs.get(index)?, *outline.first()?);
            // A row that stands nowhere yet is only told where; else one more stands beside the others.
            let stand = workup::earth::places(run);
            let mut run = run.clone();
            if stand.is_empty() && run.earth_stakes.count() > 1 {
                run.earth_stakes.at = Some(at);
            } else {
                run = crate::editor::earth::placed(&run, with(&stand, at));
            }
            Edit::SetRun { run: Box::new(run) }
        }
        Drawn::Branch => {
            let shown = plan.runs.iter().filter(|run| !run.hidden);
            let hung = shown.filter_map(|run| workup::hang(plan, run, &outline).map(|hung| (run, hung)));
            let (run, (branch, _)) = hung.min_by(|one, other| one.1.1.total_cmp(&other.1.1))?;
            Edit::SetRun { run: Box::new(Run { branches: with(&run.branches, branch), ..run.clone() }) }
        }
    })
}

fn with<T: Clone>(all: &[T], one: T) -> Vec<T> {
    all.iter().cloned().chain([one]).collect()
}

/// A name that no further coop has.
pub(crate) fn free_coop_id(plan: &Plan) -> String {
    let mut id = "coop".to_owned();
    while plan.coop(&id).is_some() {
        id.push('-');
    }
    id
}

/// The first of `run-1`, `run-2`, ... that no run has.
pub(crate) fn free_run_id(plan: &Plan) -> String {
    // Of one name more than there are runs, one is free.
    (plan.runs.len() + 1..=2 * plan.runs.len() + 1)
        .map(|number| format!("run-{number}"))
        .find(|id| plan.run(id).is_none())
        .expect("one name more than there are runs")
}

/// Distance between two places, metres.
pub fn apart_m(one: Point, other: Point) -> f64 {
    (one.east_m - other.east_m).hypot(one.north_m - other.north_m)
}

#[cfg(test)]
mod tests {
    use super::{Drawn, Hand, Tool};
    use plan::{Edit, Plan, Point, Run, Shape};

    fn click(east_m: f64, north_m: f64) -> Hand {
        Hand::Click { at: Point::new(east_m, north_m), reach_m: 0.5 }
    }

    fn draw(of: Drawn, plan: &Plan, hands: &[Hand]) -> (Tool, Option<Edit>) {
        let mut state = (Tool::outline(of), None);
        for &hand in hands {
            assert!(state.1.is_none(), "nothing may follow the edit");
            state = state.0.step(hand, plan);
        }
        state
    }

    #[test]
    fn clicks_and_enter_draw_a_run_with_a_free_name() {
        let plan = Plan { runs: vec![Run { id: "run-2".to_owned(), ..Run::default() }], ..Plan::default() };
        let (tool, edit) = draw(
            Drawn::Run,
            &plan,
            &[click(0.0, 0.0), click(10.0, 0.0), click(10.0, 0.0), click(10.0, 10.0), Hand::Close],
        );
        assert_eq!(tool, Tool::Pick);
        let Some(Edit::AddRun { index: 1, run }) = edit else { panic!("{edit:?}") };
        assert_eq!(run.id, "run-3");
        assert_eq!(run.outline.len(), 3, "a click on the last corner adds none");
    }

    #[test]
    fn a_click_on_the_first_corner_closes_and_backspace_takes_up_the_last() {
        let (tool, edit) = draw(
            Drawn::Paddock,
            &Plan::default(),
            &[
                click(0.0, 0.0),
                click(10.0, 0.0),
                click(55.0, 5.0),
                Hand::Back,
                click(10.0, 10.0),
                Hand::Move(Point::new(3.0, 3.0)),
                click(0.2, 0.2),
            ],
        );
        assert_eq!(tool, Tool::Pick);
        let outline = vec![Point::new(0.0, 0.0), Point::new(10.0, 0.0), Point::new(10.0, 10.0)];
        assert_eq!(edit, Some(Edit::SetOutline { shape: Shape::Boundary, outline }));
    }

    #[test]
    fn a_tape_goes_from_place_to_place_and_begins_anew_once_it_is_done() {
        let plan = Plan::default();
        let laid = |hands: &[Hand]| {
            let tool = hands.iter().fold(Tool::tape(), |tool, &hand| tool.step(hand, &plan).0);
            let Tool::Tape(tape) = tool else { panic!("it stays a tape") };
            tape
        };
        let first = [click(0.0, 0.0), Hand::Move(Point::new(3.0, 4.0))];
        assert_eq!(laid(&first).all(), [Point::new(0.0, 0.0), Point::new(3.0, 4.0)]);
        let done = [first[0], first[1], Hand::Close, Hand::Move(Point::new(9.0, 9.0))];
        assert_eq!(laid(&done).all().len(), 2, "what is done stays");
        let anew = [done[0], done[1], done[2], click(7.0, 7.0)];
        assert_eq!(laid(&anew).all(), [Point::new(7.0, 7.0)]);
        assert_eq!(Tool::tape().step(Hand::Leave, &plan), (Tool::Pick, None));
    }

    #[test]
    fn enter_takes_the_corner_at_the_pointer_but_no_double() {
        let plan = Plan::default();
        let corners = [click(0.0, 0.0), click(10.0, 0.0), click(10.0, 10.0)];
        let drawn = |of: Drawn, last: &[Hand]| {
            let (tool, edit) = draw(of, &plan, &[&corners[..], last].concat());
            assert_eq!(tool, Tool::Pick);
            match edit {
                Some(Edit::AddRun { run, .. }) => run.outline.len(),
                Some(Edit::SetWalls { walls }) => walls[0].path.len(),
                other => panic!("{other:?}"),
            }
        };
        let move_to = |east_m: f64, north_m: f64| Hand::Move(Point::new(east_m, north_m));
        assert_eq!(drawn(Drawn::Run, &[move_to(0.0, 10.0), Hand::CloseHere]), 4);
        assert_eq!(drawn(Drawn::Run, &[move_to(10.0, 10.0), Hand::CloseHere]), 3, "no double of the last");
        assert_eq!(drawn(Drawn::Run, &[move_to(0.0, 0.0), Hand::CloseHere]), 3, "none on the first");
        assert_eq!(drawn(Drawn::Run, &[move_to(0.0, 10.0), Hand::Off, Hand::CloseHere]), 3, "off the map");
        assert_eq!(drawn(Drawn::Run, &[move_to(0.0, 10.0), Hand::Close]), 3, "a double click set its own");
        let wall = Drawn::Wall(plan::WallKind::Wall);
        assert_eq!(drawn(wall, &[move_to(0.0, 0.0), Hand::CloseHere]), 4, "a path may come back to its start");
    }

    #[test]
    fn two_corners_do_not_close_and_esc_leaves() {
        let plan = Plan::default();
        let (tool, edit) = draw(Drawn::Run, &plan, &[click(0.0, 0.0), click(10.0, 0.0), Hand::Close]);
        assert!(tool.draws(Drawn::Run) && edit.is_none());
        assert_eq!(tool.step(Hand::Leave, &plan), (Tool::Pick, None));
    }
}
