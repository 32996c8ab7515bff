import { permit } from "#auth";
import problems from "#content/copy/problems.json";
import { bumpQueue } from "#data/counters";
import { recordEvents } from "#data/events";
import { insertFloorBook } from "#data/floor-books";
import { transaction } from "#data/transaction";
import { accept, type Outcome, refuse } from "#engine/units";
import { floorBookReason } from "#schemas";
import type { Context } from "#services/context";
import { eventOf, nameOf } from "#services/record";
import { refreshBooks } from "#shop/catalogue/book-in-force";
import { handbookCatalog } from "#shop/catalogue/current";
import { learntFloor } from "./learn-floor";

const w = problems.learning;

/**
 * Makes a book of what the floor's own record teaches; dates are made with it from then on, promises that were given stay.
 * Only for the owner. Refuses `invalid-field` without a reason, `too-few-pairs-through` (pairs, least) and `floor-record-changed`
 * when the record is no longer what was shown, or somebody else's approval came first.
 *
 * @param input.fingerprint of the data that was on the screen
 */
export async function approveFloorBook(
  ctx: Context,
  input: { readonly fingerprint: string; readonly reason: string },
): Promise<Outcome<{ readonly version: string }>> {
  const allowed = permit(ctx.actor, "learning.approve");
  if (!allowed.ok) return allowed;
  const reason = floorBookReason.safeParse(input.reason);
  if (!reason.success) {
    const message = reason.error.issues[0]?.message ?? w.noReason;
    return refuse({ code: "invalid-field", path: "reason", message });
  }
  const made = await transaction(ctx.db, async (tx): Promise<Outcome<{ readonly version: string }>> => {
    // The floor's one lock: no tick comes between what was looked at and the book.
    await bumpQueue(tx);
    const { learning, books, fingerprint } = await learntFloor(tx, ctx.now);
    if (fingerprint !== input.fingerprint) return refuse({ code: "floor-record-changed" });
    const { proposal: book, leftOut: _leftOut, enoughPairs, ...summary } = learning;
    const least = handbookCatalog().floorLearning.leastPairs;
    if (!enoughPairs) return refuse({ code: "too-few-pairs-through", pairs: learning.pairs, least });
    const { version } = book;
    const isFirst = await insertFloorBook(tx, {
      number: (books[0]?.number ?? 0) + 1,
      version,
      effectiveAt: ctx.now,
      book,
      summary,
      reason: reason.data,
      approvedByName: nameOf(ctx.actor),
      approvedAt: ctx.now,
    });
    if (!isFirst) return refuse({ code: "floor-record-changed" });
    const data = { version, reason: reason.data, pairs: learning.pairs, book };
    await recordEvents(tx, [eventOf(ctx, "floor-book-approved", { kind: "floor-book", id: version }, data)]);
    return accept({ version });
  });
  if (made.ok) await refreshBooks(ctx.db);
  return made;
}
