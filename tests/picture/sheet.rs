//! An SVG sheet as a list of what is where, read back by a parser that knows nothing of how it was made.

use std::collections::HashMap;

use roxmltree::{Document, Node};

use crate::letters::width;

/// A stretch of the sheet.
#[derive(Clone, Copy, Debug)]
pub struct Area {
    pub left: f64,
    pub top: f64,
    pub right: f64,
    pub bottom: f64,
}

impl Area {
    /// Whether they share more than an edge.
    pub fn overlaps(&self, other: &Self) -> bool {
        let slack = 0.11;
        self.left + slack < other.right
            && other.left + slack < self.right
            && self.top + slack < other.bottom
            && other.top + slack < self.bottom
    }

    pub fn holds(&self, other: &Self) -> bool {
        self.left <= other.left
            && other.right <= self.right
            && self.top <= other.top
            && other.bottom <= self.bottom
    }

    fn of(points: &[(f64, f64)]) -> Self {
        let fold = |of: fn(&(f64, f64)) -> f64, by: fn(f64, f64) -> f64| {
            points.iter().map(of).reduce(by).expect("a path has points")
        };
        Self {
            left: fold(|p| p.0, f64::min),
            top: fold(|p| p.1, f64::min),
            right: fold(|p| p.0, f64::max),
            bottom: fold(|p| p.1, f64::max),
        }
    }
}

/// A line of text.
#[derive(Debug)]
pub struct Text {
    pub area: Area,
    pub words: String,
    /// The id of the step or way it belongs to.
    pub of: Option<String>,
}

/// A box of a step.
#[derive(Debug)]
pub struct StepBox {
    pub area: Area,
    pub id: String,
    /// It stands behind another, and holds no text.
    pub is_behind: bool,
}

/// A straight piece of a line between steps.
#[derive(Clone, Copy, Debug)]
pub struct Stroke {
    pub from: (f64, f64),
    pub to: (f64, f64),
}

/// Everything on a sheet.
pub struct Sheet {
    pub whole: Area,
    pub texts: Vec<Text>,
    pub boxes: Vec<StepBox>,
    pub strokes: Vec<Stroke>,
    /// Of each way, from which step to which.
    pub ways: Vec<(String, String)>,
    /// The names of the steps.
    pub steps: Vec<String>,
}

impl Sheet {
    #[track_caller]
    pub fn read(svg: &str) -> Self {
        let document = Document::parse(svg).expect("the picture is well-formed XML");
        let root = document.root_element();
        let view: Vec<f64> = numbers(root.attribute("viewBox").unwrap());
        let sizes = font_sizes(&document);
        let mut sheet = Self {
            whole: Area {
                left: view[0],
                top: view[1],
                right: view[2],
                bottom: view[3],
            },
            texts: Vec::new(),
            boxes: Vec::new(),
            strokes: Vec::new(),
            ways: Vec::new(),
            steps: Vec::new(),
        };
        for node in root.descendants().filter(Node::is_element) {
            let class = node.attribute("class").unwrap_or_default();
            let in_legend = node
                .ancestors()
                .any(|node| node.attribute("class") == Some("legend"));
            match (node.tag_name().name(), class) {
                ("text", _) => sheet.text(node, &sizes),
                ("path", "box" | "box unknown" | "behind") => {
                    if let (Some(id), false) = (owner(node), in_legend) {
                        let area = Area::of(&points(node));
                        sheet.boxes.push(StepBox {
                            area,
                            id,
                            is_behind: class == "behind",
                        });
                    }
                }
                ("path", "wire" | "arm" | "rule") if !in_legend => {
                    let points = points(node);
                    let pairs = points.windows(2);
                    sheet.strokes.extend(pairs.map(|pair| Stroke {
                        from: pair[0],
                        to: pair[1],
                    }));
                }
                ("g", _) => {
                    if let Some(name) = node.attribute("data-step") {
                        sheet.steps.push(name.to_owned());
                    }
                    if let (Some(from), Some(to)) = (node.attribute("data-from"), node.attribute("data-to")) {
                        sheet.ways.push((from.to_owned(), to.to_owned()));
                    }
                }
                _ => {}
            }
        }
        sheet
    }

    fn text(&mut self, node: Node<'_, '_>, sizes: &HashMap<String, (f64, bool)>) {
        let (dx, dy) = shift(node);
        let mut pen = (0.0, 0.0);
        for span in node.children().filter(Node::is_element) {
            let number = |name: &str| span.attribute(name).map(|value| value.parse::<f64>().unwrap());
            let words = span.text().unwrap_or_default().to_owned();
            let (size, bold) = sizes[span.attribute("class").unwrap()];
            pen.0 = number("x").map_or(pen.0 + number("dx").unwrap_or_default(), |x| x + dx);
            pen.1 = number("y").map_or(pen.1, |y| y + dy);
            let right = pen.0 + size * width(&words, bold);
            self.texts.push(Text {
                area: Area {
                    left: pen.0,
                    top: pen.1 - 0.76 * size,
                    right,
                    bottom: pen.1 + 0.24 * size,
                },
                words,
                of: owner(node),
            });
            pen.0 = right;
        }
    }
}

/// The id of the step or way that something belongs to.
fn owner(node: Node<'_, '_>) -> Option<String> {
    let mut owners = node.ancestors().filter_map(|node| node.attribute("id"));
    owners.next().map(str::to_owned)
}

/// How far an element is moved by what it stands in.
fn shift(node: Node<'_, '_>) -> (f64, f64) {
    let moves = node.ancestors().filter_map(|node| node.attribute("transform"));
    moves.fold((0.0, 0.0), |(x, y), text| {
        let by = numbers(text.trim_start_matches("translate(").trim_end_matches(')'));
        (x + by[0], y + by[1])
    })
}

/// The points of a path, which has none but absolute ones.
fn points(node: Node<'_, '_>) -> Vec<(f64, f64)> {
    let (dx, dy) = shift(node);
    let path = node.attribute("d").unwrap();
    assert!(path.chars().all(|c| "MLQCZ ,.-0123456789".contains(c)), "{path}");
    let numbers = numbers(path);
    numbers
        .chunks(2)
        .map(|pair| (pair[0] + dx, pair[1] + dy))
        .collect()
}

fn numbers(text: &str) -> Vec<f64> {
    let words = text.split(|c: char| !(c.is_ascii_digit() || c == '.' || c == '-'));
    words
        .filter(|word| !word.is_empty())
        .map(|word| word.parse().unwrap())
        .collect()
}

/// The size and weight of each class of text.
fn font_sizes(document: &Document<'_>) -> HashMap<String, (f64, bool)> {
    let style = document.descendants().find(|node| node.has_tag_name("style"));
    let rules = style.unwrap().text().unwrap();
    let sized = rules.lines().filter_map(|rule| {
        let (class, rest) = rule.strip_prefix('.')?.split_once("{font-size:")?;
        let (size, rest) = rest.split_once("px")?;
        Some((class.to_owned(), (size.parse().unwrap(), rest.contains("bold"))))
    });
    sized.collect()
}
