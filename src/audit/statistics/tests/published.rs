//! Against values from outside.

use super::super::{
    Count, LEVEL, digits, exact, false_discovery, funnel, jeffreys, p_chart, partial_pooling, shrinkage,
    wilson,
};
use super::super::{dispersion, survival, weights};
use super::{near, number, numbers, reference, whole};
use survival::{Curve, Wait};

#[test]
fn intervals_are_those_of_the_reference() {
    for case in reference()["intervals"].as_array().unwrap() {
        let (count, of) = (whole(&case["count"]), whole(&case["of"]));
        let within = case.get("within").map_or(1e-11, number);
        let check = |name: &str, (low, high): (f64, f64)| {
            if let [expected_low, expected_high] = case[name].as_array().map_or(&[][..], Vec::as_slice) {
                near(low, number(expected_low), within);
                near(high, number(expected_high), within);
            }
        };
        check("wilson", wilson(count, of));
        check("exact", exact::interval(count, of, LEVEL));
        check("jeffreys", jeffreys::interval(count, of, LEVEL));
    }
}

#[test]
fn intervals_mirror_and_hold_their_ends() {
    for (count, of) in [(0, 1), (3, 8), (10, 10), (999, 100_000)] {
        for interval in [wilson::at_level, exact::interval, jeffreys::interval] {
            let (low, high) = interval(count, of, 0.9);
            let (other_low, other_high) = interval(of - count, of, 0.9);
            near(low, 1.0 - other_high, 1e-12);
            near(high, 1.0 - other_low, 1e-12);
            let (wider_low, wider_high) = interval(count, of, 0.99);
            assert!(wider_low <= low && high <= wider_high && low < high);
        }
    }
    assert_eq!(wilson(0, 0), (0.0, 1.0));
    assert_eq!(exact::interval(0, 0, LEVEL), (0.0, 1.0));
    assert_eq!((wilson(0, 7).0, wilson(7, 7).1), (0.0, 1.0));
}

#[test]
fn the_p_chart_is_that_of_the_handbook() {
    let case = &reference()["p_chart"];
    let of = whole(&case["of"]);
    let mut counts: Vec<Count> = numbers(&case["data"])
        .iter()
        .map(|count| Count::new(*count as u64, of))
        .collect();
    let chart = p_chart::Chart::of(&counts);
    near(chart.centre, number(&case["centre"]), 1e-12);
    let outside: Vec<u64> = (1..)
        .zip(&chart.months)
        .filter(|(_, month)| month.is_outside())
        .map(|(number, _)| number)
        .collect();
    for month in &chart.months {
        near(month.low, number(&case["low"]), 1e-12);
        near(month.high, number(&case["high"]), 1e-12);
        assert!(!month.is_small());
    }
    assert_eq!(serde_json::json!(outside), case["outside"]);
    for number in outside.iter().rev() {
        counts.remove(*number as usize - 1);
    }
    let revised = p_chart::Chart::of(&counts);
    let found = [revised.months[0].low, revised.centre, revised.months[0].high];
    for (found, expected) in found.into_iter().zip(numbers(&case["revised"])) {
        near(found, expected, 1e-12);
    }
}

#[test]
fn a_month_without_calls_is_never_outside() {
    let chart = p_chart::Chart::of(&[Count::new(0, 0), Count::new(3, 40)]);
    assert!(!chart.months[0].is_outside() && chart.months[0].is_small());
    assert_eq!(p_chart::Chart::of(&[]).centre, 0.0);
}

#[test]
fn as_many_are_taken_as_in_the_paper() {
    let case = &reference()["false_discovery"];
    let adjusted = false_discovery::adjusted(&numbers(&case["data"]));
    for (found, expected) in adjusted.iter().zip(numbers(&case["adjusted"])) {
        near(*found, expected, 1e-8);
    }
    let taken = adjusted.iter().filter(|value| **value <= 0.05).count();
    assert_eq!(taken as u64, whole(&case["taken"]));
    assert_eq!(false_discovery::adjusted(&[]), Vec::<f64>::new());
}

fn curve(case: &serde_json::Value) -> Curve {
    let waits = numbers(&case["times"]).into_iter().zip(numbers(&case["came"]));
    Curve::of(waits.map(|(time, came)| Wait {
        time,
        came: came > 0.0,
    }))
}

