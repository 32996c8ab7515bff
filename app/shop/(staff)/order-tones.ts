import type { Tone } from "#app/_ui/notice.tsx";
import type { OrderState } from "#services";

/** How the state of an order or a pair is shown; the word stands beside it. */
export const orderTones: Readonly<Record<OrderState, Tone>> = {
  waiting: "amber",
  released: "info",
  building: "info",
  ready: "moss",
  shipped: "moss",
  delivered: "moss",
  cancelled: "iron",
};
