//! Text for a terminal that shows nothing but ASCII.

use super::safe::{Safe, safe};

/// The text in ASCII: what the trade writes is spelled as it is spoken, the rest shows as `?`.
///
/// ```
/// use proofwalk::source::{ascii, safe};
/// assert_eq!(ascii(&safe("2.5 µA at 70 °F…")).as_str(), "2.5 uA at 70 degF...");
/// ```
pub fn ascii(text: &Safe) -> Safe {
    if text.as_str().is_ascii() {
        return text.clone();
    }
    let mut plain = String::with_capacity(text.as_str().len());
    for character in text.as_str().chars() {
        if character.is_ascii() {
            plain.push(character);
        } else {
            plain.push_str(spelled(character));
        }
    }
    safe(&plain)
}

fn spelled(character: char) -> &'static str {
    match character {
        'µ' | 'μ' => "u",
        'Ω' | '\u{2126}' => "ohm",
        '°' => "deg",
        'Δ' => "delta ",
        '±' => "+/-",
        '×' => "x",
        '·' => "-",
        '÷' => "/",
        '²' => "2",
        '³' => "3",
        '½' => "1/2",
        '¼' => "1/4",
        '¾' => "3/4",
        '≤' => "<=",
        '≥' => ">=",
        '−' | '‐' | '‑' | '–' | '—' => "-",
        '‘' | '’' | '′' => "'",
        '“' | '”' | '″' => "\"",
        '…' => "...",
        '→' => "->",
        '←' => "<-",
        '\u{a0}' | '\u{202f}' | '\u{2009}' => " ",
        'ä' | 'á' | 'à' | 'â' => "a",
        'é' | 'è' | 'ê' | 'ë' => "e",
        'í' | 'ì' | 'î' | 'ï' => "i",
        'ö' | 'ó' | 'ò' | 'ô' => "o",
        'ü' | 'ú' | 'ù' | 'û' => "u",
        'ñ' => "n",
        'ç' => "c",
        'ß' => "ss",
        _ => "?",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn units_and_signs_are_spelled() {
        assert_eq!(ascii(&safe("≥ 24 kΩ – 3.5 in²")).as_str(), ">= 24 kohm - 3.5 in2");
        assert_eq!(ascii(&safe("naïve 日")).as_str(), "naive ?");
    }
}
