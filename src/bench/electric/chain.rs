//! The chain of safeties: limits, rollout switch, pressure switch, and the valve's coil behind them.
//!
//! 24 V runs from the board through limits and rollout switch back to the board, and on through the pressure switch to the
//! valve's relay. Each way back has an input of the board that tells open from closed; with the relay closed, the coil's
//! current runs through every contact before it.

use super::wire::{OPEN, parallel};

/// What is wrong with limits and rollout switches.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Chain {
    /// Degrees by which the limit opens below its mark, °F.
    pub limit_early: f64,
    /// Whether the limit stays open.
    pub limit_open: bool,
    /// Resistance in the limit's wires, Ω.
    pub wire_ohms: f64,
    /// Degrees by which the rollout switch opens below its mark, °F.
    pub rollout_early: f64,
    /// Whether the rollout switch has failed open.
    pub rollout_open: bool,
}

/// What is wrong with the pressure switch's contact.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Switch {
    /// Share of its set point by which it closes later than its label says.
    pub drift: f64,
    /// Whether its contact never closes.
    pub open: bool,
    /// Whether its contact never opens.
    pub welded: bool,
    /// Whether its wires touch each other.
    pub bridged: bool,
    /// Whether it is another furnace's.
    pub wrong: bool,
    /// Resistance of its closed contact, Ω.
    pub contact_ohms: f64,
}

/// A limit closes again when it has cooled by this much, °F: 30 is printed on most, common practice.
const LIMIT_DIFFERENTIAL: f64 = 30.0;

/// Rollout switches open at some 200 to 350 °F, common practice.
const ROLLOUT_OPENS: f64 = 250.0;

/// A pressure switch opens at this share of what closes it, common practice: 0.05 to 0.15 in.w.c. below.
pub(super) const SWITCH_OPENS: f64 = 0.88;

/// What the board's inputs draw, Ω.
const INPUT: f64 = 1000.0;

/// A closed contact, Ω.
const CLOSED: f64 = 0.1;

/// Share of its supply at which an input of the board counts as open.
const SEEN: f64 = 0.55;

/// Where the contacts stand.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Contacts {
    /// The limit is open.
    pub limit_open: bool,
    /// The rollout switch has tripped; it stays so until someone presses its button.
    pub rollout_open: bool,
    /// The pressure switch is closed.
    pub switch_closed: bool,
}

/// Voltages along the chain at an instant.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct ChainVolts {
    /// Across limits and rollout switch together.
    pub whole: f64,
    /// Across the limit's own terminals.
    pub limit: f64,
    /// Across the rollout switch.
    pub rollout: f64,
    /// Across the pressure switch.
    pub switch: f64,
    /// What the valve's relay gets.
    pub relay: f64,
    /// Whether the board sees its limits closed.
    pub limits_seen: bool,
    /// Whether the board sees its pressure switch closed.
    pub switch_seen: bool,
}

impl Contacts {
    /// Moves them by what they sense: temperatures at limit and rollout switch, draft at the switch.
    pub fn sense(
        &mut self,
        chain: &Chain,
        switch: &Switch,
        marks: &Marks,
        limit: f64,
        rollout: f64,
        draft: f64,
    ) {
        let opens = marks.limit_opens - chain.limit_early;
        self.limit_open = match self.limit_open {
            true => limit > opens - LIMIT_DIFFERENTIAL,
            false => limit >= opens,
        } || chain.limit_open;
        self.rollout_open |= chain.rollout_open || rollout >= ROLLOUT_OPENS - chain.rollout_early;
        let closes = marks.switch_closes * (1.0 + switch.drift);
        self.switch_closed = match self.switch_closed {
            true => draft > closes * SWITCH_OPENS,
            false => draft >= closes,
        };
        self.switch_closed = (self.switch_closed && !switch.open) || switch.welded;
    }

