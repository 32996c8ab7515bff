/**
 * The core that gives a ski its flex: at every knot the thickness whose section has the wanted EI, then what the mill, the
 * bench and the limits make of it.
 *
 * Validity: each section by itself, so the target's EI(x) is met at every knot that no limit holds. Error: predicted back, the
 * centre spring is within 0.5 % of the wanted ratio unrounded and within 1 % in steps of 0.05 mm.
 */
import { evenlySpaced, findRoot, interpolate } from "#engine/math";
import { bendingSections, centreSpringNPerMm } from "./bending-along";
import { floorsAt, type Knot, withEndSheets, withoutRise } from "./core-bench";
import { bareBuild } from "./evaluate";
import { type LocalSection, type SectionsOf, sectionBendingStiffness } from "./local-section";
import { springTestOf } from "./spring-test";
import { springConstants } from "./springs";
import { stepPositions } from "./stations";
import type { CoreLimit, CoreLimits, CoreSolution, FlexTarget, SkiBuild, ThicknessProfile } from "./types";

/** Distance of the programme's knots, about, mm. */
const KNOT_SPACING_MM = 20;
/** Knots keep this far from a sudden change of the section, so that the core does not mirror it. */
const STEP_CLEARANCE_MM = 8;
/** Rounding to the mill's step is reported as a limit when it moves the ratio by more than this share. */
const STEP_MATTERS = 0.005;

/** A floor, a rise or an end's sheet is reported when it moves a section's EI by this share, or a knot by so many mm. */
const FLOOR_MATTERS = 0.005;
const MOVE_MATTERS_MM = 0.25;

/**
 * Solves EI(x) = k·(L/Lref)²·EIref(x·Lref/L) knot by knot, without plate and mat; between knots the core is straight.
 * Thickness is kept within the limits, then as the bench asks (no rise towards an end, ends in sheet thickness), then lowered
 * where the mill could not follow the slope, then rounded to its step. Where the bench's floor makes the ski stiffer, the rest
 * of it is made softer by one share for the whole, as far as the bench's relief goes.
 * `achievedRatio` compares centre spring constants with those of the target for k = 1 at this length.
 *
 * @param sectionAt sections of the build where it is bare already, for whoever evaluates it afterwards
 * @throws RangeError for limits that contradict each other or a ratio not above 0
 */
export function solveCore(
  build: SkiBuild,
  target: FlexTarget,
  limits: CoreLimits,
  sectionAt?: SectionsOf,
): CoreSolution {
  checkLimits(limits, target);
  const bare = sectionAt ? build : bareBuild(build);
  const positions = knotPositions(bare, target);
  const along = bendingSections(bare, positions, sectionAt);
  const floors = floorsAt(positions, limits, build.coreOffsetMm ?? 0);
  const knots = positions.map((xMm, i): OpenKnot => {
    const wantedNmm2 = target.flexRatio * targetStiffness(target, bare.shape.lengthMm, xMm);
    return { xMm, leastMm: floors[i] ?? limits.minMm, section: along.sectionAt(xMm), wantedNmm2 };
  });
  const classThree = classThreeSpring(bare, target);
  const offsetMm = build.coreOffsetMm ?? 0;
  const ratioOf = (core: readonly Knot[]) => centreSpringNPerMm(along, { stations: stationsOf(core) }) / classThree;
  const at = (share: number, between?: Bracket): Followed => {
    const found = follow(knots, share, offsetMm, limits, between);
    return { ...found, ratio: ratioOf(found.core) };
  };
  const followed = relieved(at, target, limits);
  const core = toStep(followed.core, limits);
  const achievedRatio = limits.stepMm > 0 ? ratioOf(core) : followed.ratio;
  const stepMatters = Math.abs(achievedRatio / followed.ratio - 1) > STEP_MATTERS;
  return {
    profile: { stations: stationsOf(core) },
    achievedRatio,
    wantedRatio: target.flexRatio,
    limitedBy: stepMatters ? [...followed.limitedBy, "step"] : followed.limitedBy,
  };
}

/** A knot before its thickness is known. */
interface OpenKnot {
  readonly xMm: number;
  readonly leastMm: number;
  readonly section: LocalSection;
  /** EI wanted at the ordered ratio. */
  readonly wantedNmm2: number;
}

interface Followed {
  /** As each section asks, before bench and slope. */
  readonly wanted: readonly Knot[];
  readonly core: readonly Knot[];
  readonly limitedBy: readonly CoreLimit[];
  readonly ratio: number;
}

/** Cores between which a third one lies, knot by knot: thick for more stiffness, thin for less. */
interface Bracket {
  readonly thick: readonly Knot[];
  readonly thin?: readonly Knot[];
}

function stationsOf(knots: readonly Knot[]): ThicknessProfile["stations"] {
  return knots.map(({ xMm, thicknessMm }) => ({ xMm, thicknessMm }));
}

/** The core for `share` of the wanted stiffness at every knot, within limits, bench and slope. */
function follow(
  knots: readonly OpenKnot[],
  share: number,
  offsetMm: number,
  limits: CoreLimits,
  between?: Bracket,
): Omit<Followed, "ratio"> {
  const limitedBy = new Set<CoreLimit>();
  const wanted = knots.map((knot, i) => {
    const within = { thin: between?.thin?.[i]?.thicknessMm, thick: between?.thick[i]?.thicknessMm };
    return solveKnot(knot, share, offsetMm, limits, limitedBy, within);
  });
  const benched = asBenchAsks(wanted, limits, limitedBy);
  const core = followSlope(benched, limits.maxSlope, (_knot, thicknessMm) => thicknessMm);
  if (core.some((knot, i) => knot.thicknessMm < (benched[i]?.thicknessMm ?? 0) - 1e-6)) limitedBy.add("slope");
  return { wanted, core, limitedBy: [...limitedBy] };
}

