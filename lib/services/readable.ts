/** A row that cannot be read is refused by name to who asked for it, and harms nobody else. */
import { UnreadableRow } from "#data/columns";
import { translated } from "#data/transaction";
import { accept, type Outcome, refuse } from "#engine/units";
import { unreadableView } from "#shop/names/common-view";

/** What was asked for; refuses `unreadable-row` with table, row, column and why. */
export async function readable<T>(reading: Promise<T>): Promise<Outcome<T>> {
  try {
    return accept(await translated(reading));
  } catch (error) {
    if (error instanceof UnreadableRow) return refuse({ code: "unreadable-row", ...unreadableView(error) });
    throw error;
  }
}
