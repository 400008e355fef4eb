//! What is printed of calls: the job report as a page, and the history of an equipment.

use crate::common::scene::{Scene, scenario, scene};
use crate::common::spoken::Spoken;

/// A call that a file of the built-in library answered, as its session's id.
fn walked(scene: &Scene, tree: &str, file: &str) -> String {
    let answers = scenario(file);
    scene.run(&["walk", tree, "--answers", &answers]).exits(0);
    scene.id()
}

fn page(scene: &Scene, id: &str) -> String {
    scene.run(&["report", id, "--format", "html"]).exits(0).out
}

/// The page as XML, which wants every element closed: HTML leaves that out for those that hold nothing.
fn closed(page: &str) -> String {
    let mut closed = String::new();
    for (at, piece) in page.replace("<!DOCTYPE html>", "").split('<').enumerate() {
        let empty = piece.starts_with("br>") || piece.starts_with("meta ");
        closed.push_str(if at == 0 { "" } else { "<" });
        closed.push_str(&if empty {
            piece.replacen('>', "/>", 1)
        } else {
            piece.to_owned()
        });
    }
    closed
}

fn number(node: roxmltree::Node<'_, '_>, name: &str) -> f64 {
    let text = node.attribute(name).expect(name);
    text.parse().expect("a number")
}

#[test]
fn the_page_shows_each_reading_in_the_band_it_lay_in() {
    let scene = scene();
    let id = walked(&scene, "limit-trips", "limit-trips-limit-opens-early");
    let page = page(&scene, &id);
    let text = closed(&page);
    let document = roxmltree::Document::parse(&text).expect("well formed");
    let job: serde_json::Value =
        serde_json::from_str(&scene.run(&["report", &id, "--format", "json"]).exits(0).out).unwrap();
    let drawn = job["readings"].as_array().unwrap().iter().filter(|reading| {
        let bands = reading["bands"].as_array().unwrap();
        bands
            .iter()
            .any(|band| band["low"].is_number() || band["high"].is_number())
    });
    let charts: Vec<_> = document
        .descendants()
        .filter(|node| node.has_tag_name("svg"))
        .collect();
    assert_eq!(charts.len(), drawn.count());
    assert!(charts.len() >= 4, "{}", charts.len());
    for chart in charts {
        let label = chart
            .attribute("aria-label")
            .expect("words for who cannot see it");
        let class = |class: &'static str| {
            chart
                .children()
                .filter(move |node| node.attribute("class") == Some(class))
        };
        let here: Vec<_> = class("here").collect();
        assert_eq!(here.len(), 1, "{label}");
        let mark = class("mark").next().expect("a mark").attribute("points").unwrap();
        let at: f64 = mark.split(',').next().unwrap().parse().unwrap();
        let from = number(here[0], "x");
        assert!(
            (from..=from + number(here[0], "width")).contains(&at),
            "{label}: {at}"
        );
    }
}

#[test]
fn what_was_taken_again_after_the_work_is_told_before_and_after() {
    let scene = scene();
    let id = walked(&scene, "tune-up", "tune-up-before-and-after");
    let page = page(&scene, &id);
    let rows: Vec<&str> = page
        .split("<tr>")
        .filter(|row| row.contains("Temperature rise"))
        .collect();
    assert!(
        rows.iter()
            .any(|row| row.contains(">63 °F<") && row.contains(">53 °F<")),
        "{rows:?}"
    );
    let text = scene.run(&["report", &id]).exits(0).out;
    assert!(text.contains("BEFORE AND AFTER"), "{text}");
    assert!(text.contains("Temperature rise: 63 °F, then 53 °F"), "{text}");
    assert!(text.contains("WHAT WAS DONE"), "{text}");
}

#[test]
fn the_page_stands_alone_and_what_was_typed_stays_text() {
    let scene = scene();
    let mut call = Spoken::start(scene.command(&["walk", "no-heat", "--plain"]));
    call.say("note <script>alert(1)</script> a\"b & <i>c</i>");
    call.ends();
    let page = page(&scene, &scene.id());
    assert!(
        page.contains("&lt;script&gt;alert(1)&lt;/script&gt; a&quot;b &amp; &lt;i&gt;"),
        "{page}"
    );
    for foreign in ["<script", "http:", "https:", "src=", "url(", "<i>", "@import"] {
        assert!(!page.contains(foreign), "{foreign} is in the page");
    }
    let text = closed(&page);
    let document = roxmltree::Document::parse(&text).expect("well formed");
    for section in ["owner", "office", "record"] {
        let heading = document
            .descendants()
            .find(|node| node.attribute("id") == Some(section));
        assert!(heading.is_some(), "{section}");
    }
}

/// A call at `unit 2`, answered by a file, at a time.
fn at_the_equipment(scene: &Scene, tree: &str, file: &str, clock: &str) {
    let answers = scenario(file);
    let walk = [
        "walk",
        tree,
        "--answers",
        &answers,
        "--clock",
        clock,
        "--equipment",
        "unit 2",
    ];
    scene.run(&walk).exits(0);
}

