//! How technicians call what the formulas name otherwise.

/// What is said, and the words under which the formulas have it (common practice). Small letters, no hyphens.
const SPOKEN: &[(&str, &str)] = &[
    ("ach", "infiltration"),
    ("affinity laws", "fan speed"),
    ("afue", "efficiency"),
    ("aluminum", "aluminium"),
    ("anemometer", "velocity"),
    ("awg", "gauge"),
    ("black iron", "steel pipe"),
    ("black pipe", "steel pipe"),
    ("btu", "btu/h"),
    ("btus", "btu/h"),
    ("cap", "capacitor"),
    ("caps", "capacitor"),
    ("conversion", "converted"),
    ("csst", "tube"),
    ("delta p", "pressure difference"),
    ("delta t", "temperature rise"),
    ("derating", "derated"),
    ("draught", "draft"),
    ("duct size", "duct"),
    ("elevation", "altitude"),
    ("esp", "external static"),
    ("fan law", "fan speed"),
    ("fan laws", "fan speed"),
    ("flame current", "flame signal"),
    ("flame rod", "flame signal"),
    ("flame sensor", "flame signal"),
    ("gas line", "gas pipe"),
    ("gas meter", "clocked"),
    ("grill", "grille"),
    ("high altitude", "altitude"),
    ("jet", "orifice"),
    ("kair", "infiltration"),
    ("louvre", "louver"),
    ("lp", "propane"),
    ("lp gas", "propane"),
    ("lpg", "propane"),
    ("make up air", "combustion air"),
    ("makeup air", "combustion air"),
    ("meter", "clocked"),
    ("ng", "natural"),
    ("ntc", "thermistor"),
    ("orifice size", "orifice"),
    ("overfire", "input deviation"),
    ("overfired", "input deviation"),
    ("p trap", "trap"),
    ("pitot", "velocity pressure"),
    ("rectification", "flame signal"),
    ("run cap", "capacitor"),
    ("sensor", "thermistor"),
    ("sheave", "pulleys"),
    ("siegert", "efficiency"),
    ("spud", "orifice"),
    ("tesp", "total external static"),
    ("tubing", "tube"),
    ("water column", "in.w.c."),
    ("wire size", "wire gauge"),
    ("xfmr", "transformer"),
    ("δt", "temperature rise"),
];

/// Words as the formulas have them; what nobody calls otherwise stays as it is.
pub(super) fn in_our_words<'t>(words: &[&'t str]) -> Vec<&'t str> {
    let mut ours = Vec::with_capacity(words.len());
    let mut rest = words;
    while let [first, after @ ..] = rest {
        let (length, said) = spoken(rest).unwrap_or((1, first));
        ours.extend(said.split(' '));
        rest = rest.get(length..).unwrap_or(after);
    }
    ours
}

/// The longest entry that words start with: how many of them it is, and what it stands for.
fn spoken(words: &[&str]) -> Option<(usize, &'static str)> {
    let is_drill = |word: &str| {
        let number = word.strip_prefix('#')?;
        number
            .bytes()
            .all(|letter| letter.is_ascii_digit())
            .then_some((1, "drill"))
    };
    let known = SPOKEN.iter().filter_map(|(said, ours)| {
        let length = said.split(' ').count();
        let starts = words.len() >= length
            && words
                .iter()
                .copied()
                .zip(said.split(' '))
                .all(|(word, own)| word == own);
        starts.then_some((length, *ours))
    });
    known
        .max_by_key(|(length, _)| *length)
        .or_else(|| is_drill(words.first()?))
}

#[cfg(test)]
mod tests {
    use super::super::search;
    use super::*;

    #[test]
    fn every_way_of_saying_finds_a_formula() {
        for (said, _) in SPOKEN {
            assert!(!search::with_words(said).is_empty(), "{said}");
        }
    }

    #[test]
    fn what_is_said_stands_for_our_words_and_the_rest_stays() {
        for (said, ours) in [
            ("lp gas pipe", "propane pipe"),
            ("lp pipe", "propane pipe"),
            ("tesp", "total external static"),
            ("#43", "drill"),
            ("temperature rise", "temperature rise"),
        ] {
            let words: Vec<&str> = said.split(' ').collect();
            assert_eq!(in_our_words(&words).join(" "), ours);
        }
    }
}
