/**
 * The core that gives a ski its flex: at every knot the thickness whose section has the wanted EI, then what the mill and
 * the limits make of it.
 *
 * Validity: each section by itself, so the target's EI(x) is met at every knot that no limit holds. Error: predicted back, the
 * centre spring is within 0.5 % of the wanted ratio unrounded and within 1 % in steps of 0.05 mm.
 */
import { evenlySpaced, findRoot, interpolate } from "#engine/math";
import { bareBuild, sectionsAlong } from "./evaluate";
import { localSection, sectionBendingStiffness } from "./local-section";
import { springTestOf } from "./spring-test";
import { springConstants, withCoreShear } from "./springs";
import { stepPositions } from "./stations";
import type { CoreLimit, CoreLimits, CoreSolution, FlexTarget, SkiBuild, ThicknessProfile } from "./types";

/** Distance of the programme's knots, about, mm. */
const KNOT_SPACING_MM = 20;
/** Knots keep this far from a sudden change of the section, so that the core does not mirror it. */
const STEP_CLEARANCE_MM = 8;
/** Rounding to the mill's step is reported as a limit when it moves the ratio by more than this share. */
const STEP_MATTERS = 0.005;

/** One knot of the core being solved. */
interface Knot {
  readonly xMm: number;
  readonly thicknessMm: number;
}

/**
 * Solves EI(x) = k·(L/Lref)²·EIref(x·Lref/L) knot by knot, without plate and mat; between knots the core is straight.
 * Thickness is kept within the limits, then lowered where the mill could not follow the slope, then rounded to its step.
 * `achievedRatio` compares centre spring constants with those of the target for k = 1 at this length.
 *
 * @throws RangeError for limits that contradict each other or a ratio not above 0
 */
export function solveCore(build: SkiBuild, target: FlexTarget, limits: CoreLimits): CoreSolution {
  checkLimits(limits, target);
  const bare = bareBuild(build);
  const limitedBy = new Set<CoreLimit>();
  const wanted = knotPositions(bare, target).map((x) => solveKnot(bare, target, limits, x, limitedBy));
  const followed = followSlope(wanted, limits.maxSlope, (thicknessMm) => thicknessMm);
  if (followed.some((knot, i) => knot.thicknessMm < (wanted[i]?.thicknessMm ?? 0) - 1e-6)) limitedBy.add("slope");
  const exactRatio = ratioOf(bare, { stations: followed }, target);
  const profile = { stations: toStep(followed, limits) };
  const achievedRatio = limits.stepMm > 0 ? ratioOf(bare, profile, target) : exactRatio;
  if (Math.abs(achievedRatio / exactRatio - 1) > STEP_MATTERS) limitedBy.add("step");
  return { profile, achievedRatio, wantedRatio: target.flexRatio, limitedBy: [...limitedBy] };
}

function checkLimits({ minMm, maxMm, maxSlope, stepMm }: CoreLimits, { flexRatio, reference }: FlexTarget): void {
  if (!(minMm > 0 && minMm <= maxMm)) {
    throw new RangeError(`limits.minMm: ${minMm} mm is not above 0 and up to maxMm, ${maxMm} mm`);
  }
  if (!(maxSlope > 0)) throw new RangeError(`limits.maxSlope: ${maxSlope} is not above 0`);
  if (!(stepMm >= 0)) throw new RangeError(`limits.stepMm: ${stepMm} mm is below 0`);
  if (!(flexRatio > 0)) throw new RangeError(`target.flexRatio: ${flexRatio} is not above 0`);
  if (reference.stations.length < 2) throw new RangeError("target.reference.stations: at least 2 are needed");
}

/** EI wanted at x for a ratio of 1, N·mm². */
function targetStiffness({ reference }: FlexTarget, lengthMm: number, xMm: number): number {
  const scale = lengthMm / reference.lengthMm;
  const xs = reference.stations.map((station) => station.xMm);
  const values = reference.stations.map((station) => station.bendingStiffnessNmm2);
  return scale ** 2 * interpolate(xs, values, xMm / scale);
}

