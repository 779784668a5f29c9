//! Circuits made to be nasty: resistances over nine decades or none, netting without leakage or
//! capacitance, breaks anywhere.

use electrical::Source;
use proptest::prelude::*;

use crate::oracle::{Piece, Spec};

/// Zero, or anything over `decades` decades up to `most`.
pub(crate) fn wide(most: f64, decades: f64) -> impl Strategy<Value = f64> {
    prop_oneof![
        1 => Just(0.0),
        3 => (0.0..decades).prop_map(move |down| most * 10_f64.powf(-down)),
    ]
}

/// Above zero, over `decades` decades up to `most`.
pub(crate) fn spread(most: f64, decades: f64) -> impl Strategy<Value = f64> {
    (0.0..decades).prop_map(move |down| most * 10_f64.powf(-down))
}

fn piece() -> impl Strategy<Value = Piece> {
    (spread(20.0, 2.0), wide(1e3, 9.0), wide(1e-3, 9.0), wide(1e-10, 3.0)).prop_map(|(length_m, r, g, c)| Piece {
        length_m,
        r,
        g,
        c,
    })
}

fn source() -> impl Strategy<Value = Source> {
    (wide(5e3, 6.0), spread(1e-6, 3.0), wide(1e-2, 4.0)).prop_map(|(r_ohm, c_farad, l_henry)| Source {
        v0: 7000.0,
        r_ohm,
        c_farad,
        l_henry,
    })
}

/// Any line of up to a dozen pieces.
pub(crate) fn nasty(with_inductance: bool) -> impl Strategy<Value = Spec> {
    let ohm = prop_oneof![4 => wide(1e4, 9.0), 1 => Just(f64::INFINITY)];
    let ring = prop_oneof![
        2 => Just(None),
        2 => Just(Some(0.0)),
        1 => spread(1e4, 6.0).prop_map(Some),
        1 => Just(Some(f64::INFINITY)),
    ];
    (
        source(),
        (wide(5e3, 6.0), wide(1e2, 6.0)),
        prop::collection::vec(piece(), 1..12),
        prop::collection::vec((any::<prop::sample::Index>(), ohm), 0..4),
        ring,
        any::<prop::sample::Index>(),
        prop::collection::vec((any::<prop::sample::Index>(), spread(1e4, 5.0)), 0..3),
        (
            prop::collection::vec(piece(), 0..4),
            prop::collection::vec((any::<prop::sample::Index>(), prop::collection::vec(piece(), 1..4)), 0..3),
        ),
    )
        .prop_map(move |(mut source, (earth_ohm, lead_ohm), pieces, joins, ring, feed, shorts, (spare, twigs))| {
            if !with_inductance {
                source.l_henry = 0.0;
            }
            // No ringing of more than Q = 20 or so: beyond a few hundred it is not followed to its end.
            let hanging = twigs.iter().flat_map(|twig| &twig.1);
            let fence_f: f64 = pieces.iter().chain(&spare).chain(hanging).map(|piece| piece.c * piece.length_m).sum();
            let series_f = if fence_f > 0.0 { 1.0 / (1.0 / fence_f + 1.0 / source.c_farad) } else { source.c_farad };
            source.r_ohm += 0.05 * (source.l_henry / series_f).sqrt();
            // Ideal capacitors side by side lose energy in a resistance of nothing.
            if source.r_ohm + earth_ohm <= 0.0 {
                source.r_ohm = 1e-6;
            }
            let places = pieces.len() + 1;
            Spec {
                source,
                earth_ohm,
                lead_ohm,
                joins: joins.into_iter().map(|(place, ohm)| (place.index(places), ohm)).collect(),
                ring,
                feed: feed.index(places),
                shorts: shorts.into_iter().map(|(place, ohm)| (place.index(places), ohm)).collect(),
                spare,
                twigs: twigs.into_iter().map(|(place, pieces)| (place.index(places), pieces)).collect(),
                pieces,
            }
        })
}
