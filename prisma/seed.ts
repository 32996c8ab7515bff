/**
 * The demo shop "Thistle Yard": wood, people, and a queue that is alive whenever it is first started. Everything is counted
 * back from now and made with the shop's own use cases; the same moment gives the same shop. Invented throughout.
 */
import sharp from "sharp";
import { systemActor, takeOnStaff } from "#auth";
import { type Db, db } from "#data/client";
import { markDemoShop } from "#data/counters";
import { newId } from "#data/ids";
import {
  approveProof,
  askReview,
  deliverOrder,
  issueProof,
  lockSpecification,
  type OrderId,
  openSheet,
  type PairId,
  recordDeposit,
  recordReceipt,
  requestChange,
  saveSheet,
  setCallBack,
  shipOrder,
  withdrawQuote,
} from "#services";
import { engineOn } from "#shop/catalogue/current";
import { seedBench } from "./seed/bench";
import { seedBreakdown } from "./seed/breakdown";
import { seedCautions } from "./seed/cautions";
import { seedClub } from "./seed/club";
import { FloorBook } from "./seed/floor-book";
import { seedFloorHistory } from "./seed/floor-history";
import { seedLots } from "./seed/lots";
import { demoPerson, demoStaff } from "./seed/people";
import { at, type DemoShop, demoFields, demoOrder, demoQuote, demoSheet, done } from "./seed/sales";
import { type DemoCalendar, demoCalendar } from "./seed/shop-days";
import { seedWood } from "./seed/wood";

export interface SeededDemo {
  readonly signIns: readonly { readonly role: string; readonly email: string; readonly password: string }[];
}

/** Pairs delivered in the last weeks: working days since their release. */
const deliveredDays: readonly number[] = [24, 23, 22, 20, 19, 18, 17, 16, 15];
/** How long those were on their way, by their working days since release: the shop was emptier then. One was a day late. */
const throughDays: Readonly<Record<number, number>> = { 24: 2, 23: 3, 22: 4, 20: 5, 19: 5, 18: 5, 17: 6, 16: 7, 15: 7 };
/** Pairs on the floor: working days since their release, longest first. */
const floorDays: readonly number[] = [9, 9, 8, 8, 7, 7, 6, 5, 5, 4, 4, 4, 3, 3, 3, 2, 2, 1, 1, 1, 0, 0, 0];
/** The core of the last pair released: its strips are short. */
const scarceCore = "beech-poplar";
/** Orders that wait for something: what is already in. */
const waitingOrders: readonly {
  readonly deposit: boolean;
  readonly lock: boolean;
  readonly picture?: "rights" | "no-rights";
  readonly proof?: boolean;
}[] = [
  { deposit: false, lock: false },
  { deposit: false, lock: true },
  { deposit: true, lock: false },
  { deposit: true, lock: true, picture: "rights", proof: true },
  { deposit: true, lock: true, picture: "rights", proof: false },
  { deposit: true, lock: true, picture: "no-rights", proof: true },
];

/** Fills an empty database. Staff come last: without them the demo counts as not made. */
export async function seedDemo(now: Date = new Date(), client?: Db): Promise<SeededDemo> {
  const shop: DemoShop = { db: client ?? (await db()), newId, desk: systemActor("Ines Calder") };
  const calendar = demoCalendar(now);
  await markDemoShop(shop.db);
  await seedWood(shop.db, now);
  await seedLots(shop.db, engineOn(now), now);
  let next = 0;
  const person = () => {
    const index = next;
    next += 1;
    return { index, person: demoPerson(index) };
  };
  const gone: Released[] = [];
  for (const days of deliveredDays) gone.push(await released(shop, calendar, days, person()));
  await expiredQuotes(shop, calendar, person);
  // Sold while the earlier ones were still in the queue, so that their promises were made as in a busy shop.
  const onFloor: Released[] = [];
  for (const [turn, days] of floorDays.entries()) {
    const core = turn === floorDays.length - 1 ? { core: scarceCore } : {};
    onFloor.push(await released(shop, calendar, days, { ...person(), ...core }));
  }
  const book = new FloorBook();
  for (const pair of gone) await delivered(shop, calendar, pair, book);
  await seedBench(shop, calendar, gone);
  for (const [turn, { pairId, days }] of onFloor.entries()) {
    await seedFloorHistory(shop, calendar, { pairId, days, turn }, book);
  }
  await waiting(shop, calendar, person);
  await quotes(shop, calendar, person);
  await drafts(shop, calendar, now, person);
  await seedBreakdown(shop, now);
  await seedClub(shop, calendar.back(1, 14), person().person);
  for (const staff of demoStaff)
    done(await takeOnStaff(systemActor("first start"), { ...staff, isDemoPassword: true }, now), staff.email);
  await seedCautions(shop, demoStaff, now);
  return { signIns: demoStaff.map(({ role, email, password }) => ({ role, email, password })) };
}

type Person = Pick<Parameters<typeof demoOrder>[1], "index" | "person" | "core">;

interface Released {
  readonly pairId: PairId;
  readonly orderId: OrderId;
  /** Working days since its release. */
  readonly days: number;
}

