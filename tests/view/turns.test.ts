import { describe, expect, it, vi } from "vitest";
import { turnsOn } from "#view/turns";

/** A clock of frames that the test moves on. */
function clock() {
  let time = 0;
  let calls: ((time: number) => void)[] = [];
  return {
    next: (call: (time: number) => void) => void calls.push(call),
    /** The next frame, so many ms later. */
    frame(after: number) {
      time += after;
      const now = calls;
      calls = [];
      for (const call of now) call(time);
    },
    get booked() {
      return calls.length;
    },
  };
}

describe("what may wait for its turn", () => {
  it("is done at once while frames come in time", () => {
    const time = clock();
    const work = vi.fn();
    const call = turnsOn(time.next)(work);
    for (let i = 0; i < 20; i++) {
      time.frame(17);
      call();
      expect([work.mock.calls.length, time.booked]).toEqual([i + 1, 1]);
    }
  });

  it("is done at once after each rest, however slow the hand, and no frame is asked for in a rest", () => {
    const time = clock();
    const work = vi.fn();
    const call = turnsOn(time.next)(work);
    for (let i = 0; i < 5; i++) {
      call();
      expect(work).toHaveBeenCalledTimes(i + 1);
      time.frame(17);
      time.frame(80);
      expect(time.booked).toBe(0);
      time.frame(80);
    }
  });

  it("waits where frames come late: one in each frame, in turn, and none is forgotten", () => {
    const time = clock();
    const done: string[] = [];
    const turn = turnsOn(time.next);
    const calls = ["table", "list", "marks"].map((name) => turn(() => done.push(name)));
    const change = () => {
      for (const call of calls) call();
    };
    change();
    time.frame(50);
    change();
    expect(done.splice(0)).toEqual(["table", "list", "marks", "table", "list", "marks"]);
    for (let i = 0; i < 7; i++) {
      time.frame(50);
      change();
    }
    expect(done).toEqual(["table", "list", "marks", "table", "list", "marks"]);
    // The hand rests: what still waits comes with the first frame without a change, and then no frame is asked for.
    time.frame(17);
    time.frame(17);
    expect(done.splice(6).sort()).toEqual(["list", "marks", "table"]);
    time.frame(17);
    expect([done.length, time.booked]).toEqual([6, 0]);
    change();
    expect(done).toHaveLength(9);
  });

  it("is not done all at once after a single frame in time, which would make the next one late again", () => {
    const time = clock();
    const done: string[] = [];
    const turn = turnsOn(time.next);
    const calls = ["table", "list", "marks"].map((name) => turn(() => done.push(name)));
    const pass = (after: number) => {
      for (const call of calls) call();
      done.length = 0;
      time.frame(after);
      return done.length;
    };
    expect([17, 50, 17, 50, 17, 17, 17].map(pass)).toEqual([0, 0, 1, 1, 1, 1, 1]);
    // Frames that stay in time end it.
    for (let i = 0; i < 8; i++) pass(17);
    for (const call of calls) call();
    expect(done.slice(-3)).toEqual(["table", "list", "marks"]);
  });

  it("waits for the end of it where nobody can see it", () => {
    const time = clock();
    const done: string[] = [];
    const turn = turnsOn(time.next);
    let inSight = false;
    const calls = [
      turn(
        () => done.push("below"),
        () => inSight,
      ),
      turn(() => done.push("table")),
    ];
    const pass = (after: number) => {
      for (const call of calls) call();
      time.frame(after);
    };
    for (let i = 0; i < 6; i++) pass(50);
    expect(done).toEqual(["below", "table", "below", "table", "table", "table", "table", "table"]);
    inSight = true;
    pass(50);
    expect(done.splice(0).at(-1)).toBe("below");
    inSight = false;
    pass(50);
    time.frame(17);
    expect(done).toEqual(["table", "below"]);
  });

  it("goes on in turn after one that fails", () => {
    const time = clock();
    const work = vi.fn();
    const turn = turnsOn(time.next);
    let bad = () => {};
    const calls = [turn(() => bad()), turn(work)];
    for (let i = 0; i < 4; i++) {
      for (const call of calls) call();
      if (i < 3) time.frame(50);
    }
    const before = work.mock.calls.length;
    bad = () => {
      throw new Error("no");
    };
    expect(() => {
      time.frame(50);
      time.frame(50);
    }).toThrow("no");
    time.frame(50);
    expect(work.mock.calls.length).toBeGreaterThan(before);
  });
});
