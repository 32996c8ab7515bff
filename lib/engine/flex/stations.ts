/** Where sections are taken: an even grid, finer at the blunt ends, and every place where the build or the core changes. */
import { evenlySpaced, sortedDistinct } from "#engine/math";
import { edgeSpan } from "./local-section";
import type { SkiBuild, ThicknessProfile } from "./types";

/** A sudden change is two stations this far to either side of it, mm. */
const STEP_HALF_WIDTH_MM = 0.01;
/** Extra stations per end, spaced by squares, because the outline is upright at the very end. */
const END_STATIONS = 8;

/**
 * x of the stations, ascending, from 0 to the length. Sudden changes (edge, core, plate and zone ends) appear as a close
 * pair; shoulder, heel, mount and the knots of the core's profile are stations themselves.
 */
export function stationPositions(build: SkiBuild, profile: ThicknessProfile, gridPieces: number): number[] {
  const { shape } = build;
  const even = evenlySpaced(0, shape.lengthMm, gridPieces);
  const first = even[1] ?? shape.lengthMm;
  const ends = evenlySpaced(0, 1, END_STATIONS).map((u) => first * u * u);
  const named = [shape.tipLengthMm, shape.lengthMm - shape.tailLengthMm, build.mountFromTipMm];
  const knots = profile.stations.map((station) => station.xMm);
  const steps = stepPositions(build).flatMap((x) => [x - STEP_HALF_WIDTH_MM, x + STEP_HALF_WIDTH_MM]);
  const all = [...even, ...ends, ...ends.map((x) => shape.lengthMm - x), ...named, ...knots, ...steps];
  return sortedDistinct(
    all.filter((x) => x >= 0 && x <= shape.lengthMm),
    STEP_HALF_WIDTH_MM,
  );
}

/** Where the section changes suddenly, inside the ski. */
export function stepPositions(build: SkiBuild): number[] {
  const edge = edgeSpan(build);
  const steps = [edge.fromMm, edge.toMm, build.coreFromMm, build.coreToMm];
  const { plate } = build;
  if (plate) steps.push(plate.centreMm - plate.lengthMm / 2, plate.centreMm + plate.lengthMm / 2);
  for (const { fromMm, toMm } of build.pockets ?? []) steps.push(fromMm, toMm);
  for (const layer of build.layers) {
    if (layer.role === "core" || layer.role === "base") continue;
    if (layer.extent.kind === "span") steps.push(layer.extent.fromMm, layer.extent.toMm);
    if (layer.extent.kind !== "zone") continue;
    steps.push(build.mountFromTipMm + layer.extent.fromMountMm, build.mountFromTipMm + layer.extent.toMountMm);
  }
  return steps.filter((x) => x > 0 && x < build.shape.lengthMm);
}
