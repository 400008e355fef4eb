//! Draws a screen.

use ratatui::Frame;
use ratatui::buffer::Buffer;
use ratatui::layout::{Position, Rect};
use ratatui::text::{Line, Span};

use super::keys::bindings;
use super::model::{Dialog, Model, Scene};
use super::screens::{self, standing};
use super::sheet::Laid;
use super::theme::{Role, Theme};
use crate::face::{Look, near};
use crate::layout::{Panes, TWO_COLUMNS};
use crate::source::{Safe, safe};
use crate::walk::{Question, Standing};

/// Below this nothing sensible can be shown.
const LEAST_WIDTH: u16 = 20;
const LEAST_HEIGHT: u16 = 6;

/// Draws the screen. How far its long text can be scrolled comes back.
pub fn view(frame: &mut Frame<'_>, model: &Model, scene: Scene<'_>, look: Look) -> usize {
    let theme = Theme::new(look);
    let area = frame.area();
    if area.width < LEAST_WIDTH || area.height < LEAST_HEIGHT {
        too_small(frame.buffer_mut(), theme, area);
        return 0;
    }
    let buffer = frame.buffer_mut();
    let width = usize::from(area.width);
    let beside = match (&model.dialog, scene) {
        (Some(Dialog::Standing | Dialog::Known | Dialog::Help(..)), _) | (_, Scene::Home(_)) => None,
        (None, Scene::Call { ask, .. }) if matches!(ask.question, Question::Finished | Question::Closed) => {
            None
        }
        (_, Scene::Call { standing, .. }) => Some(standing),
    };
    let mut panes = Panes::of(width, usize::from(area.height), beside.is_some());
    let mut sheet = screens::sheet(theme, model, scene, panes.width);
    if panes.side > 0 && !sheet.fits(panes.height) {
        // Better every answer than all that stands beside them.
        panes = Panes::wide(width, usize::from(area.height));
        sheet = screens::sheet(theme, model, scene, panes.width);
    }
    let mut top = area.y;
    row(buffer, area, top, header(theme, scene, width));
    top += 1;
    if panes.stroke {
        let stroke = theme.stroke().to_string().repeat(width);
        let stroke = Span::styled(stroke, theme.style(Role::Quiet));
        row(buffer, area, top, Line::from(stroke));
        top += 1;
    }
    let bottom = area.bottom() - 1;
    row(buffer, area, bottom, key_bar(theme, model, scene, width));
    let body = Rect {
        y: top,
        width: panes.width as u16,
        height: panes.height as u16,
        ..area
    };
    if let Some(standing) = beside {
        if panes.strip {
            row(buffer, area, bottom - 1, strip(theme, standing, width));
        } else {
            let side = Rect {
                x: area.right() - panes.side as u16,
                width: panes.side as u16,
                ..body
            };
            side_column(buffer, theme, standing, side);
        }
    }
    let laid = sheet.lay(theme, panes.height, model.scroll);
    draw(frame, body, &laid);
    laid.scroll_most
}

fn draw(frame: &mut Frame<'_>, body: Rect, laid: &Laid) {
    for (y, line) in (body.y..body.bottom()).zip(&laid.rows) {
        frame.buffer_mut().set_line(body.x, y, line, body.width);
    }
    if let Some((column, line)) = laid.cursor {
        let x = body.x + (column.min(usize::from(body.width.saturating_sub(1)))) as u16;
        let y = body.y + line as u16;
        if y < body.bottom() {
            frame.set_cursor_position(Position { x, y });
        }
    }
}

fn row(buffer: &mut Buffer, area: Rect, y: u16, line: Line<'static>) {
    buffer.set_line(area.x, y, &line, area.width);
}

