import { permit } from "#auth";
import { recordEvents } from "#data/events";
import { insertBook } from "#data/learning";
import { transaction } from "#data/transaction";
import { accept, type Outcome, refuse } from "#engine/units";
import { benchScales } from "#schemas";
import type { Context } from "#services/context";
import { eventOf, nameOf } from "#services/record";
import { refreshBooks } from "#shop/catalogue/book-in-force";
import { handbookCatalog } from "#shop/catalogue/current";
import { learn, learningData } from "./learn";
import { undecidedOf } from "./read-learning";
import type { BookSummary } from "./views";

/**
 * Makes a book of what the readings teach; from then on the catalogue's release holds it. Only for the owner. Refuses
 * `too-few-pairs` (pairs, least), `undecided-readings` (count, readings) and `learning-changed` when the data is no longer
 * what was shown, or somebody else's approval came first.
 *
 * @param input.fingerprint of the data that was on the screen
 */
export async function approveCorrections(
  ctx: Context,
  input: { readonly fingerprint: string },
): Promise<Outcome<{ readonly version: string }>> {
  const allowed = permit(ctx.actor, "learning.approve");
  if (!allowed.ok) return allowed;
  const shown = await learningData(ctx.db);
  if (shown.fingerprint !== input.fingerprint) return refuse({ code: "learning-changed" });
  const { calibration, leftOut } = await learn(ctx.db, shown);
  const { leastPairs } = handbookCatalog().calibration;
  if (!calibration.enoughPairs) return refuse({ code: "too-few-pairs", pairs: calibration.pairs, least: leastPairs });
  const undecided = undecidedOf(calibration, shown);
  if (undecided.length > 0) {
    const readings = undecided.map(({ skiId, measure }) => `${skiId} ${benchScales[measure].label.toLowerCase()}`);
    return refuse({ code: "undecided-readings", count: undecided.length, readings: readings.join(", ") });
  }
  const summary: BookSummary = {
    pairs: calibration.pairs,
    skis: new Set(calibration.residuals.map(({ skiId }) => skiId)).size,
    quality: calibration.quality,
    factors: calibration.factors,
    leftOut: leftOut.map(({ skiId, measure, reason }) => ({ serial: skiId, measure, reason })),
  };
  const { version } = calibration.corrections;
  const made = await transaction(ctx.db, async (tx): Promise<Outcome<{ readonly version: string }>> => {
    const now = await learningData(tx);
    if (now.fingerprint !== input.fingerprint) return refuse({ code: "learning-changed" });
    const isFirst = await insertBook(tx, {
      number: (now.books[0]?.number ?? 0) + 1,
      version,
      effectiveAt: ctx.now,
      corrections: calibration.corrections,
      summary,
      approvedByName: nameOf(ctx.actor),
      approvedAt: ctx.now,
    });
    if (!isFirst) return refuse({ code: "learning-changed" });
    const data = { version, pairs: summary.pairs, corrections: calibration.corrections };
    await recordEvents(tx, [eventOf(ctx, "corrections-approved", { kind: "correction-book", id: version }, data)]);
    return accept({ version });
  });
  if (made.ok) await refreshBooks(ctx.db);
  return made;
}
