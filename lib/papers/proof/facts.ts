/** What a proof is about: the print of both skis, and how its answer stands. */
import type { BuildCatalog, PairSpec } from "#engine/configuration";
import type { IsoDate } from "#engine/units";
import type { FloorFacts, LocalDateTime, PrintStamp, ShopFacts, SkiPictures } from "#papers/parts/facts";

/** How a proof stands: laid out and not sent, sent and waited for, or answered. */
export type ProofStanding =
  | { readonly state: "draft" }
  | {
      readonly state: "issued";
      readonly answerBy: IsoDate | null;
      /** What the order does meanwhile: it waits for the answer, has lost its place, has none yet, or is being built. */
      readonly order: "waiting" | "slot-lost" | "unconfirmed" | "building";
    }
  /** `by` is null on a copy for somebody who is not told the skier's full name. */
  | { readonly state: "approved"; readonly at: LocalDateTime; readonly by: string | null }
  | { readonly state: "changes-asked"; readonly at: LocalDateTime; readonly note: string };

export interface ProofFacts {
  readonly shop: ShopFacts;
  /** `revision` is the proof's. */
  readonly stamp: PrintStamp;
  readonly serial: string;
  readonly leftSerial: string;
  readonly rightSerial: string;
  readonly url: string;
  /** The one that the pair is built by. */
  readonly catalog: BuildCatalog;
  readonly spec: PairSpec;
  readonly printFace: FloorFacts["printFace"];
  readonly pictures: SkiPictures;
  /** What the desk says with it. */
  readonly note: string | null;
  readonly standing: ProofStanding;
}
