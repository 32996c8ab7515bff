/** A spec as the floor reads it: mould, way over the stations, what it asks for beyond the ordinary. */
import type { BuildCatalog, PairSpec } from "#engine/configuration";
import { type FloorCatalog, type RouteFacts, type WaitingOn, waitForBought } from "#engine/routing";
import type { IsoDate } from "#engine/units";

export function routeOf(spec: PairSpec, build: BuildCatalog): RouteFacts {
  const model = build.models.find((candidate) => candidate.id === spec.model);
  return {
    kind: "pair",
    mould: mouldOf(spec, build),
    mouldFamily: model?.mouldFamily ?? null,
    extraMinutes: build.reinforcements
      .filter((reinforcement) => spec.reinforcements.includes(reinforcement.id))
      .flatMap((reinforcement) => reinforcement.extraMinutes),
    hasOwnGraphic: needsProof(spec),
  };
}

/**
 * What is bought for this build, and until when its station waits for it.
 *
 * @param orderedOn the day a reinforcement was or is ordered, by its id
 */
export function boughtFor(
  spec: PairSpec,
  build: BuildCatalog,
  floor: FloorCatalog,
  orderedOn: (reinforcement: string) => IsoDate,
): readonly WaitingOn[] {
  return build.reinforcements
    .filter(({ id }) => spec.reinforcements.includes(id))
    .flatMap((part) => waitForBought(part, orderedOn(part.id), floor) ?? []);
}

/** @throws RangeError when the catalogue does not know the model in this length */
export function mouldOf(spec: PairSpec, build: BuildCatalog): string {
  const model = build.models.find((candidate) => candidate.id === spec.model);
  const length = model?.lengths.find((candidate) => candidate.lengthCm === spec.lengthCm);
  if (length === undefined) throw new RangeError(`mouldOf: no mould for ${spec.model} at ${spec.lengthCm} cm`);
  return length.mould;
}

/** A picture or words of the skier's own are proofed; a house graphic is not. */
export function needsProof(spec: PairSpec): boolean {
  return spec.graphic.kind === "own" || spec.graphic.text !== undefined;
}

/** Rights are asked for an uploaded picture only. */
export function needsRights(spec: PairSpec): boolean {
  return spec.graphic.kind === "own";
}
