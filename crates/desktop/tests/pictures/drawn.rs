//! A plan with everything on it that a keeper can draw, over a picture from the air; and the folder that it lies in.

use std::path::{Path, PathBuf};

use crate::hand::{example, plans};
use plan::{Damp, Gateway, Label, LabelSize, Plan, Point, Rest, Shade, SpotHeight, TapePoint, Wall, WallKind, World};
use tiny_skia::{Color, FillRule, Paint, PathBuilder, Pixmap, Stroke, Transform};

/// The picture's size, pixels, and how much ground a pixel is.
const SIZE_PX: [u32; 2] = [320, 240];
const PIXEL_M: f64 = 0.5;

/// Walls of each kind, shade, damp ground, words, known places, heights, a gateway, and a picture of that strength beneath.
pub(crate) fn everything(opacity: f64) -> Plan {
    let mut plan = plans::drawn_on(example());
    let places = |all: &[(f64, f64)]| all.iter().copied().map(Point::from).collect::<Vec<_>>();
    let wall = |kind: WallKind, name: &str, path: &[(f64, f64)]| Wall {
        name: name.to_owned(),
        kind: Some(kind),
        path: places(path),
        holds_birds: Some(true),
        ..Wall::default()
    };
    plan.walls.push(wall(WallKind::Wall, "Old wall", &[(78.0, 66.0), (104.0, 72.0)]));
    plan.walls.push(wall(WallKind::Fence, "Rails", &[(84.0, 12.0), (103.0, 16.0)]));
    let shade = |name: &str, outline: &[(f64, f64)]| Shade {
        name: name.to_owned(),
        outline: places(outline),
        ..Shade::default()
    };
    // Half on the run, half off it.
    plan.ground.shade.push(shade("Limes", &[(54.0, 30.0), (70.0, 26.0), (77.0, 36.0), (70.0, 48.0), (56.0, 46.0)]));
    plan.ground.shade.push(shade("Copse", &[(118.0, 52.0), (132.0, 50.0), (130.0, 66.0), (116.0, 68.0)]));
    let outline = places(&[(26.0, 24.0), (42.0, 9.0), (54.0, 10.0), (46.0, 26.0), (34.0, 31.0)]);
    plan.ground.damp = vec![Damp { name: "Hollow".to_owned(), outline, ..Damp::default() }];
    plan.ground.gateway = Some(Gateway { at: Point::new(4.0, 24.0), rest: Rest::new() });
    let height = |(at, up_m): ((f64, f64), f64)| SpotHeight { at: at.into(), up_m, rest: Rest::new() };
    plan.heights = [((12.0, 12.0), 0.4), ((68.0, 70.0), 2.1), ((112.0, 20.0), 1.3)].map(height).into();
    let known = |at: (f64, f64)| TapePoint { at: at.into(), ..TapePoint::default() };
    plan.tape_points = [(14.0, 50.0), (110.0, 60.0)].map(known).into();
    plan.labels.push(Label {
        at: Point::new(92.0, 22.0),
        text: "Top end".to_owned(),
        size: Some(LabelSize::Large),
        ..Label::default()
    });
    let beneath = plan.underlay.as_mut().expect("a picture lies beneath");
    beneath.size_px = Some(SIZE_PX);
    beneath.world_m = Some(World([PIXEL_M, 0.0, 0.0, -PIXEL_M, -7.75, 105.75]));
    beneath.opacity = Some(opacity);
    plan
}

/// A folder with the picture and the plan's file in it; the file's path.
pub(crate) fn laid_in(folder: &Path, plan: &Plan) -> PathBuf {
    std::fs::write(folder.join("air.png"), meadow()).unwrap();
    let path = folder.join("farm.netfold.json");
    std::fs::write(&path, plan::write(plan)).unwrap();
    path
}

/// A meadow from the air: dull grass in swaths, black trees, a track as white as paper, a pool that glares.
fn meadow() -> Vec<u8> {
    let mut map = Pixmap::new(SIZE_PX[0], SIZE_PX[1]).unwrap();
    map.fill(Color::from_rgba8(112, 124, 90, 255));
    let ink = |red: u8, green: u8, blue: u8| {
        let mut paint = Paint::default();
        paint.set_color_rgba8(red, green, blue, 255);
        paint
    };
    let line = |map: &mut Pixmap, places: &[(f32, f32)], width: f32, paint: &Paint<'_>| {
        let mut path = PathBuilder::new();
        path.move_to(places[0].0, places[0].1);
        places[1..].iter().for_each(|&(x, y)| path.line_to(x, y));
        let stroke = Stroke { width, ..Stroke::default() };
        map.stroke_path(&path.finish().unwrap(), paint, &stroke, Transform::identity(), None);
    };
    for swath in 0..20_u8 {
        let x = f32::from(swath) * 18.0 - 40.0;
        let shade = if swath % 2 == 0 { ink(124, 138, 98) } else { ink(100, 112, 84) };
        line(&mut map, &[(x, 240.0), (x + 70.0, 0.0)], 9.0, &shade);
    }
    line(&mut map, &[(0.0, 196.0), (90.0, 170.0), (200.0, 186.0), (320.0, 150.0)], 9.0, &ink(250, 248, 244));
    let round = |map: &mut Pixmap, x: f32, y: f32, radius: f32, paint: &Paint<'_>| {
        let circle = PathBuilder::from_circle(x, y, radius).unwrap();
        map.fill_path(&circle, paint, FillRule::Winding, Transform::identity(), None);
    };
    for tree in 0..26_u8 {
        let along = f32::from(tree);
        round(&mut map, 60.0 + along * 7.0, 118.0 - along * 1.5 + 9.0 * (along * 1.7).sin(), 8.0, &ink(14, 22, 10));
    }
    round(&mut map, 196.0, 120.0, 26.0, &ink(236, 242, 246));
    map.encode_png().unwrap()
}
