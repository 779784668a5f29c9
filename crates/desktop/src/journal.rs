//! The journal, on a thread of its own.
pub(crate) struct Keeper;
pub(crate) struct LeftBehind;
impl LeftBehind {
    pub(crate) fn sentence(&self, _: words::Words) -> String {
        String::new()
    }
    pub(crate) fn can_take(&self) -> bool {
        true
    }
    pub(crate) fn take(self) -> crate::editor::Message {
        crate::editor::Message::StartEmpty
    }
    pub(crate) fn throw_away(self) {}
}
impl Keeper {
    pub(crate) fn start(_: &std::path::Path) -> (Self, Vec<LeftBehind>) {
        (Self, Vec::new())
    }
    pub(crate) fn append(&self, _: Vec<plan::Edit>) {}
    pub(crate) fn restart(&self, _: &plan::Plan, _: Option<&std::path::Path>) {}
}
