/** The ladder of cancellation at every boundary: the shop's own terms, no source. */
import { describe, expect, it } from "vitest";
import { loadCatalog } from "#catalog";
import { type CancellationStage, cancellationStage, keptOnCancellation } from "#engine/floor";
import { stationsCalled } from "../floor-stations";

const { shop, floor } = loadCatalog();

interface Row {
  readonly begun: string;
  readonly stage: CancellationStage;
  readonly why: string;
}

/** Specification locked and proof approved; `begun` is what has begun so far. */
const byWork: readonly Row[] = [
  { begun: "", stage: "proof-approved", why: "no material used" },
  { begun: "release", stage: "proof-approved", why: "paper only" },
  { begun: "release strips", stage: "proof-approved", why: "milled strips fit another pair" },
  { begun: "release strips core-glue", stage: "proof-approved", why: "a blank fits another pair of the blend" },
  {
    begun: "release strips core-glue sidewalls",
    stage: "core-milled",
    why: "the walls are this pair's, and on the blank",
  },
  { begun: "release strips core-glue sidewalls profile", stage: "core-milled", why: "nothing cut yet" },
  { begun: "release base-cut", stage: "sheets-cut", why: "the base is this pair's, whatever the core" },
  { begun: "release print", stage: "sheets-cut", why: "the topsheet is this pair's" },
  { begun: "release kit", stage: "proof-approved", why: "a kit goes back to the shelf" },
  { begun: "release strips core-glue sidewalls base-cut", stage: "sheets-cut", why: "the later step counts" },
  {
    begun: "release strips core-glue sidewalls profile base-cut edges print kit lay-up",
    stage: "sheets-cut",
    why: "the press has not closed",
  },
  {
    begun: "release strips core-glue sidewalls profile base-cut edges print kit lay-up press",
    stage: "pressed",
    why: "a running press has used everything",
  },
  {
    begun: "release strips core-glue sidewalls profile base-cut edges print kit lay-up press trim finish check",
    stage: "pressed",
    why: "finishing uses no more material",
  },
];

describe("the step that is reached", () => {
  it.each(byWork)("$stage when begun: $begun", ({ begun, stage }) => {
    const startedStations = stationsCalled(...begun.split(" ").filter((name) => name !== ""));
    const facts = { specificationLocked: true, proofApproved: true, startedStations };
    expect(cancellationStage({ ...facts, shipped: false }, floor)).toBe(stage);
    expect(cancellationStage({ ...facts, shipped: true }, floor)).toBe("shipped");
  });

  it.each([
    [false, false, "before-lock"],
    [true, false, "locked"],
    [false, true, "proof-approved"],
    [true, true, "proof-approved"],
  ] as const)("locked %s and proof approved %s, nothing begun: %s", (specificationLocked, proofApproved, stage) => {
    expect(cancellationStage({ specificationLocked, proofApproved, startedStations: [], shipped: false }, floor)).toBe(
      stage,
    );
  });

  it("counts milled wood although nothing was locked or approved", () => {
    const facts = { specificationLocked: false, proofApproved: false, shipped: false };
    expect(cancellationStage({ ...facts, startedStations: stationsCalled("profile") }, floor)).toBe("core-milled");
  });
});

/** A pair of 1,925.00 with 150.00 for drawing and proofing, by the demo's ladder: 50.00, then 30, 50, 80, 100 %. */
const kept: readonly (readonly [CancellationStage, number])[] = [
  ["before-lock", 5_000],
  ["locked", 5_000],
  ["proof-approved", 20_000],
  ["core-milled", 57_750],
  ["sheets-cut", 96_250],
  ["pressed", 154_000],
  ["shipped", 192_500],
];

const step = (keepBasisPoints: number, keepCents: number, keepsArtFee: boolean) =>
  [{ stage: "locked", keepBasisPoints, keepCents, keepsArtFee }] as const;

describe("what is kept", () => {
  it.each(kept)("%s: %i cents of 192,500", (stage, cents) => {
    expect(keptOnCancellation(shop.cancellation, stage, { totalCents: 192_500, artFeeCents: 15_000 })).toBe(cents);
  });

  // 30 % of the total, half a cent up.
  it.each([
    [12_344, 3_703],
    [12_345, 3_704],
    [12_346, 3_704],
    [1, 0],
    [2, 1],
    [0, 0],
  ])("30 %% of %i cents is %i", (totalCents, cents) => {
    expect(keptOnCancellation(step(3_000, 0, false), "locked", { totalCents, artFeeCents: 0 })).toBe(cents);
  });

  it.each([
    [4_999, 4_999],
    [5_000, 5_000],
    [5_001, 5_000],
  ])("a fee of 50.00 never takes more than the total of %i", (totalCents, cents) => {
    expect(keptOnCancellation(step(0, 5_000, false), "locked", { totalCents, artFeeCents: 0 })).toBe(cents);
  });

  it("adds share, fee and drawing, and drops the drawing where the step does not keep it", () => {
    const amounts = { totalCents: 100_000, artFeeCents: 15_000 };
    expect(keptOnCancellation(step(1_000, 5_000, true), "locked", amounts)).toBe(30_000);
    expect(keptOnCancellation(step(1_000, 5_000, false), "locked", amounts)).toBe(15_000);
  });

  it("cannot say what is kept at a step that the ladder lacks", () => {
    const amounts = { totalCents: 1, artFeeCents: 0 };
    expect(() => keptOnCancellation(step(0, 0, false), "pressed", amounts)).toThrow(/no step "pressed"/);
  });
});
