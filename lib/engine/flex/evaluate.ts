/**
 * A ski, built with a given core, as a beam: stations, mass, balance point and spring constants.
 *
 * Error: of the numbers themselves below 0.1 % with the default grid, second order in the station spacing; of a real ski as
 * large as that of its materials (spread.ts says how large) and of what measured pairs have not yet taught.
 */
import { interpolate } from "#engine/math";
import { twistBenchNmPerDeg, twistSpan } from "./behaviour";
import { localSection, type SectionStation, type SectionsOf, stationOf } from "./local-section";
import { springTestOf } from "./spring-test";
import { springConstants, withCoreShear } from "./springs";
import { stationPositions } from "./stations";
import { torsionAlong } from "./torsion-along";
import type { FlexStation, ReferenceCurve, SkiBuild, SkiFlex, SpringTest, ThicknessProfile } from "./types";

export interface FlexOptions {
  /** Pieces of the even grid along the ski; stations at ends, knots and steps come on top. */
  readonly gridPieces?: number;
  /** Where spring constants are read; by default supports at shoulder and heel, load at the mount line. */
  readonly springTest?: SpringTest;
  /** Sections of this very build that are known already. */
  readonly sectionAt?: SectionsOf;
}

const GRID_PIECES = 60;

/**
 * The finished ski, plate and mat included where the build has them. One section per station, EI and mass linear between
 * (error below 0.1 % of spring constants and mass with the default grid). Extra mass is taken to lie like the rest.
 *
 * @throws RangeError for a profile without stations, or a plate that goes through the core
 */
export function evaluateFlex(build: SkiBuild, profile: ThicknessProfile, options: FlexOptions = {}): SkiFlex {
  const sections = sectionsAlong(build, profile, options.gridPieces ?? GRID_PIECES, options.sectionAt);
  const xs = sections.map((station) => station.xMm);
  const stiffness = sections.map((station) => station.bendingStiffnessNmm2);
  const { massG, momentGmm } = massOf(sections);
  const test = options.springTest ?? springTestOf(build);
  const shear = sections.map((station) => station.coreShearStiffnessN);
  const springs = withCoreShear(springConstants(xs, stiffness, test), xs, shear, test);
  let stations: readonly FlexStation[] | undefined;
  return {
    springCentreNPerMm: springs.springCentreNPerMm,
    springForebodyNPerMm: springs.springForebodyNPerMm,
    springAfterbodyNPerMm: springs.springAfterbodyNPerMm,
    balance: springs.balance,
    coreShearPercent: springs.coreShearPercent,
    get stations() {
      stations ??= withTorsion(build, sections);
      return stations;
    },
    massKg: (massG + build.extraMassG) / 1000,
    balancePointMm: momentGmm / massG,
  };
}

/** Twist takes longer than all the rest and many never ask: it is worked out where a station is asked for it. */
function withTorsion(build: SkiBuild, sections: readonly SectionStation[]): readonly FlexStation[] {
  let torsion: ((index: number) => number) | undefined;
  const torsionAt = (i: number) => {
    torsion ??= torsionAlong(build, sections);
    return torsion(i);
  };
  return sections.map(({ coreShearStiffnessN: _shear, thinStripTorsionNmm2: _strip, ...station }, i) => ({
    ...station,
    get torsionalStiffnessNmm2() {
      return torsionAt(i);
    },
  }));
}

/** Solved stations of a bench's span, mm: what a twist reading adds up hardly moves with the section between them. */
const BENCH_STEP_MM = 150;

/**
 * What the twist bench reads, N·m per degree, from the sections of its own span alone: within 0.5 % of `twistBenchNmPerDeg`
 * of the whole ski, and fewer sections are solved. `thin-strip` takes 4b/d66 for every section: only its changes are of use.
 */
export function benchTwistNmPerDeg(
  build: SkiBuild,
  profile: ThicknessProfile,
  options: { readonly gridPieces?: number; readonly sections?: "solved" | "thin-strip" } = {},
): number {
  const { fromMm, toMm } = twistSpan(build);
  const all = sectionsAlong(build, profile, options.gridPieces ?? GRID_PIECES);
  const before = all.findLastIndex(({ xMm }) => xMm <= fromMm);
  const after = all.findIndex(({ xMm }) => xMm >= toMm);
  const sections = all.slice(Math.max(0, before), after < 0 ? all.length : after + 1);
  const solvedAt = options.sections === "thin-strip" ? undefined : torsionAlong(build, sections, BENCH_STEP_MM);
  const stations = sections.map(({ coreShearStiffnessN: _shear, thinStripTorsionNmm2, ...station }, i) => ({
    ...station,
    torsionalStiffnessNmm2: solvedAt?.(i) ?? thinStripTorsionNmm2,
  }));
  return twistBenchNmPerDeg(build, { stations });
}

/** The build as the core is solved for: without plate and mat, which are added afterwards. */
export function bareBuild(build: SkiBuild): SkiBuild {
  const { plate: _, ...rest } = build;
  return { ...rest, layers: build.layers.filter((layer) => layer.role !== "mat") };
}

/** Computed EI of a reference build (class 3 at its reference length) with its designed core: the target of every order. */
export function referenceCurve(build: SkiBuild, designed: ThicknessProfile): ReferenceCurve {
  return {
    lengthMm: build.shape.lengthMm,
    stations: sectionsAlong(bareBuild(build), designed, GRID_PIECES).map(({ xMm, bendingStiffnessNmm2 }) => ({
      xMm,
      bendingStiffnessNmm2,
    })),
  };
}

/** The section at every station; the built core is as thick as its programme plus what the mill is known to leave. */
export function sectionsAlong(
  build: SkiBuild,
  profile: ThicknessProfile,
  gridPieces: number,
  sectionAt: SectionsOf = (xMm) => localSection(build, xMm),
): SectionStation[] {
  const offsetMm = build.coreOffsetMm ?? 0;
  const xs = profile.stations.map((station) => station.xMm);
  const thickness = profile.stations.map((station) => station.thicknessMm);
  return stationPositions(build, profile, gridPieces).map((x) =>
    stationOf(sectionAt(x), interpolate(xs, thickness, x) + offsetMm),
  );
}

/** Mass and its moment about the tip; mass per metre is linear between stations. */
function massOf(stations: readonly Pick<FlexStation, "xMm" | "massGPerM">[]): {
  readonly massG: number;
  readonly momentGmm: number;
} {
  let massG = 0;
  let momentGmm = 0;
  let last: Pick<FlexStation, "xMm" | "massGPerM"> | undefined;
  for (const station of stations) {
    if (last) {
      const perMm = (station.xMm - last.xMm) / 1000;
      massG += (perMm * (last.massGPerM + station.massGPerM)) / 2;
      momentGmm +=
        (perMm *
          (last.xMm * (2 * last.massGPerM + station.massGPerM) +
            station.xMm * (last.massGPerM + 2 * station.massGPerM))) /
        6;
    }
    last = station;
  }
  return { massG, momentGmm };
}
