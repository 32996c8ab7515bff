import { it } from "vitest";
import { resolveSpec } from "#engine/configuration";
import { buildCandidates } from "#lib/engine/assessment/alternatives-candidates";
import { flexBuildOf } from "#lib/engine/configuration/flex-build";
import { intBelow, seededRandom, unitFromU32 } from "#engine/math";
import { catalog, specOf } from "../demo-catalog";
it("explore", () => {
  const { build } = catalog;
  const r = seededRandom(7);
  const cands = new Map(build.models.map((m) => [m.id, buildCandidates(specOf({ model: m.id }), m, build).candidates]));
  const rows: { k: number; n: number; ok: boolean; cloth: string; metal: boolean; str: boolean; abs: number }[] = [];
  const t0 = performance.now();
  for (let i = 0; i < 1200; i++) {
    const m = build.models[intBelow(r, build.models.length)]!;
    const len = m.lengths[intBelow(r, m.lengths.length)]!;
    const c = cands.get(m.id)![intBelow(r, cands.get(m.id)!.length)]!;
    const k = i < 600 ? 0.62 + 0.083 * unitFromU32(r()) : 0.62 + 0.83 * unitFromU32(r());
    const res = resolveSpec({ ...specOf({ model: m.id }), lengthCm: len.lengthCm, ...c, flexRatio: k }, build);
    if (!res.ok) throw new Error();
    const b = flexBuildOf({ resolved: res.value, lengthCm: len.lengthCm, flexRatio: k, mountOffsetMm: 0 }, build);
    rows.push({ k, n: c.reinforcements.length, ok: b.isReached, cloth: b.build.cloth.laid.bottom.join("+"), metal: c.reinforcements.includes("metal-pair"), str: c.reinforcements.includes("carbon-stringers"), abs: k * (len.lengthCm / m.shape.refLengthCm) ** 2 });
  }
  const share = (x: typeof rows) => `${x.filter((e) => e.ok).length}/${x.length} = ${(x.filter((e) => e.ok).length / x.length).toFixed(3)}`;
  const soft = rows.slice(0, 600); const all = rows.slice(600);
  console.log("soft", share(soft), "n<=1", share(soft.filter((e) => e.n <= 1)), "n<=2", share(soft.filter((e) => e.n <= 2)), "n0", share(soft.filter((e) => e.n === 0)), "nometal", share(soft.filter((e) => !e.metal)), "nometal nostr", share(soft.filter((e) => !e.metal && !e.str)));
  console.log("all", share(all), "n<=1", share(all.filter((e) => e.n <= 1)), "k>.78", share(all.filter((e) => e.k > 0.78)), "k>.9", share(all.filter((e) => e.k > 0.9)), "k>1", share(all.filter((e) => e.k > 1)), "k>1.25", share(all.filter((e) => e.k > 1.25)));
  const by: Record<string, number> = {}; for (const e of all) if (e.ok) by[e.cloth] = (by[e.cloth] ?? 0) + 1; console.log(JSON.stringify(by), (performance.now() - t0) / 1200);
});
