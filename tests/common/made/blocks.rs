//! The stretches of steps that mixed trees are put together from.

use super::dice::Dice;

/// A stretch of steps: it is entered at its first, and what is in order leads to the next one's.
///
/// In the texts `#` is the circuit, `@` this block's prefix, and `NEXT` where the block leads.
pub struct Block {
    pub steps: usize,
    text: &'static str,
}

/// A part condemned by what was measured on the way, by either of two alternatives.
pub const PROOF: Block = Block {
    steps: 12,
    text: "
  @fresh:
    do: Set the meter to AC volts and prove it on a live source first.
    voids: [supply_#, pressure_#, coil_#, sound_#, anything_set]
    go: @supply
  @supply:
    measure: supply_#
    why: WHY
    source: common_practice
    bands:
      below 20.4 V: { go: @no_supply, means: The valve is not told to open }
      20.4 V to 30 V: @pressure
      above 30 V: { go: @turn_down, means: \"More than the valve can bear!\" }
  @turn_down:
    do: Move the transformer to its next tap.
    voids: [supply_#]
    go: { go: @supply, at_most: 2, then: @no_supply }
  @no_supply:
    verdict: no_supply_#
    because: The voltage across the valve lies outside what a 24 V coil is made for.
    advice: Look at the wires before the board.
  @pressure:
    measure: pressure_#
    cautions: [gas]
    source: common_practice
    bands:
      below plate.inlet_min: { go: @blocked, means: Too little reaches the valve }
      plate.inlet_min to plate.inlet_max: @coil
      above plate.inlet_max: { go: @set, means: Too much reaches the valve }
    unable: @blocked
  @set:
    do: Turn the regulator a quarter turn to the left, and wait for a minute.
    voids: [pressure_#]
    go:
      go: @pressure
      at_most: 2
      then: { go: @blocked, finding: { severity: repair, text: The regulator of tap # does not hold } }
  @blocked:
    verdict: blocked_#
    because: The pressure at the tap is not what the plate asks for.
  @coil:
    measure: coil_#
    title: Is the coil whole?
    source: common_practice
    bands:
      at most 1000 ohm: @sound
      above 1000 ohm: { go: @dead, means: The coil is open }
  @dead:
    verdict: valve_dead_#
    because: It is told to open, has gas in front of it, and does not pass any.
    advice: WHY
  @sound:
    observe: sound_#
    choices:
      clicks: NEXT
      hums: { go: NEXT, finding: { severity: advise, text: Valve # hums } }
      silent: { go: @dead_too, means: Nothing moves inside }
    unsure: @listen
  @listen:
    do: Put an ear to the valve while somebody calls for heat.
    go: { go: @sound, at_most: 1, then: NEXT }
  @dead_too:
    verdict: valve_dead_#
    because: It is told to open, and nothing in it moves.
",
};

/// What depends on the rating plate.
pub const PLATE: Block = Block {
    steps: 6,
    text: "
  @gas:
    plate: gas
    choices:
      natural: @fresh
      propane: @label
  @label:
    do: See that the conversion label is on the furnace.
    go: @fresh
  @fresh:
    do: Put the manometer on the manifold.
    voids: [pressure_#]
    leaves: [tap_#]
    go: @manifold
  @manifold:
    measure: pressure_#
    why: WHY
    source: common_practice
    bands:
      below plate.manifold - 0.3 in.w.c.: { go: @short, means: Under-fired }
      plate.manifold - 0.3 in.w.c. to plate.manifold + 0.3 in.w.c.: NEXT
      above plate.manifold + 0.3 in.w.c.: { go: @over, means: Over-fired }
  @short:
    verdict: blocked_#
    because: The burners get less gas than the plate asks for.
  @over:
    verdict: over_fired
    because: The burners get more gas than the plate asks for.
",
};

/// A worked-out reading, judged by a share of the plate.
pub const RISE: Block = Block {
    steps: 4,
    text: "
  @steady:
    do: Let it run for ten minutes.
    voids: [temperature_rise]
    go: @rise
  @rise:
    measure: temperature_rise
    why: WHY
    source: common_practice
    cautions: [hot_surface]
    bands:
      below 90 % of plate.rise_min: { go: NEXT, finding: { severity: note, text: \"Cold air, and much of it\" } }
      at least 90 % of plate.rise_min, at most plate.rise_max: NEXT
      above plate.rise_max: @air
    unable: NEXT
  @air:
    do: Open the registers and take the filter out.
    voids: [supply_air, return_air]
    minutes: 3
    go: { go: @rise, at_most: 2, then: @short }
  @short:
    verdict: air_short
    because: The air gets warmer than the plate allows.
",
};

/// Things that are only done.
pub const WORK: Block = Block {
    steps: 3,
    text: "
  @off:
    do: Switch the furnace off and wait until the blower stands still.
    leaves: [tap_#]
    go: @mend
  @mend:
    do: WHY
    why: What was loose would come back as another fault.
    go: @on
  @on:
    do: Switch it on again.
    restores: [tap_#]
    go: NEXT
",
};

/// A visit to another tree, given as the circuit.
pub const VISIT: Block = Block {
    steps: 2,
    text: "
  @visit:
    visit: check-#
    returns:
      in_order: NEXT
      set_right: @after
    on_verdict: { go: NEXT, finding: { severity: repair, text: Check # ended in a verdict } }
  @after:
    do: Look whether the complaint has gone.
    go: NEXT
",
};

impl Block {
    /// The block's steps as YAML.
    pub fn write(&self, prefix: &str, circuit: usize, next: &str, dice: &mut Dice) -> String {
        let text = self.text.trim_start_matches('\n');
        text.replace('@', prefix)
            .replace('#', &circuit.to_string())
            .replace("NEXT", next)
            .replace("WHY", dice.pick(&WHYS))
    }

    /// The name of its first step.
    pub fn entry(&self, prefix: &str) -> String {
        let first = self.text.trim_start().split(':').next().unwrap_or_default();
        first.replace('@', prefix)
    }
}

const WHYS: [&str; 5] = [
    "What is in front of the valve is looked at before the valve itself.",
    "A minute with the meter saves a part that was never bad.",
    "The reading that rules out most comes first, and this one is next to nothing to take.",
    "It decides between the wires and what hangs on them.",
    "Without it nobody can tell, whatever it sounds like from outside.",
];
