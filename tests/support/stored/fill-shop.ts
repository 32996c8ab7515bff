/**
 * What the demo does not hold by itself: letters exchanged between the bases, proofs asked to be changed, pairs changed,
 * shipped, cancelled and built again, a hard date, a club's order, incidents and what was decided, a book of corrections and
 * what was sold after it. Made with the shop's own use cases, for a data folder that is kept as test material.
 */
import { signIn, systemActor } from "#auth";
import type { Db } from "#data/client";
import { newId } from "#data/ids";
import { addWorkingDays } from "#engine/routing";
import { isoDate } from "#engine/units";
import {
  type AcceptedQuote,
  acceptClub,
  acceptQuote,
  applyMove,
  applyWhatIf,
  approveCorrections,
  approveHardDate,
  approveProof,
  askProofChanges,
  type BreakdownInput,
  buildSheetDocument,
  cancelOrder,
  changePromise,
  chooseOption,
  createQuote,
  decideReading,
  editPair,
  freezePressSlots,
  honourOldPrice,
  issueProof,
  listClubs,
  listFloorChanges,
  lockSpecification,
  type PairId,
  previewHardDate,
  previewRework,
  readClub,
  readLearning,
  readOrder,
  readQueueOrder,
  recordDeposit,
  recordReceipt,
  reportBreakdown,
  repriceQuote,
  shipOrder,
  startRework,
  sweepSlots,
  turnDown,
  withdrawChange,
} from "#services";
import { floorCatalog } from "#shop/floor/recipe";
import { FloorBook } from "../../../prisma/seed/floor-book";
import { seedFloorHistory } from "../../../prisma/seed/floor-history";
import { demoStaff } from "../../../prisma/seed/people";
import { type DemoCalendar, demoCalendar } from "../../../prisma/seed/shop-days";
import { ownPicture } from "../../services/scenarios/own-picture";
import { acceptedQuote, filledSheet, quotedSheet, releasedOrder, type SaleOptions } from "../builders/sale";
import { daysAfter, must, type TestShop } from "../builders/shop";

const hour = 3_600_000;

/** Letters cut from two base colours and exchanged between the skis. */
const lettered = (text: string): SaleOptions["choices"] => ({
  "choices.model": "midlow-95",
  "choices.lengthCm": 178,
  "choices.base": { left: "black", right: "yellow", inlay: "counterchange", inlayText: text },
});

interface Filling {
  readonly shop: TestShop;
  readonly db: Db;
  readonly now: Date;
  readonly calendar: DemoCalendar;
  /** The next customer nobody has had. */
  readonly who: () => { readonly phone: string; readonly name: string };
}

/** Goes on from the demo made at this instant; what happens later happens in the hours after it. */
export async function fillShop(db: Db, now: Date): Promise<void> {
  let customers = 0;
  const who = () => {
    customers += 1;
    return { phone: `303 555 ${7000 + customers}`, name: `Stored Skier ${customers}` };
  };
  const filling: Filling = { shop: await demoPeople(db, now), db, now, calendar: demoCalendar(now), who };
  await soldAndMade(filling);
  await quotesOfAllKinds(filling);
  await proofsOfAllKinds(filling);
  await changesAndEnds(filling);
  await theClub(filling);
  await theFloor(filling);
  await theQueue(filling);
  await whatWasLearnt(filling);
}

async function demoPeople(db: Db, now: Date): Promise<TestShop> {
  const actors = [];
  for (const { email, password } of demoStaff) {
    actors.push(must(await signIn({ email, password, address: "127.0.0.1" }, now)).actor);
  }
  const [desk, secondDesk, maker, owner] = actors;
  if (!desk || !secondDesk || !maker || !owner) throw new Error("the demo has fewer people than four");
  const as: TestShop["as"] = (actor, at = now) => ({ actor, now: at, newId, db, promiseRuns: 16 });
  return { desk, secondDesk, maker, owner, as, visitor: as(systemActor("a visitor")) };
}

function firstPair({ pairs }: AcceptedQuote): PairId {
  const [pair] = pairs;
  if (pair === undefined) throw new Error("the order has no pair");
  return pair.pairId;
}

