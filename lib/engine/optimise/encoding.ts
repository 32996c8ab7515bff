/**
 * What the general search moves: a list of the operations and, for groups of machines, which of them each operation wants.
 * Problems with changeovers, maximum gaps or a choice of machines are decoded operation by operation, the others plainly.
 */
import { decodeSerial, GapNeverKept, type Placement, SequencedDecoder, type SerialPlan } from "#engine/schedule";
import { listByStart } from "./neighbours";

/** Filling gaps grows with the square of what is on a machine: longer lists are decoded in their order only. */
export const mostFilled = 2_000;

export interface Encoded {
  readonly list: Int32Array;
  /** As `Placement.wanted`. */
  readonly wanted: Int32Array;
}

/** An operation's choice of one machine among several. */
export interface Group {
  readonly operation: number;
  readonly entry: number;
  readonly members: Int32Array;
  /** Its family where one of the machines has changeovers; −1 otherwise. */
  readonly family: number;
}

export interface Decoder {
  readonly placement: Placement;
  readonly isSequenced: boolean;
  /** Choices that are decided by the code; none for the plain decoder. */
  readonly groups: readonly Group[];
  /** False when the code gives no schedule. */
  readonly decode: (code: Encoded) => boolean;
  /** Starts and machines of what was decoded last; nothing for the plain decoder, whose list says all. */
  readonly taken: () => { readonly start?: Int32Array; readonly wanted?: Int32Array };
}

/** A decoder that writes to `placement`. */
export function decoderFor(plan: SerialPlan, placement: Placement): Decoder {
  const { problem } = plan;
  const groups = problem.usesOf.flatMap((uses, operation): readonly Group[] => {
    if (problem.fixedStart[operation] !== -1) return [];
    let entry = placement.chosenFrom[operation] as number;
    return uses.flatMap(({ members, units, isPool }): readonly Group[] => {
      const at = entry;
      entry += isPool ? 1 : units;
      if (members.length === 1 || units > 1) return [];
      const hasChangeovers = members.some((member) => problem.changeover[member] !== null);
      return [{ operation, entry: at, members, family: hasChangeovers ? (problem.family[operation] as number) : -1 }];
    });
  });
  const isSequenced =
    groups.length > 0 || problem.maxGap.some((gap) => gap >= 0) || problem.changeover.some((table) => table !== null);
  if (!isSequenced) {
    const decode = ({ list }: Encoded) => {
      decodeSerial(plan, list, placement);
      return true;
    };
    return { placement, isSequenced, groups, decode, taken: () => ({}) };
  }
  const decoder = new SequencedDecoder(plan, placement);
  return {
    placement,
    isSequenced,
    groups,
    decode: ({ list, wanted }) => decoder.decode(list, wanted),
    taken: () => {
      const wanted = new Int32Array(placement.chosen.length).fill(-1);
      for (const { entry } of groups) wanted[entry] = placement.chosen[entry] as number;
      return { start: placement.start.slice(), wanted };
    },
  };
}

/**
 * A list as codes to begin with: as it is; and, for the sequenced decoder, by the starts of the plain one, with and without its
 * machines.
 */
export function encodingsOf(plan: SerialPlan, decoder: Decoder, list: Int32Array): readonly Encoded[] {
  const { placement } = decoder;
  const free = new Int32Array(placement.chosen.length).fill(-1);
  if (!decoder.isSequenced || list.length > mostFilled) return [{ list, wanted: free }];
  placement.wanted = null;
  try {
    decodeSerial(plan, list, placement);
  } catch (error) {
    if (!(error instanceof GapNeverKept)) throw error;
    return [{ list, wanted: free }];
  }
  const byStart = list.slice();
  listByStart(placement, byStart);
  const { wanted = free } = decoder.taken();
  return [
    { list: byStart, wanted },
    { list: byStart, wanted: free },
    { list, wanted: free },
  ];
}
