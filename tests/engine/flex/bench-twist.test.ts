/** The twist bench's own span against the whole ski, every station solved: the same sum by two grids. */
import { describe, expect, it } from "vitest";
import { solveSpec } from "#engine/configuration";
import { benchTwistNmPerDeg, evaluateFlex, twistBenchNmPerDeg } from "#engine/flex";
import { catalog, specOf } from "../demo-catalog";

const models = catalog.build.models.filter(({ state }) => state === "active");

describe("the twist of the bench's span", () => {
  it.each(models.map(({ id, core }) => [id, core.blend]))(
    "of %s is that of the whole ski within 0.5 %%",
    (model, core) => {
      const solved = solveSpec(specOf({ model, core }), catalog.build);
      if (!solved.ok) throw new Error(JSON.stringify(solved.refusal));
      const { build, core: milled } = solved.value;
      const whole = twistBenchNmPerDeg(build, evaluateFlex(build, milled.profile));
      expect(Math.abs(benchTwistNmPerDeg(build, milled.profile, { gridPieces: 40 }) / whole - 1)).toBeLessThan(0.005);
    },
  );
});
