import { appendFileSync } from "node:fs";
import { it } from "vitest";
import { loadCatalog } from "#catalog";
import { demoSeason, season } from "../../support/season";

it("probe", { timeout: 3_600_000 }, () => {
  const { floor } = loadCatalog();
  const loads = (process.env["LOADS"] ?? "1").split(",").map(Number);
  const runs = Number(process.env["RUNS"] ?? 60);
  const n = Number(process.env["N"] ?? 4);
  for (const load of loads) {
    const began = performance.now();
    const orders = Array.from(
      { length: n },
      (_, i) => season({ ...demoSeason(floor, 1 + i, { load }), runs, askEvery: Number(process.env["ASK"] ?? 3) }).orders,
    ).flat();
    const pin = (q: number, y: number) => (y > q ? 0.9 * (y - q) : 0.1 * (q - y));
    const mean = (f: (o: (typeof orders)[number]) => number) => orders.reduce((s, o) => s + f(o), 0) / orders.length;
    const own = mean((o) => pin(o.toldDays, o.tookDays));
    let best = [1e9, 0];
    for (let c = 1; c < 80; c++) {
      const l = mean((o) => pin(c, o.tookDays));
      if (l < best[0]!) best = [l, c];
    }
    const perSeason = new Map<string, typeof orders>();
    for (const o of orders) { const k = o.pairId.split("-")[0]!; perSeason.set(k, [...(perSeason.get(k) ?? []), o]); }
    let [a, b2, n2] = [0, 0, 0];
    for (const os of perSeason.values()) {
      let bst = 1e9;
      for (let c = 1; c < 80; c++) bst = Math.min(bst, os.reduce((s, o) => s + pin(c, o.tookDays), 0));
      a += os.reduce((s, o) => s + pin(o.toldDays, o.tookDays), 0); b2 += bst; n2 += os.length;
    }
    appendFileSync("/tmp/learn/probe.txt", `   per season: own ${(a / n2).toFixed(3)} best const each ${(b2 / n2).toFixed(3)}\n`);
    const shift = [-3, -2, -1, 0, 1, 2, 3].map((d) =>
      [d, mean((o) => pin(o.toldDays + d, o.tookDays)).toFixed(3)].join(":"),
    );
    appendFileSync(
      "/tmp/learn/probe.txt",
      `load ${load} runs ${runs} n ${n}: orders ${orders.length} own ${own.toFixed(3)} const ${best[0]!.toFixed(3)} at ${best[1]} kept ${mean((o) => (o.isKept ? 1 : 0)).toFixed(3)} p50 ${mean((o) => (o.isByP50 ? 1 : 0)).toFixed(3)} toldshares ${mean((o) => o.toldShares.p50).toFixed(3)} ${mean((o) => o.toldShares.p90).toFixed(3)} told ${mean((o) => o.toldDays).toFixed(2)} took ${mean((o) => o.tookDays).toFixed(2)} shifts ${shift.join(" ")} ${((performance.now() - began) / 1000).toFixed(0)} s\n`,
    );
  }
});
