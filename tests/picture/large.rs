//! Trees that are larger than a sheet.

use std::fmt::Write;
use std::time::{Duration, Instant};

use proofwalk::library::Library;
use proofwalk::report::picture::{Part, Picture, Refusal, TooLarge};

use crate::libraries::written;
use crate::sheet::Sheet;

/// Longest wait for an answer, with much to spare for a busy machine and a build that is not optimised.
const PATIENCE: Duration = Duration::from_secs(10);

/// A tree of `count` steps, each of which leads to these others.
fn tree(count: usize, next: impl Fn(usize) -> Vec<usize>) -> Library {
    let mut steps = String::from("tree: large\ntitle: Large\nstart: s0\nsteps:\n");
    let mut signs = String::from("signs:\n");
    for at in 0..count {
        let next: Vec<usize> = next(at).into_iter().filter(|next| *next < count).collect();
        let _ = match next.as_slice() {
            [] => writeln!(steps, "  s{at}: {{ verdict: broken, because: So. }}"),
            [only] => writeln!(steps, "  s{at}: {{ do: Look., go: s{only} }}"),
            several => {
                let values: String = (0..several.len())
                    .map(|value| format!("v{value}: Value, "))
                    .collect();
                let choices = several.iter().enumerate();
                let choices: String = choices
                    .map(|(value, next)| format!("v{value}: s{next}, "))
                    .collect();
                let _ = writeln!(signs, "  q{at}: {{ ask: Which?, values: {{ {values} }} }}");
                writeln!(steps, "  s{at}: {{ observe: q{at}, choices: {{ {choices} }} }}")
            }
        };
    }
    written(&[
        ("large.yaml", &steps),
        ("registry/signs.yaml", &signs),
        (
            "registry/faults.yaml",
            "faults:\n  broken: { title: Broken, remedy: correct }\n",
        ),
    ])
}

fn draw(library: &Library, part: Part) -> Result<Picture<'_>, Refusal> {
    Picture::new(library, library.trees.find("large").unwrap(), part)
}

fn from(step: &str, depth: Option<usize>) -> Part {
    Part {
        from: Some(step.to_owned()),
        depth,
    }
}

#[track_caller]
fn is_too_large(drawn: Result<Picture<'_>, Refusal>) {
    assert!(matches!(drawn, Err(Refusal::TooLarge(TooLarge { most: 400 }))));
}

#[test]
fn a_hundred_thousand_steps_are_refused_at_once_and_a_part_of_them_drawn() {
    let library = tree(100_000, |at| vec![at + 1]);
    let start = Instant::now();
    is_too_large(draw(&library, Part::default()));
    is_too_large(draw(&library, from("s50000", None)));
    let part = draw(&library, from("s50000", Some(20))).unwrap().svg();
    assert_eq!(Sheet::read(&part).steps.len(), 21);
    let end = draw(&library, from("s99990", None)).unwrap().svg();
    assert_eq!(Sheet::read(&end).steps.len(), 10);
    assert!(start.elapsed() < PATIENCE, "{:?}", start.elapsed());
}

#[test]
fn many_ways_from_one_step_are_refused_as_many_steps_are() {
    let library = tree(3000, |at| if at == 0 { (1..3000).collect() } else { Vec::new() });
    is_too_large(draw(&library, from("s0", Some(0))));
}

#[test]
fn the_largest_sheets_are_drawn_with_nothing_in_the_way_of_anything() {
    let shapes: [&dyn Fn(usize) -> Vec<usize>; 4] = [
        &|at| vec![at + 1],
        &|at| vec![2 * at + 1, 2 * at + 2],
        &|at| if at == 0 { (1..400).collect() } else { Vec::new() },
        &|at| vec![at + 1, at / 2, at + 7],
    ];
    for next in shapes {
        let library = tree(400, next);
        let start = Instant::now();
        let svg = draw(&library, Part::default()).unwrap().svg();
        assert!(start.elapsed() < PATIENCE, "{:?}", start.elapsed());
        let sheet = Sheet::read(&svg);
        assert_eq!(sheet.steps.len(), 400);
        assert!(millimetres_a_unit(&svg) >= 0.2, "too small to read");
        assert!(svg.contains("Larger than any usual paper") || svg.contains("Prints on"));
        for (at, one) in sheet.boxes.iter().enumerate() {
            assert!(
                sheet.boxes[..at]
                    .iter()
                    .all(|other| !one.area.overlaps(&other.area))
            );
            assert!(sheet.whole.holds(&one.area));
        }
    }
}

/// How large the units of a sheet are.
fn millimetres_a_unit(svg: &str) -> f64 {
    let after = |mark: &str| svg.split_once(mark).unwrap().1;
    let width: f64 = after("width=\"").split_once("mm").unwrap().0.parse().unwrap();
    let units: f64 = after("viewBox=\"0 0 ")
        .split_once(' ')
        .unwrap()
        .0
        .parse()
        .unwrap();
    width / units
}

#[test]
fn a_text_of_a_megabyte_is_cut_and_still_drawn_at_once() {
    let long = "word ".repeat(200_000);
    let text = format!(
        "tree: large\ntitle: {long}\nstart: a\nsteps:\n  a: {{ do: {long}, go: b }}\n  b: {{ do: {}, go: a }}\n",
        "x".repeat(1_000_000)
    );
    let library = written(&[("large.yaml", &text)]);
    let start = Instant::now();
    let picture = draw(&library, Part::default()).unwrap();
    let (svg, dot) = (picture.svg(), picture.dot());
    assert!(start.elapsed() < PATIENCE, "{:?}", start.elapsed());
    assert!(svg.len() + dot.len() < 100_000 && svg.contains('…'));
}
