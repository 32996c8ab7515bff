import { describe, expect, it } from "vitest";
import {
  begunOperationStates,
  cancellationStage,
  clockStart,
  closedStates,
  editAllowed,
  isFinal,
  keptOnCancellation,
  type Move,
  moves,
  nextStates,
  openPairStates,
  pairStatesOnFloor,
  type StatefulKind,
  shippedStates,
  standingOperationStates,
  states,
  transition,
  unbuiltStates,
} from "#engine/floor";
import { demoFloor } from "../../support/demo-floor";

const floor = demoFloor();

const kinds = Object.keys(states) as StatefulKind[];
const movesOf = (kind: StatefulKind): readonly Move<string>[] => moves[kind];

describe("the table of moves", () => {
  it("names only known states and makes each move once", () => {
    for (const kind of kinds) {
      const known: readonly string[] = states[kind];
      for (const { from, to } of movesOf(kind))
        expect([known.includes(from), known.includes(to), from === to]).toEqual([true, true, false]);
      const pairs = movesOf(kind).map(({ from, to }) => `${from}>${to}`);
      expect(new Set(pairs).size).toBe(pairs.length);
    }
  });

  it("reaches every state from the first", () => {
    for (const kind of kinds) {
      const reached = new Set<string>([states[kind][0]]);
      for (let i = 0; i < states[kind].length; i++)
        for (const { from, to } of movesOf(kind)) if (reached.has(from)) reached.add(to);
      expect([...reached].sort()).toEqual([...states[kind]].sort());
    }
  });
});

describe("sets of states, read from the table", () => {
  it("are the ones that pages and queries mean", () => {
    expect(openPairStates).toEqual(["waiting", "released", "building"]);
    expect(pairStatesOnFloor).toEqual(["released", "building"]);
    expect(closedStates).toEqual(["shipped", "delivered", "cancelled"]);
    expect(shippedStates).toEqual(["shipped", "delivered"]);
    expect(unbuiltStates).toEqual(["waiting", "released", "cancelled"]);
    expect(begunOperationStates).toEqual(["running", "done", "redo"]);
    expect(standingOperationStates).toEqual(["running", "done"]);
  });
});

describe("transition", () => {
  // Cancelled from any state before shipped.
  it("cancels an order from any state before shipped and from none after", () => {
    for (const from of ["waiting", "released", "building", "ready"] as const)
      expect(nextStates("order", from).includes("cancelled")).toBe(true);
    for (const from of ["shipped", "delivered", "cancelled"] as const)
      expect(nextStates("order", from).includes("cancelled")).toBe(false);
    expect(isFinal("order", "cancelled")).toBe(true);
  });

  it("says what is allowed instead", () => {
    expect(transition("quote", "withdrawn", "accepted")).toEqual({
      ok: false,
      refusal: { code: "transition-not-allowed", kind: "quote", from: "withdrawn", to: "accepted", allowed: [] },
    });
    expect(nextStates("proof", "issued")).toEqual(["changes-asked", "approved", "none"]);
  });

  it("asks for a reason where the normal course is left", () => {
    expect(transition("order", "ready", "building", " ").ok).toBe(false);
    expect(transition("order", "ready", "building", "the last tick was a slip").ok).toBe(true);
  });
});

describe("clockStart", () => {
  // The last of deposit, specification locked, proof approved, rights confirmed; common practice, no source.
  it("starts at the last of the four", () => {
    const facts = { depositAtMs: 400, specificationLockedAtMs: 100, proofApprovedAtMs: 900, rightsConfirmedAtMs: 300 };
    expect(clockStart(facts)).toEqual({ started: true, startedAtMs: 900, last: "proof" });
  });

  it("does not wait for a proof that is not needed, and names what it waits for", () => {
    expect(
      clockStart({
        depositAtMs: 5,
        specificationLockedAtMs: 7,
        proofApprovedAtMs: "not-needed",
        rightsConfirmedAtMs: "not-needed",
      }),
    ).toEqual({ started: true, startedAtMs: 7, last: "specification-lock" });
    expect(
      clockStart({ depositAtMs: null, specificationLockedAtMs: 7, proofApprovedAtMs: 9, rightsConfirmedAtMs: null }),
    ).toEqual({ started: false, waitingFor: ["deposit", "rights"] });
  });
});

describe("cancellation", () => {
  const facts = {
    specificationLocked: true,
    proofApproved: true,
    startedStations: ["release", "strips", "core-glue", "sidewalls", "profile"],
    shipped: false,
  };

  // Total 1 925, core milled, 30 % kept = 577.50.
  it("keeps 577.50 of 1,925 after the core is milled", () => {
    expect(cancellationStage(facts, floor)).toBe("core-milled");
    const ladder = [{ stage: "core-milled", keepBasisPoints: 3000, keepCents: 0, keepsArtFee: false }] as const;
    expect(keptOnCancellation(ladder, "core-milled", { totalCents: 192_500, artFeeCents: 15_000 })).toBe(57_750);
  });

  it("climbs with the work and never keeps more than the total", () => {
    expect(cancellationStage({ ...facts, startedStations: ["release"] }, floor)).toBe("proof-approved");
    expect(cancellationStage({ ...facts, startedStations: ["print"] }, floor)).toBe("sheets-cut");
    expect(cancellationStage({ ...facts, startedStations: ["profile", "press"] }, floor)).toBe("pressed");
    const ladder = [{ stage: "before-lock", keepBasisPoints: 0, keepCents: 5000, keepsArtFee: false }] as const;
    expect(keptOnCancellation(ladder, "before-lock", { totalCents: 3000, artFeeCents: 0 })).toBe(3000);
  });
});

describe("editAllowed", () => {
  // As tests/services/scenarios/12: length may change until the core is milled, with these consequences.
  it("lets the length change before the sidewalls are bonded and not after", () => {
    const early = editAllowed("shape", { startedStations: ["release", "strips", "core-glue"], shipped: false }, floor);
    expect(early.ok && early.value.consequences).toEqual(
      expect.arrayContaining([
        "reprice",
        "new-strips",
        "new-mould",
        "print-layout",
        "proof-void",
        "promise",
        "build-sheet-void",
      ]),
    );
    expect(editAllowed("shape", { startedStations: ["sidewalls"], shipped: false }, floor)).toEqual({
      ok: false,
      refusal: { code: "edit-too-late", part: "shape", station: "sidewalls", stationNumber: 4, path: "shape" },
    });
  });

  it("keeps branches apart: a cut base does not close the core", () => {
    expect(
      editAllowed("core", { startedStations: ["base-cut", "edges", "print", "kit"], shipped: false }, floor).ok,
    ).toBe(true);
    expect(editAllowed("core", { startedStations: ["lay-up"], shipped: false }, floor).ok).toBe(false);
    expect(editAllowed("delivery", { startedStations: ["check"], shipped: true }, floor).ok).toBe(false);
  });
});
