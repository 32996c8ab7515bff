import { permit } from "#auth";
import { findStation } from "#engine/floor";
import { accept, type Outcome } from "#engine/units";
import type { Context } from "#services/context";
import { handbookCatalog } from "#shop/catalogue/current";
import { floorCatalog } from "#shop/floor/recipe";
import { learntFloor } from "./learn-floor";
import type { FloorLearningView } from "./views";

/** What the floor took against what is assumed, the book that would follow, and the books there are. For owner and desk. */
export async function readFloorLearning(ctx: Context): Promise<Outcome<FloorLearningView>> {
  const allowed = permit(ctx.actor, "learning.read");
  if (!allowed.ok) return allowed;
  const { learning, books, fingerprint } = await learntFloor(ctx.db, ctx.now);
  const floor = floorCatalog();
  const named = (station: string) => {
    const found = findStation(floor, station);
    return { number: found?.number ?? null, name: found?.label ?? station };
  };
  return accept({
    learning,
    stationNames: Object.fromEntries(learning.stations.map(({ station }) => [station, named(station)])),
    fingerprint,
    leastPairs: handbookCatalog().floorLearning.leastPairs,
    now: {
      stations: floor.stations.map(({ id, minutes }) => ({ station: id, minutes })),
      rework: floor.rework.map(({ id, probability }) => ({ loop: id, probability })),
      pressDayLostProbability: floor.pressDayLostProbability,
      personDayLostProbability: floor.personDayLostProbability ?? 0,
      sharedShock: floor.sharedShock,
      weekPaceLogSd: floor.weekPaceLogSd ?? 0,
    },
    books: books.map(({ version, book, summary, reason, effectiveAt, approvedByName }) => ({
      version,
      book,
      summary,
      reason,
      effectiveAt: effectiveAt.toISOString(),
      approvedBy: approvedByName,
    })),
  });
}
