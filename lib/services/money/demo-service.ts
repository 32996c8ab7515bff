/**
 * The demo's payment service: it says yes at once, and signs it as a real one would. It exists in the demo alone. No card data
 * passes through here, ever: a real service takes the card on its own page and tells us the result.
 */

import { config } from "#config";
import history from "#content/copy/history.json";
import { isDemoShop } from "#data/counters";
import { fill } from "#engine/units";
import type { Context } from "#services/context";
import { currentCatalog } from "#shop/catalogue/current";
import type { DepositMethod } from "#shop/order/views";
import { paymentKey, type SignedMessage, shopWithService, signMessage } from "./payment-message";

const w = history.money;

/** Whether what is in the database is the demo, and may be used as one. */
export async function isDemo(ctx: Pick<Context, "db">): Promise<boolean> {
  return config().demo && (await isDemoShop(ctx.db));
}

/** How money may come: what the shop's settings name, the demo's card in the demo alone. */
export async function offeredMethods(ctx: Pick<Context, "db">): Promise<readonly DepositMethod[]> {
  const { methods } = currentCatalog().shop.deposit;
  return (await isDemo(ctx)) ? methods : methods.filter((method) => method !== "demo-card");
}

export function demoReference(orderNumber: string): string {
  return fill(w.demoReference, { orderNumber });
}

/** What the service would post to us. */
export function demoPays(
  ctx: Pick<Context, "newId" | "now">,
  asked: {
    readonly paymentId: string;
    readonly cents: number;
    readonly currency: string;
    readonly orderNumber: string;
  },
): SignedMessage {
  const at = ctx.now.toISOString();
  const { paymentId, cents, currency, orderNumber } = asked;
  return signMessage(
    {
      id: `demo-${ctx.newId()}`,
      shop: shopWithService(),
      paymentId,
      cents,
      currency,
      paidAt: at,
      sentAt: at,
      reference: demoReference(orderNumber),
    },
    paymentKey(),
  );
}
