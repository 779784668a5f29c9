//! Concave areas as triangles, for pens that can only fill triangles.

use geo::{Area, BooleanOps, Coord, LineString, MultiPolygon, Polygon, TriangulateEarcut};

use crate::ink::Spot;

/// What the triangles of a ring that does not cross itself may be off its own area, a share of it: rounding alone.
const AREA_GRAIN: f32 = 1e-3;

/// The vertices, and three indices for each triangle, that fill an area: its outer ring, then its holes. What an outer
/// ring that crosses itself goes round twice is outside (even-odd).
///
/// Rings of fewer than three spots and rings with a spot that is not finite are left out; where the outer ring
/// is left out nothing is filled.
pub fn triangles(rings: &[Vec<Spot>]) -> (Vec<Spot>, Vec<u32>) {
    let sound = |ring: &&Vec<Spot>| ring.len() >= 3 && ring.iter().flatten().all(|px| px.is_finite());
    let line = |ring: &Vec<Spot>| {
        let mut coords: Vec<Coord<f32>> = ring.iter().map(|&[x, y]| Coord { x, y }).collect();
        coords.push(coords[0]);
        LineString::new(coords)
    };
    let Some(outer) = rings.first().filter(sound) else {
        return (Vec::new(), Vec::new());
    };
    let whole = Polygon::new(line(outer), rings[1..].iter().filter(sound).map(line).collect());
    let cut = cut(&whole);
    // Ears are cut right only where a ring does not cross itself: one that does not turns round once, and its ears are as
    // large as it is. Rings with holes are made by our own hand and do not cross.
    let is_off = || (area(&cut) - whole.unsigned_area()).abs() > AREA_GRAIN * area(&cut);
    if whole.interiors().is_empty() && (rounds(outer) != 1.0 || is_off()) {
        let pieces = whole.difference(&MultiPolygon::new(Vec::new()));
        return pieces.iter().map(self::cut).fold((Vec::new(), Vec::new()), joined);
    }
    cut
}

/// How many times a ring turns round on its way.
fn rounds(ring: &[Spot]) -> f32 {
    let way = |from: Spot, to: Spot| [to[0] - from[0], to[1] - from[1]];
    let ways = ring.iter().zip(ring.iter().cycle().skip(1)).map(|(&from, &to)| way(from, to));
    let ways: Vec<[f32; 2]> = ways.filter(|way| *way != [0.0; 2]).collect();
    let turn = |(one, next): (&[f32; 2], &[f32; 2])| {
        (one[0] * next[1] - one[1] * next[0]).atan2(one[0] * next[0] + one[1] * next[1])
    };
    let turned_rad: f32 = ways.iter().zip(ways.iter().cycle().skip(1)).map(turn).sum();
    (turned_rad / std::f32::consts::TAU).round().abs()
}

fn cut(polygon: &Polygon<f32>) -> (Vec<Spot>, Vec<u32>) {
    let raw = polygon.earcut_triangles_raw();
    (raw.vertices, raw.triangle_indices.into_iter().map(|index| index as u32).collect())
}

/// Both in one list of vertices.
fn joined(mut all: (Vec<Spot>, Vec<u32>), next: (Vec<Spot>, Vec<u32>)) -> (Vec<Spot>, Vec<u32>) {
    let before = all.0.len() as u32;
    all.0.extend(next.0);
    all.1.extend(next.1.into_iter().map(|index| index + before));
    all
}

/// What triangles cover, each by itself.
fn area((spots, indices): &(Vec<Spot>, Vec<u32>)) -> f32 {
    let of = |corners: &[u32]| {
        let &[a, b, c] = corners else { return 0.0 };
        let [a, b, c] = [a, b, c].map(|index| spots[index as usize]);
        ((b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1])).abs() / 2.0
    };
    indices.chunks(3).map(of).sum()
}

#[cfg(test)]
mod tests {
    use super::{area, triangles};

    #[test]
    fn a_dented_area_with_a_hole_is_filled_exactly() {
        let dented = vec![[0.0, 0.0], [10.0, 0.0], [10.0, 10.0], [5.0, 2.0], [0.0, 10.0]];
        let hole = vec![[4.0, 0.5], [6.0, 0.5], [6.0, 1.5], [4.0, 1.5]];
        assert!((area(&triangles(std::slice::from_ref(&dented))) - 60.0).abs() < 1e-4);
        assert!((area(&triangles(&[dented, hole])) - 58.0).abs() < 1e-4);
    }

    #[test]
    fn of_a_ring_that_crosses_itself_what_it_goes_round_is_filled() {
        // A bow-tie: two triangles of 25 that meet in (5, 5), the left and the right one.
        let bow = vec![[0.0, 0.0], [10.0, 10.0], [10.0, 0.0], [0.0, 10.0]];
        let filled = triangles(&[bow]);
        assert!((area(&filled) - 50.0).abs() < 1e-3, "{}", area(&filled));
        for corner in filled.1.chunks(3) {
            let [x, y] =
                [0, 1].map(|axis| corner.iter().map(|&index| filled.0[index as usize][axis]).sum::<f32>() / 3.0);
            assert!((x - 5.0).abs() > (y - 5.0).abs(), "nothing above or below the crossing: {x}, {y}");
        }
        let loop_out = vec![[0.0, 0.0], [8.0, 0.0], [8.0, 4.0], [4.0, -4.0], [0.0, 4.0]];
        let filled = triangles(&[loop_out]);
        // On one side of y = 0 two triangles of 4, on the other one of 8.
        assert!((area(&filled) - (4.0 + 4.0 + 8.0)).abs() < 1e-2, "{}", area(&filled));
        // Two loops that turn the same way, one within the other: they meet where y = x cuts y = 10 - 7/4 x, in 40/11.
        let within = vec![[0.0, 0.0], [10.0, 0.0], [10.0, 10.0], [0.0, 10.0], [4.0, 3.0], [7.0, 3.0], [7.0, 7.0]];
        let filled = triangles(&[within]);
        let (outer, inner) = (100.0 - 200.0 / 11.0, (19.0 - 40.0 / 11.0) / 2.0);
        assert!((area(&filled) - (outer - inner)).abs() < 1e-2, "{}", area(&filled));
    }

    #[test]
    fn what_cannot_be_filled_is_left_out() {
        for rings in [vec![], vec![vec![]], vec![vec![[0.0, 0.0], [1.0, 1.0]]], vec![vec![[f32::NAN, 0.0]; 3]]] {
            assert!(triangles(&rings).1.is_empty());
        }
    }
}
