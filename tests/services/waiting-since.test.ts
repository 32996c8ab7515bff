/** Since when a pair waits for its customer. What must come out follows from what was done to the pair, in this order. */
import { describe, expect, it } from "vitest";
import { waitingSince } from "#shop/board/waiting-since";

type Waiting = Parameters<typeof waitingSince>[0];

const day = (date: number) => new Date(Date.UTC(2026, 10, date, 16));
const revision = (date: number, kind: "house" | "own") =>
  ({ createdAt: day(date), spec: { graphic: { kind } } }) as unknown as Waiting["revisions"][number];
const proof = (state: string, issued: number, answered: number | null = null) =>
  ({
    state,
    issuedAt: day(issued),
    answeredAt: answered === null ? null : day(answered),
  }) as unknown as Waiting["proofs"][number];

const ordered = { createdAt: day(2), revisions: [revision(2, "own")], proofs: [] } satisfies Waiting;

describe("waitingSince", () => {
  it("counts deposit, final check and a proof not yet issued from the order", () => {
    for (const condition of ["deposit", "specification-lock", "proof", "rights"] as const)
      expect(waitingSince(ordered, condition)).toEqual(day(2));
  });

  it("counts a proof from its issue, and from the answer when changes were asked for", () => {
    expect(waitingSince({ ...ordered, proofs: [proof("issued", 5)] }, "proof")).toEqual(day(5));
    const asked = { ...ordered, proofs: [proof("void", 5), proof("changes-asked", 6, 9)] };
    expect(waitingSince(asked, "proof")).toEqual(day(9));
    expect(waitingSince(asked, "deposit")).toEqual(day(2));
  });

  it("counts a voided proof from the change that voided it", () => {
    const changed = { ...ordered, revisions: [revision(2, "own"), revision(11, "own")], proofs: [proof("void", 5)] };
    expect(waitingSince(changed, "proof")).toEqual(day(11));
  });

  it("counts a picture that came by a later change from that change", () => {
    const revisions = [revision(2, "own"), revision(4, "house"), revision(7, "own"), revision(8, "own")];
    expect(waitingSince({ ...ordered, revisions }, "rights")).toEqual(day(7));
    expect(waitingSince({ ...ordered, revisions }, "proof")).toEqual(day(7));
  });
});
