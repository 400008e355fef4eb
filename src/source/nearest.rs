//! The name that was probably meant.

/// Longest word that is compared, in characters; no name of a library is longer.
const LONGEST: usize = 64;

/// Shortest word that is taken for the beginning of a name, in characters.
const SHORTEST_START: usize = 4;

/// Shortest beginning of a word that is taken for that word within a name, in characters; shorter ones fit by chance.
const SHORTEST_PIECE: usize = 3;

/// The candidate closest to `word`, if one is close enough to be worth a suggestion; else the shortest that begins with it, or
/// that it shortens as `temprise` does `temperature_rise`.
///
/// Distance is Damerau's in its restricted form: insertions, deletions, substitutions and swaps of neighbours cost one
/// each; a third of the word's length may differ.
pub fn nearest<'a>(word: &str, candidates: impl IntoIterator<Item = &'a str>) -> Option<&'a str> {
    let length = word.chars().count();
    // A longer word is no slip of the keyboard, and the comparison below costs its square.
    if length > LONGEST {
        return None;
    }
    let most = (length / 3).max(1);
    let mut longer: Option<&str> = None;
    let close = candidates
        .into_iter()
        .inspect(|candidate| {
            let is_longer =
                length >= SHORTEST_START && (candidate.starts_with(word) || shortens(word, candidate));
            let rank = |name: &str| (!name.starts_with(word), name.len(), name.to_owned());
            if is_longer && longer.is_none_or(|known| rank(candidate) < rank(known)) {
                longer = Some(candidate);
            }
        })
        // As many letters at least must be put in or taken out.
        .filter(|candidate| candidate.chars().count().abs_diff(length) <= most)
        .map(|candidate| (distance(word, candidate), candidate))
        .filter(|&(distance, _)| distance <= most)
        .min()
        .map(|(_, candidate)| candidate);
    close.or(longer)
}

/// Whether a word is made of words of a name or of their beginnings, in the order of the name; some may be left out.
fn shortens(word: &str, name: &str) -> bool {
    let letters: Vec<u8> = word.bytes().filter(|letter| *letter != b'_').collect();
    // How much of the word is made so far: each number of letters that the name's words until here come to.
    let mut made = vec![false; letters.len() + 1];
    made[0] = true;
    for part in name.split('_') {
        // Backwards, so that no word of the name is taken twice.
        for from in (0..letters.len()).rev() {
            if !made[from] {
                continue;
            }
            let common = (letters[from..].iter().zip(part.as_bytes()))
                .take_while(|(one, other)| one == other)
                .count();
            for piece in 1..=common {
                made[from + piece] |= piece >= SHORTEST_PIECE || piece == part.len();
            }
        }
    }
    made[letters.len()]
}

fn distance(a: &str, b: &str) -> usize {
    let (a, b): (Vec<char>, Vec<char>) = (a.chars().collect(), b.chars().collect());
    let mut before: Vec<usize> = Vec::new();
    let mut last: Vec<usize> = (0..=b.len()).collect();
    for i in 1..=a.len() {
        let mut row = vec![i];
        for j in 1..=b.len() {
            let substitute = last[j - 1] + usize::from(a[i - 1] != b[j - 1]);
            let mut best = substitute.min(last[j] + 1).min(row[j - 1] + 1);
            if i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1] {
                best = best.min(before[j - 2] + 1);
            }
            row.push(best);
        }
        before = std::mem::replace(&mut last, row);
    }
    last[b.len()]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_slip_of_the_keyboard_is_recognised() {
        let names = ["flame_current", "manifold_pressure"];
        assert_eq!(nearest("flame_curent", names), Some("flame_current"));
        assert_eq!(nearest("falme_current", names), Some("flame_current"));
        assert_eq!(nearest("draft", names), None);
    }

    #[test]
    fn the_beginning_of_a_name_is_enough() {
        let names = ["capacitance_label_high", "capacitance_label", "gas"];
        assert_eq!(nearest("capacitance", names), Some("capacitance_label"));
        assert_eq!(nearest("ga", ["gas_pressure"]), None);
    }

    #[test]
    fn the_beginnings_of_its_words_are_enough() {
        let names = [
            "temperature_rise",
            "net_stack_temperature",
            "transformer_load",
            "co_air_free",
            "gas_temperature",
        ];
        assert_eq!(nearest("temprise", names), Some("temperature_rise"));
        assert_eq!(nearest("temp_rise", names), Some("temperature_rise"));
        assert_eq!(nearest("stacktemp", names), Some("net_stack_temperature"));
        assert_eq!(nearest("load", names), Some("transformer_load"));
        assert_eq!(nearest("coairfree", names), Some("co_air_free"));
        // Two letters here and two there are found in every long name.
        assert_eq!(nearest("gate", names), None);
        assert_eq!(nearest("risetemp", names), None);
        assert_eq!(nearest("temptemp", names), None);
    }
}
