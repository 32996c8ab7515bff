import { permit } from "#auth";
import problems from "#content/copy/problems.json";
import { recordEvents } from "#data/events";
import { benchRecordOf, insertDecision } from "#data/learning";
import { transaction } from "#data/transaction";
import type { BenchMeasure } from "#engine/calibration";
import { accept, type Outcome, refuse } from "#engine/units";
import { readingReason } from "#schemas";
import type { Context } from "#services/context";
import { eventOf, nameOf } from "#services/record";
import type { ReadingChoice } from "./views";

const w = problems.learning;

export interface DecideReadingInput {
  /** Of the ski. */
  readonly serial: string;
  readonly measure: BenchMeasure;
  /** The reading on the screen: a decision is about one reading, and ends with it. */
  readonly value: number;
  readonly choice: ReadingChoice;
  readonly reason: string;
}

/** Leaves a reading out of the fit or keeps it, with a reason. Refuses `invalid-field`, `not-found`, `changed-meanwhile`. */
export async function decideReading(ctx: Context, input: DecideReadingInput): Promise<Outcome<DecideReadingInput>> {
  const allowed = permit(ctx.actor, "learning.decide");
  if (!allowed.ok) return allowed;
  const reason = readingReason.safeParse(input.reason);
  if (!reason.success) {
    const message = reason.error.issues[0]?.message ?? w.noReason;
    return refuse({ code: "invalid-field", path: "reason", message });
  }
  const { serial, measure, value, choice } = input;
  return transaction(ctx.db, async (tx) => {
    const record = await benchRecordOf(tx, serial);
    const reading = record === null ? undefined : record.measured[measure];
    if (record === null || reading === undefined) return refuse({ code: "not-found", what: "reading", path: "serial" });
    if (reading !== value) return refuse({ code: "changed-meanwhile", what: "reading" });
    const decision = { serial, measure, value, choice, reason: reason.data };
    await insertDecision(tx, { ...decision, by: nameOf(ctx.actor), at: ctx.now });
    const subject =
      record.pairId === null
        ? ({ kind: "measured-pair", id: record.pairSerial } as const)
        : ({ kind: "pair", id: record.pairId } as const);
    await recordEvents(tx, [eventOf(ctx, choice === "keep" ? "reading-kept" : "reading-left-out", subject, decision)]);
    return accept(decision);
  });
}
