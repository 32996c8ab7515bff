import { describe, it } from "vitest";
import { expectIn } from "./expect-in";
import { type OpenSystem, simulated, type Visit } from "./open-system";
import { average, type Draw, exponential, lognormal } from "./simulate";

describe("work that is done again", () => {
  // Geometric number of passes, mean 1/(1 − p), variance p/(1 − p)²; passes of mean m and variance v take m/(1 − p) with the
  // variance v/(1 − p) + m² p/(1 − p)² (Wald's identities). Passes of 2 with variance 0.36, lognormal.
  it.for([
    [0.02, 1.02040816327, 0.0208246563932, 2.04081632653, 0.450645564348],
    [0.05, 1.05263157895, 0.0554016620499, 2.10526315789, 0.60055401662],
    [0.08, 1.08695652174, 0.0945179584121, 2.17391304348, 0.769376181474],
    [0.15, 1.17647058824, 0.207612456747, 2.35294117647, 1.25397923875],
    [0.3, 1.42857142857, 0.612244897959, 2.85714285714, 2.96326530612],
  ] as const)(
    "takes as many passes, and as long, as a chance of %d says",
    ([chance, visits, visitsVar, total, totalVar]) => {
      const system: OpenSystem = {
        servers: [],
        customers: 12_000,
        between: (draw) => exponential(draw, 1),
        visits: [{ time: (draw) => lognormal(draw, 2, 0.09), fails: { chance, backTo: 0 } }],
      };
      const found = simulated(21, system, ({ settled, arrival, end, passes }) => {
        const counts = settled.map((each) => passes(each, 0));
        const times = settled.map((each) => end(each, 0) - arrival(each));
        return {
          visits: average(counts),
          visitsVar: average(counts.map((count) => (count - visits) ** 2)),
          more: average(counts.map((count) => (count > 1 ? 1 : 0))),
          muchMore: average(counts.map((count) => (count > 2 ? 1 : 0))),
          total: average(times),
          totalVar: average(times.map((time) => (time - total) ** 2)),
        };
      });
      expectIn(visits, found.visits, 0.01);
      expectIn(visitsVar, found.visitsVar, 0.1);
      expectIn(chance, found.more, 0.1);
      expectIn(chance ** 2, found.muchMore, 0.5);
      expectIn(total, found.total, 0.01);
      expectIn(totalVar, found.totalVar, 0.05);
    },
  );
});

describe("a network of stations with rework", () => {
  const stations = "corePrep cnc baseCut edgeBond print press trim grind tune finish qc pack".split(" ");
  // Trimming fails in 2 of 100 (all again). The check sends 1 of 100 back to the start, 3 to the grinder and 6 to finishing.
  const expected = [...Array.from({ length: 7 }, () => 1.03174603175), 1.04444444444, 1.04444444444, 1.11111111111];
  const visitsOf = [...expected, 1.11111111111, 1];

  /** Stays by station; the check asks one after another, the later ones of those that are left, in no time. */
  function visits(time?: (station: number) => (draw: Draw) => Draw): readonly Visit[] {
    const stay = (station: number): Visit => (time === undefined ? {} : { station, time: time(station) });
    return [
      ...[0, 1, 2, 3, 4, 5].map(stay),
      { ...stay(6), fails: { chance: 0.02, backTo: 0 } },
      ...[7, 8, 9].map(stay),
      { ...stay(10), fails: { chance: 0.01, backTo: 0 } },
      { fails: { chance: 0.03 / 0.99, backTo: 7 } },
      { fails: { chance: 0.06 / 0.96, backTo: 9 } },
      stay(11),
    ];
  }
  const visitOf = (station: number) => (station <= 10 ? station : station + 2);

  // Traffic equations of an absorbing chain, v = (I − Pᵀ)⁻¹ e (Kemeny & Snell).
  it("visits each as often as the traffic equations say", () => {
    const system: OpenSystem = {
      servers: [],
      customers: 6_000,
      between: (draw) => exponential(draw, 1),
      visits: visits(),
    };
    const found = simulated(22, system, ({ settled, passes }) =>
      Object.fromEntries(
        stations.map((name, station) => [name, average(settled.map((each) => passes(each, visitOf(station))))]),
      ),
    );
    stations.forEach((name, station) => {
      if (name === "pack") return;
      expectIn(visitsOf[station] ?? 0, found[name] ?? { mean: 0, halfWidth: 0 }, 0.004);
    });
  });

  // Jackson 1957, 1963: an open network of exponential stations is as if each were M/M/1 by itself, so a customer stays
  // Σ vᵢ/(μᵢ − λ vᵢ). Loads from 40 to 75 %; one customer a unit of time.
  it("keeps a pair as long as Jackson's theorem says", () => {
    const loads = [0.5, 0.7, 0.4, 0.6, 0.5, 0.75, 0.6, 0.7, 0.5, 0.75, 0.6, 0.4];
    const rates = visitsOf.map((count, station) => count / (loads[station] ?? 1));
    const stay = visitsOf.reduce((sum, count, station) => sum + count / ((rates[station] ?? 0) - count), 0);
    const system: OpenSystem = {
      servers: stations.map(() => 1),
      customers: 10_000,
      between: (draw) => exponential(draw, 1),
      visits: visits((station) => (draw) => exponential(draw, 1 / (rates[station] ?? 1))),
    };
    const found = simulated(23, system, ({ settled, arrival, end }) => ({
      stay: average(settled.map((each) => end(each, 13) - arrival(each))),
    }));
    expectIn(stay, found.stay, 0.04);
  });
});
