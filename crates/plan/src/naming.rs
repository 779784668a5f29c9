//! Names of things that are new, copied or doubled: none is called what another of its kind is called already.

use crate::{Coop, Plan};

/// What a coop is called that the keeper has not named: `coop`, `coop-2`, `coop-3`.
const UNNAMED_COOP: &str = "coop";

/// The name that is wanted, or the first that is free by counting on from it: "Run 2" becomes "Run 3", "Old well"
/// becomes "Old well 2". What has no name needs none.
///
/// ```
/// assert_eq!(plan::free_name("Run 2", ["Run 1", "Run 2"]), "Run 3");
/// assert_eq!(plan::free_name("Old well", ["Old well", "Old well 2"]), "Old well 3");
/// assert_eq!(plan::free_name("Pond", ["Old well"]), "Pond");
/// ```
pub fn free_name<'a>(wanted: &str, taken: impl IntoIterator<Item = &'a str>) -> String {
    let taken: Vec<&str> = taken.into_iter().collect();
    if wanted.is_empty() || !taken.contains(&wanted) {
        return wanted.to_owned();
    }
    let stem = wanted.trim_end_matches(|letter: char| letter.is_ascii_digit());
    let counted = stem.ends_with([' ', '-']).then(|| wanted[stem.len()..].parse::<u32>().ok()).flatten();
    let (stem, first) = match counted {
        Some(number) => (stem.to_owned(), number.saturating_add(1)),
        None => (format!("{wanted} "), 2),
    };
    let mut names = (first..=u32::MAX).map(|number| format!("{stem}{number}"));
    names.find(|name| !taken.contains(&name.as_str())).unwrap_or_else(|| format!("{wanted} 2"))
}

impl Coop {
    /// The number of a coop that the keeper has not named, read from its id: 1 of `coop`, 2 of `coop-2`, and of `coop-`,
    /// as such a one was written once. `None` of one with a name.
    pub fn number(&self) -> Option<usize> {
        let counted = self.id.strip_prefix(UNNAMED_COOP)?;
        if counted.bytes().all(|letter| letter == b'-') {
            return Some(counted.len() + 1);
        }
        let digits = counted.strip_prefix('-').filter(|digits| digits.bytes().all(|letter| letter.is_ascii_digit()))?;
        digits.parse().ok()
    }
}

impl Plan {
    /// The id of a further coop, without a name: of its number in the list, or the next that no other has.
    pub fn free_coop_id(&self) -> String {
        let is_taken = |number: usize| self.coops().any(|coop| coop.number() == Some(number));
        let count = self.coops().count();
        // Of one number more than there are coops, one is free.
        match (count + 1..=2 * count + 1).find(|&number| !is_taken(number)).unwrap_or(count + 1) {
            1 => UNNAMED_COOP.to_owned(),
            number => format!("{UNNAMED_COOP}-{number}"),
        }
    }

    /// A name for a further run; one without a name is called by its id.
    pub fn free_run_name(&self, wanted: &str) -> String {
        let called = self.runs.iter().map(|run| if run.name.is_empty() { &run.id } else { &run.name });
        free_name(wanted, called.map(String::as_str))
    }

    /// A name for a further keep-out.
    pub fn free_keep_out_name(&self, wanted: &str) -> String {
        free_name(wanted, self.ground.keep_outs.iter().map(|one| one.name.as_str()))
    }

    /// A name for a further hazard.
    pub fn free_hazard_name(&self, wanted: &str) -> String {
        free_name(wanted, self.ground.hazards.iter().map(|one| one.name.as_str()))
    }

    /// A name for a further wall.
    pub fn free_wall_name(&self, wanted: &str) -> String {
        free_name(wanted, self.walls.iter().map(|one| one.name.as_str()))
    }

    /// A name for further damp ground.
    pub fn free_damp_name(&self, wanted: &str) -> String {
        free_name(wanted, self.ground.damp.iter().map(|one| one.name.as_str()))
    }

    /// A name for further shade.
    pub fn free_shade_name(&self, wanted: &str) -> String {
        free_name(wanted, self.ground.shade.iter().map(|one| one.name.as_str()))
    }
}

#[cfg(test)]
mod tests {
    use super::free_name;
    use crate::{Coop, Plan, Point};

    #[test]
    fn a_coop_without_a_name_has_a_number_of_its_own() {
        let coop = |id: &str| Coop::new(id, Point::new(0.0, 0.0));
        for (id, number) in [
            ("coop", Some(1)),
            ("coop-2", Some(2)),
            ("coop-31", Some(31)),
            ("coop-", Some(2)),
            ("coop--", Some(3)),
            ("coop 2", None),
            ("coop-a", None),
            ("coops", None),
            ("Coop-2", None),
            ("coop-99999999999999999999999", None),
            ("house", None),
        ] {
            assert_eq!(coop(id).number(), number, "{id}");
        }
        let mut plan = Plan::default();
        assert_eq!(plan.free_coop_id(), "coop");
        plan.coop = Some(coop("house"));
        assert_eq!(plan.free_coop_id(), "coop-2", "the second of the list");
        plan.other_coops = vec![coop("coop-"), coop("coop-4")];
        assert_eq!(plan.free_coop_id(), "coop-5", "4 is another's");
        plan.other_coops.pop();
        assert_eq!(plan.free_coop_id(), "coop-3");
    }

    #[test]
    fn a_name_counts_on_until_it_is_free() {
        for (wanted, taken, free) in [
            ("Run 2", &["Run 1"][..], "Run 2"),
            ("Run 2", &["Run 2", "Run 3", "Run 5"], "Run 4"),
            ("Pond", &["Pond"], "Pond 2"),
            ("run-1", &["run-1"], "run-2"),
            ("Paddock5", &["Paddock5"], "Paddock5 2"),
            ("7", &["7"], "7 2"),
            ("", &["", ""], ""),
            ("Well 4294967295", &["Well 4294967295"], "Well 4294967295 2"),
            ("Well 99999999999", &["Well 99999999999"], "Well 99999999999 2"),
        ] {
            assert_eq!(free_name(wanted, taken.iter().copied()), free, "{wanted}");
        }
    }
}
