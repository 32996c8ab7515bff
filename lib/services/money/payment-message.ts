/**
 * What a payment service says, signed. Money of a guest counts only by such a message: the service knows the card, we see none.
 * The signature is an HMAC over the very bytes of the body; a message counts once and soon, or not at all.
 */
import { createHmac, timingSafeEqual } from "node:crypto";
import { z } from "zod";
import { config, houseKey } from "#config";
import { accept, type Outcome, refuse } from "#engine/units";

/** How old a message may be, and how far ahead of our clock. Shop practice, no source. */
export const messageMinutes = 5;

const paymentMessageSchema = z.strictObject({
  /** The service's own number of this message. */
  id: z.string().min(8).max(100),
  /** Whose money it is: the name of this shop with the service. */
  shop: z.string().min(1).max(200),
  /** Our number of what was asked for. */
  paymentId: z.string().min(1).max(100),
  cents: z.int().positive(),
  currency: z.string().length(3),
  paidAt: z.iso.datetime({ offset: true }),
  sentAt: z.iso.datetime({ offset: true }),
  /** By which the service finds it again; never anything of a card. */
  reference: z.string().min(1).max(120),
});

export type PaymentMessage = z.output<typeof paymentMessageSchema>;

/** A message on its way: its bytes as text, and what proves who wrote them. */
export interface SignedMessage {
  readonly body: string;
  /** HMAC-SHA256, hexadecimal. */
  readonly signature: string;
}

/** The key that this shop and its payment service share. */
export function paymentKey(): Buffer {
  const { paymentSecret } = config();
  return paymentSecret === null ? houseKey("payment-messages") : Buffer.from(paymentSecret, "utf8");
}

export function signMessage(message: PaymentMessage, key: Buffer): SignedMessage {
  const body = JSON.stringify(message);
  return { body, signature: signatureOf(body, key) };
}

/** By what a service knows this shop: its public address. */
export const shopWithService = () => config().publicOrigin;

/**
 * Refuses `payment-not-signed` (altered, or of somebody else), `payment-unreadable`, `payment-foreign` (for another shop),
 * `payment-too-late`.
 */
export function readMessage(sent: SignedMessage, key: Buffer, now: Date): Outcome<PaymentMessage> {
  if (!isSignature(sent.signature, signatureOf(sent.body, key))) return refuse({ code: "payment-not-signed" });
  const parsed = paymentMessageSchema.safeParse(jsonOf(sent.body));
  if (!parsed.success) return refuse({ code: "payment-unreadable", why: parsed.error.issues[0]?.message ?? "" });
  const message = parsed.data;
  if (message.shop !== shopWithService()) return refuse({ code: "payment-foreign", messageId: message.id });
  const ageMs = Math.abs(now.getTime() - new Date(message.sentAt).getTime());
  if (ageMs > messageMinutes * 60_000)
    return refuse({ code: "payment-too-late", messageId: message.id, messageMinutes });
  return accept(message);
}

function signatureOf(body: string, key: Buffer): string {
  return createHmac("sha256", key).update(body, "utf8").digest("hex");
}

function isSignature(given: string, right: string): boolean {
  const [a, b] = [Buffer.from(given, "utf8"), Buffer.from(right, "utf8")];
  return a.length === b.length && timingSafeEqual(a, b);
}

function jsonOf(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
