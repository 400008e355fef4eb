//! A question with more answers than a screen holds.

use crate::check::questions;
use crate::check::roomy::surely_fits;
use crate::check::rule::{Findings, rule};
use crate::check::subject::Subject;
use crate::layout::{Panes, USUAL};

rule! {
    /// A screen of 80 columns by 24 rows cannot show the question, its cautions and all of its answers at once.
    ///
    /// The technician chooses among what they see. An answer that is only found by scrolling is not chosen, and a caution
    /// that is pushed out by answers warns nobody. The screen has let go by then of all that it can: the drawing, the keys for
    /// what cannot be taken, the long text (`why`, `how`, `source`) but for a hint that it is there, and the column of what is
    /// still possible.
    ///
    /// The message says how many lines there are, and how many fit. Shorten the answers and what they mean, or ask in two steps
    /// what is two questions. Bands that lean on the rating plate are counted with its largest plausible numbers.
    ///
    /// ## Fails
    ///
    /// ```yaml
    /// # registry/signs.yaml
    /// signs:
    ///   flame_shape: { ask: How does the flame look?, values: { steady: Steady, lazy: Lazy } }
    ///   code:
    ///     ask: How often does the light on the board flash between two pauses?
    ///     values:
    ///       none: Not at all
    ///       v1: Once
    ///       v2: Twice
    ///       v3: Three times
    ///       v4: Four times
    ///       v5: Five times
    ///       v6: Six times
    ///       v7: Seven times
    ///       v8: Eight times
    ///       v9: Nine times
    ///       v10: Ten times
    ///       v11: Eleven times
    ///       v12: Twelve times
    ///       v13: Thirteen times
    ///       v14: Fourteen times
    ///       v15: Fifteen times
    ///       v16: Sixteen times
    ///       v17: Seventeen times
    ///       v18: Eighteen times
    ///       always: It stays on
    /// # no-heat.yaml
    /// tree: no-heat
    /// title: No heat
    /// complaint: It does not heat
    /// start: light
    /// steps:
    ///   light:
    ///     observe: code
    ///     go: done
    ///   done:
    ///     verdict: nothing_found
    ///     because: The code is in the record.
    /// ```
    ///
    /// ## Mended
    ///
    /// ```yaml
    /// # registry/signs.yaml
    /// signs:
    ///   flame_shape: { ask: How does the flame look?, values: { steady: Steady, lazy: Lazy } }
    ///   code:
    ///     ask: What does the light on the board do?
    ///     values:
    ///       none: It is dark
    ///       few: It flashes one to four times between two pauses
    ///       many: It flashes more often
    ///       always: It stays on
    /// # no-heat.yaml
    /// tree: no-heat
    /// title: No heat
    /// complaint: It does not heat
    /// start: light
    /// steps:
    ///   light:
    ///     observe: code
    ///     go: done
    ///   done:
    ///     verdict: nothing_found
    ///     because: The code is in the record.
    /// ```
    CROWDED_SCREEN, "crowded-screen", Warning, needs Shape, look
}

fn look(subject: &Subject<'_>, findings: &mut Findings) {
    let (columns, rows) = USUAL;
    let panes = [Panes::of(columns, rows, true), Panes::wide(columns, rows)];
    for step in &subject.library.steps {
        if surely_fits(subject.library, step, panes[1]) {
            continue;
        }
        let shown = |pane: &Panes| questions::shown(subject.library, step, pane.width);
        // Nearly every question fits the first.
        if shown(&panes[0]).is_none_or(|shown| shown.parts.fits(panes[0].height)) {
            continue;
        }
        let Some(wide) = shown(&panes[1]).filter(|shown| !shown.parts.fits(panes[1].height)) else {
            continue;
        };
        let (name, answers, lines, room) = (&step.name, wide.answers, wide.parts.least(), panes[1].height);
        findings.add(
            step.at,
            format!("`{name}` takes {lines} lines with its {answers} answers, and a screen of {columns} by {rows} has {room}"),
            "shorten its answers, its cautions or the question, or ask in two steps",
        );
    }
}
