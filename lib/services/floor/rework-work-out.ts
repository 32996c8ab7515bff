/** What it takes to build one ski of a pair again, worked out from the pair as it stands. */

import type { Tx } from "#data/client";
import type { PairRecord } from "#data/pairs";
import type { PairSpec } from "#engine/configuration";
import type { StationId } from "#engine/floor";
import { closedStates, isOneOf, latestVisits, type RedoPlan, type ReworkFault, redoPlan } from "#engine/floor";
import type { PairId } from "#engine/units";
import { accept, type Outcome, refuse } from "#engine/units";
import type { Context } from "#services/context";
import { findPair } from "#services/orders/find-order";
import { matchOtherSki, type OtherSkiMatch } from "#services/stock/match-other-ski";
import { currentCatalog } from "#shop/catalogue/current";
import { floorCatalog } from "#shop/floor/recipe";
import { stationIdTaking, stationNumber } from "#shop/floor/stations";
import { type Side, skiSerial } from "#shop/names/serial";
import { standingSki } from "#shop/pair/standing-ski";

export interface ReworkInput {
  readonly pairId: PairId;
  readonly side: Side;
  /** The earliest station whose work is done again. */
  readonly fromStation: StationId;
  readonly fault: ReworkFault;
}

type Ski = PairRecord["skis"][number];

export interface WorkedRework {
  readonly pair: PairRecord;
  readonly scrapped: Ski;
  readonly kept: Ski;
  readonly build: number;
  readonly newSerial: string;
  readonly plan: RedoPlan;
  readonly needsCore: boolean;
  readonly match: OtherSkiMatch | null;
  readonly letters: { readonly text: string; readonly sheetColour: string } | null;
}

/** Refuses `not-found`, `order-closed` (shipped), `rework-under-way`, `station-not-reached`. */
export async function workOutRework(ctx: Context, client: Tx, input: ReworkInput): Promise<Outcome<WorkedRework>> {
  const found = await findPair(ctx, client, "pair.rework", input.pairId);
  if (!found.ok) return found;
  const pair = found.value;
  if (isOneOf(closedStates, pair.state)) return refuse({ code: "order-closed", state: pair.state });
  const scrapped = standingSki(pair, input.side);
  const kept = standingSki(pair, input.side === "L" ? "R" : "L");
  if (scrapped === undefined || kept === undefined) throw new Error(`pair ${pair.serial} lacks a ski`);
  const isUnderWay = latestVisits(pair.operations).some(({ side, state }) => side !== null && state !== "done");
  if (isUnderWay || kept.state !== "good" || scrapped.state !== "good")
    return refuse({ code: "rework-under-way", serial: pair.serial });
  const states = pair.operations.map(({ station, visit, state }) => ({
    station,
    visit,
    state: state,
  }));
  const plan = redoPlan(states, input.fromStation, floorCatalog());
  if (plan.visits.length === 0)
    return refuse({ code: "station-not-reached", path: "fromStation", station: stationNumber(input.fromStation) });
  const redone = new Set(plan.visits.map(({ station }) => station));
  const build = scrapped.build + 1;
  const needsCore = redone.has(stationIdTaking("strips"));
  return accept({
    pair,
    scrapped,
    kept,
    build,
    newSerial: skiSerial(currentCatalog().shop.serialPrefix, pair.serialNumber, input.side, build),
    plan,
    needsCore,
    match: needsCore ? await matchOtherSki(client, pair, input.side, ctx.now) : null,
    letters: redone.has(stationIdTaking("base-sheets")) ? lettersFor(pair.spec, input.side) : null,
  });
}

/** The letters in a base have the colour of the other one: they are cut from a spare sheet of that colour. */
function lettersFor({ base }: PairSpec, side: Side): WorkedRework["letters"] {
  if (base.inlay !== "counterchange") return null;
  return { text: base.inlayText ?? "", sheetColour: side === "L" ? base.right : base.left };
}
