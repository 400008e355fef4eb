//! A call as bytes, and back, to the last bit.

use std::sync::Arc;

use compact_str::CompactString;
use jiff::Timestamp;

use super::block::{Reading, Writing};
use crate::audit::{Call, Ending, NotTaken, PutBacks, Remedy, Stay, Taken, Verdict};

/// Writes a call, but for its session and its folder: those are known where it is found.
pub(super) fn write(out: &mut Writing, call: &Call) {
    let Call {
        session: _,
        folder: _,
        opened,
        last,
        closed,
        sealed,
        torn,
        clock_went_back,
        from_file,
        practice,
        with_library,
        tree,
        technician,
        site,
        equipment,
        ending,
        noted,
        put_backs,
        readings,
        not_taken,
        stays,
        could_test_combustion,
        after_work,
    } = call;
    flags(
        out,
        &[
            *sealed,
            *clock_went_back,
            *from_file,
            *practice,
            *with_library,
            *could_test_combustion,
            *after_work,
        ],
    );
    time(out, *opened, Timestamp::UNIX_EPOCH);
    time(out, *last, *opened);
    option(out, closed.as_ref(), |out, closed| time(out, *closed, *opened));
    option(out, torn.as_ref(), |out, torn| out.number(*torn));
    out.text(tree);
    for text in [technician, site, equipment] {
        option(out, text.as_ref(), |out, text| out.text(text));
    }
    match ending {
        Ending::Verdict(of) => tagged(out, 0, |out| verdict(out, of)),
        Ending::Outcome(outcome) => tagged(out, 1, |out| out.text(outcome)),
        Ending::Unproven { why } => tagged(out, 2, |out| out.text(why)),
        Ending::Insisted(of) => tagged(out, 3, |out| verdict(out, of)),
        Ending::Open => tagged(out, 4, |_| {}),
    }
    out.list(noted, verdict);
    out.number(put_backs.done);
    out.list(&put_backs.refused, |out, name| out.text(name));
    out.list(&put_backs.open, |out, name| out.text(name));
    out.list(readings, |out, of| taken(out, of, *opened));
    out.list(not_taken, |out, not| {
        flags(out, &[not.combustion]);
        out.text(&not.datum);
        out.text(&not.why);
    });
    out.list(stays, |out, stay| {
        out.text(&stay.step);
        option(out, stay.to.as_ref(), |out, to| out.text(to));
        maybe(out, stay.seconds);
        maybe(out, stay.minutes);
    });
}

fn taken(out: &mut Writing, taken: &Taken, opened: Timestamp) {
    let Taken {
        reading,
        typed,
        value,
        unit,
        margin,
        borderline,
        time: at,
        seconds,
        minutes,
        combustion,
        superseded,
    } = taken;
    flags(out, &[*borderline, *combustion, *superseded]);
    out.text(reading);
    option(out, typed.as_ref(), |out, typed| out.text(typed));
    out.value(*value);
    out.text(unit);
    out.float(*margin);
    time(out, *at, opened);
    maybe(out, *seconds);
    maybe(out, *minutes);
}

fn verdict(out: &mut Writing, verdict: &Verdict) {
    out.text(&verdict.fault);
    match &verdict.remedy {
        Remedy::Replace(part) => tagged(out, 0, |out| out.text(part)),
        Remedy::Correct => tagged(out, 1, |_| {}),
        Remedy::ShutDown => tagged(out, 2, |_| {}),
        Remedy::Refer => tagged(out, 3, |_| {}),
        Remedy::Nothing => tagged(out, 4, |_| {}),
        Remedy::Unknown => tagged(out, 5, |_| {}),
    }
}

fn tagged(out: &mut Writing, tag: u64, rest: impl FnOnce(&mut Writing)) {
    out.number(tag);
    rest(out);
}

fn flags(out: &mut Writing, flags: &[bool]) {
    let bits = (0..).zip(flags).map(|(at, flag)| u64::from(*flag) << at);
    out.number(bits.sum::<u64>());
}

fn option<T>(out: &mut Writing, option: Option<&T>, some: impl FnOnce(&mut Writing, &T)) {
    out.number(u64::from(option.is_some()));
    if let Some(value) = option {
        some(out, value);
    }
}

