/**
 * A base colour runs out: who still gets his bases off the roll, in the order in which the plan cuts them, and which colours on
 * the shelf would fit for the others. Counterchanged letters need both colours from one thickness lot (content/README.md): a letter that
 * is thicker than the base around it stands out.
 */

import problems from "#content/copy/problems.json";
import { usableLots } from "#data/lots";
import type { BuildCatalog, PairSpec } from "#engine/configuration";
import { type BaseUse, baseMaterial, baseUse, serveFromRoll } from "#engine/parts";
import { planQueue } from "#engine/routing";
import { accept, fill, type Outcome, refuse } from "#engine/units";
import type { Context } from "#services/context";
import { currentCatalog } from "#shop/catalogue/current";
import { stationIdTaking } from "#shop/floor/stations";
import { firstName, workedPair } from "#shop/pair/view";
import type { PairInQueue } from "#shop/queue/queued-pairs";
import { plannedSituation } from "#shop/queue/runs";
import { queuedPairs } from "#shop/queue/situation";
import { hasBegun } from "./has-begun";
import type { BaseLot, BaseNeed, BaseShortage, BreakdownInput } from "./views";

const w = problems.breakdowns;

/** A roll holds less. */
const mostLeftM = 500;

type Asked = Extract<BreakdownInput, { readonly kind: "base-short" }>;

interface Wanting {
  readonly pair: PairInQueue;
  readonly spec: PairSpec;
  readonly uses: readonly BaseUse[];
  readonly needM: number;
}

/** Refuses `invalid-field` for a colour that the shop does not have, a length out of range, or when nobody goes short. */
export async function baseShortage(ctx: Context, { colour, leftM, expectedOn }: Asked): Promise<Outcome<BaseShortage>> {
  const { build } = currentCatalog();
  const label = build.baseColours.find(({ id }) => id === colour)?.label;
  if (label === undefined) return invalid("colour", w.colour);
  if (!Number.isFinite(leftM) || leftM < 0 || leftM > mostLeftM) {
    return invalid("leftM", fill(w.left, { leftM, mostLeftM }));
  }
  const wanting = await inCuttingOrder(ctx, await pairsWanting(ctx, colour));
  const { isServed, shortM } = serveFromRoll(
    wanting.map(({ needM }) => needM),
    leftM,
  );
  const neededM = wanting.reduce((sum, { needM }) => sum + needM, 0);
  if (isServed.every(Boolean)) {
    if (wanting.length === 0) return invalid("colour", fill(w.noPairOfColour, { label }));
    const needed = fill(w.needed, {
      metres: neededM.toFixed(2),
      pairs: wanting.length === 1 ? w.onePair : fill(w.pairs, { length: wanting.length }),
    });
    return invalid("leftM", fill(w.leftIsEnough, { leftM, needed }));
  }
  const shelf = await shelfOf(ctx, build, wanting);
  const pairs = wanting.map((each, index) => needView(each, colour, isServed[index] === true, shelf, build));
  return accept({ colour, label, neededM, leftM, shortM, expectedOn, pairs });
}

/** Open pairs with a base of this colour still to be cut. */
async function pairsWanting(ctx: Context, colour: string): Promise<readonly Wanting[]> {
  const found: Wanting[] = [];
  for (const pair of await queuedPairs(ctx.db)) {
    if (hasBegun(pair, stationIdTaking("base-sheets"))) continue;
    const { spec, parts, catalog } = await workedPair(ctx.db, pair);
    const uses = baseUse(spec, parts, catalog.parts);
    const needM = uses.filter((use) => use.colour === colour).reduce((sum, use) => sum + use.needM, 0);
    if (needM > 0) found.push({ pair, spec, uses, needM });
  }
  return found;
}

async function inCuttingOrder(ctx: Context, wanting: readonly Wanting[]): Promise<readonly Wanting[]> {
  const plan = planQueue(await plannedSituation(ctx.db, ctx.now));
  if (!plan.ok) throw new Error(`the queue does not fit the floor: ${plan.refusal.code}`);
  const cutting = stationIdTaking("base-sheets");
  const cutAt = new Map(
    plan.value.operations.flatMap(({ pairId, station, startMinute }) =>
      station === cutting ? [[pairId, startMinute] as const] : [],
    ),
  );
  const at = ({ pair }: Wanting) => cutAt.get(pair.id) ?? Number.POSITIVE_INFINITY;
  return wanting.toSorted((a, b) => at(a) - at(b) || (a.pair.id < b.pair.id ? -1 : 1));
}

/** The oldest usable lot of each material that a pair's bases, or the same bases in another colour, would be cut from. */
type Shelf = ReadonlyMap<string, string>;

async function shelfOf(ctx: Context, build: BuildCatalog, wanting: readonly Wanting[]): Promise<Shelf> {
  const materials = wanting.flatMap(({ uses }) =>
    uses.flatMap(({ material, sheet }) => [
      material,
      ...build.baseColours.map(({ label }) => baseMaterial(sheet, label)),
    ]),
  );
  const lots = await usableLots(ctx.db, [...new Set(materials)], ctx.now);
  const oldest = new Map<string, string>();
  for (const { material, number } of lots) if (!oldest.has(material)) oldest.set(material, number);
  return oldest;
}

function needView(each: Wanting, colour: string, isServed: boolean, shelf: Shelf, build: BuildCatalog): BaseNeed {
  const { pair, spec, uses, needM } = each;
  const short = uses.find((use) => use.colour === colour);
  const other = uses.find((use) => use.colour !== colour);
  const labelOf = (id: string) => build.baseColours.find((each) => each.id === id)?.label ?? id;
  const isCounterchanged = spec.base.inlay === "counterchange" && other !== undefined;
  const keptLot = other === undefined ? null : (shelf.get(other.material) ?? null);
  const alternatives = build.baseColours.flatMap(({ id, label }): readonly BaseLot[] => {
    const lot = short && shelf.get(baseMaterial(short.sheet, label));
    if (id === colour || id === other?.colour || lot === undefined) return [];
    return isCounterchanged && lot !== keptLot ? [] : [{ colour: id, label, lot }];
  });
  return {
    pairId: pair.id,
    orderId: pair.orderId,
    serial: pair.serial,
    skierFirstName: firstName(pair.skierName),
    needM,
    isServed,
    counterchangedWith: isCounterchanged ? { label: labelOf(other.colour), lot: keptLot } : null,
    alternatives: isServed ? [] : alternatives,
  };
}

function invalid(path: string, message: string) {
  return refuse({ code: "invalid-field", path, message });
}
