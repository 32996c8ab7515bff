/** A build in bending alone: what the solver weighs cores by, without the work that twist takes. */
import { interpolate } from "#engine/math";
import { type LocalSection, sectionBendingStiffness, sectionShearStiffnessN, sectionsOf } from "./local-section";
import { springTestOf } from "./spring-test";
import { springConstants, withCoreShear } from "./springs";
import { stationPositions } from "./stations";
import type { SkiBuild, ThicknessProfile } from "./types";

/** The sections of a build at every station that a core with these knots is looked at, whatever its thickness. */
export interface BendingSections {
  readonly build: SkiBuild;
  readonly xs: readonly number[];
  readonly sections: readonly LocalSection[];
  readonly sectionAt: (xMm: number) => LocalSection;
}

/** As many pieces as `evaluateFlex` takes, so that both say the same. */
const GRID_PIECES = 60;

export function bendingSections(
  build: SkiBuild,
  knotsMm: readonly number[],
  sectionAt = sectionsOf(build),
): BendingSections {
  const knots: ThicknessProfile = { stations: knotsMm.map((xMm) => ({ xMm, thicknessMm: 0 })) };
  const xs = stationPositions(build, knots, GRID_PIECES);
  return { build, xs, sections: xs.map(sectionAt), sectionAt };
}

/** Centre spring constant with this core, N/mm. */
export function centreSpringNPerMm({ build, xs, sections }: BendingSections, profile: ThicknessProfile): number {
  const core = builtCoreAt(build, profile);
  const stiffness = sections.map((section) => sectionBendingStiffness(section, core(section.xMm)));
  const shear = sections.map((section) => sectionShearStiffnessN(section, core(section.xMm) - section.pocketMm));
  const test = springTestOf(build);
  return withCoreShear(springConstants(xs, stiffness, test), xs, shear, test).springCentreNPerMm;
}

/** Thickness of the built core at x: its programme and what the mill is known to leave. */
function builtCoreAt({ coreOffsetMm = 0 }: SkiBuild, { stations }: ThicknessProfile): (xMm: number) => number {
  const xs = stations.map((station) => station.xMm);
  const thickness = stations.map((station) => station.thicknessMm);
  return (xMm) => interpolate(xs, thickness, xMm) + coreOffsetMm;
}
