import { MessageChannel } from "node:worker_threads";
import { wrap } from "comlink";
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { type FlightRequest, flightOf } from "#flights/flight";
import { defaultMachine } from "#machine/machine";
import type { Flying } from "#worker/fly";

/** The worker's code with one end of a channel in place of a worker's own scope; requests and results are cloned as there. */
const { port1, port2 } = new MessageChannel();

describe("the worker that flies", () => {
  beforeAll(async () => {
    vi.stubGlobal("addEventListener", port2.addEventListener.bind(port2));
    vi.stubGlobal("removeEventListener", port2.removeEventListener.bind(port2));
    vi.stubGlobal("postMessage", port2.postMessage.bind(port2));
    await import("#worker/fly");
    port2.start();
  });
  afterAll(() => {
    port1.close();
    vi.unstubAllGlobals();
  });

  const request: FlightRequest = {
    machine: defaultMachine,
    mode: 1,
    scenario: { kind: "punch" },
    pack: "tired",
    antiWindup: "clamping",
  };

  it("gives the flight that a page would fly itself, traces and words", async () => {
    const remote = wrap<Flying>(port1 as never);
    const result = await remote.fly(request);
    const own = flightOf(request);
    if (!result.ok || !own.ok) throw new Error("not flown");
    expect(result.events).toEqual(own.events);
    expect(result.end).toEqual(own.end);
    expect(result.trace.time).toBeInstanceOf(Float64Array);
    for (const [name, column] of Object.entries(result.trace)) {
      // The trace that was handed over left this thread for good: one flown anew stands beside it.
      expect([name, column.length]).toEqual([name, result.trace.time.length]);
      expect(column.every(Number.isFinite)).toBe(true);
    }
    const impossible = { ...request, mode: 99 };
    expect(await remote.fly(impossible)).toEqual({ ok: false, why: "This machine has no such flight mode." });
  });
});
