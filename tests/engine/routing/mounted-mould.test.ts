/** What the press must be changed from is what was pressed last, whatever else stands on the floor. */
import { describe, expect, it } from "vitest";
import { loadCatalog } from "#catalog";
import { type OperationOnFloor, type PairOnFloor, planQueue, shopMinute } from "#engine/routing";
import { isoDate } from "#engine/units";

const { floor } = loadCatalog();
const now = shopMinute(isoDate("2026-10-05"), 510);
const stations = floor.stations.map(({ id }) => id);
const upTo = (station: string) => stations.slice(0, stations.indexOf(station as never) + 1);

/** A pair that has been through all stations up to this one. */
function pair(pairId: string, mould: string, last: string, press: Partial<OperationOnFloor> = {}): PairOnFloor {
  const family = floor.moulds.find(({ id }) => id === mould)?.family;
  return {
    pairId,
    route: { kind: "pair", mould, mouldFamily: family ?? null, extraMinutes: [], hasOwnGraphic: false },
    operations: upTo(last).map((station) => ({
      station,
      state: "done",
      doneAtMinute: now - 5000,
      ...(station === "press" ? press : {}),
    })),
    waitingOn: [],
    queuedAtMinute: now - 9000,
    promise: null,
  };
}

/** Where and when the pair of K68-162 that waits for a press is pressed. */
function slotFor(others: readonly PairOnFloor[], onFloor = floor) {
  const pairs = [pair("waits", "K68-162", "lay-up"), ...others];
  const plan = planQueue({ floor: onFloor, changes: [], pairs, now });
  if (!plan.ok) throw new Error(plan.refusal.code);
  return plan.value.pressPlan.find(({ pairId }) => pairId === "waits");
}
/** Minutes that the press is changed for before it. */
const changeFor = (others: readonly PairOnFloor[], onFloor = floor) => slotFor(others, onFloor)?.changeoverMinutes;

const done = (minutesAgo: number) => ({ doneAtMinute: now - minutesAgo });
const [same, sibling, other] = ["K68-162", "K68-150", "P75-138"];

describe("the mould in the press", () => {
  // As the floor says: nothing for the same, 15 in its family, 35 for another, 25 more while the press is hot.
  it.each([
    ["is the last pair's: of the same mould", [pair("a", same, "press", done(100))], 0],
    ["is the last pair's: of the same family", [pair("a", sibling, "press", done(100))], 40],
    ["is the last pair's: of another family", [pair("a", other, "press", done(100))], 60],
    ["is the later of two", [pair("a", same, "press", done(100)), pair("b", other, "press", done(200))], 0],
    ["is the later of two", [pair("a", same, "press", done(200)), pair("b", other, "press", done(100))], 60],
    [
      "is not that of a pair that came as far as another station",
      [pair("a", same, "press"), pair("b", other, "lay-up")],
      0,
    ],
    [
      "is the running pair's, however late another was done",
      [pair("a", same, "press", done(5)), pair("b", other, "press", { state: "running", startedAtMinute: now - 10 })],
      60,
    ],
  ] as const)("%s", (_, others, minutes) => {
    expect(changeFor(others)).toBe(minutes);
  });

  it("is each press's own", () => {
    const [press] = floor.presses;
    if (press === undefined) throw new Error("the demo has no press");
    const two = { ...floor, presses: [press, { ...press, id: "press-2" }] };
    const others = [
      pair("a", sibling, "press", { ...done(200), press: press.id }),
      pair("b", other, "press", { ...done(100), press: "press-2" }),
    ];
    const slot = slotFor(others, two);
    expect(slot?.changeoverMinutes).toBe(slot?.press === press.id ? 40 : 60);
  });

  it("is what the floor says it holds at first, until something was pressed", () => {
    const held = { ...floor, presses: floor.presses.map((press) => ({ ...press, initialMould: other })) };
    expect(changeFor([], held)).toBe(60);
    expect(changeFor([pair("a", same, "press", done(100))], held)).toBe(0);
  });
});
