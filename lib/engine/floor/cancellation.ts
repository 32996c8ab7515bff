/**
 * What the shop keeps when an order is cancelled: a ladder whose steps follow the material already used
 * (the shop's own terms, no source). Amounts are catalogue data; here is only the rule.
 */
import { type Cents, cents } from "#engine/units";
import { closingStation } from "./edits";
import type { SpecificationPart } from "./specification";
import { type StationId, type StationRole, stationFor, type WithStations } from "./stations";

/** Earliest step first. */
export const cancellationStages = [
  "before-lock",
  "locked",
  "proof-approved",
  "core-milled",
  "sheets-cut",
  "pressed",
  "shipped",
] as const;
export type CancellationStage = (typeof cancellationStages)[number];

export interface CancellationFacts {
  readonly specificationLocked: boolean;
  readonly proofApproved: boolean;
  /** Stations whose work has begun for any ski of the order (a running operation has used material). */
  readonly startedStations: readonly StationId[];
  readonly shipped: boolean;
}

export interface CancellationStep {
  readonly stage: CancellationStage;
  /** Kept share of the order's ex-tax total. */
  readonly keepBasisPoints: number;
  readonly keepCents: number;
  /** The price of drawing and proofing is kept as well. */
  readonly keepsArtFee: boolean;
}

/**
 * Where material is used up for good, latest first. A core is this pair's from the station on that closes the
 * shape, or where it is milled to thickness, whichever a floor does first.
 */
const usedUpAt: readonly {
  readonly stage: CancellationStage;
  readonly roles: readonly StationRole[];
  readonly closes?: SpecificationPart;
}[] = [
  { stage: "pressed", roles: ["press"] },
  { stage: "sheets-cut", roles: ["base", "print"] },
  { stage: "core-milled", roles: ["profile"], closes: "shape" },
];

/** The latest step of the ladder that has been reached. */
export function cancellationStage(facts: CancellationFacts, floor: WithStations): CancellationStage {
  if (facts.shipped) return "shipped";
  const used = usedUpAt.find(({ roles, closes }) => {
    const stations = roles.map((role) => stationFor(floor, role));
    const closing = closes === undefined ? null : closingStation(floor, closes);
    return [...stations, ...(closing === null ? [] : [closing])].some(({ id }) => facts.startedStations.includes(id));
  });
  if (used !== undefined) return used.stage;
  if (facts.proofApproved) return "proof-approved";
  return facts.specificationLocked ? "locked" : "before-lock";
}

/**
 * What the shop keeps at a stage, never more than the total; the rest of what was paid goes back.
 * Shares round half up to the cent. `shipped` keeps everything: a return follows the law of returns, not this ladder.
 *
 * @throws RangeError when the ladder has no step for the stage
 */
export function keptOnCancellation(
  ladder: readonly CancellationStep[],
  stage: CancellationStage,
  amounts: { readonly totalCents: number; readonly artFeeCents: number },
): Cents {
  const step = ladder.find((candidate) => candidate.stage === stage);
  if (step === undefined) throw new RangeError(`keptOnCancellation: the ladder has no step "${stage}"`);
  const share = Math.floor((amounts.totalCents * step.keepBasisPoints + 5_000) / 10_000);
  const artFee = step.keepsArtFee ? amounts.artFeeCents : 0;
  return cents(Math.min(amounts.totalCents, share + step.keepCents + artFee));
}
