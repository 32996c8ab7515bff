import { appendFileSync } from "node:fs";
import { it } from "vitest";
import { loadCatalog } from "#catalog";
import { floorWithBook, learnFloor } from "#engine/floor-learning";
import { demoSeason, season } from "../../support/season";

it("probe", { timeout: 3_600_000 }, () => {
  const { floor, floorLearning } = loadCatalog();
  const n = Number(process.env["N"] ?? 4);
  const worlds = {
    rework: { ...floor, rework: floor.rework.map((l) => ({ ...l, probability: l.probability * 3 })) },
    shocks: { ...floor, sharedShock: { ...floor.sharedShock, delayWorkingDays: { low: 4, high: 24 } } },
    plain: floor,
  };
  for (const name of (process.env["WORLDS"] ?? "rework,shocks").split(",") as (keyof typeof worlds)[]) {
    const world = worlds[name];
    let [kept0, n0, kept1, n1, p501] = [0, 0, 0, 0, 0];
    for (let seed = 1; seed <= n; seed++) {
      const first = season({ ...demoSeason(floor, seed, { world }), askEvery: 4 });
      const learnt = learnFloor(floor, first.history, floorLearning, "FB-1");
      const b = learnt.proposal;
      const after = season({ ...demoSeason(floorWithBook(floor, b), seed + 500, { world }), askEvery: 4 });
      kept0 += first.orders.filter((o) => o.isKept).length;
      n0 += first.orders.length;
      kept1 += after.orders.filter((o) => o.isKept).length;
      p501 += after.orders.filter((o) => o.isByP50).length;
      n1 += after.orders.length;
      const ratios = learnt.stations.map((s) => (s.learntMeanMinutes / s.assumedMeanMinutes).toFixed(2)).join(" ");
      appendFileSync(
        "/tmp/learn/learn.txt",
        `${name} seed ${seed} before ${(kept0 / n0).toFixed(3)} after ${(kept1 / n1).toFixed(3)} p50 ${(p501 / n1).toFixed(3)} n ${n1} rework ${b.rework.map((r) => r.probability)} press ${b.pressDayLostProbability} shock ${JSON.stringify(b.sharedShock)} seen ${JSON.stringify(learnt.shocks.standstills.map((s) => s.workingDays))}/${learnt.shocks.trials.toFixed(1)} week ${b.weekPaceLogSd} left ${learnt.leftOut.length} st ${ratios}\n`,
      );
    }
  }
});
