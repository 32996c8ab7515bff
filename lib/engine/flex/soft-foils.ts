/**
 * Foils of rubber that run the whole ski: what lies outside a foil slips past the rest, in bending and in twist. The two
 * foils of a metal ski cut its section into three parts: outer skin, core with its metal, outer skin.
 */
import { bendingSlipCompliance, coupleStiffnessNmm2, type StiffPart, torsionSlipCompliance } from "#engine/laminate";
import type { StackMoments, StackSum } from "./stack-sum";

/** One foil and what lies outside it; heights from the bottom of its own stack. */
export interface FoilJoint {
  readonly young: StackMoments;
  readonly shear: StackMoments;
  /** G·w of the foil, N/mm, and its thickness. */
  readonly gw: number;
  readonly thicknessMm: number;
}

export type Moments = "young" | "shear";

/** Everything that lies in a stack so far. */
export function momentsOf(sum: StackSum): { readonly young: StackMoments; readonly shear: StackMoments } {
  return { young: { ...sum.young }, shear: { ...sum.shear } };
}

const minus = (x: StackMoments, y: StackMoments): StackMoments => ({ a: x.a - y.a, s: x.s - y.s, i: x.i - y.i });

/** What a stack holds beyond an earlier state of it. */
export function momentsSince(
  sum: StackSum,
  before: { readonly young: StackMoments; readonly shear: StackMoments },
): { readonly young: StackMoments; readonly shear: StackMoments } {
  const now = momentsOf(sum);
  return { young: minus(now.young, before.young), shear: minus(now.shear, before.shear) };
}

const part = ({ a, s }: StackMoments, raisedMm = 0): StiffPart => ({ stiffnessN: a, heightMm: s / a + raisedMm });

/** Joints and parts of one section, from the bottom up. */
export interface FoilStack {
  readonly below?: FoilJoint | undefined;
  readonly above?: FoilJoint | undefined;
}

/**
 * Bending stiffness that slip over the foils takes away, N·mm².
 *
 * @param whole      Young's moments of the section about z = 0
 * @param aboveAtMm  z of the bottom of the upper stack
 * @param halfWaveMm over which the ski is bent
 */
export function bendingLostToFoils(
  { below, above }: FoilStack,
  whole: StackMoments,
  aboveAtMm: number,
  halfWaveMm: number,
): number {
  if (!below && !above) return 0;
  const lowest = below ? part(below.young) : undefined;
  const highest = above ? part(above.young, aboveAtMm) : undefined;
  const middleN = whole.a - (lowest?.stiffnessN ?? 0) - (highest?.stiffnessN ?? 0);
  const middleS = whole.s - momentOf(lowest) - momentOf(highest);
  const middle: StiffPart = { stiffnessN: middleN, heightMm: middleS / middleN };
  const parts = [lowest, middle, highest].filter((each) => each !== undefined);
  const slips = [below, above]
    .filter((foil) => foil !== undefined)
    .map((foil) => bendingSlipCompliance(foil.gw / foil.thicknessMm, halfWaveMm));
  return coupleStiffnessNmm2(parts, [0, 0]) - coupleStiffnessNmm2(parts, slips);
}

const momentOf = (each: StiffPart | undefined) => (each ? each.stiffnessN * each.heightMm : 0);

/** The section in twist: skins under and over the core, which shears between them and is closed by two walls. */
export interface TwistedSection extends FoilStack {
  readonly under: StackMoments;
  readonly over: StackMoments;
  readonly widthMm: number;
  readonly aboveAtMm: number;
  readonly coreMm: number;
  /** G·w of the core without its walls, N/mm. */
  readonly coreGw: number;
  /** Both sidewalls: thickness of each and shear modulus; nothing where a spacer fills the end. */
  readonly wall: { readonly thicknessMm: number; readonly shearMpa: number };
}

/** Torsional stiffness that shear of core, walls and foils takes away from 4b/d66, N·mm². */
export function torsionLost(section: TwistedSection): number {
  const { below, above, under, over, widthMm, aboveAtMm, coreMm, coreGw, wall } = section;
  if (!(under.a > 0 && over.a > 0 && widthMm > 0 && coreMm > 0)) return 0;
  const innerUnder = below ? minus(under, below.shear) : under;
  const innerOver = above ? minus(over, above.shear) : over;
  if (!(innerUnder.a > 0 && innerOver.a > 0)) return 0;
  const coreWidthMm = Math.max(1e-6, widthMm - 2 * wall.thicknessMm);
  const joint = (lowerN: number, upperN: number, jointNPerMm3: number, wallNPerMm2: number) =>
    torsionSlipCompliance({ lowerN, upperN, widthMm, jointNPerMm3, wallNPerMm2 });
  const foil = ({ gw, thicknessMm }: FoilJoint) => gw / widthMm / thicknessMm;
  const outerUnder = below ? [part(below.shear)] : [];
  const outerOver = above ? [part(above.shear, aboveAtMm)] : [];
  const parts = [...outerUnder, part(innerUnder), part(innerOver, aboveAtMm), ...outerOver];
  const lowerN = under.a;
  const upperN = over.a;
  const slips = [
    ...(below ? [joint(below.shear.a, innerUnder.a + upperN, foil(below), 0)] : []),
    joint(lowerN, upperN, coreGw / coreWidthMm / coreMm, (wall.shearMpa * wall.thicknessMm) / coreMm),
    ...(above ? [joint(innerOver.a + lowerN, above.shear.a, foil(above), 0)] : []),
  ];
  return 4 * (coupleStiffnessNmm2(parts, [0, 0, 0]) - coupleStiffnessNmm2(parts, slips));
}
