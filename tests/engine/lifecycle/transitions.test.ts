/**
 * All moves from × to of everything that has a state, as one table: "from > to: verb", with ! where a reason must be given.
 * What is not here is refused. The shop's own rules, no source.
 */
import { describe, expect, it } from "vitest";
import {
  canTransition,
  isFinal,
  movesFrom,
  nextStates,
  type StatefulKind,
  stateMachines,
  transition,
} from "#engine/lifecycle";

const moves: Readonly<Record<StatefulKind, readonly string[]>> = {
  sheet: ["open > quoted: quote"],
  quote: [
    "open > accepted: accept",
    "open > expired: expire",
    "open > withdrawn: withdraw",
    "expired > accepted: honour!",
  ],
  order: [
    "waiting > released: release",
    "waiting > cancelled: cancel!",
    "released > waiting: hold!",
    "released > building: start",
    "released > cancelled: cancel!",
    "building > ready: finish",
    "building > cancelled: cancel!",
    "ready > building: reopen!",
    "ready > shipped: ship",
    "ready > cancelled: cancel!",
    "shipped > delivered: deliver",
  ],
  operation: [
    "blocked > ready: unblock",
    "ready > blocked: block!",
    "ready > running: start",
    "running > ready: stop!",
    "running > done: finish",
    "running > redo: fail!",
    "done > redo: redo!",
    "redo > blocked: block",
    "redo > ready: unblock",
  ],
  ski: ["good > held: hold!", "good > scrapped: scrap!", "held > good: pass!", "held > scrapped: scrap!"],
  proof: [
    "none > issued: issue",
    "issued > changes-asked: ask-changes",
    "issued > approved: approve",
    "issued > none: void!",
    "changes-asked > issued: issue",
    "changes-asked > none: void!",
    "approved > locked: lock",
    "approved > none: void!",
    "locked > none: void!",
  ],
};

/** Each once, in the order of the normal course, and where it begins. */
const states: Readonly<Record<StatefulKind, string>> = {
  sheet: "open quoted",
  quote: "open accepted expired withdrawn",
  order: "waiting released building ready shipped delivered cancelled",
  operation: "blocked ready running done redo",
  ski: "good held scrapped",
  proof: "none issued changes-asked approved locked",
};

const kinds = Object.keys(moves) as StatefulKind[];

interface Cell {
  readonly kind: StatefulKind;
  readonly from: string;
  readonly to: string;
  readonly verb: string;
  readonly needsReason: boolean;
}

const cells: readonly Cell[] = kinds.flatMap((kind) =>
  states[kind].split(" ").flatMap((from) =>
    states[kind].split(" ").map((to) => {
      const written = moves[kind].find((move) => move.startsWith(`${from} > ${to}: `))?.split(": ")[1] ?? "";
      return { kind, from, to, verb: written.replace("!", ""), needsReason: written.endsWith("!") };
    }),
  ),
);

describe("moves", () => {
  it.each(kinds)("a %s has the states of this table and begins in the first", (kind) => {
    expect(stateMachines[kind].states.join(" ")).toBe(states[kind]);
    expect(stateMachines[kind].initial).toBe(states[kind].split(" ")[0]);
    expect(stateMachines[kind].moves).toHaveLength(moves[kind].length);
  });

  it.each(cells)("$kind: $from > $to $verb", ({ kind, from, to, verb, needsReason }) => {
    // The states of one kind are not those of another: the table walks them all by their words.
    const [a, b] = [from as never, to as never];
    const allowed = cells.filter((each) => each.kind === kind && each.from === from && each.verb !== "");
    const given = transition(kind, a, b, "told by telephone");
    expect(canTransition(kind, a, b)).toBe(verb !== "");
    expect([...nextStates(kind, a)].sort()).toEqual(allowed.map((each) => each.to).sort());
    expect(isFinal(kind, a)).toBe(allowed.length === 0);
    if (verb === "") {
      expect(given).toMatchObject({ ok: false, refusal: { code: "transition-not-allowed", kind, from, to } });
      return;
    }
    expect(given).toMatchObject({ ok: true, value: { verb, from, to } });
    expect(movesFrom(kind, a).filter((move) => move.to === b)).toHaveLength(1);
    for (const silence of [undefined, "", "  "]) {
      const silent = transition(kind, a, b, silence);
      expect(silent.ok).toBe(!needsReason);
      if (!silent.ok) expect(silent.refusal).toMatchObject({ code: "transition-needs-reason", path: "reason" });
    }
  });
});
