//! A verdict that some way reaches without its proof.

use crate::check::known::{Given, Unproven, unproven};
use crate::check::rule::{Findings, rule};
use crate::check::subject::Subject;
use crate::check::words::{list, quoted};
use crate::library::{Choice, Claim, ClaimKind, Datum, FieldKind, Id, Library, PlateField, ProofLine, What};
use crate::measure::{Band, Scale};
use crate::source::{Walked, WitnessAnswer};

rule! {
    /// Some way reaches a verdict without its proof: a reading that condemns the part was not taken, no longer counts, or lies
    /// elsewhere.
    ///
    /// A technician who is led there would condemn a part that nothing has shown to be bad. The walk refuses such a verdict
    /// and asks for what is missing; but a tree should ask for it before, where the technician still has the meter at that
    /// place. Every way is looked at: across visits, through loops, with readings that work has made void, and on every rating
    /// plate. A shortest way is shown, with answers that lead along it. Where it says *not shown walkable*, the steps lead
    /// there, but no answers were found that do: the way may be none, and is better made plain. So it is where only the
    /// verdict stands there: then more can be known on the ways to it than a check can look at.
    ///
    /// ## Fails
    ///
    /// ```yaml
    /// # registry/readings.yaml
    /// readings:
    ///   flame_current: { title: Flame current, unit: uA, plausible: 0 uA to 50 uA, accuracy: 0.1 uA }
    ///   valve_voltage:
    ///     title: Voltage at the valve
    ///     unit: V
    ///     plausible: 0 V to 40 V
    ///     accuracy: 0.3 V
    ///     source: common_practice
    ///   temperature_rise: { title: Rise, unit: °F, difference: true, plausible: 0 °F to 150 °F, accuracy: 2 °F }
    /// # registry/parts.yaml
    /// parts:
    ///   gas_valve:
    ///     title: Gas valve
    ///     proof:
    ///       - valve_voltage: 20 V to 30 V
    /// # registry/faults.yaml
    /// faults:
    ///   nothing_found: { title: Nothing found, remedy: none }
    ///   rod_dirty: { title: Rod dirty, remedy: correct }
    ///   flue_gas_unsafe: { title: Flue gas unsafe, remedy: shut_down }
    ///   valve_stuck: { title: Valve stuck, remedy: replace gas_valve }
    /// # no-heat.yaml
    /// tree: no-heat
    /// title: No heat
    /// complaint: It does not heat
    /// start: voltage
    /// steps:
    ///   voltage:
    ///     measure: valve_voltage
    ///     source: common_practice
    ///     bands:
    ///       below 18 V: done
    ///       at least 18 V: stuck
    ///   stuck:
    ///     verdict: valve_stuck
    ///     because: The valve had its voltage and did not open.
    ///   done:
    ///     verdict: nothing_found
    ///     because: The valve had no voltage.
    /// ```
    ///
    /// ## Mended
    ///
    /// ```yaml
    /// # registry/readings.yaml
    /// readings:
    ///   flame_current: { title: Flame current, unit: uA, plausible: 0 uA to 50 uA, accuracy: 0.1 uA }
    ///   valve_voltage:
    ///     title: Voltage at the valve
    ///     unit: V
    ///     plausible: 0 V to 40 V
    ///     accuracy: 0.3 V
    ///     source: common_practice
    ///   temperature_rise: { title: Rise, unit: °F, difference: true, plausible: 0 °F to 150 °F, accuracy: 2 °F }
    /// # registry/parts.yaml
    /// parts:
    ///   gas_valve:
    ///     title: Gas valve
    ///     proof:
    ///       - valve_voltage: 20 V to 30 V
    /// # registry/faults.yaml
    /// faults:
    ///   nothing_found: { title: Nothing found, remedy: none }
    ///   rod_dirty: { title: Rod dirty, remedy: correct }
    ///   flue_gas_unsafe: { title: Flue gas unsafe, remedy: shut_down }
    ///   valve_stuck: { title: Valve stuck, remedy: replace gas_valve }
    /// # no-heat.yaml
    /// tree: no-heat
    /// title: No heat
    /// complaint: It does not heat
    /// start: voltage
    /// steps:
    ///   voltage:
    ///     measure: valve_voltage
    ///     source: common_practice
    ///     bands:
    ///       below 20 V: done
    ///       20 V to 30 V: stuck
    ///       above 30 V: done
    ///   stuck:
    ///     verdict: valve_stuck
    ///     because: The valve had its voltage and did not open.
    ///   done:
    ///     verdict: nothing_found
    ///     because: The valve had not the voltage it needs.
    /// ```
    UNPROVEN_VERDICT, "unproven-verdict", Error, needs Shape, look
}

