//! The example farm, worked out.

use workup::{Depth, SampleOf, Verdict, workup};

fn demo(name: &str) -> plan::Plan {
    let path = format!("{}/../../assets/demo/{name}.netfold.json", env!("CARGO_MANIFEST_DIR"));
    plan::read(&std::fs::read(path).unwrap()).unwrap().plan
}

#[test]
fn three_rolls_close_round_five_corners() {
    let plan = demo("kettle-field");
    let worked = workup(&plan, Depth::Full);
    let run = &worked.runs[0];
    assert!(worked.troubles.is_empty() && run.troubles.is_empty(), "{:?} {:?}", worked.troubles, run.troubles);
    let lay = run.lay.as_ref().unwrap();
    assert_eq!(lay.nets_needed["long"], 3);
    assert_eq!(lay.corners.len(), 5);
    assert_eq!(lay.posts.len(), 45);
    assert!((lay.line_m - 150.0).abs() < 0.02);
    assert!(lay.corners.iter().all(|corner| corner.verdict == Verdict::Required));
    let strip = run.strip.as_ref().unwrap();
    assert!((strip.area_m2 - lay.line_m * 2.0).abs() < 1e-6);
    let volts = run.volts.as_ref().unwrap();
    assert_eq!(volts.samples.len(), lay.posts.len() + 1);
    assert_eq!(volts.samples.last().unwrap().of, SampleOf::Feed);
    let weakest = volts.weakest.unwrap();
    assert!(weakest.low_kv < weakest.peak_kv && weakest.peak_kv < weakest.high_kv && !weakest.measured);
    for sample in &volts.samples {
        assert!(sample.animal_kv.unwrap() < sample.peak_kv && sample.animal_j.unwrap() > 0.0);
    }
}

#[test]
fn quick_and_full_differ_in_the_animal_figures_and_where_a_cut_falls_only() {
    let plan = demo("square-or-rectangle");
    let mut full = workup(&plan, Depth::Full);
    for sample in full.runs.iter_mut().flat_map(|run| &mut run.volts.as_mut().unwrap().samples) {
        sample.animal_kv = None;
        sample.animal_j = None;
    }
    let details = full.runs.iter_mut().flat_map(|run| &mut run.bracing.as_mut().unwrap().details);
    for cut in details.flat_map(|detail| &mut detail.mends).filter_map(|mend| mend.cut.as_mut()) {
        assert!(cut.off_post_m.take().is_some());
    }
    assert_eq!(workup(&plan, Depth::Quick), full);
}