#[test]
fn known_equipment_tells_its_calls_its_readings_and_its_plate() {
    let scene = scene();
    at_the_equipment(
        &scene,
        "limit-trips",
        "limit-trips-limit-opens-early",
        "2026-01-12T09:00:00Z",
    );
    at_the_equipment(
        &scene,
        "tune-up",
        "tune-up-before-and-after",
        "2026-03-12T09:00:00Z",
    );
    let history = scene.run(&["history", "unit 2", "--format", "json"]).exits(0).out;
    let history: serde_json::Value = serde_json::from_str(&history).unwrap();
    let calls = history["calls"].as_array().unwrap();
    let days: Vec<_> = calls.iter().map(|call| call["day"].as_str().unwrap()).collect();
    assert_eq!(days, ["2026-03-12", "2026-01-12"]);
    let rise = history["readings"]
        .as_array()
        .unwrap()
        .iter()
        .find(|one| one["reading"] == "temperature_rise");
    let rise = rise.expect("the rise was worked out on both calls");
    // The last of each call; 50 and 53 °F lie within what two pairs of thermometers leave open.
    assert_eq!(rise["points"][0]["number"], 50.0);
    assert_eq!(rise["points"][1]["number"], 53.0);
    assert_eq!(rise["trend"], "as before");
    let text = scene.run(&["history", "unit 2"]).exits(0).out;
    for words in [
        "2 EARLIER CALLS",
        "Verdict, proven",
        "Blower wheel dirty",
        "Highest temperature rise: 65 °F",
    ] {
        assert!(text.contains(words), "{words:?} is not in\n{text}");
    }
    assert!(text.lines().all(|line| line.chars().count() <= 78), "{text}");
    // A new call there begins with it, and with nothing of the call itself.
    let mut call = Spoken::start(scene.command(&["walk", "no-heat", "--plain", "--equipment", "unit 2"]));
    call.say("known");
    let said = call.ends();
    assert_eq!(
        said.out.matches("2 earlier calls, the newest first").count(),
        2,
        "{}",
        said.out
    );
}

#[test]
fn unknown_equipment_says_where_to_look() {
    let scene = scene();
    std::fs::create_dir(scene.sessions()).unwrap();
    let said = scene.run(&["history", "unit 9"]).exits(2);
    assert!(
        said.err.contains("no call is recorded at the equipment `unit 9`"),
        "{}",
        said.err
    );
    let mut call = Spoken::start(scene.command(&["walk", "no-heat", "--plain", "--equipment", "unit 9"]));
    call.say("known");
    let said = call.ends();
    assert!(
        said.out.contains("Nothing is known of this equipment"),
        "{}",
        said.out
    );
}

#[test]
fn what_a_noted_verdict_passed_over_is_told_on_every_paper() {
    let scene = scene();
    let id = walked(&scene, "tune-up", "tune-up-humidifier-drips");
    let text = scene.run(&["report", &id]).exits(0).out;
    for words in [
        "NOT LOOKED AT",
        "Accessories, since “Humidifier drips on the furnace” was noted:",
        "How does the humidifier's bypass damper stand?",
    ] {
        assert!(text.contains(words), "{words:?} is not in\n{text}");
    }
    let page = page(&scene, &id);
    assert!(page.contains("Not looked at this time"), "{page}");
    let brief = scene.run(&["brief", &id]).exits(0).out;
    assert!(brief.contains("Not looked at, 2 checks: Accessories"), "{brief}");
    let lines: Vec<&str> = brief.lines().collect();
    assert!(
        lines.len() <= 12 && lines.iter().all(|line| line.chars().count() <= 78),
        "{brief}"
    );
}

#[test]
fn a_fault_that_is_found_again_is_told_once() {
    let scene = scene();
    let id = walked(&scene, "tune-up", "tune-up-vent-beyond-its-table");
    let text = scene.run(&["report", &id]).exits(0).out;
    assert!(
        text.contains("Verdict, proven: Vent beyond the maker's table")
            && text.contains("Also found on the way: Condensate trap or drain blocked")
            && !text.contains("Also found on the way: Vent beyond"),
        "{text}"
    );
    let brief = scene.run(&["brief", &id]).exits(0).out;
    assert!(brief.contains("Not looked at, 1 check: Venting"), "{brief}");
}

#[test]
fn the_page_leaves_nothing_out_that_was_answered() {
    let scene = scene();
    let id = walked(&scene, "tune-up", "tune-up-before-and-after");
    let page = closed(&page(&scene, &id));
    let document = roxmltree::Document::parse(&page).expect("well formed");
    let words: String = (document.descendants())
        .filter(|node| node.is_text())
        .filter_map(|node| node.text())
        .collect();
    let job: serde_json::Value =
        serde_json::from_str(&scene.run(&["report", &id, "--format", "json"]).exits(0).out).unwrap();
    let answers = job["answers"].as_array().unwrap();
    assert!(answers.len() > 90, "{}", answers.len());
    for answer in answers {
        let title = answer["title"].as_str().unwrap();
        assert!(words.contains(title), "{title}");
        if answer["kind"] != "work" {
            let given = answer["answer"].as_str().unwrap();
            assert!(words.contains(given), "{title}: {given}");
        }
    }
}
