/** What a proof prints. */
import type { IsoDate } from "#engine/units";
import type { DrawingData, LocalDateTime, PrintStamp, ShopFacts } from "#papers/parts/facts";

/** How a proof stands: laid out and not sent, sent and waited for, or answered. */
export type ProofAnswer =
  | { readonly state: "draft" }
  /** `ifLate` says what an answer after that day does to the date. */
  | { readonly state: "issued"; readonly answerBy: IsoDate | null; readonly ifLate: string }
  /** `by` is null on a copy for somebody who is not told the skier's full name. */
  | { readonly state: "approved"; readonly at: LocalDateTime; readonly by: string | null }
  | { readonly state: "changes-asked"; readonly at: LocalDateTime; readonly note: string };

export interface ProofData {
  readonly shop: ShopFacts;
  /** `revision` is the proof's. */
  readonly stamp: PrintStamp;
  readonly serial: string;
  readonly leftSerial: string;
  readonly rightSerial: string;
  readonly url: string;
  readonly title: string;
  readonly layout: string;
  readonly drawing: DrawingData;
  readonly safeMm: number;
  readonly bleedSideMm: number;
  /** Each ski's picture, already cropped to the ski's box (PNG or JPEG data URI). */
  readonly pictures: { readonly L: string; readonly R: string };
  readonly text: { readonly transcript: string; readonly xMm: number; readonly capHeightMm: number } | null;
  readonly resolution: string;
  readonly colourProfile: string;
  readonly mirrored: string;
  /** Null for a house graphic, which has no file. */
  readonly sourceHash: string | null;
  /** What the desk says with it. */
  readonly note: string | null;
  readonly answer: ProofAnswer;
}
