//! A motor electrically: whether it turns, how fast, and what it draws.
//!
//! Its speed follows from slip: the more torque its load asks of what it can give, the further it falls behind the field.
//! Torque goes with the square of the voltage (elementary theory of induction machines), and
//! in a motor with a run capacitor with what the second winding gets.

use super::wire::{OPEN, divided};

/// What is wrong with a motor.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Motor {
    /// Whether its winding is open.
    pub winding_open: bool,
    /// Whether its shaft is tight.
    pub seized: bool,
    /// Whether something holds its wheel.
    pub blocked: bool,
    /// Whether it stands still though all that can be measured is right: a centrifugal part, a second winding, a module.
    pub dead: bool,
    /// Share of its run capacitor that is lost.
    pub capacitor_lost: f64,
    /// Friction in its bearings, as a share of the load it was built for.
    pub drag: f64,
    /// Share of its turns that are shorted.
    pub shorted_turns: f64,
    /// Resistance in its wires, Ω.
    pub wire_ohms: f64,
    /// Share of the speed or airflow that its command lacks, where it is commanded.
    pub command_lost: f64,
}

/// Slip at rated load and voltage, share of the field's speed.
pub const SLIP: f64 = 0.08;

/// Share of its rated torque below which a motor does not start its wheel.
const STARTS: f64 = 0.12;

/// What a stalled motor draws, times its rated current.
pub const STALLED: f64 = 2.2;

/// What a motor draws as it starts, times its rated current; makers print three to six, common practice.
pub const STARTING: f64 = 4.0;

/// The slip of a motor at a share of its rated speed.
pub fn speed_to_slip(share: f64) -> f64 {
    1.0 - share * (1.0 - SLIP)
}

/// Share of its torque that a motor has left with a share of its capacitor: to the power 1.5, of the order that weak
/// capacitors slow motors by; from memory.
fn torque_of(capacitor: f64) -> f64 {
    capacitor * capacitor.sqrt()
}

/// Share of its capacitor with which a motor comes to this slip.
pub fn capacitor_for(slip: f64) -> f64 {
    (SLIP / slip).powf(1.0 / 1.5)
}

impl Motor {
    /// Whether it cannot turn whatever it is fed with.
    pub fn is_stuck(&self) -> bool {
        self.winding_open || self.seized || self.blocked || self.dead
    }

    /// Share of its rated speed that an induction motor makes at a share of its rated voltage; 0 where it stands.
    pub fn speed(&self, volts: f64, with_capacitor: bool) -> f64 {
        if self.is_stuck() {
            return 0.0;
        }
        let capacitor = match with_capacitor {
            true => torque_of(1.0 - self.capacitor_lost),
            false => 1.0,
        };
        let torque = volts * volts * capacitor * (1.0 - self.shorted_turns);
        if torque < STARTS * (1.0 + self.drag) {
            return 0.0;
        }
        let slip = SLIP * (1.0 + self.drag) / torque;
        ((1.0 - slip) / (1.0 - SLIP)).clamp(0.0, 1.05)
    }

    /// Its current as a share of the rated one, turning at a share of its speed with a share of its rated flow.
    ///
    /// A wheel that is throttled moves less and takes less; friction and shorted turns take more.
    pub fn current(&self, speed: f64, flow: f64) -> f64 {
        if self.winding_open {
            return 0.0;
        }
        if speed <= 0.0 {
            return STALLED;
        }
        let slow = 1.0 + 1.5 * (1.0 - speed).max(0.0);
        let load = 0.45 + 0.45 * flow;
        load * slow * (1.0 + 0.3 * self.drag) * (1.0 + 1.5 * self.shorted_turns)
    }

    /// What arrives at its plug of some volts at the board, while it draws these amperes.
    pub fn at_plug(&self, board: f64, amps: f64) -> f64 {
        match self.wire_ohms >= OPEN {
            true => 0.0,
            false if amps > 0.0 => divided(board, self.wire_ohms, board.max(1.0) / amps),
            false => board,
        }
    }

    /// Resistance of its run winding, Ω, where a sound one has `sound`.
    pub fn winding_ohms(&self, sound: f64) -> f64 {
        match self.winding_open {
            true => OPEN,
            false => sound * (1.0 - self.shorted_turns),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_sound_motor_makes_its_speed_and_a_little_less_on_low_volts() {
        let motor = Motor::default();
        assert!((motor.speed(1.0, true) - 1.0).abs() < 1e-9);
        // Torque goes with the square of the voltage, so slip at 90 % is 1 / 0.81 of the rated one.
        let expected = (1.0 - SLIP / 0.81) / (1.0 - SLIP);
        assert!((motor.speed(0.9, true) - expected).abs() < 1e-9);
    }

    #[test]
    fn a_weak_capacitor_slows_a_motor_and_a_dead_one_stops_it() {
        let with = |lost| Motor {
            capacitor_lost: lost,
            ..Motor::default()
        };
        let speed = |lost| with(lost).speed(1.0, true);
        // Common practice: within six per cent of its label nobody notices; without it the motor hums.
        assert!(speed(0.06) > 0.98, "{}", speed(0.06));
        assert!(speed(0.06) > speed(0.4) && speed(0.4) > speed(0.6));
        assert_eq!(speed(0.95), 0.0);
        assert_eq!(
            with(0.95).speed(1.0, false),
            1.0,
            "a motor without one does not miss it"
        );
    }

    #[test]
    fn a_throttled_tapped_motor_draws_less() {
        let motor = Motor::default();
        // Common practice: an open door raises the current of a tapped motor, a full filter lowers it.
        assert!(motor.current(1.0, 0.5) < motor.current(1.0, 1.0));
        assert!(
            motor.current(1.0, 1.0) <= 1.0,
            "at the maker's airflow within its plate"
        );
        assert!(motor.current(0.0, 0.0) > 1.5, "stalled");
    }

    #[test]
    fn the_slip_of_a_speed_and_the_capacitor_for_a_slip_are_what_the_motor_makes_of_them() {
        let slip = speed_to_slip(0.8);
        let motor = Motor {
            capacitor_lost: 1.0 - capacitor_for(slip),
            ..Motor::default()
        };
        assert!((motor.speed(1.0, true) - 0.8).abs() < 1e-9);
    }
}
