/** A sale that nobody of the shop has touched: a guest opens a sheet, fills it, has it quoted and accepts it. */
import { type Guest, guestByToken } from "#auth";
import type { Db } from "#data/client";
import { markDemoShop } from "#data/counters";
import { letterText } from "#data/letters";
import { type AcceptedQuote, acceptQuote, type Context, createQuote, openSheet, saveSheet } from "#services";
import { plainAnswers } from "./sale";
import { must, shopNow, type TestShop } from "./shop";

export interface OnlineOptions {
  readonly name?: string;
  readonly phone?: string;
  readonly email?: string;
  readonly address?: unknown;
  readonly choices?: Readonly<Record<string, unknown>>;
  readonly now?: Date;
  /** Whose share of the doors is used. */
  readonly visitor?: Context["visitor"];
}

async function behind(token: string, now: Date): Promise<Guest> {
  const found = await guestByToken(token, now);
  if (found === null) throw new Error("the link is closed");
  return found.actor;
}

/** Who holds the link, as the pages see them. */
export async function guestWith(shop: TestShop, token: string, options: OnlineOptions = {}): Promise<Context> {
  const now = options.now ?? shopNow;
  const { visitor } = options;
  return { ...shop.as(await behind(token, now), now), ...(visitor === undefined ? {} : { visitor }) };
}

/** A quote that a guest made of a sheet of their own. */
export async function onlineQuote(shop: TestShop, options: OnlineOptions = {}) {
  const now = options.now ?? shopNow;
  const { visitor } = options;
  const passerBy = { ...shop.as(shop.visitor.actor, now), ...(visitor === undefined ? {} : { visitor }) };
  const { sheet, token } = must(await openSheet(passerBy, { channel: "online" }));
  const own = await guestWith(shop, token ?? "", options);
  const patch = {
    ...plainAnswers,
    "choices.destination": "collect",
    "contact.name": options.name ?? "Wren Sorrel",
    "contact.phone": options.phone ?? "303 555 0177",
    ...(options.email === undefined ? {} : { "contact.email": options.email }),
    ...(options.address === undefined ? {} : { "contact.address": options.address }),
    ...options.choices,
  };
  must(await saveSheet(own, { sheetId: sheet.sheetId, patch, baseVersion: sheet.version }));
  return must(await createQuote(own, { sheetId: sheet.sheetId }));
}

export async function onlineOrder(shop: TestShop, options: OnlineOptions = {}): Promise<AcceptedQuote> {
  const { quote, token } = await onlineQuote(shop, options);
  const own = await guestWith(shop, token, options);
  return must(await acceptQuote(own, { quoteId: quote.quoteId, how: "online", name: options.name ?? "Wren Sorrel" }));
}

/** The code of the newest letter to an order's address. */
export async function codeIn(db: Db, orderId: string): Promise<string> {
  const letter = await db.letter.findFirst({
    where: { kind: "contact-code", subjectId: orderId },
    orderBy: [{ createdAt: "desc" }, { id: "desc" }],
  });
  const code = (letter === null ? null : letterText(letter))?.match(/\b[0-9A-Z]{4}-[0-9A-Z]{4}\b/)?.[0];
  if (code === undefined) throw new Error(`no letter went out for order ${orderId}`);
  return code;
}

/** The same shop as the demo: there alone the demonstration card is taken. */
export async function asDemo(db: Db): Promise<void> {
  await markDemoShop(db);
}
