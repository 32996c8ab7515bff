/** The usual way from a call to an order, step by step, for tests that begin after it. */
import {
  type AcceptedQuote,
  acceptQuote,
  createQuote,
  lockSpecification,
  type MadeQuote,
  openSheet,
  recordDeposit,
  type SheetId,
  saveSheet,
} from "#services";
import { must, shopNow, type TestShop } from "./shop";

export const plainAnswers = {
  "typed.height": { unit: "cm", cm: 182 },
  "typed.mass": { unit: "kg", kg: 82 },
  "answers.ability": "confident",
  "answers.temperament": "steady",
  "answers.homeSnow": "mixed",
  "answers.offPistePercent": 40,
} as const;

export interface SaleOptions {
  readonly phone?: string;
  readonly name?: string;
  readonly answers?: Readonly<Record<string, unknown>>;
  readonly choices?: Readonly<Record<string, unknown>>;
  readonly now?: Date;
}

/** A phone sheet with contact, answers and choices, not yet quoted. */
export async function filledSheet(shop: TestShop, options: SaleOptions = {}): Promise<SheetId> {
  const ctx = shop.as(shop.desk, options.now ?? shopNow);
  const phone = options.phone ?? "303 555 0101";
  const { sheet } = must(await openSheet(ctx, { channel: "phone", phone, name: options.name ?? "Robin Alder" }));
  const patch = { ...plainAnswers, "choices.destination": "collect", ...options.answers, ...options.choices };
  must(await saveSheet(ctx, { sheetId: sheet.sheetId, patch, baseVersion: sheet.version }));
  return sheet.sheetId;
}

export async function quotedSheet(shop: TestShop, options: SaleOptions = {}): Promise<MadeQuote> {
  const sheetId = await filledSheet(shop, options);
  return must(await createQuote(shop.as(shop.desk, options.now ?? shopNow), { sheetId }));
}

export async function acceptedQuote(shop: TestShop, options: SaleOptions = {}): Promise<AcceptedQuote> {
  const { quote } = await quotedSheet(shop, options);
  const ctx = shop.as(shop.desk, options.now ?? shopNow);
  return must(await acceptQuote(ctx, { quoteId: quote.quoteId, how: "phone", name: options.name ?? "Robin Alder" }));
}

/** An order with a house graphic whose deposit is paid and specification locked: its clock runs. */
export async function releasedOrder(shop: TestShop, options: SaleOptions = {}): Promise<AcceptedQuote> {
  const accepted = await acceptedQuote(shop, options);
  const ctx = shop.as(shop.desk, options.now ?? shopNow);
  for (const { pairId } of accepted.pairs) must(await lockSpecification(ctx, { pairId }));
  must(await recordDeposit(ctx, { orderId: accepted.orderId, method: "counter", reference: "receipt 1" }));
  return accepted;
}
