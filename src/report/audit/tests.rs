//! Both pages of the same audits: that they say what they must, hold their form, and let no text act.

use jiff::ToSpan;

use super::made::{call, season, start};
use super::{html, json, text};
use crate::audit::findings::WhatIsWrong;
use crate::audit::{Audit, Auditor, Ending, Learned, Remedy, Stay, Verdict, Window};

/// Text that acts where it is not made safe.
const HOSTILE: &str = "</style><script>alert(1)</script>\"'&\u{1b}[2J\u{202e}\u{0}";

fn hostile() -> Audit {
    let mut auditor = Auditor::new(Window::default(), vec![HOSTILE.to_owned()]);
    for number in 0..40 {
        let mut call = call(number, start() + (number as i64 * 25).hours());
        call.session = format!("{number}{HOSTILE}").into();
        call.technician = Some(HOSTILE.into());
        call.equipment = Some(format!("{HOSTILE}{}", number / 2).into());
        call.tree = HOSTILE.into();
        call.ending = Ending::Insisted(Verdict {
            fault: format!("{HOSTILE}{}", number % 2).into(),
            remedy: Remedy::Replace(format!("{HOSTILE}{}", number % 2).into()),
        });
        call.put_backs.refused.push(HOSTILE.into());
        call.stays.push(Stay {
            step: format!("{HOSTILE}/a").into(),
            to: Some(format!("{HOSTILE}/b").into()),
            seconds: Some(9_999.0),
            minutes: Some(1.0),
        });
        auditor.add(&call);
    }
    auditor.not_a_call(0, HOSTILE, WhatIsWrong::Foreign, HOSTILE);
    auditor.finish()
}

fn empty() -> Audit {
    Auditor::new(Window::default(), Vec::new()).finish()
}

/// Calls a second apart, with the shortest and the longest window there is.
fn at_once(days: u32) -> Audit {
    let mut auditor = Auditor::new(Window { days }, Vec::new());
    for number in 0..30_u64 {
        let mut call = call(number, start() + (number as i64).seconds());
        call.closed = Some(call.opened);
        call.equipment = Some(format!("furnace-{}", number % 7).into());
        auditor.add(&call);
    }
    auditor.finish()
}

#[track_caller]
pub(super) fn parsed(page: &str) -> roxmltree::Document<'_> {
    let options = roxmltree::ParsingOptions {
        allow_dtd: true,
        ..Default::default()
    };
    roxmltree::Document::parse_with_options(page, options).unwrap_or_else(|error| panic!("{error}"))
}

