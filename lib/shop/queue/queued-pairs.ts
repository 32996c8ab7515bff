/** The open pairs with a specification to plan by: their own, or where that cannot be read the usual one of their mould. */
import problems from "#content/copy/problems.json";
import type { Tx } from "#data/client";
import { UnreadableRow } from "#data/columns";
import { openPairs, type QueuedPairRecord } from "#data/pairs";
import { type BuildCatalog, completeSpec, modelById, modelLength, type PairSpec } from "#engine/configuration";
import { fill } from "#engine/units";
import { releasedCatalog } from "#shop/catalogue/current";

/** What the plan and the queue's pages need of a pair. */
export type PairInQueue = Omit<QueuedPairRecord, "spec" | "unreadable"> & { readonly spec: PairSpec };

/** A pair of the queue; `unreadable` says why its specification is only its model's usual one. */
export type QueuedPair = PairInQueue & Pick<QueuedPairRecord, "unreadable">;

/** Every pair that still needs the floor, in the order it took its place. */
export async function openQueue(client: Tx): Promise<readonly QueuedPair[]> {
  const queued: QueuedPair[] = [];
  for (const pair of await openPairs(client)) queued.push(planned(pair, await buildOf(client, pair)));
  return queued;
}

function planned(pair: QueuedPairRecord, build: BuildCatalog): QueuedPair {
  const { spec, serial } = pair;
  if (spec === null) return { ...pair, spec: usualSpec(pair.mould, build) };
  const model = modelById(build, spec.model);
  if (model.ok && modelLength(model.value, spec.lengthCm).ok) return { ...pair, spec };
  const why = fill(problems.queue.notInCatalogue, { model: spec.model, lengthCm: spec.lengthCm });
  const unreadable = pair.unreadable ?? new UnreadableRow("pairs", serial, "spec", why);
  return { ...pair, spec: usualSpec(pair.mould, build), unreadable };
}

/** The catalogue a pair was ordered from. @throws Error when it is not stored */
export async function buildOf(client: Tx, pair: { readonly releaseHash: string }): Promise<BuildCatalog> {
  const released = await releasedCatalog(client, pair.releaseHash);
  if (released === null) throw new Error(`catalogue release ${pair.releaseHash} is not stored`);
  return released.build;
}

/** Neither decides how long the floor takes. */
const plain = {
  finish: { baseBevelDeg: 0, sideAngleDeg: 0, detuneTipMm: 0, detuneTailMm: 0, structure: "M" },
  mount: { offsetMm: 0 },
} as const;

/** What is ordinarily built in a mould. @throws Error when the catalogue has nothing to build */
function usualSpec(mould: string, build: BuildCatalog): PairSpec {
  const lengths = build.models.flatMap((model) => model.lengths.map((length) => ({ model, length })));
  const found = lengths.find(({ length }) => length.mould === mould) ?? lengths[0];
  if (found === undefined) throw new Error("the catalogue has no model");
  const { model, length } = found;
  const defaults = { ...plain, model: model.id, lengthCm: length.lengthCm, flexRatio: 1 };
  const spec = completeSpec({}, defaults, build);
  if (!spec.ok) throw new Error(`the usual ${model.id} cannot be built: ${spec.refusal.code}`);
  return spec.value;
}
