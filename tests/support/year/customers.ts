/** The customers of a year: who asks, who accepts, who pays late or never, who lets a proof lie, who calls it off. */
import sharp from "sharp";
import { addWorkingDays } from "#engine/routing";
import { type IsoDate, isoDate } from "#engine/units";
import {
  acceptQuote,
  approveProof,
  askProofChanges,
  cancelOrder,
  issueProof,
  lockSpecification,
  type OrderId,
  type PairId,
  type QuoteId,
  recordDeposit,
} from "#services";
import { floorCatalog } from "#shop/floor/recipe";
import { demoPerson } from "../../../prisma/seed/people";
import { demoQuote } from "../../../prisma/seed/sales";
import { must, type TestShop } from "../builders/shop";
import type { Agenda } from "./agenda";
import { chance, workingTime, type YearShop } from "./year-shop";

/** Custom orders cluster from September to January (common practice, no source). January first. */
const ordersByMonth: readonly number[] = [5, 3, 1, 1, 1, 1, 2, 4, 5, 6, 6, 5];

export type CustomerKind =
  | "pays"
  | "pays-late"
  | "never-pays"
  | "never-accepts"
  | "calls-off"
  | "ignores-proof"
  | "asks-changes";

export interface Customer {
  readonly index: number;
  readonly kind: CustomerKind;
  readonly hasPicture: boolean;
  readonly asksOn: IsoDate;
}

const kinds: Readonly<Record<number, CustomerKind>> = {
  3: "pays-late",
  5: "never-pays",
  8: "never-accepts",
  9: "asks-changes",
  12: "calls-off",
  16: "ignores-proof",
  18: "never-pays",
  22: "never-accepts",
  23: "pays-late",
  27: "pays-late",
  30: "ignores-proof",
  33: "never-pays",
  36: "calls-off",
  38: "never-accepts",
};

/** Forty people over the working days of the year, each as told by their number alone. */
export function customersOf(year: number): readonly Customer[] {
  const { hours } = floorCatalog();
  const days = ordersByMonth.flatMap((orders, month) =>
    Array.from({ length: orders }, (_, turn) => {
      const first = isoDate(`${year}-${String(month + 1).padStart(2, "0")}-01`);
      return addWorkingDays(hours, first, Math.floor(18 * chance("day", month, turn)));
    }),
  );
  return days.sort().map((asksOn, index): Customer => {
    const kind = kinds[index] ?? "pays";
    const answersProof = kind === "ignores-proof" || kind === "asks-changes";
    return { index, kind, hasPicture: answersProof || index % 10 === 4, asksOn };
  });
}

export interface Sale {
  readonly customer: Customer;
  readonly quoteId: QuoteId;
  orderId?: OrderId;
  pairId?: PairId;
}

/** Enters the customer's first step; every step enters the next. `sales` fills as they come. */
export function expectCustomer(
  {
    shop,
    people,
    agenda,
    sales,
  }: {
    readonly shop: YearShop;
    readonly people: TestShop;
    readonly agenda: Agenda;
    readonly sales: Sale[];
  },
  customer: Customer,
): void {
  const { index, kind, asksOn, hasPicture } = customer;
  const person = demoPerson(index);
  const after = (days: number, hour: number) => workingTime(asksOn, days, hour, index % 50);
  const enter = (days: number, hour: number, act: (now: Date) => Promise<unknown>) => {
    const now = after(days, hour);
    agenda.enter(now, async () => {
      await act(now);
    });
  };

  enter(0, 9, async (now) => {
    const picture = hasPicture ? { picture: { bytes: await stripes(), hasRights: true } } : {};
    const demo = { db: shop.db, newId: shop.desk(now).newId, desk: people.desk };
    const { quote } = await demoQuote(demo, { person, index, now, ...picture });
    const sale: Sale = { customer, quoteId: quote.quoteId };
    sales.push(sale);
    if (kind !== "never-accepts") enter(index % 3, 13, (later) => accepts(sale, later));
  });

  async function accepts(sale: Sale, now: Date): Promise<void> {
    const answer = { quoteId: sale.quoteId, how: "phone", name: person.name } as const;
    const { orderId, pairs } = await shop.change(shop.desk(now), (ctx) => acceptQuote(ctx, answer));
    const pairId = pairs[0]?.pairId as PairId;
    Object.assign(sale, { orderId, pairId });
    const start = index % 3;
    enter(start + 1, 10, (later) => shop.change(shop.desk(later), (ctx) => lockSpecification(ctx, { pairId })));
    if (hasPicture) enter(start + 1, 11, (later) => proofs(pairId, later, start + 1));
    if (kind === "never-pays") {
      enter(start + 18, 15, (later) => cancels(orderId, "never paid", later));
      return;
    }
    const deposit = { orderId, method: "bank-transfer", reference: `transfer ${1000 + index}` } as const;
    // A place is kept five working days unpaid (the shop's own rule); who pays late pays after that.
    enter(start + (kind === "pays-late" ? 9 : 1 + (index % 2)), 14, (later) =>
      shop.change(shop.desk(later), (ctx) => recordDeposit(ctx, deposit)),
    );
    if (kind === "calls-off") enter(start + 5, 15, (later) => cancels(orderId, "bought elsewhere", later));
  }

  async function proofs(pairId: PairId, now: Date, from: number): Promise<void> {
    const { revision } = must(await issueProof(shop.desk(now), { pairId }));
    const answer = { pairId, revision, name: person.name };
    if (kind === "asks-changes" && revision === 1) {
      const wish = { pairId, revision, note: "A little more to the left, please" };
      enter(from + 2, 10, (later) => shop.change(shop.desk(later), (ctx) => askProofChanges(ctx, wish)));
      enter(from + 3, 10, (later) => proofs(pairId, later, from + 3));
      return;
    }
    enter(from + (kind === "ignores-proof" ? 9 : 2), 12, (later) =>
      shop.change(shop.desk(later), (ctx) => approveProof(ctx, answer)),
    );
  }

  function cancels(orderId: OrderId, reason: string, now: Date): Promise<unknown> {
    return shop.change(shop.desk(now), (ctx) => cancelOrder(ctx, { orderId, reason }));
  }
}

let picture: Promise<Uint8Array> | undefined;

/** A picture of the customer's own. */
function stripes(): Promise<Uint8Array> {
  const bars = Array.from({ length: 12 }, (_, bar) => {
    return `<rect x="${bar * 200}" width="200" height="420" fill="${bar % 2 === 0 ? "#124e55" : "#a3440f"}"/>`;
  });
  picture ??= sharp(
    Buffer.from(`<svg xmlns="http://www.w3.org/2000/svg" width="2400" height="420">${bars.join("")}</svg>`),
  )
    .png()
    .toBuffer();
  return picture;
}