#[test]
fn survival_is_that_of_the_reference() {
    for case in reference()["survival"].as_array().unwrap() {
        let curve = curve(case);
        let within = number(&case["within"]);
        let estimates: Vec<_> = numbers(&case["at"])
            .iter()
            .map(|time| curve.at(*time, LEVEL))
            .collect();
        for (estimate, still) in estimates.iter().zip(numbers(&case["still"])) {
            near(estimate.still, still, within);
            assert!(estimate.low < estimate.still && estimate.still < estimate.high);
        }
        let errors = case["standard_errors"].as_array();
        for (estimate, error) in estimates.iter().zip(errors.into_iter().flatten()) {
            near(estimate.standard_error, number(error), within);
        }
    }
}

#[test]
fn calls_closed_lately_are_no_successes() {
    let case = &reference()["callbacks"];
    let at = curve(case).at(number(&case["time"]), LEVEL);
    let exact = numbers(&case["within_exact"]);
    near(1.0 - at.still, exact[0] / exact[1], 1e-12);
    near(1.0 - at.high, number(&case["low"]), 1e-9);
    near(1.0 - at.low, number(&case["high"]), 1e-9);
    near(at.standard_error, number(&case["standard_error"]), 1e-12);
    assert_eq!(at.at_risk, 8);
}

#[test]
fn a_curve_says_where_it_knows_nothing() {
    let waits = [5.0, 9.0].map(|time| Wait { time, came: false });
    let curve = Curve::of(waits);
    let at = curve.at(9.0, LEVEL);
    assert!(at.is_watched() && !curve.at(9.5, LEVEL).is_watched());
    assert_eq!((at.still, at.low), (1.0, 1.0 - wilson(0, 1).1));
    let nothing = Curve::of([]).at(30.0, LEVEL);
    assert_eq!((nothing.low, nothing.high, nothing.at_risk), (0.0, 1.0, 0));
    // All came: whoever is left bounds it, and nobody claims certainty.
    let all = Curve::of([2.0, 4.0].map(|time| Wait { time, came: true })).at(5.0, LEVEL);
    assert!(all.still == 0.0 && all.low == 0.0 && all.high > 0.5);
}

#[test]
fn digits_are_those_of_the_reference() {
    let case = &reference()["digits"];
    let counts: Vec<u64> = case["data"].as_array().unwrap().iter().map(whole).collect();
    let digits = digits::test(&counts.try_into().unwrap()).unwrap();
    near(digits.chi_square, number(&case["chi_square"]), 1e-12);
    near(digits.chance, number(&case["chance"]), 1e-12);
    near(digits.zeros_and_fives, number(&case["zeros_and_fives"]), 1e-12);
    assert!(digits::test(&[4, 5, 5, 5, 5, 5, 5, 5, 5, 5]).is_none());
    assert!(digits::test(&[5; 10]).is_some_and(|digits| digits.chance == 1.0));
}

fn groups(case: &serde_json::Value) -> Vec<Count> {
    let groups = case["groups"].as_array().unwrap();
    groups
        .iter()
        .map(|row| Count::new(whole(&row[0]), whole(&row[1])))
        .collect()
}

#[test]
fn groups_scatter_as_in_the_reference() {
    let case = &reference()["shrinkage"];
    let groups = groups(case);
    let sizes =
        |scatter: &shrinkage::Scatter| [scatter.size * scatter.mean, scatter.size * (1.0 - scatter.mean)];
    let seventy = shrinkage::Scatter::of(&groups[..70]).unwrap();
    // The published sizes are where another search stopped; scipy's lie a hundred-thousandth from them.
    for (found, expected) in sizes(&seventy).iter().zip(numbers(&case["published_70"])) {
        near(*found, expected, 3e-4);
    }
    let all = shrinkage::Scatter::of(&groups).unwrap();
    for (found, expected) in sizes(&all).iter().zip(numbers(&case["sizes_71"])) {
        near(*found, expected, 3e-4);
    }
    let expected = seventy.expected(Count::new(4, 14), LEVEL);
    near(expected.rate, number(&case["four_of_fourteen"]), 1e-6);
    assert!(expected.low < expected.rate && expected.rate < expected.high);
    let none = seventy.expected(Count::new(0, 20), LEVEL);
    near(none.rate, number(&case["none_of_twenty"]), 5e-5);
}

#[test]
fn groups_that_do_not_differ_are_expected_alike() {
    let alike = [
        Count::new(10, 100),
        Count::new(20, 200),
        Count::new(5, 50),
        Count::new(1, 10),
    ];
    let scatter = shrinkage::Scatter::of(&alike).unwrap();
    assert!(scatter.size.is_infinite());
    let expected = scatter.expected(Count::new(1, 2), LEVEL);
    near(expected.rate, 0.1, 1e-12);
    assert_eq!((expected.low, expected.high), wilson(36, 360));
    for few in [&alike[..2], &[Count::new(0, 9); 4], &[Count::new(9, 9); 4], &[]] {
        assert_eq!(shrinkage::Scatter::of(few), None);
    }
}

