//! Lists in words.

/// How many entries of a long list are written out.
const MOST: usize = 4;

/// `a`, `a and b`, `a, b and c`, `a, b, c and 5 more`; with `or` in place of `and` where that is the word.
pub(super) fn list(entries: &[String], word: &str) -> String {
    let shown = if entries.len() > MOST {
        MOST - 1
    } else {
        entries.len()
    };
    let (first, rest) = entries.split_at(shown);
    let (last, before) = match (rest, first) {
        ([], [before @ .., last]) => (last.clone(), before),
        ([], []) => return String::new(),
        _ => (format!("{} more", rest.len()), first),
    };
    if before.is_empty() {
        return last;
    }
    format!("{} {word} {last}", before.join(", "))
}

/// A name as messages quote it.
pub(super) fn quoted(name: &str) -> String {
    format!("`{name}`")
}

/// A circle of names, from the first back to it; a long one is cut in the middle.
pub(super) fn circle(names: &[String]) -> String {
    let mut shown: Vec<String> = names.iter().map(|name| quoted(name)).collect();
    if shown.len() > 2 * MOST {
        let left_out = format!("… {} more …", names.len() - 2 * MOST + 1);
        shown.splice(MOST..names.len() - MOST + 1, [left_out]);
    }
    shown.extend(names.first().map(|name| quoted(name)));
    shown.join(" → ")
}

#[cfg(test)]
mod tests {
    use super::*;

    fn names(count: usize) -> Vec<String> {
        (1..=count).map(|number| format!("s{number}")).collect()
    }

    #[test]
    fn a_long_list_is_cut() {
        let lists: Vec<String> = [0, 1, 2, 4, 9].map(|count| list(&names(count), "and")).into();
        assert_eq!(
            lists,
            [
                "",
                "s1",
                "s1 and s2",
                "s1, s2, s3 and s4",
                "s1, s2, s3 and 6 more"
            ]
        );
    }

    #[test]
    fn a_circle_comes_back_to_where_it_began() {
        assert_eq!(circle(&names(1)), "`s1` → `s1`");
        assert_eq!(circle(&names(3)), "`s1` → `s2` → `s3` → `s1`");
        assert_eq!(
            circle(&names(10)),
            "`s1` → `s2` → `s3` → `s4` → … 3 more … → `s8` → `s9` → `s10` → `s1`"
        );
    }
}
