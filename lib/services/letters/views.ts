import type { NoticeState } from "#engine/floor";
import type { Instant, IsoDate, NoticeId, OrderId } from "#engine/units";

/** A letter to a customer: drafted by the program, sent or dropped by a person. */
export interface NoticeView {
  readonly noticeId: NoticeId;
  readonly orderId: OrderId;
  readonly orderNumber: string;
  readonly recipient: string;
  readonly kind: "delay" | "colour-offer" | "slot-slid" | "hold-lapsed" | "date-changed";
  readonly state: NoticeState;
  readonly version: number;
  readonly body: string;
  readonly promisedOn: IsoDate | null;
  readonly draftedAt: Instant;
  readonly draftedBy: string;
  readonly decided: { readonly at: Instant; readonly by: string; readonly reason: string | null } | null;
}
