//! Concave areas as triangles, for pens that can only fill triangles.

use geo::{Coord, LineString, Polygon, TriangulateEarcut};

use crate::ink::Spot;

/// The vertices, and three indices for each triangle, that fill an area: its outer ring, then its holes.
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
    let holes = rings[1..].iter().filter(sound).map(line).collect();
    let raw = Polygon::new(line(outer), holes).earcut_triangles_raw();
    let indices = raw.triangle_indices.into_iter().map(|index| index as u32).collect();
    (raw.vertices, indices)
}

#[cfg(test)]
mod tests {
    use super::triangles;

    fn area((spots, indices): &(Vec<[f32; 2]>, Vec<u32>)) -> f32 {
        indices
            .chunks(3)
            .map(|corner| {
                let [a, b, c] = [0, 1, 2].map(|index| spots[corner[index] as usize]);
                ((b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1])).abs() / 2.0
            })
            .sum()
    }

    #[test]
    fn a_dented_area_with_a_hole_is_filled_exactly() {
        let dented = vec![[0.0, 0.0], [10.0, 0.0], [10.0, 10.0], [5.0, 2.0], [0.0, 10.0]];
        let hole = vec![[4.0, 0.5], [6.0, 0.5], [6.0, 1.5], [4.0, 1.5]];
        assert!((area(&triangles(std::slice::from_ref(&dented))) - 60.0).abs() < 1e-4);
        assert!((area(&triangles(&[dented, hole])) - 58.0).abs() < 1e-4);
    }

    #[test]
    fn what_cannot_be_filled_is_left_out() {
        for rings in [vec![], vec![vec![]], vec![vec![[0.0, 0.0], [1.0, 1.0]]], vec![vec![[f32::NAN, 0.0]; 3]]] {
            assert!(triangles(&rings).1.is_empty());
        }
    }
}