/// The words of a page, wherever its lines are broken.
pub(super) fn words(page: &str) -> String {
    page.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// A drawing has a title, and a table in its section; one in a row of a table stands beside its figures, and is passed over.
#[track_caller]
fn names_its_figures(drawing: roxmltree::Node<'_, '_>, named: &str) {
    let around = |name: &str| drawing.ancestors().find(|node| node.has_tag_name(name));
    match around("tr") {
        Some(row) => {
            assert_eq!(drawing.attribute("aria-hidden"), Some("true"));
            assert!(
                row.children()
                    .any(|cell| cell.text().is_some_and(|text| text != "—"))
            );
        }
        None => {
            assert!(!named.is_empty(), "a drawing without a title");
            let section = around("section").expect("a drawing in no section");
            assert!(section.descendants().any(|node| node.has_tag_name("table")));
        }
    }
}

#[test]
fn every_page_is_well_formed_and_names_what_it_draws() {
    for audit in [season(), hostile(), empty(), at_once(0), at_once(u32::MAX)] {
        let page = html(&audit);
        let document = parsed(&page);
        let mut ids = std::collections::HashSet::new();
        for node in document.descendants() {
            if let Some(id) = node.attribute("id") {
                assert!(ids.insert(id), "{id} twice");
            }
        }
        for node in document.descendants() {
            let named = node.attribute("aria-labelledby").unwrap_or_default();
            for id in named.split_whitespace() {
                assert!(ids.contains(id), "nothing is called {id}");
            }
            if node.has_tag_name("svg") {
                names_its_figures(node, named);
            }
        }
    }
}

#[test]
fn paper_gets_the_first_of_a_long_list_and_how_many_more_there_are() {
    let audit = season();
    let page = html(&audit);
    let document = parsed(&page);
    let section = |id: &str| {
        let mut sections = document.descendants().filter(|node| node.has_tag_name("section"));
        sections.find(|node| node.attribute("id") == Some(id)).unwrap()
    };
    let text = |node: roxmltree::Node<'_, '_>| -> String {
        (node.descendants().filter(roxmltree::Node::is_text))
            .filter_map(|node| node.text())
            .collect()
    };
    let kept = |id: &str| {
        let lines = section(id).descendants().filter(|node| node.has_tag_name("li"));
        lines
            .filter(|line| line.attribute("class") != Some("rest"))
            .count()
    };
    assert_eq!(kept("came-back"), 7);
    let mut nodes = section("came-back").descendants();
    let more = nodes.find(|node| node.attribute("class") == Some("more paper"));
    let left = audit.callback_pairs.iter().len() - 7;
    assert_eq!(
        text(more.unwrap()),
        format!("and {left} more: proofwalk audit DIR --format csv lists them all")
    );
    // A furnace that stands open and that nobody has seen since is no less so on paper.
    assert_eq!((kept("left-open"), audit.left_open_calls.iter().len()), (19, 19));
}

#[test]
fn faults_whose_verdicts_held_most_often_come_first_and_the_others_can_be_opened() {
    let mut audit = season();
    let row = audit.learned[0].clone();
    audit.learned = (0..30)
        .map(|number| Learned {
            fault: format!("fault_{number}"),
            held: number,
            ..row.clone()
        })
        .collect();
    let page = html(&audit);
    let document = parsed(&page);
    let names = |inside: bool| -> Vec<&str> {
        let held = document
            .descendants()
            .find(|node| node.attribute("id") == Some("held"));
        let rows = held.unwrap().descendants().filter(|node| node.has_tag_name("th"));
        let rows = rows.filter(|node| node.attribute("scope") == Some("row"));
        let is_inside =
            |node: &roxmltree::Node<'_, '_>| node.ancestors().any(|node| node.has_tag_name("details"));
        rows.filter(|node| is_inside(node) == inside)
            .filter_map(|node| node.text())
            .collect()
    };
    let (first, rest) = (names(false), names(true));
    assert_eq!((first.len(), first[0], first[19]), (20, "fault 29", "fault 10"));
    assert_eq!((rest.len(), rest[0]), (10, "fault 9"));
    assert!(page.contains("<summary>10 faults more</summary>"));
}

#[test]
fn nothing_is_run_and_nothing_is_fetched() {
    for page in [html(&season()), html(&hostile())] {
        for node in parsed(&page).descendants().filter(roxmltree::Node::is_element) {
            let name = node.tag_name().name();
            assert!(
                !["script", "link", "img", "iframe", "object", "use", "a"].contains(&name),
                "{name}"
            );
            for attribute in node.attributes() {
                assert!(!attribute.name().starts_with("on"), "{}", attribute.name());
                assert!(!attribute.value().contains("//"), "{}", attribute.value());
            }
        }
        assert!(!page.contains("url(") && !page.contains("@import"));
    }
}

#[test]
fn hostile_text_is_shown_and_does_nothing() {
    let audit = hostile();
    for page in [
        html(&audit),
        text(&audit, 80, false),
        text(&audit, 80, true),
        json(&audit),
    ] {
        assert!(
            !page
                .chars()
                .any(|character| crate::source::is_unsafe(character) && character != '\n')
        );
    }
    let page = html(&audit);
    let styles = parsed(&page)
        .descendants()
        .filter(|node| node.has_tag_name("style"))
        .count();
    assert_eq!(styles, 1);
    assert!(page.contains("&lt;/style&gt;&lt;script&gt;"));
}

#[test]
fn the_text_fits_and_can_do_with_ascii() {
    use unicode_width::UnicodeWidthStr;
    for audit in [season(), hostile(), empty(), at_once(0), at_once(u32::MAX)] {
        for (ascii, columns) in [(false, 78), (true, 78), (false, 40), (true, 40)] {
            let page = text(&audit, columns, ascii);
            for line in page.lines() {
                assert!(line.width() <= columns, "{line}");
                assert!(!ascii || line.is_ascii(), "{line}");
                assert_eq!(line.trim_end(), line);
            }
        }
    }
}

#[test]
fn a_group_too_small_says_so_and_shows_no_rate() {
    let audit = season();
    let few = audit
        .by_technician
        .iter()
        .find(|row| row.technician.as_deref() == Some("T7"))
        .unwrap();
    assert!(few.tally.too_small);
    let page = text(&audit, 80, true);
    let line = page
        .lines()
        .find(|line| line.trim_start().starts_with("T7"))
        .unwrap();
    assert!(line.ends_with("under 20") && !line.contains('%'), "{line}");
    assert!(
        line.contains('='),
        "its calls fit some rates and not others: {line}"
    );
    assert!(html(&audit).contains("<td>under 20</td>"));
}

/// A number about a person of a handful of calls is read for more than it is.
#[test]
fn nothing_is_expected_of_whom_is_held_against_nothing() {
    let page = html(&season());
    let document = parsed(&page);
    let table = (document.descendants())
        .find(|node| node.attribute("aria-label") == Some("Technicians, in the order of their names"));
    let rows = table
        .unwrap()
        .descendants()
        .filter(|node| node.has_tag_name("tr"));
    let rows: Vec<Vec<&str>> = rows
        .map(|row| row.children().filter_map(|cell| cell.text()).collect())
        .collect();
    assert_eq!(rows.len(), 8, "a head, and seven of them");
    for row in &rows[1..] {
        assert_eq!(row[6] == "under 20", row[3..6] == ["—"; 3], "{row:?}");
    }
}

#[test]
fn technicians_stand_in_the_order_of_their_names() {
    let page = text(&season(), 80, true);
    let (_, after) = page.split_once("BY TECHNICIAN").unwrap();
    let names: Vec<&str> = (after.lines().skip(1))
        .map_while(|line| {
            line.split_whitespace()
                .next()
                .filter(|word| word.starts_with('T'))
        })
        .collect();
    assert_eq!(names, ["T1", "T2", "T3", "T4", "T5", "T6", "T7"]);
}

#[test]
fn the_one_with_more_callbacks_than_chance_is_worth_a_look() {
    let page = text(&season(), 80, true);
    let words = words(&page);
    let (_, look) = words
        .split_once("still farther off than chance explains: ")
        .unwrap();
    let (names, _) = look.split_once(". Read").unwrap();
    assert!(
        names.contains("T4") && !names.contains("T3") && !names.contains("T7"),
        "{page}"
    );
    assert!(page.contains("does not assign liability"));
}

#[test]
fn faults_are_shown_by_how_often_their_verdicts_held() {
    let mut audit = season();
    let page = text(&audit, 80, true);
    let (_, after) = page.split_once("BY VERDICTS THAT HELD\n").unwrap();
    let most = audit.learned.iter().max_by_key(|row| row.held).unwrap();
    let first = after.lines().next().unwrap();
    assert!(first.contains(&format!(" {} of ", most.held)), "{first}");
    audit.learned.truncate(1);
    audit.learned[0].held = 3;
    assert!(text(&audit, 80, true).contains("3 verdicts held: too few"));
}

#[test]
fn an_audit_of_nothing_says_so() {
    let page = text(&empty(), 80, true);
    assert!(page.contains("none can be followed"), "{page}");
    assert!(!html(&empty()).contains("<svg"));
}
