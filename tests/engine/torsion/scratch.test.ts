import { it } from "vitest";
import { engineCatalog, loadCatalog, priceBookNamed } from "#catalog";
import { solveSpec, type BuildCatalog } from "#engine/configuration";
import { bareBuild, closingForceN, evaluateFlex, skiBehaviour, type SkiBuild } from "#engine/flex";
import { torsionAlong } from "../../../lib/engine/flex/torsion-along";
import { sectionsAlong } from "../../../lib/engine/flex/evaluate";
const loaded = loadCatalog();
const catalog: BuildCatalog = engineCatalog(loaded, priceBookNamed(loaded, "PB-3")).build;
const old: BuildCatalog = { ...catalog, rules: { ...catalog.rules, sections: "thin-skins" } };
const sp = (model: string, lengthCm: number, reinforcements: string[] = []) => {
  const core = catalog.models.find((m) => m.id === model)!.core.blend;
  return { model, lengthCm, core, reinforcements, flexRatio: 1 };
};
const solve = (s: any, c = catalog) => { const r = solveSpec(s, c); if (!r.ok) throw new Error(JSON.stringify(r)); return r.value; };
it("x", () => {
  for (const [m, L] of [["midlow-84", 174], ["midlow-95", 178], ["drifthold-117", 188], ["ridgefold-98", 178], ["kerfline-68",168]] as const) {
    const model = catalog.models.find((x) => x.id.startsWith(m.split("-")[0]!) && x.lengths.some(l=>true) && x.id === m) ;
    if (!model) { console.log(m, "missing", catalog.models.map((x) => x.id).join(" ")); continue; }
    const len = model.lengths.some((l) => l.lengthCm === L) ? L : model.shape.refLengthCm;
    const base = solve(sp(m, len));
    const b0 = solve(sp(m, len), old);
    const bare = bareBuild(base.build);
    console.log(m, len, "twist new", skiBehaviour(bare, base.flex).twistForebodyNmPerDeg.toFixed(3), "old", skiBehaviour(bareBuild(b0.build), b0.flex).twistForebodyNmPerDeg.toFixed(3), "spring", base.flex.springCentreNPerMm.toFixed(4), b0.flex.springCentreNPerMm.toFixed(4), "mass", base.flex.massKg.toFixed(4), b0.flex.massKg.toFixed(4));
    for (const r of catalog.reinforcements) {
      if (model.hasMetal && r.placement.kind === "metal-pair") continue;
      if (!r.forUses.includes(model.use)) continue;
      const w = solve(sp(m, len, [r.id]));
      const wo = solve(sp(m, len, [r.id]), old);
      const t = (x: any) => skiBehaviour(bareBuild(x.build), x.flex).twistForebodyNmPerDeg;
      // EI same core under both theories
      const bNew = bareBuild(w.build);
      const e1 = evaluateFlex(bNew, w.core.profile).springCentreNPerMm, e0 = evaluateFlex({ ...bNew, sections: "thin-skins" }, w.core.profile).springCentreNPerMm;
      console.log("   ", r.id, "twist", (100 * (t(w) / t(base) - 1)).toFixed(1), "old", (100 * (t(wo) / t(b0) - 1)).toFixed(1), "EI plate/moduli", (100 * (e1 / e0 - 1)).toFixed(2));
    }
    const e1 = evaluateFlex(bare, base.core.profile).springCentreNPerMm, e0 = evaluateFlex({ ...bare, sections: "thin-skins" }, base.core.profile).springCentreNPerMm;
    console.log("    none EI plate/moduli", (100 * (e1 / e0 - 1)).toFixed(2));
    const noSteel: SkiBuild = { ...bare, edge: { ...bare.edge, material: { ...bare.edge.material, gxyMpa: 270 } } };
    console.log("    steel", skiBehaviour(bare, evaluateFlex(bare, base.core.profile)).twistForebodyNmPerDeg / skiBehaviour(bare, evaluateFlex(noSteel, base.core.profile)).twistForebodyNmPerDeg - 1);
    for (const p of [60, 120, 240, 480, 960]) { const t0 = performance.now(); const f = closingForceN(bare, base.flex, p); console.log("    closing", p, f.toFixed(3), (performance.now() - t0).toFixed(1), "ms"); }
    // station interpolation
    const secs = sectionsAlong(base.build, base.core.profile, 60);
    const all = torsionAlong(base.build, secs, 0), few = torsionAlong(base.build, secs);
    let worst = 0, at = 0; all.forEach((g, i) => { if (secs[i]!.xMm < 20 || secs[i]!.xMm > secs.at(-1)!.xMm - 20) return; const d = Math.abs(few[i]! / g - 1); if (d > worst) { worst = d; at = secs[i]!.xMm; } });
    let t0 = performance.now(); for (let k = 0; k < 10; k++) torsionAlong(base.build, secs); const msFew = (performance.now() - t0) / 10;
    t0 = performance.now(); torsionAlong(base.build, secs, 0); const msAll = performance.now() - t0;
    t0 = performance.now(); for (let k = 0; k < 10; k++) evaluateFlex(base.build, base.core.profile); const msEval = (performance.now() - t0) / 10;
    t0 = performance.now(); for (let k = 0; k < 10; k++) evaluateFlex({ ...base.build, sections: "thin-skins" }, base.core.profile); const msOld = (performance.now() - t0) / 10;
    console.log("    stations", secs.length, "worst", worst, "at", at, "ms few", msFew.toFixed(2), "all", msAll.toFixed(2), "evaluate", msEval.toFixed(2), "old", msOld.toFixed(2));
  }
});