async function released(shop: DemoShop, calendar: DemoCalendar, days: number, who: Person): Promise<Released> {
  const ordered = calendar.back(days + 2, 9, who.index % 50);
  const { orderId, pairs } = await demoOrder(shop, { ...who, now: ordered });
  const pairId = pairs[0]?.pairId;
  if (pairId === undefined) throw new Error("demo: the order has no pair");
  done(await lockSpecification(at(shop, calendar.back(days + 1, 10)), { pairId }), "a lock");
  const deposit = { orderId, method: "bank-transfer", reference: `transfer ${1000 + who.index}` } as const;
  done(await recordDeposit(at(shop, calendar.back(days, 7, 40)), deposit), "a deposit");
  return { pairId, orderId, days };
}

async function delivered(
  shop: DemoShop,
  calendar: DemoCalendar,
  { pairId, orderId, days }: Released,
  book: FloorBook,
): Promise<void> {
  await seedFloorHistory(shop, calendar, { pairId, days, turn: days, through: throughDays[days] ?? 9 }, book);
  const rest = { orderId, what: "balance", method: "bank-transfer", reference: `transfer ${3000 + days}` } as const;
  done(await recordReceipt(at(shop, calendar.back(days - 11, 14)), rest), "a balance");
  done(await shipOrder(at(shop, calendar.back(days - 11, 15)), { orderId, tracking: `LF-${5000 + days}` }), "a parcel");
  done(await deliverOrder(at(shop, calendar.back(days - 13, 12)), { orderId }), "a delivery");
}

async function waiting(shop: DemoShop, calendar: DemoCalendar, person: () => Person): Promise<void> {
  const bytes = await demoPicture();
  for (const [index, wait] of waitingOrders.entries()) {
    const when = calendar.back(2 + index, 11);
    const picture = wait.picture === undefined ? {} : { picture: { bytes, hasRights: wait.picture === "rights" } };
    const { orderId, pairs } = await demoOrder(shop, { ...person(), now: when, ...picture });
    const pairId = pairs[0]?.pairId;
    if (pairId === undefined) throw new Error("demo: the order has no pair");
    const later = at(shop, calendar.back(1, 14, index));
    if (wait.lock) done(await lockSpecification(later, { pairId }), "a lock");
    if (wait.proof !== undefined) {
      const proof = done(await issueProof(later, { pairId }), "a proof");
      const isApproved = wait.picture === "no-rights";
      const approval = { pairId, revision: proof.revision, name: "the skier" };
      if (isApproved) done(await approveProof(later, approval), "an approval");
    }
    if (wait.deposit) done(await recordDeposit(later, { orderId, method: "demo-card" }), "a deposit");
  }
}

async function quotes(shop: DemoShop, calendar: DemoCalendar, person: () => Person): Promise<void> {
  for (const days of [0, 1, 3, 8, 13]) {
    const { quote } = await demoQuote(shop, {
      ...person(),
      now: days === 0 ? calendar.present : calendar.back(days, 16),
    });
    if (days === 3) {
      const change = { quoteId: quote.quoteId, note: "Could it be one size shorter?" };
      done(await requestChange(at(shop, calendar.back(1, 9)), change), "a wish");
    }
  }
  const { quote } = await demoQuote(shop, { ...person(), now: calendar.back(6, 15) });
  const withdrawn = { quoteId: quote.quoteId, reason: "bought elsewhere" };
  done(await withdrawQuote(at(shop, calendar.back(4, 15)), withdrawn), "a withdrawal");
}

/** Made when only the first pairs were in the queue, so that their dates are those of their day. */
async function expiredQuotes(shop: DemoShop, calendar: DemoCalendar, person: () => Person): Promise<void> {
  for (const days of [24, 20]) await demoQuote(shop, { ...person(), now: calendar.back(days, 16) });
}

async function drafts(shop: DemoShop, calendar: DemoCalendar, now: Date, person: () => Person): Promise<void> {
  const today = at(shop, calendar.present);
  const dropped = await demoSheet(shop, { ...person(), now: calendar.present });
  const callBack = {
    sheetId: dropped,
    at: new Date(now.getTime() + 2 * 3_600_000),
    reason: "line dropped",
    phone: "303 555 0190",
  };
  done(await setCallBack(at(shop, now), callBack), "a call back");

  const heavy = person();
  const opened = done(
    await openSheet(today, { channel: "phone", phone: heavy.person.phone, name: heavy.person.name }),
    "a call",
  );
  const { sheetId, version } = opened.sheet;
  const patch = {
    ...demoFields(2),
    "typed.mass": { unit: "kg", kg: 128 },
    "answers.ability": "expert",
    "answers.temperament": "fast",
  };
  done(await saveSheet(today, { sheetId, patch, baseVersion: version }), "its fields");
  done(await askReview(today, { sheetId, note: "128 kg, wants Ridgefold: can we build stiff enough?" }), "a review");

  const started = person();
  done(await openSheet(today, { channel: "phone", phone: started.person.phone, name: started.person.name }), "a call");
}

/** Stripes, as a stand-in for a skier's own picture. */
async function demoPicture(): Promise<Uint8Array> {
  const stripes = Array.from({ length: 12 }, (_, index) => {
    const colour = index % 2 === 0 ? "#124e55" : "#a3440f";
    return `<rect x="${index * 200}" width="200" height="420" fill="${colour}"/>`;
  });
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="2400" height="420">${stripes.join("")}</svg>`;
  return sharp(Buffer.from(svg)).png().toBuffer();
}