/// The way through the trees, and how far it is at worst.
fn header(theme: Theme, scene: Scene<'_>, width: usize) -> Line<'static> {
    let (path, right) = match scene {
        Scene::Home(home) => (vec![home.title.clone()], safe("proofwalk")),
        Scene::Call { ask, standing, .. } => {
            let mut path = ask.through.clone();
            path.push(ask.tree.clone());
            // Where there is little room, how far one may trust the tree goes before which edition it is.
            let edition = ask.edition.iter().filter(|_| width >= TWO_COLUMNS);
            let left = match near(standing.at_worst) {
                _ if standing.ended.is_some() => Some("walk ended".to_owned()),
                Some(0) => Some("last question".to_owned()),
                Some(many) if width < TWO_COLUMNS => Some(format!("{many} more")),
                Some(many) => Some(format!("at most {many} more")),
                None => None,
            };
            let marks = ask.status.iter().chain(edition).map(Safe::to_string);
            let marks: Vec<String> = marks.chain(left).collect();
            (path, safe(&marks.join(theme.dot())))
        }
    };
    let right = theme.cut(&right, width / 2);
    let room = width.saturating_sub(right.width() + 2);
    let path = shortened(theme, &path, room);
    let gap = " ".repeat(width.saturating_sub(path.width() + right.width()));
    Line::from(vec![
        Span::styled(String::from(path), theme.style(Role::Strong)),
        Span::raw(gap),
        Span::styled(String::from(right), theme.style(Role::Quiet)),
    ])
}

/// The path, without its first trees where it is too long: the last says where one is.
fn shortened(theme: Theme, path: &[Safe], room: usize) -> Safe {
    for from in 0..path.len() {
        let names: Vec<&str> = path[from..].iter().map(Safe::as_str).collect();
        let lead = if from > 0 { theme.step().trim_start() } else { "" };
        let text = safe(&format!("{lead}{}", names.join(theme.step())));
        if theme.text(&text).width() <= room || from + 1 == path.len() {
            return theme.cut(&text, room);
        }
    }
    Safe::default()
}

/// As many keys as fit, the most important first.
fn key_bar(theme: Theme, model: &Model, scene: Scene<'_>, width: usize) -> Line<'static> {
    let mut spans: Vec<Span<'static>> = Vec::new();
    let mut used = 0;
    for binding in bindings(model.place(scene)).filter(|binding| !binding.word.is_empty()) {
        let key = binding.keys.short();
        let gap = if spans.is_empty() { "" } else { theme.dot() };
        let needed = gap.chars().count() + binding.word.len() + 1 + key.len();
        if used + needed > width {
            continue;
        }
        used += needed;
        let role = if binding.word == "danger" {
            Role::Alarm
        } else {
            Role::Plain
        };
        spans.push(Span::styled(gap, theme.style(Role::Quiet)));
        spans.push(Span::styled(binding.word, theme.style(role)));
        spans.push(Span::styled(format!(" {key}"), theme.style(Role::Strong)));
    }
    Line::from(spans)
}

/// What stands beside the question in one line, where there is no second column.
fn strip(theme: Theme, standing: &Standing, width: usize) -> Line<'static> {
    let passed_over: usize = standing
        .not_looked_at
        .iter()
        .map(|visit| visit.checks.len())
        .sum();
    // Four counts do not fit the narrowest screen; what was passed over is easier forgotten than what is possible.
    let second = match passed_over {
        0 => ("possible", standing.possible.len()),
        _ => ("not looked at", passed_over),
    };
    let counts = [
        ("open", standing.open.len()),
        second,
        ("found", standing.findings.len()),
    ];
    // Where no tree asks, what is possible is not told; a nought would say that nothing is.
    let is_told = |word: &str| word != "possible" || standing::tells_possible(standing);
    let counts: Vec<String> = counts
        .iter()
        .filter(|(word, _)| is_told(word))
        .map(|(word, count)| format!("{word} {count}"))
        .collect();
    let line = theme.cut(&safe(&counts.join(theme.dot())), width);
    Line::from(Span::styled(String::from(line), theme.style(Role::Label)))
}

fn side_column(buffer: &mut Buffer, theme: Theme, standing: &Standing, area: Rect) {
    let rows = standing::side(
        theme,
        standing,
        usize::from(area.width - 3),
        usize::from(area.height),
    );
    let divider = Span::styled(format!(" {} ", theme.divider()), theme.style(Role::Quiet));
    let mut rows = rows.into_iter();
    for y in area.y..area.bottom() {
        let (x, _) = buffer.set_span(area.x, y, &divider, 3);
        if let Some(line) = rows.next() {
            buffer.set_line(x, y, &line, area.width - 3);
        }
    }
}

fn too_small(buffer: &mut Buffer, theme: Theme, area: Rect) {
    let words = safe(&format!("too small: at least {LEAST_WIDTH} by {LEAST_HEIGHT}"));
    let lines = crate::source::wrap(&words, usize::from(area.width));
    for (y, line) in (area.y..area.bottom()).zip(lines) {
        let line = Line::from(String::from(theme.text(&line)));
        buffer.set_line(area.x, y, &line, area.width);
    }
}
