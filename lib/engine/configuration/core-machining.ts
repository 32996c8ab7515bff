/**
 * The core as the router cuts it, seen on its upper face, which lies at z = 0: the wood between its sidewalls, and every pocket
 * with where it lies and how deep it goes. Corners of pockets are sharp here; the cutter rounds them.
 */
import { type SkiBuild, woodHalfWidthMm } from "#engine/flex";
import { type DrawnOutline, machineOutline, type OutlineDrawing, type OutlinePoint } from "#engine/geometry";
import { type MilledPocket, milledPocket } from "./core-mass";
import type { BuildRules } from "./types";

/** A pocket in the upper face of a core. */
export interface CorePocket extends MilledPocket {
  readonly name: "plate-pocket" | "core-pocket-fore" | "core-pocket-aft";
}

/** The plate's pocket first, then the lightening ones; empty for a core with neither. */
export function corePockets(build: SkiBuild, rules: Pick<BuildRules, "plate">): readonly CorePocket[] {
  const { plate, pockets = [] } = build;
  return [
    ...(plate ? [{ name: "plate-pocket" as const, ...milledPocket(plate, rules) }] : []),
    ...pockets.map((pocket, index) => ({
      name: index === 0 ? ("core-pocket-fore" as const) : ("core-pocket-aft" as const),
      ...pocket,
    })),
  ];
}

/** Everything that the router cuts out of the blank of one core; L and R are alike. */
export function coreMachining(title: string, build: SkiBuild, rules: Pick<BuildRules, "plate">): OutlineDrawing {
  const { shape, mountFromTipMm } = build;
  return {
    title,
    outlines: [
      { layer: "wood", outline: woodOutline(build) },
      ...corePockets(build, rules).map(({ name, fromMm, toMm, widthMm, depthMm }): DrawnOutline => {
        const halfWidthMm = widthMm / 2;
        const outline = [fromMm, toMm].map((xMm) => ({ xMm, halfWidthMm }));
        return { layer: name, outline, depthMm };
      }),
    ],
    marks: [{ layer: "mount", xMm: mountFromTipMm, halfWidthMm: shape.waistWidthMm / 2 }],
  };
}

function woodOutline(build: SkiBuild): readonly OutlinePoint[] {
  const { coreFromMm, coreToMm } = build;
  const between = machineOutline(build.shape)
    .map(({ xMm }) => xMm)
    .filter((xMm) => xMm > coreFromMm && xMm < coreToMm);
  return [coreFromMm, ...between, coreToMm].map((xMm) => ({ xMm, halfWidthMm: woodHalfWidthMm(build, xMm) }));
}
