/** One set of choices worked out: spec, core, stiffness, price. What a way out of a conflict changes is the difference of two. */
import {
  completeSpec,
  type FlexRefusal,
  nearestBuild,
  type PairSpec,
  type ResolvedSpec,
  resolveSpec,
  type SolvedSpec,
  type SpecDefaults,
} from "#engine/configuration";
import { type Price, priceSpec } from "#engine/pricing";
import { accept, type Outcome, type Refusal } from "#engine/units";
import type { EngineCatalog, SheetChoices, WayEffect } from "./types";

export interface WorkedOut {
  readonly spec: PairSpec;
  readonly resolved: ResolvedSpec;
  /** Of the build nearest to the flex, whether it reaches it or not. */
  readonly solved: SolvedSpec;
  /** Why the shop does not build this flex; null where it does. Worked out when it is asked for. */
  readonly whyNot: (() => FlexRefusal) | null;
  readonly price: Outcome<Price>;
}

/** @returns what the choices come to, or the first of them that this catalogue does not hold */
export function workOut(
  choices: SheetChoices,
  defaults: SpecDefaults,
  catalog: EngineCatalog,
): Outcome<WorkedOut, Refusal> {
  const spec = completeSpec(choices, defaults, catalog.build);
  if (!spec.ok) return spec;
  const resolved = resolveSpec(spec.value, catalog.build);
  if (!resolved.ok) return resolved;
  const nearest = nearestBuild(spec.value, catalog.build);
  if (!nearest.ok) return nearest;
  const { solved, isReached, whyNot } = nearest.value;
  const price = priceSpec(spec.value, catalog.priceBook, catalog.build, {
    destination: choices.destination ?? "home",
    isOtherCloth: !solved.cloth.isOwn,
    ...(choices.discounts === undefined ? {} : { discounts: choices.discounts }),
  });
  return accept({ spec: spec.value, resolved: resolved.value, solved, whyNot: isReached ? null : whyNot, price });
}

/** What taking a way changes, or nothing when one of the two has no price. */
export function effectOf(now: WorkedOut, then: WorkedOut): WayEffect | undefined {
  if (!now.price.ok || !then.price.ok) return undefined;
  const spring = (worked: WorkedOut) => worked.solved.flex.springCentreNPerMm;
  return {
    priceCents: then.price.value.totalCents - now.price.value.totalCents,
    massG: 2000 * (then.solved.flexWithPlate.massKg - now.solved.flexWithPlate.massKg),
    stiffnessPercent: 100 * (spring(then) / spring(now) - 1),
  };
}

/** Without bench rules a core at its limits may miss the ordered flex by the bench's tolerance between twins, 3 %, and no more. */
const REACHED_WITHIN = 0.03;

export function reachesFlex({ solved: { core }, whyNot }: WorkedOut, { build }: EngineCatalog): boolean {
  if (build.rules.bench) return whyNot === null;
  return Math.abs(core.achievedRatio / core.wantedRatio - 1) <= REACHED_WITHIN;
}
