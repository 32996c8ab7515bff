/** A pair for the floor: everything that builds it, no price and no address. */

import type { ReleasedCatalog } from "#catalog";
import type { Tx } from "#data/client";
import { type EventRecord, eventsOf } from "#data/events";
import { extraPressChanges, floorChangesInForce } from "#data/floor-changes";
import { type PairRecord, runningVisits } from "#data/pairs";
import type { PairSpec, SolvedSpec } from "#engine/configuration";
import { solveSpec, spreadOf } from "#engine/configuration";
import { springSpans } from "#engine/flex";
import { latestVisits, reworkStarts, type StationId } from "#engine/floor";
import { type PartsList, partsFor } from "#engine/parts";
import { currentCatalog, releasedCatalog } from "#shop/catalogue/current";
import { pressChoices, pressNames } from "#shop/floor/presses";
import { floorCatalog, stationRecipe } from "#shop/floor/recipe";
import { mustPrecede, stationIdFor, stationNumber } from "#shop/floor/stations";
import { eventView } from "#shop/names/common-view";
import { flexClassLabel } from "#shop/names/flex-class-label";
import { orderNumber } from "#shop/names/numbers";
import type { EventView } from "#shop/names/views";
import { gatesView } from "#shop/order/gate-facts";
import { proofView } from "#shop/order/view";
import { isPairShort } from "#shop/stock/is-short";
import { shopDay } from "#shop/time/shop-time";
import type { OperationView, PairView, StripView, TravellerView } from "./views";

export interface WorkedPair {
  readonly spec: PairSpec;
  readonly catalog: ReleasedCatalog;
  readonly solved: SolvedSpec;
  readonly parts: PartsList;
}

/** The pair's frozen spec worked out again with the catalogue it was ordered from. */
export async function workedPair(
  client: Tx,
  record: Pick<PairRecord, "serial" | "releaseHash" | "spec">,
): Promise<WorkedPair> {
  const catalog = await releasedCatalog(client, record.releaseHash);
  if (catalog === null) throw new Error(`catalogue release ${record.releaseHash} is not stored`);
  const spec = record.spec;
  const solved = solveSpec(spec, catalog.build);
  if (!solved.ok) throw new Error(`pair ${record.serial} does not build from its own release: ${solved.refusal.code}`);
  return { spec, catalog, solved: solved.value, parts: partsFor(spec, solved.value, catalog.build, catalog.parts) };
}

export async function pairView(client: Tx, record: PairRecord, now: Date): Promise<PairView> {
  const [worked, events, added, presses] = await Promise.all([
    workedPair(client, record),
    eventsOf(client, "pair", [record.id]),
    extraPressChanges(client),
    pressesFor(client, record, now),
  ]);
  const names = pressNames(floorCatalog(), added);
  const { spec, catalog, solved, parts } = worked;
  const model = catalog.build.models.find((candidate) => candidate.id === spec.model);
  const zone = currentCatalog().shop.timeZone;
  const pressing = stationIdFor("press");
  const press = latestVisits(record.operations).find(({ station }) => station === pressing);
  return {
    pairId: record.id,
    serial: record.serial,
    orderId: record.orderId,
    orderNumber: orderNumber(record.order),
    state: record.state,
    version: record.version,
    revision: record.revision,
    spec,
    specHash: record.specHash,
    releaseHash: record.releaseHash,
    modelName: model?.name ?? spec.model,
    modelRevision: model?.revision ?? "",
    flexClassLabel: flexClassLabel(spec, catalog),
    skierFirstName: firstName(record.skierName),
    mould: record.mould,
    skis: record.skis.map((ski) => ({
      skiId: ski.id,
      side: ski.side === "L" ? "L" : "R",
      serial: ski.serial,
      state: ski.state,
      build: ski.build,
      location: ski.location,
    })),
    flex: solved.flexWithPlate,
    springSpans: springSpans(solved.build),
    spread: spreadOf(solved, catalog.build),
    twinLimits: { springCentre: twinLimit(catalog, "springCentre"), mass: twinLimit(catalog, "mass") },
    core: solved.core,
    parts: {
      ...parts,
      lines: parts.lines.map((line) => ({ ...line, stationNumber: stationNumber(line.station) })),
    },
    strips: stripViews(record),
    isStripsShort: isPairShort(record),
    operations: record.operations.map((operation) => operationView(operation, record, names)),
    holds: record.holds.map(({ station, reason, note, expectedOn }) => ({
      station,
      stationNumber: stationNumber(station),
      reason: reason,
      note,
      expectedOn: expectedOn,
    })),
    reworkFrom: reworkStarts(floorCatalog()),
    presses,
    plannedPress: record.pressSlotPress,
    gates: gatesView(record.order.depositPaidAt, record),
    proofState: record.proofState,
    proofs: record.proofs.map(proofView),
    promiseClass: record.order.promiseClass,
    promisedOn: record.order.promisedOn,
    expected: record.order.estimate,
    pressOn: press?.startedAt ? shopDay(press.startedAt, zone) : null,
    prints: record.prints.map(travellerView),
    revisions: record.revisions.map((revision) => ({
      revision: revision.revision,
      reason: revision.reason,
      at: revision.createdAt.toISOString(),
      by: revision.createdByName,
      specHash: revision.specHash,
    })),
    history: events.map(floorEvent),
  };
}

