//! A voltage that can hurt, and no word of it.

use crate::check::rule::{Findings, rule};
use crate::check::subject::Subject;
use crate::library::{Id, Library, Named, Obtained, Reading, What};
use crate::measure::{Quantity, Scale, Unit};

rule! {
    /// A voltage is measured that may lie above 50 V, and the reading has no caution.
    ///
    /// The technician is sent to put two probes on live parts, and the screen does not say so. Name under `cautions` what can
    /// hurt, on the reading itself: it then stands on the screen in every tree that asks for it. The standing cautions of the
    /// library are shown once, before the call, and a step's own caution in one tree alone: neither counts here.
    ///
    /// ## Fails
    ///
    /// ```yaml
    /// # registry/readings.yaml
    /// readings:
    ///   flame_current: { title: Flame current, unit: uA, plausible: 0 uA to 50 uA, accuracy: 0.1 uA }
    ///   valve_voltage: { title: Voltage at the valve, unit: V, plausible: 0 V to 150 V, accuracy: 0.3 V }
    ///   temperature_rise: { title: Rise, unit: °F, difference: true, plausible: 0 °F to 150 °F, accuracy: 2 °F }
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
    ///     plausible: 0 V to 150 V
    ///     accuracy: 0.3 V
    ///     cautions: [qualified_person]
    ///   temperature_rise: { title: Rise, unit: °F, difference: true, plausible: 0 °F to 150 °F, accuracy: 2 °F }
    /// ```
    ///
    /// ## References
    ///
    /// 29 CFR 1910.303(g)(2)(i): live parts of electric equipment operating at 50 V or more are guarded against accidental
    /// contact. OSHA's letter of interpretation of 4 September 2015 says that this holds for AC and DC alike.
    MISSING_CAUTION, "missing-caution", Warning, needs Shape, look
}

/// Volts above which a reading needs a caution.
const HARMLESS: f64 = 50.0;

fn look(subject: &Subject<'_>, findings: &mut Findings) {
    let library = subject.library;
    for (id, reading) in library.readings.iter() {
        let Some(high) = dangerous(reading) else {
            continue;
        };
        if reading.taking.cautions.is_empty() && !is_in_doubt(subject, library, id, reading) {
            findings.add(
                reading.at,
                format!(
                    "`{}` may read {}, and has no caution",
                    reading.name,
                    high.display(reading.scale)
                ),
                "name under `cautions` what can hurt there",
            );
        }
    }
}

/// The largest plausible voltage of a reading that is measured, where it can hurt.
fn dangerous(reading: &Reading) -> Option<Quantity> {
    let volt = Scale::of(Unit::Volt);
    let measured = matches!(reading.source_of_value, Obtained::Measured(_));
    let high = reading.plausible?.high;
    let can_hurt =
        measured && reading.scale.dimension() == volt.dimension() && high.number_in(volt) > HARMLESS;
    can_hurt.then_some(high)
}

/// Whether its caution, or what it is worked out from, is a name that does not resolve.
fn is_in_doubt(subject: &Subject<'_>, library: &Library, id: Id<Reading>, reading: &Named<Reading>) -> bool {
    let next = library.readings.get(Id::new(id.index() + 1)).map(|next| next.at);
    let needed = [What::Caution, What::Formula, What::Reading, What::PlateField];
    needed
        .into_iter()
        .any(|kind| subject.misses_within(kind, reading.at, next))
        || subject.is_doubled(What::Reading, &reading.name, reading.at.file)
}
