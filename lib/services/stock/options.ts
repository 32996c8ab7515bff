/** Ways to make a core when stock holds no set for it as ordered: each is matched for real before it is offered. */
import type { Tx } from "#data/client";
import type { PairRecord } from "#data/pairs";
import { freeStrips, type StripRecord, stripsHeldBy } from "#data/strips";
import { blendById, isSameCloth, type PairSpec, type SolvedSpec, solveSpec } from "#engine/configuration";
import { evaluateFlex } from "#engine/flex";
import type { MatchedStrips, StripLimits, StripPosition } from "#engine/matching";
import { type WorkedPair, workedPair } from "#shop/pair/view";
import { openQueue } from "#shop/queue/queued-pairs";
import { isCoreUncut, isStripsShort } from "#shop/stock/is-short";
import { stripLimits, stripNeed } from "#shop/stock/need";
import { firstMatch, type StripCatalog } from "./allocate";
import type { StripOption } from "./views";

export interface WorkedOption {
  readonly option: StripOption;
  /** The set that was found, and where its strips lie; null where nothing is taken now. */
  readonly found: { readonly matched: MatchedStrips; readonly positions: readonly StripPosition[] } | null;
}

export interface WorkedOptions {
  readonly why: MatchedStrips["why"];
  readonly options: readonly WorkedOption[];
}

/** @param slackOf working days in hand of a pair with a promise, for those whose strips could be taken */
export async function workOutOptions(
  client: Tx,
  pair: PairRecord,
  now: Date,
  slackOf: (pairId: string) => number | null,
): Promise<WorkedOptions> {
  const worked = await workedPair(client, pair);
  const { solved, catalog, spec } = worked;
  const lengthMm = solved.build.coreToMm - solved.build.coreFromMm;
  const all = catalog.build.materials.woods.map(({ id }) => id);
  const stock = await freeStrips(client, all, lengthMm);
  const ordered = attempt(spec, solved, catalog, stock, now);
  const why = ordered.matched.why;
  const wait: WorkedOption = { option: { id: "wait", kind: "wait" }, found: null };
  if (ordered.matched.unmet === 0)
    return { why, options: [{ option: { id: "as-ordered", kind: "as-ordered" }, found: ordered }, wait] };
  const short = why.flatMap(({ position }) => (position === undefined ? [] : [position]));
  const positions = short.length > 0 ? short : ordered.positions.map(({ name }) => name);
  const options = [
    ...otherSpecies(worked, positions, stock, now),
    ...otherThickness(worked, stock, now),
    ...(await takeFrom(client, pair, worked, stock, now, slackOf)),
    wait,
  ];
  return { why, options };
}

function attempt(
  spec: PairSpec,
  solved: SolvedSpec,
  { build, parts }: StripCatalog,
  stock: readonly StripRecord[],
  now: Date,
  limits: StripLimits = stripLimits,
) {
  const blend = blendById(build, spec.core);
  if (!blend.ok) throw new RangeError(`strip options: ${spec.core} is no core of the pair's release`);
  const need = stripNeed(spec, solved, blend.value, parts);
  const species = [...new Set(need.positions.flatMap((position) => position.species))];
  const wanted = stock.filter((strip) => species.includes(strip.species));
  const matched = firstMatch(wanted, need, now, limits);
  return { matched, positions: need.positions, targetMpa: need.targetModulusMpa ?? 0 };
}

/** Denser by more than this is told as dense: common practice, no source. */
const denserBy = 1.15;
/** Screws hold in dense wood only: nothing much lighter is offered here. */
const screwRows = "I";

