/** What the transmitter asks for over time: the throttle's orders, and what the pilot does with the collective. */

/** What the throttle asks for from a time on (s); the list of orders rises in time. */
export type Throttle =
  /** The motor is off. */
  | { readonly from: number; readonly kind: "off" }
  /** A duty, without governor; reached evenly over `ramp` seconds. */
  | { readonly from: number; readonly kind: "duty"; readonly duty: number; readonly ramp: number }
  /** A motor speed (rad/s) that the governor holds; `ramp`: soft start, quick return after an autorotation, or at once. */
  | {
      readonly from: number;
      readonly kind: "speed";
      readonly speed: number;
      readonly ramp: "start" | "bail-out" | "none";
    };

/** What the pilot does with the collective from a time on (s); angles in rad. */
export type Collective =
  /** Goes to a collective evenly over so many seconds, and stays. */
  | { readonly from: number; readonly kind: "hold"; readonly collective: number; readonly over: number }
  /** A drawn curve: rising times of the run (s) and the collective there, straight in between, its ends held. */
  | {
      readonly from: number;
      readonly kind: "curve";
      readonly times: ArrayLike<number>;
      readonly collectives: ArrayLike<number>;
    }
  /** Holds a height (m), as a pilot would: see `pilot.ts`. */
  | { readonly from: number; readonly kind: "height"; readonly height: number };
