//! What the terminal can show.

/// What the terminal can show.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Look {
    /// Whether colour may be used. Nothing is ever said by colour alone.
    pub colour: bool,
    /// Whether the terminal shows more than ASCII.
    pub unicode: bool,
}

impl Look {
    /// What the environment says of the terminal; `vars` looks one variable up.
    ///
    /// `NO_COLOR`, where it is not empty, and a `TERM` that is empty or `dumb` turn colour off. More than ASCII is shown where
    /// the locale's character set, by the first of `LC_ALL`, `LC_CTYPE` and `LANG` that is not empty, is UTF-8.
    ///
    /// ```
    /// use proofwalk::tui::Look;
    /// let look = Look::from_env(|name| (name == "LANG").then(|| "C".to_owned()));
    /// assert_eq!(look, Look { colour: false, unicode: false });
    /// ```
    pub fn from_env(vars: impl Fn(&str) -> Option<String>) -> Self {
        let set = |name: &str| vars(name).filter(|value| !value.is_empty());
        let capable = set("TERM").is_some_and(|term| term != "dumb");
        let locale = ["LC_ALL", "LC_CTYPE", "LANG"].into_iter().find_map(set);
        let charset = locale.unwrap_or_default().to_ascii_lowercase();
        Self {
            colour: capable && set("NO_COLOR").is_none(),
            unicode: charset.contains("utf-8") || charset.contains("utf8"),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn looks(vars: &[(&str, &str)], colour: bool, unicode: bool) {
        let find = |name: &str| {
            vars.iter()
                .find(|(key, _)| *key == name)
                .map(|(_, value)| (*value).to_owned())
        };
        assert_eq!(Look::from_env(find), Look { colour, unicode });
    }

    #[test]
    fn the_environment_decides() {
        looks(&[("TERM", "xterm-256color"), ("LANG", "en_US.UTF-8")], true, true);
        looks(
            &[("TERM", "xterm"), ("LANG", "en_US.UTF-8"), ("NO_COLOR", "1")],
            false,
            true,
        );
        looks(
            &[("TERM", "xterm"), ("NO_COLOR", ""), ("LANG", "de_DE.utf8")],
            true,
            true,
        );
        looks(
            &[("TERM", "dumb"), ("LC_ALL", "C"), ("LANG", "en_US.UTF-8")],
            false,
            false,
        );
        looks(
            &[
                ("TERM", "../../x"),
                ("LC_ALL", ""),
                ("LC_CTYPE", "C.UTF-8"),
                ("LANG", "C"),
            ],
            true,
            true,
        );
        looks(&[], false, false);
    }
}
