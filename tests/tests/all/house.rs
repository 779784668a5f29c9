//! The house: who may import whom, and that nothing reaches the network.
//!
//! The table is the plan of the house; a crate that is not in it fails, and so does an arrow that it does not
//! allow.

use std::collections::{BTreeMap, BTreeSet};

use cargo_metadata::{DependencyKind, Metadata, MetadataCommand, PackageId};

/// Each room of ours and the rooms that it may import.
fn house() -> BTreeMap<&'static str, &'static [&'static str]> {
    BTreeMap::from([
        ("geometry", &[][..]),
        ("electrical", &[]),
        ("plan", &[]),
        ("words", &[]),
        ("workup", &["plan", "geometry", "electrical", "words"]),
        ("safekeeping", &["plan"]),
        ("moves", &["workup", "plan", "geometry"]),
        ("care", &["workup", "plan", "geometry", "electrical", "words"]),
        ("drawing", &["care", "workup", "plan", "geometry", "electrical", "words"]),
        ("exchange", &["drawing", "care", "workup", "plan", "geometry", "electrical", "words"]),
        ("fieldsheet", &["drawing", "care", "workup", "plan", "geometry", "electrical", "words"]),
        (
            "desktop",
            &[
                "fieldsheet",
                "exchange",
                "drawing",
                "care",
                "moves",
                "safekeeping",
                "workup",
                "plan",
                "geometry",
                "electrical",
                "words",
            ],
        ),
        (
            "cli",
            &[
                "desktop",
                "fieldsheet",
                "exchange",
                "drawing",
                "care",
                "moves",
                "safekeeping",
                "workup",
                "plan",
                "geometry",
                "electrical",
                "words",
            ],
        ),
        // The checks look into every room.
        (
            "checks",
            &[
                "desktop",
                "fieldsheet",
                "exchange",
                "drawing",
                "care",
                "moves",
                "safekeeping",
                "workup",
                "plan",
                "geometry",
                "electrical",
                "words",
            ],
        ),
    ])
}

/// Systems that the program is built for; a crate that only a browser needs does not ship.
const SYSTEMS: [&str; 3] = ["x86_64-unknown-linux-gnu", "x86_64-pc-windows-msvc", "aarch64-apple-darwin"];

/// What the program is made of on a system. The crates of another system are not here before they were asked for once.
fn metadata(system: &str) -> Metadata {
    let asked = |more: &[&str]| {
        let options = [&["--locked", "--filter-platform", system], more].concat();
        MetadataCommand::new()
            .manifest_path(concat!(env!("CARGO_MANIFEST_DIR"), "/../Cargo.toml"))
            .other_options(options.into_iter().map(str::to_owned).collect::<Vec<_>>())
            .exec()
    };
    asked(&["--offline"]).or_else(|_| asked(&[])).unwrap()
}

#[test]
fn no_room_imports_one_that_the_house_forbids() {
    let metadata = metadata(SYSTEMS[0]);
    let house = house();
    let mut seen = 0;
    for package in metadata.workspace_packages() {
        let allowed =
            house.get(package.name.as_str()).unwrap_or_else(|| panic!("{} is not in the house", package.name));
        for dependency in package.dependencies.iter().filter(|dependency| dependency.path.is_some()) {
            assert!(allowed.contains(&dependency.name.as_str()), "{} may not import {}", package.name, dependency.name);
            seen += 1;
        }
    }
    assert!(seen > 20, "only {seen} arrows found: the test looks in the wrong place");
}

/// Crates that open connections or speak a protocol of the network. The window's own sockets (X11, Wayland) are
/// on this machine and go through other crates.
const NETWORK: [&str; 24] = [
    "reqwest",
    "hyper",
    "ureq",
    "curl",
    "isahc",
    "surf",
    "attohttpc",
    "minreq",
    "h2",
    "h3",
    "quinn",
    "tokio",
    "async-std",
    "native-tls",
    "openssl",
    "rustls",
    "tungstenite",
    "tonic",
    "socket2",
    "mio",
    "trust-dns-resolver",
    "hickory-resolver",
    "sentry",
    "self_update",
];

#[test]
fn nothing_that_ships_reaches_the_network() {
    for system in SYSTEMS {
        let metadata = metadata(system);
        let resolve = metadata.resolve.as_ref().unwrap();
        let nodes: BTreeMap<&PackageId, _> = resolve.nodes.iter().map(|node| (&node.id, node)).collect();
        let cli = metadata.workspace_packages().into_iter().find(|package| package.name.as_str() == "cli").unwrap();
        let mut reached = BTreeSet::new();
        let mut open = vec![&cli.id];
        while let Some(id) = open.pop() {
            if !reached.insert(id) {
                continue;
            }
            let ships = |dependency: &&cargo_metadata::NodeDep| {
                dependency.dep_kinds.iter().any(|kind| kind.kind == DependencyKind::Normal)
            };
            open.extend(nodes[id].deps.iter().filter(ships).map(|dependency| &dependency.pkg));
        }
        assert!(reached.len() > 80, "only {} crates found for {system}", reached.len());
        for id in reached {
            let name = metadata[id].name.as_str();
            assert!(!NETWORK.contains(&name), "{name} reaches the network on {system}");
        }
    }
}
