//! `netfold --language de` as a keeper in Germany sees it: every command in German, the keys of JSON as they are.

use std::process::{Command, Output};

use serde_json::Value;

const DEMO: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/../../assets/demo/kettle-field.netfold.json");

fn netfold(arguments: &[&str]) -> Output {
    let mut command = Command::new(env!("CARGO_BIN_EXE_netfold"));
    command.args(arguments).env_remove("DISPLAY").env_remove("WAYLAND_DISPLAY").output().unwrap()
}

fn said(arguments: &[&str]) -> String {
    let output = netfold(arguments);
    String::from_utf8([output.stdout, output.stderr].concat()).unwrap()
}

/// What each command prints in a language.
fn every_command(language: &str) -> Vec<(String, String)> {
    let commands: [&[&str]; 6] = [
        &["report", DEMO],
        &["check", DEMO],
        &["fit", DEMO, "--run", "run-1"],
        &["shapes", DEMO, "--nets", "2"],
        &["power", DEMO],
        &["report", "nowhere.netfold.json"],
    ];
    let one = |command: &[&str]| {
        let asked = [command, &["--language", language]].concat();
        (command[0].to_owned(), said(&asked))
    };
    commands.into_iter().map(one).collect()
}

/// The pieces of English wordings that are long enough to be told from German and from names.
fn english() -> Vec<&'static str> {
    let german = words::texts::wordings(words::Language::German);
    words::texts::wordings(words::Language::English)
        .into_iter()
        .flat_map(|wording| wording.split(['{', '}']).step_by(2))
        .map(|piece| piece.trim_matches(|letter: char| !letter.is_alphanumeric()))
        .filter(|piece| piece.chars().filter(|letter| letter.is_alphabetic()).count() > 9)
        .filter(|piece| !german.iter().any(|wording| wording.contains(piece)))
        .collect()
}

#[test]
fn every_command_speaks_german_where_it_is_asked_to() {
    let english = english();
    for (command, text) in every_command("de") {
        assert!(!text.is_empty(), "{command}");
        for piece in &english {
            assert!(!text.contains(piece), "{command}: {piece:?} in\n{text}");
        }
        for line in text.lines().filter(|line| !line.contains("CFR") && !line.contains(".json")) {
            let letters: Vec<char> = line.chars().collect();
            for (at, three) in letters.windows(3).enumerate() {
                let point = three[1] == '.' && three[0].is_ascii_digit() && three[2].is_ascii_digit();
                let after = letters[at + 2..].iter().take_while(|letter| letter.is_ascii_digit()).count();
                assert!(!point || after == 3, "{command}: a point in {line:?}");
            }
        }
    }
}

#[test]
fn english_is_what_is_spoken_where_nothing_is_asked() {
    for (command, text) in every_command("en") {
        let german = ["Netze", "Pfahl", "Ecke", "Gerät", " und ", " nicht "];
        assert!(!german.iter().any(|word| text.contains(word)), "{command}: {text}");
    }
    assert_eq!(said(&["report", DEMO]), said(&["report", DEMO, "--language", "en"]));
}

#[test]
fn keys_of_json_are_the_same_in_every_language() {
    fn keys(value: &Value, path: &str, all: &mut Vec<String>) {
        match value {
            Value::Object(map) => map.iter().for_each(|(key, value)| {
                all.push(format!("{path}.{key}"));
                keys(value, &format!("{path}.{key}"), all);
            }),
            Value::Array(list) => list.iter().for_each(|value| keys(value, path, all)),
            _ => {}
        }
    }
    for command in [&["report", DEMO, "--json"][..], &["power", DEMO, "--json"]] {
        let of = |language: &str| {
            let output = netfold(&[command, &["--language", language]].concat());
            let value: Value = serde_json::from_slice(&output.stdout).unwrap();
            let mut all = Vec::new();
            keys(&value, "", &mut all);
            all
        };
        assert_eq!(of("en"), of("de"));
    }
}

#[test]
fn an_unknown_language_is_refused_and_known_ones_are_named() {
    let output = netfold(&["report", DEMO, "--language", "xx"]);
    let text = String::from_utf8(output.stderr).unwrap();
    assert_eq!(output.status.code(), Some(2));
    assert!(text.contains("en") && text.contains("de") && text.lines().count() == 1, "{text}");
}

#[test]
fn the_language_stands_before_the_command_or_after_it() {
    let before = said(&["--language", "de", "check", DEMO]);
    assert_eq!(before, said(&["check", DEMO, "--language", "de"]));
    assert_ne!(before, said(&["check", DEMO]));
    let refused = netfold(&[DEMO, "check", DEMO]);
    assert_eq!(refused.status.code(), Some(2));
    assert!(String::from_utf8(refused.stderr).unwrap().contains("a command stands first"));
}
