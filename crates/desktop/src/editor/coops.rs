//! The coop's name: it is its id, so that all who name the coop go along.

use plan::{Deed, Plan, between};

use super::Editor;

impl Editor {
    /// Gives a coop another name, with the runs that name it. One that another coop has is counted on; no name at all
    /// changes nothing.
    pub(super) fn rename_coop(&mut self, index: usize, name: &str) {
        let mut to = self.plan.clone();
        let Some(was) = self.plan.coops().nth(index).map(|coop| coop.id.clone()) else { return };
        // Nor is it called as one without a name is.
        let others = self.plan.coops().filter(|coop| coop.id != was);
        let called = others.flat_map(|coop| [coop.id.clone(), care::names::coop(self.words, coop)]);
        let called: Vec<String> = called.collect();
        let id = plan::free_name(name, called.iter().map(String::as_str));
        if id.is_empty() || id == was {
            return;
        }
        let Plan { coop, other_coops, runs, .. } = &mut to;
        coop.iter_mut().chain(other_coops).filter(|coop| coop.id == was).for_each(|coop| coop.id.clone_from(&id));
        let named = runs.iter_mut().filter(|run| run.coop.as_ref() == Some(&was));
        named.for_each(|run| run.coop = Some(id.clone()));
        self.one_step(Deed::Rename, between(&self.plan, &to));
    }
}
