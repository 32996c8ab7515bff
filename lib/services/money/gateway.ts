/**
 * The deposit's way in. No card data passes through here, ever: a real payment service would take the card on its own
 * page and tell us the result. The demo stands in for it and says yes at once.
 */

import history from "#content/copy/history.json";
import type { Price } from "#engine/pricing";
import { accept, fill, type Outcome, refuse } from "#engine/units";
import type { DepositMethod } from "#shop/order/views";

const w = history.money;

export interface DepositRequest {
  readonly orderNumber: string;
  readonly cents: number;
  readonly currency: Price["currency"];
  readonly method: DepositMethod;
  /** What staff read off a bank statement or a receipt. */
  readonly reference: string | null;
  readonly isStaff: boolean;
}

/** `received` = the money is there; `announced` = the skier said how it will come. */
export interface DepositAnswer {
  readonly state: "received" | "announced";
  readonly reference: string | null;
}

export interface DepositGateway {
  take(request: DepositRequest): Promise<Outcome<DepositAnswer>>;
}

export const demoGateway: DepositGateway = {
  async take(request) {
    switch (request.method) {
      case "demo-card":
        return accept({ state: "received", reference: fill(w.demoReference, { orderNumber: request.orderNumber }) });
      case "bank-transfer":
      case "counter":
        if (!request.isStaff) return accept({ state: "announced", reference: null });
        if (request.reference === null) return refuse({ code: "reference-missing", path: "reference" });
        return accept({ state: "received", reference: request.reference });
      case "pay-later":
        return accept({ state: "announced", reference: null });
    }
  },
};
