/**
 * What may still be changed on an order, and what a change costs: each part of the specification closes when the
 * first station that uses it begins. Which station that is, the floor says; common practice, no source.
 */
import { accept, type Outcome, type Refusal, refuse } from "#engine/units";
import { isAtOrAfter } from "./network";
import { type SpecificationPart, specificationParts } from "./specification";
import type { Station, StationId, WithStations } from "./stations";

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
  readonly consequences: readonly EditConsequence[];
}

const consequencesOf: Readonly<Record<SpecificationPart, readonly EditConsequence[]>> = {
  shape: ["reprice", "new-strips", "new-mould", "print-layout", "proof-void", "promise", "build-sheet-void"],
  core: ["reprice", "new-strips", "promise", "build-sheet-void"],
  reinforcements: ["reprice", "promise", "build-sheet-void"],
  flex: ["reprice", "build-sheet-void"],
  mount: ["reprice", "build-sheet-void"],
  base: ["reprice", "promise", "build-sheet-void"],
  graphic: ["reprice", "print-layout", "proof-void", "promise", "build-sheet-void"],
  protectors: ["reprice", "build-sheet-void"],
  finish: ["build-sheet-void"],
  delivery: [],
};

export const editRules: readonly EditRule[] = specificationParts.map((part) => ({
  part,
  consequences: consequencesOf[part],
}));

export interface EditRefusal extends Refusal {
  readonly code: "edit-too-late";
  readonly part: SpecificationPart;
  /** The station that has already used this part of the specification; null when the pair has been shipped. */
  readonly station: StationId | null;
  /** Its number on the route card. */
  readonly stationNumber: number | null;
}

export interface EditFacts {
  readonly startedStations: readonly StationId[];
  readonly shipped: boolean;
}

/** The station that closes a part of the specification; null for what stays open until the pair is shipped. */
export function closingStation({ stations }: WithStations, part: SpecificationPart): Station | null {
  return stations.find(({ closes }) => (closes as readonly SpecificationPart[]).includes(part)) ?? null;
}

/**
 * Whether one part of the specification may still change, and with which consequences.
 * A refused change is not the end: the owner may approve the cost of the work that is lost.
 */
export function editAllowed(
  part: SpecificationPart,
  facts: EditFacts,
  floor: WithStations,
): Outcome<EditRule, EditRefusal> {
  const rule = { part, consequences: consequencesOf[part] };
  if (facts.shipped) return refuse({ code: "edit-too-late", part, station: null, stationNumber: null, path: part });
  const closing = closingStation(floor, part);
  // Work begun further on means that the closing station has been passed, even if nobody ticked it.
  if (closing !== null && facts.startedStations.some((station) => isAtOrAfter(floor, station, closing.id))) {
    return refuse({ code: "edit-too-late", part, station: closing.id, stationNumber: closing.number, path: part });
  }
  return accept(rule);
}