    /// The voltages at this control voltage, with the valve's relay loaded by these ohms.
    pub fn volts(self, chain: &Chain, switch: &Switch, control: f64, relay: f64) -> ChainVolts {
        let limit = if self.limit_open { OPEN } else { CLOSED };
        let rollout = if self.rollout_open { OPEN } else { CLOSED };
        let closed = CLOSED + switch.contact_ohms;
        let contact = match (switch.bridged, self.switch_closed) {
            (true, _) => CLOSED,
            (false, true) => closed,
            (false, false) => OPEN,
        };
        let behind_switch = parallel(INPUT, relay);
        let limits = limit + chain.wire_ohms + rollout;
        let behind_limits = parallel(INPUT, contact + behind_switch);
        let amps = control / (limits + behind_limits);
        let back = amps * behind_limits;
        let through = back / (contact + behind_switch);
        let relay = through * behind_switch;
        ChainVolts {
            whole: amps * limits,
            limit: amps * limit,
            rollout: amps * rollout,
            switch: through * contact,
            relay,
            limits_seen: back > SEEN * control,
            switch_seen: relay > SEEN * control,
        }
    }
}

/// What the switches are marked with.
#[derive(Clone, Copy, Debug)]
pub struct Marks {
    /// Temperature at which the limit opens, °F.
    pub limit_opens: f64,
    /// Draft at which the pressure switch closes, in.w.c.
    pub switch_closes: f64,
    /// Draft at which that of the second stage closes, in.w.c.
    pub high_switch_closes: f64,
}

#[cfg(test)]
mod tests {
    use super::*;

    const MARKS: Marks = Marks {
        limit_opens: 160.0,
        switch_closes: 0.6,
        high_switch_closes: 1.2,
    };

    fn sensed(mut contacts: Contacts, switch: &Switch, limit: f64, draft: f64) -> Contacts {
        contacts.sense(&Chain::default(), switch, &MARKS, limit, 80.0, draft);
        contacts
    }

    #[test]
    fn an_open_switch_has_the_volts_across_itself_and_the_others_none() {
        let open = sensed(Contacts::default(), &Switch::default(), 80.0, 0.2);
        let volts = open.volts(&Chain::default(), &Switch::default(), 24.0, OPEN);
        // Common practice: about 24 V across what is open, about nothing across what is closed.
        assert!(volts.switch > 23.0 && volts.whole < 0.5, "{volts:?}");
        assert!(volts.limits_seen && !volts.switch_seen);
    }

    #[test]
    fn behind_an_open_limit_nothing_is_left_to_measure() {
        let open = sensed(Contacts::default(), &Switch::default(), 170.0, 0.2);
        let volts = open.volts(&Chain::default(), &Switch::default(), 24.0, OPEN);
        assert!(
            volts.limit > 23.0 && volts.rollout < 0.1 && volts.switch < 0.1,
            "{volts:?}"
        );
    }

    #[test]
    fn a_burnt_contact_passes_for_closed_until_the_valve_draws_its_current() {
        let burnt = Switch {
            contact_ohms: 80.0,
            ..Switch::default()
        };
        let closed = sensed(Contacts::default(), &burnt, 80.0, 0.9);
        let volts = |relay| closed.volts(&Chain::default(), &burnt, 24.0, relay);
        assert!(
            volts(OPEN).switch < 2.0 && volts(OPEN).switch_seen,
            "{:?}",
            volts(OPEN)
        );
        assert!(
            volts(60.0).switch > 10.0 && !volts(60.0).switch_seen,
            "{:?}",
            volts(60.0)
        );
    }

    #[test]
    fn a_pressure_switch_opens_lower_than_it_closes_and_a_limit_closes_lower_than_it_opens() {
        let sound = Switch::default();
        let closed = sensed(Contacts::default(), &sound, 80.0, 0.61);
        assert!(closed.switch_closed && sensed(closed, &sound, 80.0, 0.55).switch_closed);
        assert!(!sensed(Contacts::default(), &sound, 80.0, 0.55).switch_closed);
        let hot = sensed(Contacts::default(), &sound, 161.0, 0.0);
        assert!(hot.limit_open && sensed(hot, &sound, 140.0, 0.0).limit_open);
        assert!(!sensed(hot, &sound, 125.0, 0.0).limit_open);
    }
}
