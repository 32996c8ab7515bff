import type { Catalog } from "#catalog";
import { config } from "#config";
import paperWords from "#content/copy/papers.json";
import { recordEvents } from "#data/events";
import { lockName } from "#data/locks";
import { usableLots } from "#data/lots";
import { insertTraveller, type PairRecord, pairById, voidTravellers } from "#data/pairs";
import { transaction } from "#data/transaction";
import { latestVisits } from "#engine/floor";
import { measure } from "#engine/geometry";
import type { PartsList } from "#engine/parts";
import type { PairId } from "#engine/units";
import { accept, fill, type IsoDate, type Outcome, refuse } from "#engine/units";
import {
  type AllocatedStrip,
  type BuildSheetFacts,
  composeBuildSheet,
  composeKitList,
  composeLabels,
  type FloorFacts,
  type LotFact,
  type PairFacts,
  type Paper,
  type ShopFacts,
} from "#papers";
import type { Context } from "#services/context";
import { findPair } from "#services/orders/find-order";
import { drawInTurn } from "#services/papers/draw-in-turn";
import { eventOf, nameOf } from "#services/record";
import { currentCatalog } from "#shop/catalogue/current";
import { stationIdFor } from "#shop/floor/stations";
import type { DocumentBytes } from "#shop/names/views";
import { standingSki } from "#shop/pair/standing-ski";
import { firstName, stripViews, workedPair } from "#shop/pair/view";
import { floorPlan } from "#shop/queue/plan";
import { openQueue } from "#shop/queue/queued-pairs";
import { shopClock, shopDay } from "#shop/time/shop-time";
import { floorFacts } from "./floor-facts";
import { pairNotes } from "./pair-notes";
import { cautionFacts, labelFacts } from "./terms";

export interface PairDocumentInput {
  readonly pairId: PairId;
  readonly paper: Paper;
}

/** More than ever print one pair's sheet at once. */
const mostTries = 5;

/**
 * The build sheet as PDF. Each print has its number and stands in the record; older prints are void from then on, so that
 * only one sheet of a pair is valid. That is so only once the sheet is drawn: a drawing that fails voids none.
 * Refuses `order-closed` for a cancelled pair, `changed-meanwhile` when others print it all the while.
 */
export async function buildSheetDocument(ctx: Context, input: PairDocumentInput): Promise<Outcome<DocumentBytes>> {
  const found = await findPair(ctx, ctx.db, "build-sheet.read", input.pairId);
  if (!found.ok) return found;
  if (found.value.state === "cancelled") return refuse({ code: "order-closed", state: found.value.state });
  let pair = found.value;
  for (let tries = 0; tries < mostTries; tries += 1) {
    const print = nextPrint(pair);
    const facts = await pairFacts(ctx, pair, print);
    const bytes = await drawInTurn(ctx, "build-sheet", composeBuildSheet(facts), input.paper);
    if (await recordPrint(ctx, pair, print)) return accept(pdf(bytes, `${pair.serial}-build-sheet-${print}.pdf`));
    pair = (await pairById(ctx.db, pair.id)) ?? pair;
  }
  return refuse({ code: "changed-meanwhile", what: "pair", id: pair.id, version: pair.version });
}

const nextPrint = ({ prints }: PairRecord) => (prints.at(-1)?.print ?? 0) + 1;

/** The kit list as PDF. */
export async function kitListDocument(ctx: Context, input: PairDocumentInput): Promise<Outcome<DocumentBytes>> {
  const found = await findPair(ctx, ctx.db, "build-sheet.read", input.pairId);
  if (!found.ok) return found;
  const facts = await pairFacts(ctx, found.value, latestPrint(found.value));
  const bytes = await drawInTurn(
    ctx,
    "kit-list",
    composeKitList({ ...facts, cautions: cautionFacts(currentCatalog().safety, "kit-list") }),
    input.paper,
  );
  return accept(pdf(bytes, `${found.value.serial}-kit-list.pdf`));
}

/** The labels as PDF. */
export async function labelsDocument(ctx: Context, input: PairDocumentInput): Promise<Outcome<DocumentBytes>> {
  const found = await findPair(ctx, ctx.db, "build-sheet.read", input.pairId);
  if (!found.ok) return found;
  const facts = await pairFacts(ctx, found.value, latestPrint(found.value));
  const bytes = await drawInTurn(
    ctx,
    "labels",
    composeLabels({ ...facts, ...labelFacts(currentCatalog().safety) }),
    input.paper,
  );
  return accept(pdf(bytes, `${found.value.serial}-labels.pdf`));
}

export function pdf(bytes: Uint8Array, fileName: string): DocumentBytes {
  return { bytes, contentType: "application/pdf", fileName };
}

