import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { inQueueOrder, type PairOnFloor, placesFor, withPlaces } from "#engine/routing";

const queues = fc
  .array(fc.integer({ min: 0, max: 12 }), { minLength: 2, maxLength: 8 })
  .map((ranks) => ranks.map((placeMinute, i): PairOnFloor => pair(`p${i}`, placeMinute)));

function pair(pairId: string, placeMinute: number): PairOnFloor {
  return {
    pairId,
    route: { kind: "pair", mould: "m", mouldFamily: "f", extraMinutes: [], hasOwnGraphic: false },
    operations: [],
    waitingOn: [],
    queuedAtMinute: 0,
    promise: null,
    placeMinute,
  };
}

describe("placesFor", () => {
  it("puts the pair just before the other and leaves the rest in their order, whatever the ties", () => {
    fc.assert(
      fc.property(queues, fc.nat(), fc.nat(), (pairs, a, b) => {
        const moved = pairs[a % pairs.length]?.pairId ?? "";
        const others = inQueueOrder(pairs).flatMap(({ pairId }) => (pairId === moved ? [] : [pairId]));
        const at = b % (others.length + 1);
        const places = placesFor(pairs, moved, others[at] ?? null);
        const after = inQueueOrder(withPlaces(pairs, places)).map(({ pairId }) => pairId);
        expect(after).toEqual([...others.slice(0, at), moved, ...others.slice(at)]);
        expect(places.every(({ placeMinute }) => Number.isInteger(placeMinute))).toBe(true);
      }),
    );
  });

  it("disturbs nobody where there is room between the neighbours", () => {
    const pairs = [pair("a", 0), pair("b", 100), pair("c", 200)];
    expect(placesFor(pairs, "c", "b")).toEqual([{ pairId: "c", placeMinute: 50 }]);
    expect(placesFor(pairs, "a", null)).toEqual([{ pairId: "a", placeMinute: 200 + 1440 }]);
    expect(() => placesFor(pairs, "x", "a")).toThrow(/"x" is not in the queue/);
  });
});
