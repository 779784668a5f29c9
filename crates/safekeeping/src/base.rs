//! A plan from its file's JSON, exactly as it was in memory.
//!
//! The reader of plan files drops a closing corner and refuses an id that nothing bears; a plan in the middle of
//! an edit may have both, and edits count its corners. So a journal's plan is taken up part by part, as stated.

use plan::{Ground, Plan, Rest};
use serde::de::DeserializeOwned;
use serde_json::{Error, Value};

/// The plan as its file's JSON.
pub(crate) fn write(plan: &Plan) -> Value {
    serde_json::from_slice(&plan::write(plan)).unwrap_or_default()
}

/// The plan of its file's JSON.
pub(crate) fn read(value: Value) -> Result<Plan, Error> {
    let mut keys: Rest = serde_json::from_value(value)?;
    let mut ground: Rest = take(&mut keys, "ground")?;
    keys.remove("format");
    keys.remove("version");
    Ok(Plan {
        title: take(&mut keys, "title")?,
        origin: take(&mut keys, "origin")?,
        ground: Ground {
            boundary: take(&mut ground, "boundary")?,
            boundary_hidden: take(&mut ground, "boundary_hidden")?,
            boundary_locked: take(&mut ground, "boundary_locked")?,
            keep_outs: take(&mut ground, "keep_outs")?,
            hazards: take(&mut ground, "hazards")?,
            shade: take(&mut ground, "shade")?,
            damp: take(&mut ground, "damp")?,
            soil: take(&mut ground, "soil")?,
            gateway: take(&mut ground, "gateway")?,
            wind_m_per_s: take(&mut ground, "wind_m_per_s")?,
            fouled_share: take(&mut ground, "fouled_share")?,
            today: take(&mut ground, "today")?,
            height_grid: take(&mut ground, "height_grid")?,
            rest: ground,
        },
        store: take(&mut keys, "store")?,
        target_kv: take(&mut keys, "target_kv")?,
        season: take(&mut keys, "season")?,
        coop: take(&mut keys, "coop")?,
        other_coops: take(&mut keys, "other_coops")?,
        runs: take(&mut keys, "runs")?,
        heights: take(&mut keys, "heights")?,
        walls: take(&mut keys, "walls")?,
        labels: take(&mut keys, "labels")?,
        tape_points: take(&mut keys, "tape_points")?,
        underlay: take(&mut keys, "underlay")?,
        readings: take(&mut keys, "readings")?,
        rest: keys,
    })
}

fn take<T: DeserializeOwned + Default>(keys: &mut Rest, key: &str) -> Result<T, Error> {
    keys.remove(key).map_or_else(|| Ok(T::default()), serde_json::from_value)
}

#[cfg(test)]
mod tests {
    use super::*;
    use plan::Point;

    #[test]
    fn a_plan_that_its_file_would_alter_or_refuse_comes_back_as_it_was() {
        let text = br#"{"format": "netfold-plan", "version": 1, "title": "Slope", "colour": {"a": [1.5]},
            "origin": {"latitude_deg": 52.1, "longitude_deg": -0.0, "seen": true}, "target_kv": 4.2,
            "ground": {"boundary": [[0, 0], [30.1, 0], [30, 20]], "boundary_locked": true, "soil": {"wet": false, "depth": 2}, "trees": 4,
              "keep_outs": [{"name": "Pond", "outline": [[1, 1], [2, 1], [2, 2]], "water": true}],
              "hazards": [{"kind": "public_way", "path": [[0, -9]], "signed": true}], "gateway": {"at": [0, 9], "key": 1},
              "shade": [{"outline": [[1, 1], [2, 1], [2, 2]], "of": "oak"}], "damp": [{"outline": [[1, 1], [2, 1], [2, 2]], "resistivity_ohm_m": 40, "since": "May"}],
              "today": "wet", "height_grid": {"south_west": [0, 0], "cell_m": 1, "columns": 2, "up_m": [1, null, 2, 3]}},
            "heights": [{"at": [1, 2], "up_m": 3.5, "by": "eye"}],
            "walls": [{"path": [[0, 0], [9, 1]], "holds_birds": true, "owner": "own", "hidden": true}],
            "labels": [{"at": [2, 2], "text": "trough", "size": "large", "by": "me"}],
            "underlay": {"path": "air.png", "sha256": "00", "size_px": [9, 9], "world_m": [1, 0, 0, -1, 0, 9], "seen": 1},
            "store": {"nets": [{"id": "n", "length_m": 50, "panels": 14}], "shelf": "B",
              "energizers": [{"id": "e", "stored_j": 2}], "brace": {"stake_length_m": 0.9, "x": null}},
            "coop": {"id": "coop-1", "at": [3, 4], "birds": 12, "locked": true}, "other_coops": [{"id": "coop-2", "at": [5, 6]}],
            "runs": [{"id": "r", "outline": [[0, 0], [9, 0], [9, 9]], "nets": ["n"], "energizer": "e", "by": 7,
              "side_slopes": [{"at": [4, 0], "one_in": 12}], "gap_under_net_m": 0.06}],
            "season": {"birds_rule": "own", "days": 210}, "readings": [{"run": "r", "kind": "fence_kv", "value": 4.5}]}"#;
        let mut plan = plan::read(text).unwrap().plan;
        assert_eq!(read(write(&plan)).unwrap(), plan);
        // Boundary and run closed by hand; the reading's run and the run's net gone.
        plan.ground.boundary.push(Point::new(0.0, 0.0));
        plan.runs[0].outline.push(Point::new(0.0, 0.0));
        plan.store.nets.clear();
        plan.readings[0].run = "gone".to_owned();
        assert_eq!(read(write(&plan)).unwrap(), plan);
    }
}
