import { describe, expect, it } from "vitest";
import { expectIn } from "./expect-in";
import { type OpenSystem, simulated } from "./open-system";
import { average, dispatched, erlang, exponential } from "./simulate";

describe("a press that waits for full loads", () => {
  // Hopp & Spearman, Factory Physics (3rd ed.) ch. 9, parallel batching: loads of k wait (k − 1)/(2 ra) to be full on average,
  // and the press is used ra t/k. The queue of loads is E/G/1; its wait is exact by the roots of αᵏB*(s) = (α − s)ᵏ (Kleinrock
  // vol. 1 ch. 8; own computation), where the book's VUT says 2.53, 3.50 and 2.76 hours. Arrivals of scv 1/phases.
  it.for([
    { rate: 0.5, phases: 1, load: 2, hours: 3, cycles: 16, used: 0.75, full: 1, queue: 2.2323505541, vut: 2.53125 },
    { rate: 0.8, phases: 1, load: 3, hours: 3, cycles: 4, used: 0.8, full: 1.25, queue: 3.0484688629, vut: 3.5 },
    { rate: 1, phases: 2, load: 4, hours: 3.5, cycles: 10, used: 0.875, full: 1.5, queue: 2.2342908173, vut: 2.75625 },
  ])("of $load presses as the book says at $rate an hour", ({ rate, phases, load, hours, cycles, ...expected }) => {
    const system: OpenSystem = {
      servers: [1],
      customers: 16_000,
      together: load,
      between: (draw) => erlang(draw, 1 / rate, phases),
      visits: [{ station: 0, time: (draw) => erlang(draw, hours, cycles) }],
    };
    const found = simulated(11, system, (passage) => {
      const { settled, arrivalsOf, arrival, start, end } = passage;
      const full = settled.map((each) => average(arrivalsOf(each).map((time) => arrival(each) - time)));
      const pressed = settled.reduce((sum, each) => sum + end(each, 0) - start(each, 0), 0);
      const [first = 0, last = 0] = [settled[0], settled[settled.length - 1]];
      const stays = settled.map((each) => average(arrivalsOf(each).map((time) => end(each, 0) - time)));
      return {
        used: pressed / (arrival(last) - arrival(first)),
        full: average(full),
        queue: average(settled.map((each) => start(each, 0) - arrival(each))),
        stay: average(stays),
      };
    });
    expectIn(expected.used, found.used, 0.01);
    expectIn(expected.full, found.full, 0.01);
    expectIn(expected.queue, found.queue, 0.08);
    expectIn(expected.full + expected.queue + hours, found.stay, 0.05);
    // The book's approximation errs on the safe side, by a quarter at most.
    expect(expected.vut / found.queue.mean).toBeGreaterThan(1);
    expect(expected.vut / found.queue.mean).toBeLessThan(1.25);
  });

  // GI/M/1 (Kleinrock vol. 1 ch. 6): loads of two, exponential pressing at 80 %: the share that waits is the root of
  // σ = A*(μ(1 − σ)) = (α/(α + μ(1 − σ)))², and Wq = σ/(μ(1 − σ)).
  it("waits as GI/M/1 does with exponential pressing", () => {
    const alpha = 1.6;
    let sigma = 0.5;
    for (let i = 0; i < 200; i++) sigma = (alpha / (alpha + 1 - sigma)) ** 2;
    const system: OpenSystem = {
      servers: [1],
      customers: 16_000,
      together: 2,
      between: (draw) => exponential(draw, 1 / alpha),
      visits: [{ station: 0, time: (draw) => exponential(draw, 1) }],
    };
    const { queue, atOnce } = simulated(12, system, ({ settled, start, arrival }) => ({
      queue: average(settled.map((each) => start(each, 0) - arrival(each))),
      atOnce: average(settled.map((each) => (start(each, 0) === arrival(each) ? 1 : 0))),
    }));
    expectIn(sigma / (1 - sigma), queue, 0.08);
    expectIn(1 - sigma, atOnce, 0.04);
  });
});

describe("a press that changes moulds", () => {
  /** Hours that each job waits: one arrives every 1/rate, the mould changes after every `run` jobs. */
  function waits(rate: number, hours: number, changeover: number, run: number, jobs: number): readonly number[] {
    const minutes = (value: number) => Math.round(value * 60);
    const every = minutes(1 / rate);
    const changeoverMinutes = { A: { B: minutes(changeover) }, B: { A: minutes(changeover) } };
    const found = dispatched(
      {
        resources: [{ id: "press", capacity: 1, changeoverMinutes, initialFamily: "B" }],
        jobs: Array.from({ length: jobs }, (_, j) => ({
          id: `${j}`,
          releaseMinute: j * every,
          operations: [
            { id: "press", resource: "press", minutes: 1, family: Math.floor(j / run) % 2 === 0 ? "A" : "B" },
          ],
        })),
      },
      () => minutes(hours),
    );
    return Array.from(found.start, (start, j) => (start - j * every) / 60);
  }

  // Hopp & Spearman ch. 9: runs between changeovers of more than ra s/(1 − ra t) keep up, shorter ones do not; here the bounds
  // are 0.5 and 1.5. By hand at 0.25 an hour, 3.5 h each and 0.75 h a change: a job alone takes 4.25 h where one comes every 4,
  // so the wait grows by 0.25 h a job; two take 7.75 h of 8, so nobody ever waits more than the change itself.
  it("keeps up with runs of two where the bound is 1.5, and never catches up with runs of one", () => {
    const alone = waits(0.25, 3.5, 0.75, 1, 2000);
    for (const j of [100, 1000, 1999]) expect(alone[j]).toBeCloseTo((alone[0] ?? 0) + 0.25 * j, 9);
    expect(Math.max(...waits(0.25, 3.5, 0.75, 2, 2000))).toBeLessThanOrEqual(0.75);
  });

  it("keeps up with runs of one where the bound is 0.5", () => {
    expect(Math.max(...waits(0.2, 3, 1, 1, 2000))).toBeLessThanOrEqual(1);
  });
});