/** Released so many working days ago and carried through the floor since: ready, shipped, and one ski built again. */
async function soldAndMade({ shop, db, now, calendar, who }: Filling): Promise<void> {
  const carried = async (days: number, through: number | undefined, choices: SaleOptions["choices"]) => {
    const released = await releasedOrder(shop, {
      ...who(),
      ...(choices ? { choices } : {}),
      now: calendar.back(days, 9),
    });
    const progress = { pairId: firstPair(released), days, turn: days, ...(through === undefined ? {} : { through }) };
    await seedFloorHistory({ db, newId, desk: shop.desk }, calendar, progress, new FloorBook());
    return released;
  };
  await carried(13, 7, lettered("READY"));
  const shipped = await carried(14, 7, lettered("SHIPPED"));
  const balance = {
    orderId: shipped.orderId,
    what: "balance",
    method: "bank-transfer",
    reference: "transfer 9",
  } as const;
  must(await recordReceipt(shop.as(shop.desk), balance));
  must(await shipOrder(shop.as(shop.desk), { orderId: shipped.orderId, tracking: "LF-9000" }));
  const unpaid = await carried(15, 7, { "choices.model": "midlow-84" });
  const reason = "pays at the lift station";
  must(await shipOrder(shop.as(shop.owner), { orderId: unpaid.orderId, unpaidReason: reason }));
  const again = await carried(8, undefined, lettered("AGAIN"));
  const input = { pairId: firstPair(again), side: "R", fromStation: "strips", fault: "void-after-press" } as const;
  const maker = shop.as(shop.maker, now);
  must(await buildSheetDocument(maker, { pairId: input.pairId, paper: "A4" }));
  const { version } = must(await previewRework(maker, input));
  must(await startRework(maker, { ...input, version, note: "void at the tip", location: "rack 3, left" }));
  must(await buildSheetDocument(maker, { pairId: input.pairId, paper: "LETTER" }));
}

async function quotesOfAllKinds({ shop, now, calendar, who }: Filling): Promise<void> {
  must(
    await turnDown(shop.as(shop.desk), { sheetId: await filledSheet(shop, { ...who(), now }), reason: "wants wheels" }),
  );
  await filledSheet(shop, { ...who(), now, choices: lettered("SHEET") ?? {} });
  await quotedSheet(shop, { ...who(), now, choices: lettered("OPEN") ?? {} });
  const expired = await quotedSheet(shop, { ...who(), now: calendar.back(25, 15), choices: lettered("LATE") ?? {} });
  const honoured = await quotedSheet(shop, { ...who(), now: calendar.back(26, 15) });
  must(await repriceQuote(shop.as(shop.desk), { quoteId: expired.quote.quoteId }));
  const honour = { quoteId: honoured.quote.quoteId, reason: "was ill in bed" };
  must(await honourOldPrice(shop.as(shop.owner), honour));
  const options = {
    ...who(),
    now,
    choices: {
      "choices.destination": "domestic",
      "choices.base": { left: "lake", right: "bone", inlay: "complex", inlayText: "two hares" },
    },
  };
  await quotedSheet(shop, options);
  await acceptedQuote(shop, { ...who(), now, choices: lettered("WAITS") ?? {} });
}

async function proofsOfAllKinds({ shop, now, who }: Filling): Promise<void> {
  const desk = shop.as(shop.desk, now);
  const own = async (text: string) => {
    const person = who();
    const sheetId = await filledSheet(shop, { ...person, now, choices: lettered(text) ?? {} });
    await ownPicture(desk, sheetId, person.name);
    const { quote } = must(await createQuote(desk, { sheetId }));
    return must(await acceptQuote(desk, { quoteId: quote.quoteId, how: "counter", name: person.name }));
  };
  const changed = firstPair(await own("ASKED"));
  const first = must(await issueProof(desk, { pairId: changed }));
  must(await askProofChanges(desk, { pairId: changed, revision: first.revision, note: "the ridge higher" }));
  const reissued = firstPair(await own("TWICE"));
  const one = must(await issueProof(desk, { pairId: reissued }));
  must(await askProofChanges(desk, { pairId: reissued, revision: one.revision, note: "darker" }));
  must(await issueProof(desk, { pairId: reissued, note: "darker by a tenth" }));
  const approved = await own("CLEAR");
  const pairId = firstPair(approved);
  must(await lockSpecification(desk, { pairId }));
  const two = must(await issueProof(desk, { pairId }));
  must(await approveProof(desk, { pairId, revision: two.revision, name: "Stored Skier" }));
  must(await recordDeposit(desk, { orderId: approved.orderId, method: "counter", reference: "receipt 7" }));
  const later = shop.as(shop.owner, new Date(now.getTime() + hour));
  const graphic = { kind: "house", house: "ice-facets", layout: "same", windows: [] } as const;
  must(
    await editPair(later, {
      pairId,
      choices: { graphic },
      reason: "no picture after all",
      revision: 1,
      ownerApproves: true,
    }),
  );
}

