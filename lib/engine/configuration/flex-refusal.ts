/** When no build of the shop reaches a flex: what stands in the way, and what can be built instead on each side of it. */
import type { CoreLimit } from "#engine/flex";
import { clothTrial, type FlexOrder, flexBuildOf, type Tried } from "./flex-build";
import type { BuildCatalog } from "./types";

/** A flex that can be built beside the one that was asked for. */
export interface NearFlex {
  readonly flexRatio: number;
  /** What keeps this cloth from the asked flex. */
  readonly limitedBy: readonly CoreLimit[];
  readonly cloth: { readonly bottom: readonly string[]; readonly top: readonly string[] };
}

export type FlexRefusal = {
  readonly code: "flex-not-buildable";
  readonly path: "flexRatio";
  readonly model: string;
  readonly lengthCm: number;
  readonly flexRatio: number;
  /** What stands in the way of the build that comes nearest. */
  readonly limitedBy: readonly CoreLimit[];
  /** Null where nothing on that side is built. */
  readonly softer: NearFlex | null;
  readonly stiffer: NearFlex | null;
  /** The nearest lengths of the model in which the asked flex is built. */
  readonly shorterCm: number | null;
  readonly longerCm: number | null;
};

type TriedBefore = Pick<Tried, "cloth" | "core">;

export function flexRefusalOf(
  order: FlexOrder,
  nearest: Pick<Tried, "core">,
  tried: readonly TriedBefore[],
  catalog: BuildCatalog,
): FlexRefusal {
  const { resolved, lengthCm, flexRatio } = order;
  const lengths = resolved.model.lengths.map((each) => each.lengthCm).toSorted((a, b) => a - b);
  const isBuilt = (cm: number) => flexBuildOf({ ...order, lengthCm: cm }, catalog).isReached;
  return {
    code: "flex-not-buildable",
    path: "flexRatio",
    model: resolved.model.id,
    lengthCm,
    flexRatio,
    limitedBy: nearest.core.limitedBy,
    softer: nearFlex(order, tried, "softer", catalog),
    stiffer: nearFlex(order, tried, "stiffer", catalog),
    shorterCm: lengths.toReversed().find((cm) => cm < lengthCm && isBuilt(cm)) ?? null,
    longerCm: lengths.find((cm) => cm > lengthCm && isBuilt(cm)) ?? null,
  };
}

const HUNDREDTHS = 100;
const MOST_TRIES = 16;

/**
 * The nearest ratio in hundredths that one of the cloths reaches on this side. A cloth whose core its limits hold comes to a
 * ratio of its own; asked for that one it comes to a little more, so the ask moves on until both agree.
 */
function nearFlex(
  order: FlexOrder,
  tried: readonly TriedBefore[],
  side: "softer" | "stiffer",
  catalog: BuildCatalog,
): NearFlex | null {
  const isOnSide = (ratio: number) => (side === "softer" ? ratio < order.flexRatio : ratio > order.flexRatio);
  const found = tried
    .filter(({ core }) => isOnSide(core.achievedRatio))
    .flatMap((each) => {
      const flexRatio = reachedBeside(order, each, side, catalog);
      return flexRatio === null ? [] : [{ flexRatio, limitedBy: each.core.limitedBy, cloth: each.cloth }];
    })
    .toSorted((a, b) => Math.abs(a.flexRatio - order.flexRatio) - Math.abs(b.flexRatio - order.flexRatio));
  return found[0] ?? null;
}

function reachedBeside(
  order: FlexOrder,
  { cloth, core }: TriedBefore,
  side: "softer" | "stiffer",
  catalog: BuildCatalog,
): number | null {
  const { share } = catalog.rules.bench?.flexTolerance ?? { share: 0 };
  const step = side === "stiffer" ? 1 : -1;
  let achieved = core.achievedRatio;
  let asked = Math.round(order.flexRatio * HUNDREDTHS);
  const tryAt = clothTrial(order, cloth, catalog);
  for (let tries = 0; tries < MOST_TRIES; tries++) {
    const within = HUNDREDTHS * achieved * (1 - step * share * 0.9);
    asked = step > 0 ? Math.max(asked + 1, Math.floor(within)) : Math.min(asked - 1, Math.ceil(within));
    if (asked <= 0) return null;
    const flexRatio = asked / HUNDREDTHS;
    const next = tryAt(flexRatio);
    if (next.isReached) return flexRatio;
    achieved = next.core.achievedRatio;
  }
  return null;
}
