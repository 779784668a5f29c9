//! What is picked on the ground leads its page: its name as the title, its fields below the tools, in sight without a way
//! to scroll. The tools stay where they are, so that a click on the map moves nothing under the pointer.

use drawing::Thing;
use egui::Ui;
use words::texts::{Ground, Window as Text};

use super::{Desk, coops, damp, features, fields, name_of, rule_of, taping, underlay};
use crate::kit;
use crate::theme::{self, colour};

/// The whole of the ground that is picked; of corners and sides what they belong to. Of the paddock the page is anyway.
pub(in crate::pages) fn of(desk: &Desk<'_>) -> Option<Thing> {
    let plan = desk.editor.plan();
    match desk.editor.picked()? {
        Thing::KeepOut { keep_out } | Thing::KeepOutCorner { keep_out, .. } | Thing::KeepOutSide { keep_out, .. } => {
            plan.ground.keep_outs.get(keep_out).map(|_| Thing::KeepOut { keep_out })
        }
        Thing::Hazard { hazard } | Thing::HazardCorner { hazard, .. } => {
            plan.ground.hazards.get(hazard).map(|_| Thing::Hazard { hazard })
        }
        Thing::Wall { wall } | Thing::WallCorner { wall, .. } => plan.walls.get(wall).map(|_| Thing::Wall { wall }),
        Thing::Shade { shade } | Thing::ShadeCorner { shade, .. } | Thing::ShadeSide { shade, .. } => {
            plan.ground.shade.get(shade).map(|_| Thing::Shade { shade })
        }
        Thing::Damp { damp } | Thing::DampCorner { damp, .. } | Thing::DampSide { damp, .. } => {
            plan.ground.damp.get(damp).map(|_| Thing::Damp { damp })
        }
        Thing::Label { label } => plan.labels.get(label).map(|_| Thing::Label { label }),
        Thing::TapePoint { point } => plan.tape_points.get(point).map(|_| Thing::TapePoint { point }),
        Thing::Underlay => plan.underlay.as_ref().map(|_| Thing::Underlay),
        thing => coops::of(plan, thing).map(|coop| Thing::Coop { coop }),
    }
}

/// Its title, as high as the paddock's with that sentence.
pub(super) fn title(ui: &mut Ui, desk: &Desk<'_>, thing: Thing, of_paddock: &str) {
    let (words, p, plan) = (desk.words, desk.p, desk.editor.plan());
    let name = name_of(desk, thing);
    let (kind, sentence) = match thing {
        Thing::KeepOut { keep_out } => {
            let one = &plan.ground.keep_outs[keep_out];
            let kind = if one.water { Text::KeepOutWater } else { Text::AKeepOut };
            (words.text(kind), rule_of(desk, one))
        }
        Thing::Coop { .. } => (words.text(Ground::Coop), String::new()),
        _ => ("", String::new()),
    };
    // What has no name is called by its kind anyway.
    let kind = if name.to_lowercase().starts_with(&kind.to_lowercase()) { "" } else { kind };
    kit::title(ui, &name, kind, &sentence, p);
    let wide = ui.available_width();
    let tall = |text: &str| {
        let lines = ui.painter().layout(text.to_owned(), theme::regular(13.0), colour(p.ink2), wide);
        if text.is_empty() { 0.0 } else { 4.0 + lines.size().y }
    };
    let room = tall(of_paddock) - tall(&sentence);
    ui.add_space(room.max(0.0));
}

/// The fields of a thing on the ground, where it has some.
pub(in crate::pages) fn fields(ui: &mut Ui, desk: &mut Desk<'_>, thing: Thing) {
    let (plan, name) = (desk.editor.plan(), name_of(desk, thing));
    match thing {
        Thing::KeepOut { keep_out } => fields::keep_out(ui, desk, keep_out, &plan.ground.keep_outs[keep_out], &name),
        Thing::Hazard { hazard } => fields::hazard(ui, desk, hazard, &plan.ground.hazards[hazard], &name),
        Thing::Wall { wall } => features::wall_fields(ui, desk, wall, &plan.walls[wall], &name),
        Thing::Shade { shade } => features::shade_fields(ui, desk, shade, &name),
        Thing::Damp { damp } => damp::fields(ui, desk, damp, &plan.ground.damp[damp], &name),
        Thing::Label { label } => features::label_fields(ui, desk, label, &plan.labels[label]),
        Thing::Underlay => {
            if let Some(stated) = &plan.underlay {
                underlay::fields(ui, desk, stated);
            }
        }
        Thing::TapePoint { point } => taping::fields(ui, desk, point),
        Thing::Coop { coop } => {
            coops::fields(ui, desk, coop);
            // Of several their own section has the button.
            if plan.coops().count() == 1 {
                coops::further(ui, desk);
            }
        }
        _ => {}
    }
}