function twinLimit({ finish }: ReleasedCatalog, measure: "springCentre" | "mass"): string {
  return finish.qcLimits.find((limit) => limit.measure === measure)?.twins ?? "";
}

/** An event without what is the office's business: full names and what was said with them. */
function floorEvent(event: EventRecord): EventView {
  const { name: _name, ...data } = event.data;
  return eventView({ ...event, data });
}

export function firstName(name: string): string {
  return name.trim().split(/\s+/)[0] ?? "";
}

/** Asked only when the pair may go into one. */
async function pressesFor(client: Tx, record: PairRecord, now: Date): Promise<PairView["presses"]> {
  const pressing = stationIdFor("press");
  if (!record.operations.some(({ station, state }) => station === pressing && state === "ready")) return [];
  const changes = await floorChangesInForce(client, now);
  return pressChoices(floorCatalog(), changes, await runningVisits(client), now);
}

/** @param presses their names by id */
export function operationView(
  operation: PairRecord["operations"][number],
  pair: PairRecord,
  presses: ReadonlyMap<string, string>,
): OperationView {
  const { number, name, typicalMinutes } = stationRecipe(operation.station);
  return {
    operationId: operation.id,
    key: operation.visit === 0 ? `s${operation.station}` : `s${operation.station}-v${operation.visit}`,
    station: operation.station,
    stationNumber: number,
    usesPress: operation.station === stationIdFor("press"),
    stationName: name,
    visit: operation.visit,
    side: operation.side === "L" || operation.side === "R" ? operation.side : null,
    state: operation.state,
    version: operation.version,
    typicalMinutes: Math.round(typicalMinutes * (operation.minutesShare ?? 1)),
    startedAt: operation.startedAt?.toISOString() ?? null,
    startedBy: operation.startedByName,
    finishedAt: operation.finishedAt?.toISOString() ?? null,
    finishedBy: operation.finishedByName,
    pressName: operation.press === null ? null : (presses.get(operation.press) ?? operation.press),
    notBefore: notBefore(operation.station, pair)?.toISOString() ?? null,
  };
}

/** The end of the latest cure or rest before a station; null when none is known. */
export function notBefore(
  station: StationId,
  pair: { readonly operations: readonly PairRecord["operations"][number][] },
): Date | null {
  const rests = latestVisits(pair.operations)
    .filter((operation) => mustPrecede(station).includes(operation.station))
    .flatMap((operation) => (operation.nextFrom === null ? [] : [operation.nextFrom]));
  return rests.length === 0 ? null : new Date(Math.max(...rests.map((rest) => rest.getTime())));
}

export function stripViews(record: Pick<PairRecord, "heldStrips">): readonly StripView[] {
  return record.heldStrips.map((strip) => ({
    stripId: strip.id,
    side: strip.side === "L" ? "L" : "R",
    position: strip.position,
    place: strip.place,
    species: strip.species,
    board: strip.board,
    modulusMpa: strip.modulusMpa,
    densityKgM3: strip.densityKgM3,
    bin: strip.location,
  }));
}

export function travellerView(print: PairRecord["prints"][number]): TravellerView {
  return {
    print: print.print,
    pairRevision: print.pairRevision,
    printedAt: print.printedAt.toISOString(),
    printedBy: print.printedByName,
    voided: print.voidedAt === null ? null : { at: print.voidedAt.toISOString(), reason: print.voidReason ?? "" },
  };
}
