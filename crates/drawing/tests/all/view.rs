//! The camera: there and back again.

use drawing::{Distance, Theme, View};
use plan::Point;
use proptest::prelude::*;

prop_compose! {
    fn any_view()(east in -1e6..1e6_f64, north in -1e6..1e6_f64, zoom in -1.5..2.5_f64, width in 50.0..3000.0_f32, height in 50.0..2000.0_f32) -> View {
        let view = View::fit(None, [width, height], 0.0, Theme::Light);
        View { middle: Point::new(east, north), px_per_m: 10_f64.powf(zoom), ..view }
    }
}

proptest! {
    #[test]
    fn a_spot_comes_back_from_its_place(view in any_view(), right in 0.0..3000.0_f32, down in 0.0..2000.0_f32) {
        let back = view.spot(view.place([right, down]));
        prop_assert!((back[0] - right).abs() < 1e-2 && (back[1] - down).abs() < 1e-2, "{back:?}");
    }

    #[test]
    fn a_place_comes_back_from_its_spot(view in any_view(), right in -0.5..0.5_f64, down in -0.5..0.5_f64) {
        let span = f64::from(view.size[0]) / view.px_per_m;
        let place = Point::new(view.middle.east_m + span * right, view.middle.north_m + span * down);
        let back = view.place(view.spot(place));
        // A spot is an f32: 1e-3 of a pixel on the largest sheet.
        let tolerance_m = 1e-3 / view.px_per_m + 1e-9;
        prop_assert!((back.east_m - place.east_m).abs() < tolerance_m && (back.north_m - place.north_m).abs() < tolerance_m);
    }

    #[test]
    fn zooming_holds_the_place_under_the_pointer(view in any_view(), by in 0.2..5.0_f64, right in 0.0..500.0_f32, down in 0.0..500.0_f32) {
        let about = [right, down];
        let place = view.place(about);
        let back = view.zoomed(by, about).spot(place);
        prop_assert!((back[0] - right).abs() < 1e-2 && (back[1] - down).abs() < 1e-2, "{back:?}");
    }

    #[test]
    fn moving_moves_by_as_much(view in any_view(), right in -500.0..500.0_f32, down in -500.0..500.0_f32) {
        let at = view.moved(right, down).spot(view.middle);
        let was = view.spot(view.middle);
        prop_assert!((at[0] - was[0] - right).abs() < 1e-2 && (at[1] - was[1] - down).abs() < 1e-2);
    }
}

#[test]
fn fitting_shows_all_with_its_margin() {
    let bounds = (Point::new(-10.0, 5.0), Point::new(90.0, 25.0));
    let view = View::fit(Some(bounds), [400.0, 300.0], 20.0, Theme::Dark);
    let (low, high) = (view.spot(bounds.0), view.spot(bounds.1));
    assert!((low[0] - 20.0).abs() < 1e-3 && (high[0] - 380.0).abs() < 1e-3, "{low:?} {high:?}");
    assert!(high[1] >= 20.0 && low[1] <= 280.0 && high[1] < low[1]);
    let speck = View::fit(Some((bounds.0, bounds.0)), [400.0, 300.0], 20.0, Theme::Dark);
    assert!(speck.px_per_m.is_finite() && speck.px_per_m > 0.0);
}

#[test]
fn distances_change_at_4_and_10() {
    let view = View::fit(None, [100.0, 100.0], 0.0, Theme::Light);
    for (px_per_m, want) in
        [(3.99, Distance::Far), (4.0, Distance::Middle), (9.99, Distance::Middle), (10.0, Distance::Near)]
    {
        assert_eq!(View { px_per_m, ..view }.distance(), want);
    }
}
