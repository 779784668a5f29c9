//! What a page works out and egui alone remembers, until what it was worked out from is another.

use std::sync::Arc;

use egui::{Id, Ui};

/// Something worked out, and what it was worked out from.
type Kept<K, T> = (K, Arc<T>);

/// What a key stands for: worked out anew only where the key is another.
pub(super) fn kept<K, T>(ui: &Ui, id: Id, key: K, work: impl FnOnce() -> T) -> Arc<T>
where
    K: Clone + PartialEq + Send + Sync + 'static,
    T: Send + Sync + 'static,
{
    if let Some((made, value)) = ui.data(|data| data.get_temp::<Kept<K, T>>(id))
        && made == key
    {
        return value;
    }
    let value = Arc::new(work());
    ui.data_mut(|data| data.insert_temp(id, (key, Arc::clone(&value))));
    value
}