fn look(subject: &Subject<'_>, findings: &mut Findings) {
    let library = subject.library;
    // A step that is named and not there may be any.
    if [What::Step, What::Tree, What::Outcome]
        .into_iter()
        .any(|kind| subject.misses(kind))
    {
        return;
    }
    for found in unproven(library, subject.dependence(), subject.graph()) {
        let Unproven {
            verdict,
            line,
            steps,
            walk,
        } = found;
        let place = library.files.place(line.at);
        let lacking = match &walk {
            Some(walk) => lacking_words(library, &walk.lacking),
            None => words(library, line),
        };
        let walk = match &walk {
            Some(walk) => Walked::With(walk.answers.iter().map(|given| shown(library, given)).collect()),
            None => Walked::NotShown,
        };
        findings.add_walked(
            library[verdict].at,
            format!("a walk can reach this verdict without its proof: it may lack {lacking}"),
            format!(
                "ask for it on that way, or lead the way elsewhere; this line of the proof stands at {}:{}",
                place.file, place.line
            ),
            subject.step_names(&steps),
            Some(walk),
        );
    }
}

fn shown(library: &Library, given: &Given) -> WitnessAnswer {
    WitnessAnswer {
        step: library[given.step].name.clone(),
        asks: library.name_of(given.datum).to_owned(),
        answer: given.answer.clone(),
    }
}

/// What does not hold at the end of a walk: one claim of each alternative, each said once.
fn lacking_words(library: &Library, lacking: &[&Claim]) -> String {
    let mut said: Vec<String> = Vec::new();
    for claim in lacking {
        let words = claim_words(library, claim);
        if !said.contains(&words) {
            said.push(words);
        }
    }
    list(&said, "or")
}

/// A line of a proof, much as its author wrote it.
fn words(library: &Library, line: &ProofLine) -> String {
    let alternatives = line.alternatives.iter().map(|claims| {
        let claims: Vec<String> = claims.iter().map(|claim| claim_words(library, claim)).collect();
        claims.join(" with ")
    });
    list(&alternatives.collect::<Vec<_>>(), "or")
}

fn claim_words(library: &Library, claim: &Claim) -> String {
    let datum = claim.datum();
    let said = match &claim.what {
        ClaimKind::Reading(id, band) => band_words(library, band, library.readings[*id].scale),
        ClaimKind::Sign(id, values) => value_words(&library.signs[*id].values, values),
        ClaimKind::FieldNumber(id, band) => match library.plate[*id].kind {
            FieldKind::Number { scale, .. } => band_words(library, band, scale),
            FieldKind::Choices(_) => String::new(),
        },
        ClaimKind::FieldChoice(id, values) => match &library.plate[*id].kind {
            FieldKind::Choices(choices) => value_words(choices, values),
            FieldKind::Number { .. } => String::new(),
        },
    };
    let plate = match datum {
        Datum::Field(_) => "plate.",
        Datum::Reading(_) | Datum::Sign(_) => "",
    };
    format!("{} {said}", quoted(&format!("{plate}{}", library.name_of(datum))))
}

fn band_words(library: &Library, band: &Band<Id<PlateField>>, scale: Scale) -> String {
    band.display(scale, |field| format!("plate.{}", library.plate[*field].name))
        .to_string()
}

fn value_words(choices: &[Choice], values: &[usize]) -> String {
    let names: Vec<&str> = values.iter().map(|value| choices[*value].name.as_str()).collect();
    names.join(" or ")
}
