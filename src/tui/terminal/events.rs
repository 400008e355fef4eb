//! What the terminal sends, as the screen's own messages.

use crossterm::event::{Event, KeyCode, KeyEvent, KeyEventKind, KeyModifiers};

use crate::tui::keys::Press;
use crate::tui::model::Message;

/// The message that an event means, if it means one.
pub fn message(event: Event) -> Option<Message> {
    match event {
        Event::Key(key) => press(key).map(Message::Press),
        Event::Paste(text) => Some(Message::Paste(text)),
        _ => None,
    }
}

fn press(key: KeyEvent) -> Option<Press> {
    if key.kind == KeyEventKind::Release || key.modifiers.contains(KeyModifiers::ALT) {
        return None;
    }
    let control = key.modifiers.contains(KeyModifiers::CONTROL);
    Some(match key.code {
        KeyCode::Char(letter) if control => Press::Ctrl(letter.to_ascii_lowercase()),
        KeyCode::Char(character) => Press::Char(character),
        KeyCode::F(number) => Press::F(number),
        KeyCode::Enter => Press::Enter,
        KeyCode::Esc => Press::Esc,
        KeyCode::Tab => Press::Tab,
        KeyCode::Backspace => Press::Backspace,
        KeyCode::Delete => Press::Delete,
        KeyCode::Left => Press::Left,
        KeyCode::Right => Press::Right,
        KeyCode::Up => Press::Up,
        KeyCode::Down => Press::Down,
        KeyCode::Home => Press::Home,
        KeyCode::End => Press::End,
        KeyCode::PageUp => Press::PageUp,
        KeyCode::PageDown => Press::PageDown,
        _ => return None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn control_keys_are_told_from_letters_and_alt_means_nothing() {
        let key = |code, modifiers| message(Event::Key(KeyEvent::new(code, modifiers)));
        let pressed = |press| Some(Message::Press(press));
        assert_eq!(
            key(KeyCode::Char('d'), KeyModifiers::CONTROL),
            pressed(Press::Ctrl('d'))
        );
        assert_eq!(
            key(KeyCode::Char('D'), KeyModifiers::SHIFT),
            pressed(Press::Char('D'))
        );
        assert_eq!(key(KeyCode::Char('d'), KeyModifiers::ALT), None);
    }
}
