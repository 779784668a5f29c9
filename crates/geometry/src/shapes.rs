//! Regular polygons and the circle by their perimeter. Metres. Source: geometry, docs/sources.md, husbandry 8.1.

use std::f64::consts::PI;

/// Area of the regular polygon of `sides` sides, square metres: `P^2 / (4 n tan(pi/n))`; 0 below three sides.
pub fn regular_area_m2(perimeter_m: f64, sides: u32) -> f64 {
    if sides < 3 {
        return 0.0;
    }
    let n = f64::from(sides);
    perimeter_m * perimeter_m / (4.0 * n * (PI / n).tan())
}

/// Area of the rectangle so many times as long as wide, square metres: `P^2 r / (4 (1 + r)^2)`.
pub fn rectangle_area_m2(perimeter_m: f64, proportion: f64) -> f64 {
    perimeter_m * perimeter_m * proportion / (4.0 * (1.0 + proportion) * (1.0 + proportion))
}

/// Area of the circle, the most that a perimeter can enclose, square metres: `P^2 / (4 pi)`.
pub fn circle_area_m2(perimeter_m: f64) -> f64 {
    perimeter_m * perimeter_m / (4.0 * PI)
}