/** Even knots over the wood, first and last at its ends, none beside a sudden change of the build or the reference. */
function knotPositions(build: SkiBuild, { reference }: FlexTarget): number[] {
  const { coreFromMm, coreToMm } = build;
  const pieces = Math.ceil((coreToMm - coreFromMm) / KNOT_SPACING_MM);
  const scale = build.shape.lengthMm / reference.lengthMm;
  const referenceSteps = reference.stations
    .filter((station, i) => station.xMm - (reference.stations[i - 1]?.xMm ?? Number.NEGATIVE_INFINITY) < 0.1)
    .map((station) => station.xMm * scale);
  const steps = [...stepPositions(build), ...referenceSteps];
  const even = evenlySpaced(coreFromMm, coreToMm, pieces);
  return even.filter((x, i) => {
    const isEnd = i === 0 || i === pieces;
    return isEnd || steps.every((step) => Math.abs(step - x) > STEP_CLEARANCE_MM);
  });
}

function solveKnot(
  build: SkiBuild,
  target: FlexTarget,
  { minMm, maxMm }: CoreLimits,
  xMm: number,
  limitedBy: Set<CoreLimit>,
): Knot {
  const section = localSection(build, xMm);
  const wanted = target.flexRatio * targetStiffness(target, build.shape.lengthMm, xMm);
  const offsetMm = build.coreOffsetMm ?? 0;
  const excess = (thicknessMm: number) => sectionBendingStiffness(section, thicknessMm + offsetMm) / wanted - 1;
  if (excess(minMm) >= 0) {
    if (excess(minMm) > 1e-6) limitedBy.add("minimum-thickness");
    return { xMm, thicknessMm: minMm };
  }
  if (excess(maxMm) <= 0) {
    if (excess(maxMm) < -1e-6) limitedBy.add("maximum-thickness");
    return { xMm, thicknessMm: maxMm };
  }
  return { xMm, thicknessMm: findRoot(excess, minMm, maxMm, 1e-6) };
}

/** Lowers knots until no two neighbours differ by more than the slope allows; `settle` puts a lowered knot on the step. */
function followSlope(knots: readonly Knot[], maxSlope: number, settle: (thicknessMm: number) => number): Knot[] {
  const sweep = (list: readonly Knot[]): Knot[] => {
    const done: Knot[] = [];
    for (const knot of list) {
      const last = done.at(-1);
      const highest = last ? last.thicknessMm + maxSlope * Math.abs(knot.xMm - last.xMm) : Number.POSITIVE_INFINITY;
      done.push(knot.thicknessMm > highest ? { ...knot, thicknessMm: settle(highest) } : knot);
    }
    return done.reverse();
  };
  return sweep(sweep(knots));
}

function toStep(knots: readonly Knot[], { minMm, maxMm, maxSlope, stepMm }: CoreLimits): Knot[] {
  if (stepMm === 0) return [...knots];
  // Steps are counted in whole numbers, so that 11.4 stays 11.4.
  const perMm = 1 / stepMm;
  const inSteps = (steps: number) => Math.round((steps / perMm) * 1e6) / 1e6;
  const lowest = Math.ceil(minMm * perMm - 1e-9);
  const highest = Math.floor(maxMm * perMm + 1e-9);
  const rounded = knots.map(({ xMm, thicknessMm }) => ({
    xMm,
    thicknessMm: inSteps(Math.min(highest, Math.max(lowest, Math.round(thicknessMm * perMm)))),
  }));
  return followSlope(rounded, maxSlope, (thicknessMm) =>
    inSteps(Math.max(lowest, Math.floor(thicknessMm * perMm + 1e-9))),
  );
}

/** Centre spring constant of the build over that of the target at a ratio of 1. */
function ratioOf(build: SkiBuild, profile: ThicknessProfile, target: FlexTarget): number {
  const test = springTestOf(build);
  const built = sectionsAlong(build, profile, 60);
  const xs = built.map((station) => station.xMm);
  const builtSpring = withCoreShear(
    springConstants(
      xs,
      built.map((station) => station.bendingStiffnessNmm2),
      test,
    ),
    xs,
    built.map((station) => station.coreShearStiffnessN),
    test,
  );
  const scale = build.shape.lengthMm / target.reference.lengthMm;
  const wantedSpring = springConstants(
    target.reference.stations.map((station) => station.xMm * scale),
    target.reference.stations.map((station) => station.bendingStiffnessNmm2 * scale ** 2),
    test,
  );
  return builtSpring.springCentreNPerMm / wantedSpring.springCentreNPerMm;
}