async function changesAndEnds({ shop, now, who }: Filling): Promise<void> {
  const desk = shop.as(shop.desk, new Date(now.getTime() + hour));
  const edited = await releasedOrder(shop, { ...who(), now, choices: lettered("LONGER") ?? {} });
  const pairId = firstPair(edited);
  must(await buildSheetDocument(desk, { pairId, paper: "A4" }));
  must(await editPair(desk, { pairId, choices: { lengthCm: 186 }, reason: "caller wants it longer", revision: 1 }));
  const moved = await releasedOrder(shop, { ...who(), now });
  const { version } = must(await readOrder(desk, { orderId: moved.orderId }));
  const on = isoDate("2027-02-26");
  must(await changePromise(desk, { orderId: moved.orderId, version, on, reason: "away until then" }));
  const paid = await releasedOrder(shop, { ...who(), now, choices: lettered("GONE") ?? {} });
  must(await cancelOrder(desk, { orderId: paid.orderId, reason: "broke a leg" }));
  const unpaid = await acceptedQuote(shop, { ...who(), now });
  must(await cancelOrder(desk, { orderId: unpaid.orderId, reason: "changed their mind" }));
  const hard = await releasedOrder(shop, { ...who(), now, choices: lettered("HARD") ?? {} });
  const owner = shop.as(shop.owner, new Date(now.getTime() + hour));
  const wished = addWorkingDays(floorCatalog().hours, isoDate("2026-12-21"), 10);
  const shown = must(await previewHardDate(owner, { orderId: hard.orderId, on: wished }));
  const { version: seen } = must(await readOrder(owner, { orderId: hard.orderId }));
  const approval = { orderId: hard.orderId, version: seen, revision: shown.revision, on: wished };
  must(await approveHardDate(owner, { ...approval, planB: "a loan pair and a card", overrideReason: "a wedding" }));
}

async function theClub({ shop, now }: Filling): Promise<void> {
  const desk = shop.as(shop.desk, new Date(now.getTime() + hour));
  const [club] = must(await listClubs(desk));
  if (club === undefined) throw new Error("the demo has no club");
  const { open } = must(await readClub(desk, { clubId: club.clubId }));
  const quoteIds = open?.quoteIds.slice(0, 2) ?? [];
  must(await acceptClub(desk, { clubId: club.clubId, quoteIds, pricedIds: quoteIds, how: "phone", name: "The club" }));
}

async function theFloor({ shop, now }: Filling): Promise<void> {
  const owner = shop.as(shop.owner, new Date(now.getTime() + 2 * hour));
  const from = owner.now.toISOString();
  const until = daysAfter(owner.now, 3).toISOString();
  const report = async (reportId: string, breakdown: BreakdownInput, note: string) =>
    must(await reportBreakdown(owner, { reportId, breakdown, note }));
  await report(
    "base",
    { kind: "base-short", colour: "yellow", leftM: 3, expectedOn: isoDate("2027-01-18") },
    "roll is torn",
  );
  const away = await report(
    "away",
    { kind: "person-away", person: floorCatalog().crew[0]?.id ?? "", from, until },
    "flu",
  );
  const [way] = away.options;
  if (way === undefined) throw new Error("no way on was worked out");
  must(
    await chooseOption(owner, {
      incidentId: away.incidentId,
      version: away.version,
      option: way.way,
      reason: "the dearest order is in it",
    }),
  );
  const late = {
    kind: "supplier-late",
    station: "base-cut",
    material: "edges",
    expectedOn: isoDate("2026-12-04"),
  } as const;
  const edges = await report("late", late, "the lorry is stuck");
  must(
    await chooseOption(owner, {
      incidentId: edges.incidentId,
      version: edges.version,
      option: "wait",
      reason: "nothing else fits",
    }),
  );
  const whatIf = { kind: "second-press", from: isoDate("2027-01-11") } as const;
  must(await applyWhatIf(owner, { changeId: "press", whatIf, reason: "the season is sold out" }));
  const closure = { kind: "closure", from: isoDate("2027-02-15"), until: isoDate("2027-02-19") } as const;
  must(await applyWhatIf(owner, { changeId: "closed", whatIf: closure, reason: "stocktaking" }));
  const change = must(await listFloorChanges(owner)).find(({ reason }) => reason === "stocktaking");
  if (change === undefined) throw new Error("the closure was not stored");
  must(await withdrawChange(owner, { floorChangeId: change.floorChangeId, reason: "stock is right" }));
}

async function theQueue({ shop, now }: Filling): Promise<void> {
  const owner = shop.as(shop.owner, new Date(now.getTime() + 3 * hour));
  const clock = { ...owner, actor: systemActor("the clock") };
  must(await sweepSlots(clock));
  must(await freezePressSlots(clock));
  const { revision, places } = must(await readQueueOrder(owner));
  const free = places.slice(-4);
  const [before, , , last] = free;
  if (before === undefined || last === undefined) throw new Error("the queue is shorter than four pairs");
  must(await applyMove(owner, { pairId: last.pairId, before: before.pairId, revision, reason: "skis on Saturday" }));
}

/** The mistyped reading is left out, the book approved, and sold again: its release is another one. */
async function whatWasLearnt({ shop, now, who }: Filling): Promise<void> {
  const at = new Date(now.getTime() + 4 * hour);
  const owner = shop.as(shop.owner, at);
  for (const { skiId, measure, measured } of must(await readLearning(owner)).undecided) {
    const decision = {
      serial: skiId,
      measure,
      value: measured,
      choice: "leave-out",
      reason: "wrong first digit",
    } as const;
    must(await decideReading(owner, decision));
  }
  const { fingerprint } = must(await readLearning(owner));
  must(await approveCorrections(owner, { fingerprint }));
  await quotedSheet(shop, { ...who(), now: at });
  await releasedOrder(shop, { ...who(), now: at, choices: lettered("LEARNT") ?? {} });
}
