import type { LetterState, NoticeState } from "#engine/floor";
import type { Instant, IsoDate, NoticeId, OrderId } from "#engine/units";

/** A letter to a customer: drafted by the program, sent or dropped by a person. */
export interface NoticeView {
  readonly noticeId: NoticeId;
  readonly orderId: OrderId;
  readonly orderNumber: string;
  readonly recipient: string;
  /** False: there is no mail address, and a person tells it. */
  readonly byMail: boolean;
  readonly kind: "delay" | "colour-offer" | "slot-slid" | "hold-lapsed" | "date-changed";
  readonly state: NoticeState;
  /** Where its letter is: waiting, handed to the mail server (sent) or given up (dead). Null where none was written. */
  readonly letter: LetterState | null;
  readonly version: number;
  readonly body: string;
  readonly promisedOn: IsoDate | null;
  readonly draftedAt: Instant;
  readonly draftedBy: string;
  readonly decided: { readonly at: Instant; readonly by: string; readonly reason: string | null } | null;
}

/** A letter under way: what a person sent and the queue carries. */
export interface LetterView {
  readonly letterId: string;
  readonly kind: string;
  readonly recipient: string;
  readonly subject: string;
  readonly state: LetterState;
  readonly tries: number;
  /** Why the last try failed. */
  readonly problem: string | null;
  readonly canBeSentAgain: boolean;
  readonly createdAt: Instant;
}
