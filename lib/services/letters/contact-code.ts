/** The letter with the code that shows whether somebody reads the mail of an order's address. */
import { randomInt } from "node:crypto";
import { houseDigest } from "#config";
import words from "#content/copy/customers.json";
import type { Tx } from "#data/client";
import { insertContactCode } from "#data/contact-codes";
import { recordEvents } from "#data/events";
import { fill } from "#engine/units";
import type { Context } from "#services/context";
import { eventOf } from "#services/record";
import { currentCatalog } from "#shop/catalogue/current";
import { orderNumber } from "#shop/names/numbers";
import { shopClock } from "#shop/time/shop-time";
import { enqueueLetter, isMailAddress } from "./enqueue-letter";

/** No letter or digit that is taken for another one. */
const alphabet = "23456789ABCDEFGHJKMNPQRSTUVWXYZ";
const codeLength = 8;
/** Long enough for a mail that is read in the evening. Shop practice, no source. */
const validHours = 48;

export interface CodeReader {
  readonly id: string;
  readonly number: number;
  readonly customer: { readonly email: string | null };
}

/** Writes a new code and its letter, in the caller's transaction; the code is in the letter alone. False without a mail address. */
export async function sendContactCode(ctx: Context, tx: Tx, order: CodeReader): Promise<boolean> {
  const { email } = order.customer;
  if (email === null || !isMailAddress(email)) return false;
  const code = Array.from({ length: codeLength }, () => alphabet[randomInt(alphabet.length)]).join("");
  const expiresAt = new Date(ctx.now.getTime() + validHours * 3_600_000);
  const codeHash = contactCodeHash(order.id, code);
  await insertContactCode(tx, {
    id: ctx.newId(),
    orderId: order.id,
    codeHash,
    sentTo: email,
    sentAt: ctx.now,
    expiresAt,
  });
  await writeCodeLetter(ctx, tx, { order, email, code, expiresAt });
  return true;
}

interface CodeLetter {
  readonly order: CodeReader;
  readonly email: string;
  readonly code: string;
  readonly expiresAt: Date;
}

async function writeCodeLetter(ctx: Context, tx: Tx, { order, email, code, expiresAt }: CodeLetter): Promise<void> {
  const about = { kind: "order", id: order.id } as const;
  const { shop } = currentCatalog();
  const said = {
    shop: shop.name,
    order: orderNumber(order),
    code: `${code.slice(0, 4)}-${code.slice(4)}`,
    until: shopClock(expiresAt, shop.timeZone).replace("T", " "),
  };
  await enqueueLetter(tx, {
    id: ctx.newId(),
    kind: "contact-code",
    to: email,
    subject: fill(words.codeLetter.heading, said),
    text: fill(words.codeLetter.text, said),
    about,
    secret: true,
    createdAt: ctx.now,
  });
  await recordEvents(tx, [eventOf(ctx, "contact-code-sent", about, { until: expiresAt.toISOString() })]);
}

/** Of a code as it is typed: case, spaces and hyphens do not count. */
export function contactCodeHash(orderId: string, typed: string): string {
  const code = typed.toUpperCase().replace(/[^0-9A-Z]/g, "");
  return houseDigest("contact-codes", `${orderId} ${code}`);
}