function otherSpecies(
  { spec, solved, catalog: { build, parts } }: WorkedPair,
  positions: readonly string[],
  stock: readonly StripRecord[],
  now: Date,
): readonly WorkedOption[] {
  const blend = blendById(build, spec.core);
  if (!blend.ok) return [];
  const density = (id: string) => build.materials.woods.find((wood) => wood.id === id)?.densityKgM3 ?? 0;
  return positions.flatMap((position) => {
    const from = blend.value.strips[position as keyof typeof blend.value.strips];
    return build.materials.woods
      .filter(({ id }) => id !== from && stock.some(({ species }) => species === id))
      .filter(({ id }) => position !== screwRows || density(id) * denserBy >= density(from))
      .flatMap(({ id }): WorkedOption[] => {
        const strips = { ...blend.value.strips, [position]: id };
        const swapped = {
          ...build,
          blends: [...build.blends.filter((each) => each.id !== spec.core), { ...blend.value, strips }],
        };
        const again = solveSpec(spec, swapped);
        if (!again.ok || !isSameCloth(solved.cloth.laid, again.value.cloth.laid)) return [];
        const found = attempt(spec, again.value, { build: swapped, parts }, stock, now);
        if (found.matched.unmet > 0) return [];
        const asMilled = evaluateFlex(again.value.build, solved.core.profile).springCentreNPerMm;
        const option: StripOption = {
          id: `other-species:${position}:${id}`,
          kind: "other-species",
          position,
          from,
          species: id,
          ...against(solved, again.value),
          ratioPercent: 100 * (asMilled / solved.flexWithPlate.springCentreNPerMm - 1),
          isDenseOutside: position !== screwRows && density(id) > denserBy * density(from),
        };
        return [{ option, found }];
      });
  });
}

/** Alike strips of the right species that are not as stiff as designed: the profile makes up for it. */
function otherThickness(
  { spec, solved, catalog: { build, parts } }: WorkedPair,
  stock: readonly StripRecord[],
  now: Date,
): readonly WorkedOption[] {
  const { targetPercent: _target, ...alikeOnly } = stripLimits;
  const found = attempt(spec, solved, { build, parts }, stock, now, alikeOnly);
  const match = found.matched.pairs[0];
  if (match === undefined) return [];
  const share = match.modulusMpa / found.targetMpa;
  const blend = blendById(build, spec.core);
  const species = blend.ok ? Object.values(blend.value.strips) : [];
  const woods = build.materials.woods.map((wood) =>
    species.includes(wood.id) ? { ...wood, bendingModulusMpa: wood.bendingModulusMpa * share } : wood,
  );
  const again = solveSpec(spec, { ...build, materials: { ...build.materials, woods } });
  if (!again.ok || !isSameCloth(solved.cloth.laid, again.value.cloth.laid)) return [];
  const option: StripOption = {
    id: "other-thickness",
    kind: "other-thickness",
    modulusPercent: 100 * (share - 1),
    ...against(solved, again.value),
  };
  return [{ option, found }];
}

function against(ordered: SolvedSpec, again: SolvedSpec): { readonly massG: number; readonly thicknessMm: number } {
  const thickest = ({ core }: SolvedSpec) => Math.max(...core.profile.stations.map(({ thicknessMm }) => thicknessMm));
  return {
    massG: 1000 * (again.flexWithPlate.massKg - ordered.flexWithPlate.massKg),
    thicknessMm: thickest(again) - thickest(ordered),
  };
}

/** Orders due later whose core is uncut and whose strips, with what is free, make a set. The latest due first. */
async function takeFrom(
  client: Tx,
  pair: PairRecord,
  { spec, solved, catalog }: WorkedPair,
  stock: readonly StripRecord[],
  now: Date,
  slackOf: (pairId: string) => number | null,
): Promise<readonly WorkedOption[]> {
  const due = ({ order }: { readonly order: Pick<PairRecord["order"], "promisedOn"> }) => order.promisedOn ?? "9999";
  const later = (await openQueue(client))
    .filter((other) => other.id !== pair.id && due(other) > due(pair))
    .filter((other) => isCoreUncut(other) && !isStripsShort(other))
    .sort((a, b) => due(b).localeCompare(due(a)));
  const options: WorkedOption[] = [];
  for (const other of later) {
    const theirs = (await stripsHeldBy(client, other.id)).filter(({ state }) => state === "reserved");
    const found = attempt(spec, solved, catalog, [...stock, ...theirs], now);
    if (found.matched.unmet > 0) continue;
    const option: StripOption = {
      id: `take-from:${other.id}`,
      kind: "take-from",
      fromPairId: other.id,
      serial: other.serial,
      promisedOn: other.order.promisedOn,
      slackWorkingDays: slackOf(other.id),
    };
    options.push({ option, found });
    if (options.length === mostTakings) break;
  }
  return options;
}

const mostTakings = 3;
