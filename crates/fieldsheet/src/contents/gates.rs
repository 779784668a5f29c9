//! Gates: what each opens, and the order of opening and shutting.

use care::gate_said;
use words::texts::Gates as Text;

use super::{Block, Look};
use crate::rows::Row;

/// A block where the run has a gate.
pub(super) fn block(look: Look<'_>) -> Option<Block> {
    let (worked, lay) = (look.worked?, look.lay()?);
    if worked.gates.is_empty() {
        return None;
    }
    let words = look.words;
    let mut rows = Vec::new();
    for (index, gate) in worked.gates.iter().enumerate() {
        let name = gate_said::name(words, gate.kind, index);
        let figures = gate_said::figures(gate, lay, words).join("; ");
        rows.push(Row::Caution(words.say(Text::SheetGate, &[("name", &name), ("figures", &figures)])));
    }
    if worked.gates.iter().any(|gate| gate.opening.is_some()) {
        let steps = gate_said::steps(words).into_iter().enumerate();
        rows.extend(steps.map(|(index, text)| Row::Line { number: index + 1, text: text.to_owned() }));
    }
    Some(Block { head: words.text(Text::Gates).to_owned(), aside: words.text(Text::GatesAside).to_owned(), rows })
}
