//! The table of runs as text and as CSV, read back by a general reader.

use exchange::compare::{Column, Entry, csv, runs, text};
use plan::{NetKind, Plan, Point, Run};
use words::{Units, Words};
use workup::{Compared, Depth, workup};

/// A square and a triangle of two nets, and a run that encloses nothing.
fn plan() -> Plan {
    let mut plan = Plan::default();
    plan.store.nets.push(NetKind { count: Some(2), ..NetKind::new("long", 50.0, 14) });
    let outlines: [(&str, &[(f64, f64)]); 3] = [
        ("square, \"south\"", &[(0.0, 0.0), (25.0, 0.0), (25.0, 25.0), (0.0, 25.0)]),
        ("two\tsides\nand one", &[(0.0, 0.0), (30.0, 0.0), (15.0, 25.0)]),
        ("crossed", &[(0.0, 0.0), (20.0, 20.0), (20.0, 0.0), (0.0, 20.0)]),
    ];
    for (index, (name, outline)) in outlines.into_iter().enumerate() {
        let outline = outline.iter().map(|&(east, north)| Point::new(east, north)).collect();
        plan.runs.push(Run { id: format!("run-{index}"), name: name.to_owned(), outline, ..Run::default() });
    }
    plan
}

fn entries() -> Vec<Entry> {
    let plan = plan();
    runs(&plan, &workup(&plan, Depth::Full))
}

#[test]
fn csv_reads_back_as_the_same_figures() {
    let (entries, bytes) = (entries(), csv(&entries()));
    assert!(bytes.windows(2).filter(|pair| pair == b"\r\n").count() >= entries.len(), "lines end as RFC 4180 has it");
    let mut reader = ::csv::Reader::from_reader(&bytes[..]);
    let heads = reader.headers().unwrap().clone();
    let rows: Vec<::csv::StringRecord> = reader.records().map(Result::unwrap).collect();
    assert_eq!(rows.len(), entries.len());
    for (row, Entry { name, figures }) in rows.iter().zip(&entries) {
        let cell = |head: &str| &row[heads.iter().position(|at| at == head).unwrap()];
        let number = |head: &str| cell(head).parse::<f64>().ok();
        assert_eq!(cell("name"), name);
        assert_eq!(number("area_m2"), figures.area_m2);
        assert_eq!(number("birds"), figures.birds.map(f64::from));
        assert_eq!(number("spare_m"), figures.spare_m);
        assert_eq!(number("corners"), figures.on_posts.map(|(_, all)| all as f64));
        assert_eq!(number("braces"), figures.braces.map(|braces| braces as f64));
        assert_eq!(number("strip_m2"), figures.strip_m2);
        assert_eq!(number("set_up_minutes"), figures.set_up_minutes);
        assert_eq!(number("weakest_low_kv"), figures.weakest.map(|weakest| weakest.low_kv));
    }
    // 625 m² at 2.5 m² a bird.
    assert_eq!((rows[0].get(1), rows[0].get(2)), (Some("625"), Some("250")));
    assert!(rows[2].iter().skip(1).all(str::is_empty), "what could not be worked out is an empty cell");
}

#[test]
fn text_has_a_cell_for_each_column_in_the_units_that_are_shown() {
    let shown = text(&entries(), Words::default());
    let lines: Vec<Vec<&str>> = shown.lines().map(|line| line.split('\t').collect()).collect();
    assert_eq!(lines.len(), 4);
    assert!(lines.iter().all(|cells| cells.len() == 1 + Column::ALL.len()), "{shown}");
    assert_eq!(lines[1][..3], ["square, \"south\"", "625 m²", "250"]);
    assert_eq!(lines[2][0], "two sides and one", "a tab in a name begins no cell");
    assert!(lines[3][1..].iter().all(|cell| *cell == "–"), "{shown}");
    let feet = text(&entries(), Words { units: Units::Feet, ..Words::default() });
    assert!(feet.contains("ft²") && !feet.contains("m²"), "{feet}");
}

#[test]
fn nothing_is_compared_as_heads_alone() {
    assert_eq!(String::from_utf8(csv(&[])).unwrap().lines().count(), 1);
    assert_eq!(text(&[], Words::default()).lines().count(), 1);
    let nothing = [Entry { name: "none".to_owned(), figures: Compared::default() }];
    assert!(csv(&nothing).ends_with(b"\r\nnone,,,,,,,,,,,,,,\r\n"));
}
