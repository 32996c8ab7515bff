/**
 * Decoding operation by operation, in the order of a list, for problems in which as early as possible can be wrong: an
 * operation begins at its earliest time, on a machine with changeovers behind what the list names before it there; and when
 * its maximum gap has passed by then, its predecessor is taken back and begun later. For every schedule there is a list, its
 * operations by start, that decodes with the same choice of machines into one in which nothing ends later and every machine
 * with changeovers keeps its order. So, other than with {@link decodeSerial}, some list gives an optimum of any objective.
 */
import { earliestByPrecedence, findStart, laterStart, type Placement, place, unplace } from "./place";
import { placeFixed, type SerialPlan } from "./serial";

/** How often predecessors are begun later in one list, for each operation of it. */
const stepsPerOperation = 40;

export class SequencedDecoder {
  private readonly hasChangeovers: Uint8Array;
  /** On each machine with changeovers: the end of what the list has put there last. */
  private readonly lastEnd: Int32Array;
  /** {@link lastEnd} before each entry of the chosen resources was taken. */
  private readonly lastEndBefore: Int32Array;
  /** What is wanted, and for operations that have been placed what was decided on where nothing is. */
  private readonly decided: Int32Array;
  private tooLateBy = 0;

  constructor(
    private readonly plan: SerialPlan,
    private readonly placement: Placement,
  ) {
    const { problem } = plan;
    this.hasChangeovers = Uint8Array.from(problem.changeover, (table) => (table === null ? 0 : 1));
    this.lastEnd = new Int32Array(problem.resourceCount);
    this.lastEndBefore = new Int32Array(placement.chosen.length);
    this.decided = new Int32Array(placement.chosen.length);
  }

  /**
   * Decodes a list that respects precedence into the placement.
   *
   * @param wanted members that entries of the chosen resources must take; −1: where the operation begins earliest
   * @returns false when a maximum gap is not kept in the steps allowed
   */
  decode(list: Int32Array, wanted: Int32Array): boolean {
    const { plan, placement, decided } = this;
    const { fixedStart, release } = plan.problem;
    placement.wanted = null;
    placement.lowest.set(release);
    placeFixed(plan, placement);
    decided.set(wanted);
    placement.wanted = decided;
    this.lastEnd.fill(-1);
    let stepsLeft = stepsPerOperation * list.length;
    for (let at = 0; at < list.length; ) {
      const operation = list[at] as number;
      if (fixedStart[operation] !== -1) {
        at += 1;
        continue;
      }
      const start = this.startOf(operation);
      const tooEarly = this.predecessorTooEarly(operation, start);
      if (tooEarly < 0) {
        this.put(operation, start);
        at += 1;
        continue;
      }
      stepsLeft -= 1;
      if (stepsLeft < 0 || fixedStart[tooEarly] !== -1) return false;
      placement.lowest[tooEarly] = laterStart(placement, tooEarly, this.tooLateBy);
      this.forget(operation, wanted);
      do {
        at -= 1;
        if (fixedStart[list[at] as number] === -1) this.takeBack(list[at] as number, wanted);
      } while (list[at] !== tooEarly);
    }
    return true;
  }

  /** Earliest start behind what is there already, on the machines that are wanted or else on those that give the earliest. */
  private startOf(operation: number): number {
    const { placement, decided, hasChangeovers, lastEnd } = this;
    const uses = placement.problem.usesOf[operation] ?? [];
    let lowest = earliestByPrecedence(placement, operation);
    let entry = placement.chosenFrom[operation] as number;
    let open = -1;
    let openUse = -1;
    for (let i = 0; i < uses.length; i++) {
      const { members, isPool, units } = uses[i] as (typeof uses)[number];
      const member = members.length === 1 ? (members[0] as number) : (decided[entry] as number);
      if (member >= 0) lowest = Math.max(lowest, lastEnd[member] as number);
      else if (open < 0 && units === 1 && members.some((each) => hasChangeovers[each] === 1)) {
        open = entry;
        openUse = i;
      }
      entry += isPool ? 1 : units;
    }
    if (open < 0) return findStart(placement, operation, lowest);
    let best = -1;
    let earliest = Number.POSITIVE_INFINITY;
    for (const member of (uses[openUse] as (typeof uses)[number]).members) {
      decided[open] = member;
      const start = findStart(placement, operation, Math.max(lowest, lastEnd[member] as number));
      if (start >= earliest) continue;
      best = member;
      earliest = start;
    }
    decided[open] = best;
    return earliest;
  }

  /** The last predecessor when the operation would begin too long after it, −1 otherwise. */
  private predecessorTooEarly(operation: number, start: number): number {
    const { problem, end } = this.placement;
    const gap = problem.maxGap[operation] as number;
    if (gap < 0) return -1;
    let last = -1;
    for (
      let i = problem.predecessorsFrom[operation] as number;
      i < (problem.predecessorsFrom[operation + 1] as number);
      i++
    ) {
      const predecessor = problem.predecessors[i] as number;
      if (last < 0 || (end[predecessor] as number) > (end[last] as number)) last = predecessor;
    }
    this.tooLateBy = last < 0 ? 0 : start - (end[last] as number) - gap;
    return this.tooLateBy > 0 ? last : -1;
  }

  private put(operation: number, start: number): void {
    const { placement, hasChangeovers, lastEnd, lastEndBefore } = this;
    place(placement, operation, start);
    const to = placement.chosenFrom[operation + 1] as number;
    for (let entry = placement.chosenFrom[operation] as number; entry < to; entry++) {
      const resource = placement.chosen[entry] as number;
      lastEndBefore[entry] = lastEnd[resource] as number;
      if (hasChangeovers[resource] === 1) lastEnd[resource] = placement.workEnd[operation] as number;
    }
  }

  private takeBack(operation: number, wanted: Int32Array): void {
    const { placement, lastEnd, lastEndBefore } = this;
    unplace(placement, operation);
    for (
      let entry = (placement.chosenFrom[operation + 1] as number) - 1;
      entry >= (placement.chosenFrom[operation] as number);
      entry--
    ) {
      lastEnd[placement.chosen[entry] as number] = lastEndBefore[entry] as number;
    }
    this.forget(operation, wanted);
  }

  private forget(operation: number, wanted: Int32Array): void {
    const { chosenFrom } = this.placement;
    const to = chosenFrom[operation + 1] as number;
    for (let entry = chosenFrom[operation] as number; entry < to; entry++)
      this.decided[entry] = wanted[entry] as number;
  }
}