/// The book's posterior means of the sizes, 2.4 and 14.3, from memory; its weight before the counts differs from ours by a factor.
#[test]
fn every_scatter_has_the_say_that_the_book_gives_it() {
    let rats = groups(&reference()["shrinkage"]);
    let pooled = partial_pooling::Pooled::of(&rats).unwrap();
    let (mut whole, mut alpha, mut beta) = (0.0, 0.0, 0.0);
    for scatter in pooled.scatters() {
        let weight = scatter.weight * (1.0 + 1.0 / scatter.size).powf(1.5);
        let mean: f64 = scatter.means.iter().map(|(mean, part)| mean * part).sum();
        whole += weight;
        alpha += weight * scatter.size * mean;
        beta += weight * scatter.size * (1.0 - mean);
    }
    near(alpha / whole, 2.4, 0.05);
    near(beta / whole, 14.3, 0.05);
}

#[test]
fn pooled_rates_are_those_of_the_reference() {
    let check = |groups: &[Count], case: &serde_json::Value| {
        let pooled = partial_pooling::Pooled::of(groups).unwrap();
        for row in case["expected"].as_array().unwrap() {
            let expected = pooled.expected(Count::new(whole(&row[0]), whole(&row[1])), LEVEL);
            // The means of a spread taken together as one beta distribution: of few calls that is a little less like them.
            let within = if whole(&row[1]) < 20 { 5e-3 } else { 1e-3 };
            near(expected.rate, number(&row[2]), 3e-4);
            near(expected.low, number(&row[3]), within);
            near(expected.high, number(&row[4]), within);
        }
    };
    let reference = reference();
    let case = &reference["partial_pooling"];
    check(&groups(&reference["shrinkage"]), &case["rats"]);
    for few in case["few"].as_array().unwrap() {
        check(&groups(few), few);
    }
}

/// By hand: of groups alike nothing is drawn, and of many calls nothing is left to guess. Too few say nothing.
#[test]
fn pooled_rates_know_their_ends() {
    let alike = [Count::new(100_000, 1_000_000); 3];
    let expected = partial_pooling::Pooled::of(&alike)
        .unwrap()
        .expected(alike[0], LEVEL);
    near(expected.rate, 0.1, 1e-5);
    // Alone, 1.96 times the root of 0.1 times 0.9 over a million.
    assert!(
        expected.low > 0.1 - 0.000_6 && expected.high < 0.1 + 0.000_6,
        "{expected:?}"
    );
    for few in [&alike[..2], &[Count::new(0, 9); 4], &[Count::new(9, 9); 4], &[]] {
        assert_eq!(partial_pooling::Pooled::of(few), None);
    }
    let apart = [Count::new(0, 1), Count::new(1, 1), Count::new(0, 1)];
    let expected = partial_pooling::Pooled::of(&apart)
        .unwrap()
        .expected(apart[1], LEVEL);
    assert!(expected.low < 0.1 && expected.high > 0.99, "{expected:?}");
}

#[test]
fn funnel_limits_are_those_of_the_reference() {
    let case = &reference()["funnel"];
    let rate = number(&case["rate"]);
    for (of, limits) in case["limits"].as_object().unwrap() {
        let size: u64 = of.parse().unwrap();
        let (act_low, act_high) = funnel::limits(size, rate, funnel::ACT);
        let (warn_low, warn_high) = funnel::limits(size, rate, funnel::WARN);
        assert_eq!(
            serde_json::json!([act_low, warn_low, warn_high, act_high]),
            *limits
        );
        let above = funnel::chance(Count::new(warn_high + 1, size), rate);
        near(0.5 * above, number(&case["above_95"][of]), 1e-12);
    }
    let needed = whole(&case["calls_without_any"]);
    assert_eq!(funnel::calls_without_any(rate, LEVEL), needed);
}

/// Arithmetic: the probabilities added up, each from the one before.
#[test]
fn large_groups_are_as_exact_as_small_ones() {
    let (of, rate) = (200_000_u64, 0.08_f64);
    let (mut log, mut below) = (of as f64 * (-rate).ln_1p(), 0.0);
    for count in 0..=15_800_u64 {
        below += log.exp();
        log += ((of - count) as f64 * rate / ((count + 1) as f64 * (1.0 - rate))).ln();
    }
    let found = 0.5 * funnel::chance(Count::new(15_800, of), rate);
    assert!((found / below - 1.0).abs() < 1e-6, "{found} {below}");
    let (low, high) = funnel::limits(of, rate, LEVEL);
    // Normal: 1.96 times the root of 200,000 * 0.08 * 0.92.
    assert!(
        low.abs_diff(15_762) <= 1 && high.abs_diff(16_238) <= 1,
        "{low} {high}"
    );
}