fn maybe(out: &mut Writing, float: Option<f64>) {
    option(out, float.as_ref(), |out, float| out.float(*float));
}

/// A time, near another.
fn time(out: &mut Writing, time: Timestamp, near: Timestamp) {
    // The seconds of no time fill even half of their number.
    out.signed(time.as_second() - near.as_second());
    out.signed(time.subsec_nanosecond().into());
}

/// Reads a call of a session in a folder.
pub(super) fn read(from: &mut Reading<'_>, session: &str, folder: u32) -> Option<Call> {
    let [
        sealed,
        clock_went_back,
        from_file,
        practice,
        with_library,
        could_test_combustion,
        after_work,
    ] = read_flags(from)?;
    let opened = read_time(from, Timestamp::UNIX_EPOCH)?;
    Some(Call {
        session: session.into(),
        folder,
        opened,
        last: read_time(from, opened)?,
        closed: read_option(from, |from| read_time(from, opened))?,
        sealed,
        torn: read_option(from, Reading::number)?,
        clock_went_back,
        from_file,
        practice,
        with_library,
        tree: from.text()?,
        technician: read_option(from, Reading::text)?,
        site: read_option(from, Reading::text)?,
        equipment: read_option(from, Reading::text)?,
        ending: match from.number()? {
            0 => Ending::Verdict(read_verdict(from)?),
            1 => Ending::Outcome(from.text()?),
            2 => Ending::Unproven { why: from.text()? },
            3 => Ending::Insisted(read_verdict(from)?),
            4 => Ending::Open,
            _ => return None,
        },
        noted: from.list(read_verdict)?,
        put_backs: PutBacks {
            done: from.number()?.try_into().ok()?,
            refused: from.list(Reading::text)?,
            open: from.list(Reading::text)?,
        },
        readings: from.list(|from| read_taken(from, opened))?,
        not_taken: from.list(|from| {
            let [combustion] = read_flags(from)?;
            let (datum, why) = (from.text()?, from.text()?);
            Some(NotTaken {
                datum,
                why,
                combustion,
            })
        })?,
        stays: from.list(|from| {
            Some(Stay {
                step: read_step(from)?,
                to: read_option(from, read_step)?,
                seconds: read_option(from, Reading::float)?,
                minutes: read_option(from, Reading::float)?,
            })
        })?,
        could_test_combustion,
        after_work,
    })
}

fn read_step(from: &mut Reading<'_>) -> Option<Arc<str>> {
    from.text().map(|step| Arc::from(&*step))
}

fn read_taken(from: &mut Reading<'_>, opened: Timestamp) -> Option<Taken> {
    let [borderline, combustion, superseded] = read_flags(from)?;
    Some(Taken {
        reading: from.text()?,
        typed: read_option(from, Reading::text)?,
        value: from.value()?,
        unit: from.text()?,
        margin: from.float()?,
        borderline,
        time: read_time(from, opened)?,
        seconds: read_option(from, Reading::float)?,
        minutes: read_option(from, Reading::float)?,
        combustion,
        superseded,
    })
}

fn read_verdict(from: &mut Reading<'_>) -> Option<Verdict> {
    let fault: CompactString = from.text()?;
    let remedy = match from.number()? {
        0 => Remedy::Replace(from.text()?),
        1 => Remedy::Correct,
        2 => Remedy::ShutDown,
        3 => Remedy::Refer,
        4 => Remedy::Nothing,
        5 => Remedy::Unknown,
        _ => return None,
    };
    Some(Verdict { fault, remedy })
}

fn read_flags<const N: usize>(from: &mut Reading<'_>) -> Option<[bool; N]> {
    let bits = from.number()?;
    Some(std::array::from_fn(|at| bits >> at & 1 == 1))
}

/// What may be there, of bytes that are.
fn read_option<'b, T>(
    from: &mut Reading<'b>,
    some: impl FnOnce(&mut Reading<'b>) -> Option<T>,
) -> Option<Option<T>> {
    match from.number()? {
        0 => Some(None),
        _ => some(from).map(Some),
    }
}

fn read_time(from: &mut Reading<'_>, near: Timestamp) -> Option<Timestamp> {
    let seconds = near.as_second().checked_add(from.signed()?)?;
    Timestamp::new(seconds, from.signed()?.try_into().ok()?).ok()
}
