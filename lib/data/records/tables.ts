/** The columns of every table that say more than plain text and numbers: ids, days, states, JSON. */
import { promiseClasses, states } from "#engine/floor";
import * as stored from "#schemas/stored/index";
import { id, isoDay, json, nullable, oneOf } from "../columns";
import { eventSubjects } from "../events";

const dateRange = json(stored.storedDateRange);
const pairSpec = json(stored.storedPairSpec);
const price = json(stored.storedPrice);
const address = json(stored.storedAddress);
const rights = json(stored.storedRights);
const corrections = json(stored.storedCorrections);
const benchValues = json(stored.storedBenchValues);
const lines = json(stored.listOf(stored.words));
const side = oneOf(["L", "R"]);
const orderState = oneOf(states.order);
const proofState = oneOf(states.proof);
const promiseClass = oneOf(promiseClasses);

export const customerColumns = {
  id: id("customer"),
  address: nullable(address),
  mergedIntoId: nullable(id("customer")),
  givenBy: oneOf(stored.contactGivers),
} as const;

export const artworkColumns = {
  id: id("artwork"),
  sheetId: nullable(id("sheet")),
  rights: nullable(rights),
} as const;

export const clubColumns = {
  id: id("club"),
  customerId: id("customer"),
  palette: json(stored.storedPalette),
  wantedOn: nullable(isoDay),
} as const;

export const sheetColumns = {
  id: id("sheet"),
  state: oneOf(states.sheet),
  channel: oneOf(stored.sheetChannels),
  fields: json(stored.storedSheetFields),
  customerId: nullable(id("customer")),
  clubId: nullable(id("club")),
} as const;

export const quoteColumns = {
  buyerAddress: nullable(address),
  contactBy: oneOf(stored.contactGivers),
  id: id("quote"),
  state: oneOf(states.quote),
  sheetId: id("sheet"),
  customerId: id("customer"),
  clubId: nullable(id("club")),
  replacesId: nullable(id("quote")),
  answers: json(stored.storedAnswers),
  choices: json(stored.storedChoices),
  typed: json(stored.storedTypedMeasures),
  spec: pairSpec,
  price,
  fit: json(stored.storedFit),
  flagAcks: json(stored.storedFlagAcks),
  dateRange,
} as const;

export const orderColumns = {
  buyerAddress: nullable(address),
  confirmedHow: nullable(oneOf(stored.confirmedHows)),
  id: id("order"),
  quoteId: id("quote"),
  customerId: id("customer"),
  clubId: nullable(id("club")),
  state: orderState,
  acceptedHow: oneOf(stored.acceptedHows),
  price,
  promiseClass,
  estimate: dateRange,
  promisedOn: nullable(isoDay),
  slotLostReason: nullable(oneOf(stored.slotLosses)),
  customerSpecified: lines,
} as const;

export const paymentColumns = {
  orderId: id("order"),
  kind: oneOf(stored.paymentKinds),
  state: oneOf(states.payment),
  method: nullable(oneOf(stored.paymentMethods)),
} as const;

export const pairColumns = {
  id: id("pair"),
  orderId: id("order"),
  quoteId: id("quote"),
  state: oneOf(states.pair),
  spec: pairSpec,
  proofState,
  rights: nullable(rights),
} as const;

export const skiColumns = {
  id: id("ski"),
  pairId: id("pair"),
  side,
  state: oneOf(states.ski),
  measured: nullable(benchValues),
} as const;

export const revisionColumns = { pairId: id("pair"), spec: pairSpec, price } as const;

export const operationColumns = {
  id: id("operation"),
  pairId: id("pair"),
  state: oneOf(states.operation),
  side: nullable(side),
} as const;

export const proofColumns = { id: id("proof"), pairId: id("pair"), state: oneOf(states["proof-issue"]) } as const;

export const holdColumns = {
  pairId: id("pair"),
  reason: oneOf(stored.holdReasons),
  expectedOn: nullable(isoDay),
  incidentId: nullable(id("incident")),
} as const;

export const stripColumns = {
  heldByPairId: nullable(id("pair")),
  side: nullable(side),
  position: nullable(oneOf(["C", "I", "M", "O"])),
  place: nullable(oneOf(stored.stripPlaces)),
} as const;

/** Of a strip that a pair holds: it has its place. */
export const heldStripColumns = {
  ...stripColumns,
  side,
  position: oneOf(["C", "I", "M", "O"]),
  place: oneOf(stored.stripPlaces),
} as const;

/** `data` is what the change is about; its kind stands in both. */
export const floorChangeColumns = {
  id: id("floor-change"),
  data: json(stored.storedFloorChangeData),
  incidentId: nullable(id("incident")),
  source: oneOf(stored.changeSources),
} as const;

export const incidentColumns = {
  id: id("incident"),
  state: oneOf(states.incident),
  input: json(stored.storedBreakdown),
  effect: json(stored.storedQueueEffect),
  options: json(stored.storedRemedies),
  base: nullable(json(stored.storedShortage)),
  chosen: nullable(oneOf(stored.remedyCodes)),
} as const;

export const noticeColumns = {
  id: id("notice"),
  orderId: id("order"),
  incidentId: nullable(id("incident")),
  kind: oneOf(stored.noticeKinds),
  state: oneOf(states.notice),
} as const;

export const letterColumns = { state: oneOf(states.letter), subjectKind: oneOf(eventSubjects) } as const;

export const planMoveColumns = { pairId: id("pair") } as const;

export const benchColumns = {
  pairId: nullable(id("pair")),
  side,
  spec: json(stored.storedBuildableSpec),
  strips: nullable(json(stored.storedStrips)),
  measured: benchValues,
  origin: oneOf(stored.benchOrigins),
} as const;

export const decisionColumns = {
  measure: oneOf(stored.storedMeasure.options),
  choice: oneOf(stored.readingChoices),
} as const;

export const floorBookColumns = {
  book: json(stored.storedFloorBook),
  summary: json(stored.storedFloorBookSummary),
} as const;

export const bookColumns = { corrections, summary: json(stored.storedBookSummary) } as const;
