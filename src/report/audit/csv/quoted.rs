//! A field of a table, as RFC 4180 quotes it.

use crate::source::safe;

/// A field as it stands in a line. What a spreadsheet would take for a formula gets an apostrophe in front: then it is text.
pub(super) fn quoted(field: &str) -> String {
    // Some programs take full-width signs for the plain ones, and pass over space in front.
    let signs = ['=', '+', '-', '@', '＝', '＋', '－', '＠'];
    let risky = field.starts_with(['\t', '\r', '\n'])
        || (field.trim_start().starts_with(signs) && field.parse::<f64>().is_err());
    // After the first character is known: made safe, a tab would no longer be one.
    let safe = safe(field).to_string();
    let text = if risky { format!("'{safe}") } else { safe };
    match text.contains([',', '"', '\n', '\r', '\'']) {
        true => format!("\"{}\"", text.replace('"', "\"\"")),
        false => text,
    }
}

#[cfg(test)]
mod tests {
    use super::quoted;

    #[test]
    fn no_field_is_taken_for_a_formula() {
        assert_eq!(quoted("=1+1"), "\"'=1+1\"");
        assert_eq!(quoted("@sum"), "\"'@sum\"");
        assert_eq!(quoted("-cmd|x"), "\"'-cmd|x\"");
        assert_eq!(quoted("\tx"), "\"'^Ix\"");
        assert_eq!(quoted("\r=x"), "\"'^M=x\"");
        assert_eq!(quoted("\n=x"), "\"'^J=x\"");
        assert_eq!(quoted(" =x"), "\"' =x\"");
        assert_eq!(quoted("＝x"), "\"'＝x\"");
        assert_eq!(quoted("-0.5"), "-0.5");
    }

    #[test]
    fn quotes_and_commas_are_quoted_as_rfc_4180_has_it() {
        assert_eq!(quoted("a,b"), "\"a,b\"");
        assert_eq!(quoted("say \"on\""), "\"say \"\"on\"\"\"");
        assert_eq!(quoted("plain"), "plain");
    }
}
