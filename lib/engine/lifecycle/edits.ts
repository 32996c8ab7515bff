/**
 * What may still be changed on an order, and what a change costs: each part of the specification closes when the
 * first station that uses it begins (common practice, no source).
 */
import { accept, type Outcome, type Refusal, refuse } from "#engine/units";

export const specificationParts = [
  "shape",
  "core",
  "reinforcements",
  "flex",
  "mount",
  "base",
  "graphic",
  "protectors",
  "finish",
  "delivery",
] as const;
/** `shape` is model or length; `delivery` is name, address and shipping. */
export type SpecificationPart = (typeof specificationParts)[number];

export const editConsequences = [
  "reprice",
  "new-strips",
  "new-mould",
  "print-layout",
  "proof-void",
  "promise",
  "build-sheet-void",
] as const;
/** What a change makes necessary: nothing of it happens silently. */
export type EditConsequence = (typeof editConsequences)[number];

export interface EditRule {
  readonly part: SpecificationPart;
  /** The change is refused once this station has begun for either ski; absent: until the pair is shipped. */
  readonly closesAtStation?: number;
  readonly consequences: readonly EditConsequence[];
}

export const editRules: readonly EditRule[] = [
  {
    part: "shape",
    closesAtStation: 4,
    consequences: ["reprice", "new-strips", "new-mould", "print-layout", "proof-void", "promise", "build-sheet-void"],
  },
  { part: "core", closesAtStation: 3, consequences: ["reprice", "new-strips", "promise", "build-sheet-void"] },
  { part: "reinforcements", closesAtStation: 4, consequences: ["reprice", "promise", "build-sheet-void"] },
  { part: "flex", closesAtStation: 4, consequences: ["reprice", "build-sheet-void"] },
  { part: "mount", closesAtStation: 4, consequences: ["reprice", "build-sheet-void"] },
  { part: "base", closesAtStation: 6, consequences: ["reprice", "promise", "build-sheet-void"] },
  {
    part: "graphic",
    closesAtStation: 8,
    consequences: ["reprice", "print-layout", "proof-void", "promise", "build-sheet-void"],
  },
  { part: "protectors", closesAtStation: 5, consequences: ["reprice", "build-sheet-void"] },
  { part: "finish", closesAtStation: 13, consequences: ["build-sheet-void"] },
  { part: "delivery", consequences: [] },
];

export interface EditRefusal extends Refusal {
  readonly code: "edit-too-late";
  readonly part: SpecificationPart;
  /** The station that has already used this part of the specification; null when the pair has been shipped. */
  readonly station: number | null;
}

export interface EditFacts {
  readonly startedStations: readonly number[];
  readonly shipped: boolean;
}

/**
 * Whether one part of the specification may still change, and with which consequences.
 * A refused change is not the end: the owner may approve the cost of the work that is lost.
 */
export function editAllowed(part: SpecificationPart, facts: EditFacts): Outcome<EditRule, EditRefusal> {
  const rule = editRules.find((candidate) => candidate.part === part);
  if (rule === undefined) throw new RangeError(`editAllowed: part "${part}" has no rule`);
  if (facts.shipped) return refuse({ code: "edit-too-late", part, station: null, path: part });
  const closing = rule.closesAtStation;
  if (closing !== undefined && facts.startedStations.some((station) => hasUsed(closing, station))) {
    return refuse({ code: "edit-too-late", part, station: closing, path: part });
  }
  return accept(rule);
}

const lastOfBranch: readonly number[] = [5, 7, 8, 9];
const firstJoined = 10;

/** True when begun work at `station` means that `closing` has been passed, even if nobody ticked it. */
function hasUsed(closing: number, station: number): boolean {
  if (station < closing) return false;
  const branchEnd = lastOfBranch.find((last) => closing <= last) ?? station;
  return station <= branchEnd || station >= firstJoined;
}