export function shopFacts({ name, town, postalAddress, email, phone }: Catalog["shop"]): ShopFacts {
  return { name, town, postalAddress, email, phone };
}

function latestPrint(pair: PairRecord): number {
  return pair.prints.at(-1)?.print ?? 1;
}

/** A new print voids those before it. False when somebody printed, or changed, the pair meanwhile. */
async function recordPrint(ctx: Context, pair: PairRecord, print: number): Promise<boolean> {
  return transaction(ctx.db, async (tx) => {
    // Two who print at once get two numbers.
    await lockName(tx, `prints of ${pair.id}`);
    const now = await pairById(tx, pair.id);
    if (now === null || nextPrint(now) !== print || now.specHash !== pair.specHash) return false;
    await voidTravellers(tx, pair.id, fill(paperWords.buildSheet.replaced, { print }), ctx.now);
    await insertTraveller(tx, {
      id: ctx.newId(),
      pairId: pair.id,
      print,
      pairRevision: pair.revision,
      specHash: pair.specHash,
      printedAt: ctx.now,
      printedByName: nameOf(ctx.actor),
    });
    const subject = { kind: "pair", id: pair.id } as const;
    await recordEvents(tx, [eventOf(ctx, "build-sheet-printed", subject, { print, revision: pair.revision })]);
    return true;
  });
}

async function pairFacts(ctx: Context, pair: PairRecord, print: number): Promise<BuildSheetFacts> {
  const { spec, catalog, solved, parts } = await workedPair(ctx.db, pair);
  const current = currentCatalog();
  const lots = await lotsFor(ctx, parts);
  const shape = solved.build.shape;
  return {
    shop: shopFacts(current.shop),
    stamp: { printedAt: shopClock(ctx.now, current.shop.timeZone), revision: print, specHash: pair.specHash },
    pair: identity(pair, print, await pressDay(ctx, pair)),
    catalog: catalog.build,
    spec,
    shape,
    measures: measure(shape, { edge: catalog.build.rules.edge }),
    solved,
    parts,
    strips: allocated(pair),
    lots,
    floor: withResinLots(floorFacts(catalog, current.safety), lots),
    cassette: null,
    notes: await pairNotes(ctx.db, pair),
  };
}

/** The oldest usable lot of each part, with its place; a part without one is left for the maker to write in. */
async function lotsFor(ctx: Context, { lines }: PartsList): Promise<readonly LotFact[]> {
  const lots = await usableLots(
    ctx.db,
    lines.map(({ material }) => material),
    ctx.now,
  );
  return lines.flatMap(({ code, material }) => {
    const lot = lots.find((each) => each.material === material);
    return lot ? [{ code, lot: lot.number, location: lot.location }] : [];
  });
}

function withResinLots(floor: FloorFacts, lots: readonly LotFact[]): FloorFacts {
  const lotOf = (code: string) => lots.find((each) => each.code === code)?.lot ?? null;
  return { ...floor, resin: { ...floor.resin, resinLot: lotOf("resin"), hardenerLot: lotOf("hardener") } };
}

/** The day it goes into the press by today's plan, or went; null for a pair that is in no plan. */
async function pressDay(ctx: Context, pair: PairRecord): Promise<IsoDate | null> {
  const { timeZone } = currentCatalog().shop;
  const pressed = latestVisits(pair.operations).find(({ station }) => station === stationIdFor("press"));
  if (pressed?.startedAt) return shopDay(pressed.startedAt, timeZone);
  const plan = await floorPlan(ctx, await openQueue(ctx.db));
  const slot = plan.pressPlan.find(({ pairId }) => pairId === pair.id);
  return slot ? shopDay(slot.startsAt, timeZone) : null;
}

function identity(pair: PairRecord, print: number, pressBy: IsoDate | null): PairFacts {
  const serialOf = (side: "L" | "R") => standingSki(pair, side)?.serial ?? "";
  const { promiseClass, promisedOn } = pair.order;
  return {
    number: pair.serial.slice(pair.serial.indexOf("-") + 1),
    leftSerial: serialOf("L"),
    rightSerial: serialOf("R"),
    pageUrl: `${config().publicOrigin}/shop/pair/${pair.serial}?print=${print}`,
    pressBy,
    readyBy: promisedOn,
    promiseClass,
    skierFirstName: firstName(pair.skierName),
  };
}

function allocated(pair: PairRecord): readonly AllocatedStrip[] | null {
  const strips = stripViews(pair);
  if (strips.length === 0) return null;
  return strips.map(({ side, stripId, ...strip }) => ({ ...strip, ski: side, id: stripId }));
}