/** Relief is sought where the ratio is over by more than this share. */
const RELIEF_FROM = 0.002;

/**
 * Where floors keep a stretch stiffer than wanted the rest is asked for less by one share, until the whole comes to the ratio
 * or the relief is used up; between the two ends the ratio is taken as straight. Without a bench nothing is relieved.
 */
function relieved(
  at: (share: number, between?: Bracket) => Followed,
  { flexRatio }: FlexTarget,
  { bench }: CoreLimits,
): Followed {
  const full = at(1);
  const least = 1 - (bench?.reliefShare ?? 0);
  const over = full.ratio - flexRatio;
  if (least === 1 || over <= RELIEF_FROM * flexRatio) return full;
  const soft = at(least, { thick: full.wanted });
  const under = soft.ratio - flexRatio;
  if (under >= 0) return soft;
  return at(1 - ((1 - least) * over) / (over - under), { thick: full.wanted, thin: soft.wanted });
}

/** The knots as they are where there is no bench to ask. */
function asBenchAsks(knots: readonly Knot[], { bench }: CoreLimits, limitedBy: Set<CoreLimit>): readonly Knot[] {
  if (!bench) return knots;
  const level = withoutRise(knots, bench.bootZone);
  const ended = withEndSheets(level, bench);
  const moved = (from: readonly Knot[], to: readonly Knot[]) =>
    from.some((knot, i) => Math.abs(knot.thicknessMm - (to[i]?.thicknessMm ?? 0)) > MOVE_MATTERS_MM);
  if (moved(knots, level)) limitedBy.add("no-rise");
  if (moved(level, ended)) limitedBy.add("end-sheet");
  return ended;
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
  { xMm, leastMm, section, wantedNmm2 }: OpenKnot,
  share: number,
  offsetMm: number,
  { minMm, maxMm, bench, stepMm }: CoreLimits,
  limitedBy: Set<CoreLimit>,
  within: { readonly thin: number | undefined; readonly thick: number | undefined },
): Knot {
  const wanted = share * wantedNmm2;
  const excess = (thicknessMm: number) => sectionBendingStiffness(section, thicknessMm + offsetMm) / wanted - 1;
  const overAtLeast = excess(leastMm);
  if (overAtLeast >= 0) {
    if (leastMm === minMm && overAtLeast > 1e-6) limitedBy.add("minimum-thickness");
    if (leastMm > minMm && overAtLeast > FLOOR_MATTERS) limitedBy.add("boot-floor");
    return { xMm, thicknessMm: leastMm, leastMm };
  }
  const mostMm = within.thick ?? maxMm;
  const overAtMost = excess(mostMm);
  if (overAtMost <= 0) {
    if (mostMm === maxMm && overAtMost < -1e-6) limitedBy.add("maximum-thickness");
    return { xMm, thicknessMm: mostMm, leastMm };
  }
  const fromMm = within.thin !== undefined && excess(within.thin) < 0 ? within.thin : leastMm;
  // With a bench a step of the mill hides what lies far below it.
  const tolerance = bench && stepMm > 0 ? stepMm / 100 : 1e-6;
  return { xMm, thicknessMm: findRoot(excess, fromMm, mostMm, tolerance), leastMm };
}

/** Lowers knots until no two neighbours differ by more than the slope allows; `settle` puts a lowered knot on the step. */
function followSlope(
  knots: readonly Knot[],
  maxSlope: number,
  settle: (knot: Knot, thicknessMm: number) => number,
): Knot[] {
  const sweep = (list: readonly Knot[]): Knot[] => {
    const done: Knot[] = [];
    for (const knot of list) {
      const last = done.at(-1);
      const highest = last ? last.thicknessMm + maxSlope * Math.abs(knot.xMm - last.xMm) : Number.POSITIVE_INFINITY;
      done.push(knot.thicknessMm > highest ? { ...knot, thicknessMm: settle(knot, highest) } : knot);
    }
    return done.reverse();
  };
  return sweep(sweep(knots));
}

/** With a bench the ends keep the thickness of their sheets. */
function toStep(knots: readonly Knot[], { maxMm, maxSlope, stepMm, bench }: CoreLimits): readonly Knot[] {
  if (stepMm === 0) return knots;
  // Steps are counted in whole numbers, so that 11.4 stays 11.4.
  const perMm = 1 / stepMm;
  const inSteps = (steps: number) => Math.round((steps / perMm) * 1e6) / 1e6;
  const lowest = ({ leastMm }: Knot) => Math.ceil(leastMm * perMm - 1e-9);
  const highest = Math.floor(maxMm * perMm + 1e-9);
  const rounded = knots.map((knot, i) => {
    const isEnd = i === 0 || i === knots.length - 1;
    if (bench && isEnd) return knot;
    const steps = Math.min(highest, Math.max(lowest(knot), Math.round(knot.thicknessMm * perMm)));
    return { ...knot, thicknessMm: inSteps(steps) };
  });
  return followSlope(rounded, maxSlope, (knot, thicknessMm) =>
    inSteps(Math.max(lowest(knot), Math.floor(thicknessMm * perMm + 1e-9))),
  );
}

/** Centre spring constant of the target for a ratio of 1 at this length, N/mm. */
function classThreeSpring(build: SkiBuild, { reference }: FlexTarget): number {
  const scale = build.shape.lengthMm / reference.lengthMm;
  return springConstants(
    reference.stations.map((station) => station.xMm * scale),
    reference.stations.map((station) => station.bendingStiffnessNmm2 * scale ** 2),
    springTestOf(build),
  ).springCentreNPerMm;
}
