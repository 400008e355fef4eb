//! The sequence against the clock.

use super::*;

const TIMINGS: Timings = Timings {
    prepurge: 15.0,
    warm_up: 20.0,
    trial: 4.0,
    interpurge: 30.0,
    blower_on: 30.0,
    blower_off: 90.0,
    postpurge: 15.0,
    tries: 3,
    high_after: f64::INFINITY,
};

/// All that a call needs, with the draft proved by the inducer and the flame by the valve.
struct Furnace {
    sequence: Sequence,
    told: Told,
    lights: bool,
    limits: bool,
    call: bool,
}

impl Furnace {
    fn new(lights: bool) -> Self {
        Self {
            sequence: Sequence::new(TIMINGS, 0.8, None),
            told: Told::default(),
            lights,
            limits: true,
            call: true,
        }
    }

    fn second(&mut self) -> Told {
        let seen = Seen {
            powered: true,
            call: self.call,
            limits: self.limits,
            switch: self.told.inducer,
            flame: if self.told.valve && self.lights { 3.0 } else { 0.0 },
            second: true,
        };
        self.told = self.sequence.step(&seen, 1.0);
        self.told
    }

    /// Seconds until something is so, up to ten minutes.
    fn until(&mut self, so: impl Fn(Told) -> bool) -> Option<f64> {
        (0..600).find(|_| so(self.second())).map(f64::from)
    }
}

#[test]
fn inducer_igniter_gas_and_blower_come_one_after_another() {
    let mut furnace = Furnace::new(true);
    assert_eq!(furnace.until(|told| told.inducer), Some(0.0));
    // Common practice: prepurge 15 to 30 s, warm-up 7 to 30 s, blower 30 to 60 s after the flame.
    let igniter = furnace.until(|told| told.igniter).unwrap();
    assert!((15.0..17.0).contains(&igniter), "{igniter}");
    let valve = furnace.until(|told| told.valve).unwrap();
    assert!((19.0..21.0).contains(&valve), "{valve}");
    let blower = furnace.until(|told| told.blower).unwrap();
    assert!((30.0..36.0).contains(&blower), "{blower}");
    furnace.call = false;
    assert!(!furnace.second().valve && furnace.told.blower && furnace.told.inducer);
    let off = furnace.until(|told| !told.blower).unwrap();
    assert!((85.0..92.0).contains(&off), "{off}");
}

#[test]
fn without_a_flame_the_gas_stays_on_for_the_trial_only_and_three_tries_lock_it_out() {
    let mut furnace = Furnace::new(false);
    for _ in 0..3 {
        assert!(furnace.until(|told| told.valve).is_some());
        let gas = furnace.until(|told| !told.valve).unwrap() + 1.0;
        // Common practice: a trial of 4 to 7 s.
        assert!((4.0..=7.0).contains(&gas), "{gas}");
    }
    assert_eq!(furnace.until(|told| told.valve), None);
    assert_eq!(furnace.sequence.phase(), Phase::Lockout);
}

#[test]
fn an_open_limit_stops_the_gas_and_runs_the_blower() {
    let mut furnace = Furnace::new(true);
    furnace.until(|told| told.valve);
    furnace.limits = false;
    let told = furnace.second();
    assert!(!told.valve && told.blower && told.inducer, "{told:?}");
}

#[test]
fn nothing_starts_on_a_switch_that_is_closed_already_or_on_a_flame_that_none_lit() {
    let mut sequence = Sequence::new(TIMINGS, 0.8, None);
    let closed = Seen {
        powered: true,
        call: true,
        limits: true,
        switch: true,
        flame: 0.0,
        second: false,
    };
    for _ in 0..300 {
        assert_eq!(sequence.step(&closed, 1.0), Told::default());
    }
    let open = Seen {
        switch: false,
        ..closed
    };
    sequence.step(&open, 1.0);
    let false_flame = Seen { flame: 1.0, ..closed };
    for _ in 0..300 {
        assert!(!sequence.step(&false_flame, 1.0).valve);
    }
    assert_eq!(sequence.phase(), Phase::Uncalled);
}

#[test]
fn a_flame_that_is_lost_closes_the_valve_within_two_seconds() {
    let mut furnace = Furnace::new(true);
    furnace.until(|told| told.blower);
    furnace.lights = false;
    let held = furnace.until(|told| !told.valve).unwrap();
    assert!(held <= 2.0, "{held}");
}

#[test]
fn high_fire_comes_once_low_has_burned_for_its_time_and_is_asked_for() {
    let mut furnace = Furnace::new(true);
    furnace.sequence.timings.high_after = 120.0;
    furnace.until(|told| told.valve);
    let low = furnace.until(|told| told.high).unwrap();
    // The trial, then two minutes on low.
    assert!((123.0..128.0).contains(&low), "{low}");
}

#[test]
fn a_pilot_is_sparked_at_until_it_is_proved_and_only_then_the_burners_get_gas() {
    let mut sequence = Sequence::new(TIMINGS, 0.8, Some(Pilot::OnCall));
    let mut second = |flame: f64, switch: bool| {
        let seen = Seen {
            powered: true,
            call: true,
            limits: true,
            switch,
            flame,
            second: false,
        };
        sequence.step(&seen, 1.0)
    };
    second(0.0, false);
    let mut sparks = 0;
    for _ in 0..40 {
        let told = second(0.0, true);
        assert!(!told.valve && told.igniter == told.pilot, "{told:?}");
        sparks += usize::from(told.igniter);
    }
    assert!(sparks > 10, "{sparks}");
    let proved = second(3.0, true);
    assert!(proved.valve && proved.pilot && !proved.igniter, "{proved:?}");
}
