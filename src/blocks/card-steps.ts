/**
 * The steps of the set-up card: end points with the pinion out of mesh, then the learning run, then the check.
 * Common practice of the trade, no source; the makers' instructions come before any of it, and the card says so.
 */
export interface Step {
  readonly does: string;
  /** What can hurt in this step, said where the hand is. */
  readonly caution?: string;
}

export interface StepList {
  readonly title: string;
  readonly steps: readonly Step[];
}

export function endPointSteps(): StepList {
  return {
    title: "End points, before anything else",
    steps: [
      {
        does: "Slide the motor back until pinion and main gear don't touch. Turn the rotor by hand: the motor must stand still.",
        caution: "With the pinion in mesh a wrong end point spins real blades.",
      },
      { does: "Transmitter on, throttle at the bottom, governor off, throttle curve a straight line from 0 to 100 %." },
      {
        does: "Connect the pack and set the low and high end points as the controller's maker says.",
        caution: "Fingers, sleeves and wires away from the pinion: it turns.",
      },
      {
        does: "Check: motor still at the bottom, full speed only at the very top. Disconnect the pack. Bring the pinion back into mesh.",
      },
    ],
  };
}

export function learningSteps(learn: { throttle: string; headSpeed: string; motorSpeed: string }): StepList {
  return {
    title: "The learning run",
    steps: [
      {
        does: "Machine complete: blades, tail, canopy. Pack full and warm. Governor set to learn, as its maker says.",
        caution:
          "Blades bolted and straight, nobody in the plane of the rotor, everybody well behind you, throttle hold ready.",
      },
      {
        does: `Hold ${learn.throttle} of throttle with light, steady pitch for 15 to 20 seconds. The rotor stays light on its skids.`,
      },
      {
        does: `Expect about ${learn.headSpeed} at the rotor (${learn.motorSpeed} at the motor). Far off? Stop and count teeth, cells and magnets.`,
      },
      { does: "Throttle hold. Wait until the rotor stands before you go near. The reference is stored." },
    ],
  };
}

export function checkSteps(): StepList {
  return {
    title: "Check what it really does",
    steps: [
      {
        does: "Run each mode light on the skids and read the head speed with an optical meter or the controller's display.",
      },
      { does: "Write it down below. More than 3 % off, and the reason is worth finding before you fly." },
      {
        does: "Learn again after any change of motor, cells, gears or blades.",
        caution: "After a change the old throttle values may ask for far too much.",
      },
    ],
  };
}
