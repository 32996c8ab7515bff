/** Jackson 1955: work due first goes first. A queue that breaks this by hand must be put right; who is fixed stays. */
import { readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { inQueueOrder, type PairOnFloor, searchOrder, shopMinute, withPlaces } from "#engine/routing";
import { isoDate } from "#engine/units";
import { floorFileSchema, floorOf } from "#schemas/floor";

const floor = floorOf(
  floorFileSchema.parse(
    JSON.parse(readFileSync(path.resolve(import.meta.dirname, "../../../content/catalog/floor.json"), "utf8")),
  ),
  "America/Denver",
);
const now = shopMinute(isoDate("2026-10-05"), 9 * 60);
const [mould] = floor.moulds;

function pair(pairId: string, due: string, placeMinute?: number): PairOnFloor {
  return {
    pairId,
    route: {
      kind: "pair",
      mould: mould?.id ?? "",
      mouldFamily: mould?.family ?? "",
      extraMinutes: [],
      hasOwnGraphic: false,
    },
    operations: [],
    waitingOn: [],
    queuedAtMinute: now,
    promise: { class: "promise", date: isoDate(due) },
    ...(placeMinute === undefined ? {} : { placeMinute }),
  };
}

/** Seven pairs with all the time in the world, and one due tomorrow that somebody has put behind them. */
const easy = Array.from({ length: 7 }, (_, i) => pair(`easy-${i}`, `2027-03-0${i + 1}`));
const urgent = pair("urgent", "2026-10-06", shopMinute(isoDate("2027-04-01"), 0));
const situation = { floor, changes: [], pairs: [...easy, urgent], now };

function searched(movable: readonly string[], trials: number) {
  const search = searchOrder(situation, new Set(movable));
  for (let i = 0; i < trials && search.tryNext(); i += 1);
  return search.best();
}

describe("searchOrder", () => {
  const all = situation.pairs.map(({ pairId }) => pairId);

  it("brings what is due first to the front", () => {
    const { places, before, after } = searched(all, 120);
    expect(after.lateMinutes).toBeLessThan(before.lateMinutes);
    const order = inQueueOrder(withPlaces(situation.pairs, places)).map(({ pairId }) => pairId);
    expect(order.indexOf("urgent")).toBeLessThan(order.length - 1);
  });

  it("moves nobody who is fixed, and nobody at all when all are", () => {
    expect(searched(["urgent"], 120).places.map(({ pairId }) => pairId)).toEqual(["urgent"]);
    expect(searched([], 120).places).toEqual([]);
  });

  it("is the same for the same number of trials", () => {
    expect(searched(all, 60)).toEqual(searched(all, 60));
  });
});