#[test]
fn a_funnel_knows_its_ends() {
    assert_eq!(funnel::limits(0, 0.08, funnel::ACT), (0, 0));
    assert_eq!(funnel::limits(12, 0.0, funnel::ACT), (0, 0));
    assert_eq!(funnel::limits(12, 1.0, funnel::ACT), (12, 12));
    assert_eq!(funnel::chance(Count::new(0, 0), 0.08), 1.0);
    near(
        funnel::chance(Count::new(0, 36), 0.08),
        2.0 * 0.92_f64.powi(36),
        1e-12,
    );
}

/// The rats scatter far more than chance: D. J. Spiegelhalter's factor, worked by its formula, against groups made alike.
#[test]
fn scatter_is_evident_where_there_is_some() {
    let rats = groups(&reference()["shrinkage"]);
    let factor = dispersion::evident(&rats).unwrap();
    assert!((1.5..3.0).contains(&factor), "{factor}");
    let (low, high) = dispersion::limits(100, 0.1, LEVEL, factor);
    let (narrow_low, narrow_high) = dispersion::limits(100, 0.1, LEVEL, 1.0);
    assert!(low < narrow_low && narrow_high < high);
    // Arithmetic: 0.1 plus 1.96 times 0.03.
    near(narrow_high, 0.1588, 1e-4);
    // Arithmetic: 19.6 standard deviations off, which a factor of 100 makes 1.96, and one of 384.16 makes 1.
    let found = |factor| dispersion::chance(Count::new(1_588, 10_000), 0.1, factor);
    near(found(100.0), 0.05, 1e-4);
    near(found(384.16), 0.3173, 1e-4);
    assert_eq!(dispersion::chance(Count::new(0, 0), 0.1, 2.0), 1.0);
    assert_eq!(dispersion::evident(&rats[52..]), None);
    assert_eq!(dispersion::evident(&[Count::new(0, 10); 30]), None);
}

#[test]
fn weights_average_one_and_narrow_with_calls() {
    let few = weights::learned(&[1.0; 4], &[4, 1, 0, 0], LEVEL);
    let many = weights::learned(&[1.0; 4], &[400, 100, 0, 0], LEVEL);
    near(
        few.iter().map(|weight| weight.weight).sum::<f64>() / 4.0,
        1.0,
        1e-12,
    );
    assert!(many[0].high - many[0].low < few[0].high - few[0].low);
    // The interval is Jeffreys' on the author's scale: published above for four of twenty.
    let two = weights::learned(&[1.0; 2], &[4, 16], LEVEL);
    let (low, high) = jeffreys::interval(4, 20, LEVEL);
    near(two[0].low, 2.0 * low, 1e-12);
    near(two[0].high, 2.0 * high, 1e-12);
    assert_eq!(weights::learned(&[], &[], LEVEL), []);
    assert_eq!(weights::learned(&[1.0], &[7], LEVEL)[0].weight, 1.0);
}

/// By hand: weights of 3, 1, 1 and 1 count as 1, ⅓, ⅓ and ⅓ verdicts, two in all. After nine of the first its share is 10 of 11.
#[test]
fn weights_are_drawn_from_their_author_s_towards_the_calls() {
    let author = [3.0, 1.0, 1.0, 1.0];
    let first = weights::learned(&author, &[9, 0, 0, 0], LEVEL)[0];
    near(first.weight, 6.0 * 10.0 / 11.0, 1e-12);
    near(
        weights::learned(&author, &[9, 0, 0, 0], LEVEL)[1].weight,
        6.0 / 3.0 / 11.0,
        1e-12,
    );
    let alone = jeffreys::interval(9, 9, LEVEL);
    near(first.low, 6.0 * alone.0, 1e-12);
    assert_eq!(first.high, 6.0, "of all, nothing says that it is not the whole");
    // Of no calls they are the author's; of many, what the calls say.
    let none = weights::learned(&author, &[0; 4], LEVEL);
    let many = weights::learned(&author, &[0, 0, 0, 1_000_000], LEVEL);
    for (weight, author) in none.iter().zip(author) {
        near(weight.weight, author, 1e-12);
    }
    near(many[3].weight, 6.0, 1e-4);
}
