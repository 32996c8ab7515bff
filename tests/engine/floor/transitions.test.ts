/**
 * All moves from × to of everything that has a state, as one table: "from > to: verb", with ! where a reason must be given.
 * What is not here is refused. The shop's own rules, no source.
 */
import { describe, expect, it } from "vitest";
import { isFinal, moves, movesFrom, nextStates, type StatefulKind, states, transition } from "#engine/floor";

const orderMoves = [
  "waiting > released: release",
  "waiting > cancelled: cancel!",
  "released > building: start",
  "released > cancelled: cancel!",
  "building > ready: finish",
  "building > cancelled: cancel!",
  "ready > building: reopen!",
  "ready > shipped: ship",
  "ready > cancelled: cancel!",
  "shipped > delivered: deliver",
];

const written: Readonly<Record<StatefulKind, readonly string[]>> = {
  sheet: ["open > quoted: quote", "open > turned-down: turn-down!"],
  quote: ["open > accepted: accept", "open > withdrawn: withdraw!"],
  order: orderMoves,
  pair: orderMoves,
  operation: [
    "blocked > ready: unblock",
    "ready > blocked: block!",
    "ready > running: start",
    "running > ready: undo!",
    "running > done: finish",
    "running > redo: fail!",
    "running > blocked: reset!",
    "done > running: undo!",
    "done > blocked: reset!",
    "redo > blocked: reset!",
  ],
  ski: ["good > held: hold!", "good > scrapped: scrap!", "held > good: join"],
  proof: [
    "none > issued: issue",
    "issued > changes-asked: ask-changes",
    "issued > approved: approve",
    "issued > none: void!",
    "changes-asked > issued: issue",
    "changes-asked > none: void!",
    "approved > none: void!",
  ],
  "proof-issue": [
    "issued > changes-asked: ask-changes",
    "issued > approved: approve",
    "issued > void: void!",
    "changes-asked > void: void!",
    "approved > void: void!",
  ],
  payment: ["requested > received: receive", "requested > waived: waive!"],
  strip: ["free > reserved: reserve", "reserved > free: release", "reserved > used: use"],
  incident: ["open > decided: decide", "open > closed: close", "decided > closed: close"],
  notice: ["draft > sent: send", "draft > dropped: drop"],
  letter: ["waiting > sent: send", "waiting > dead: give-up", "dead > waiting: send-again"],
};

/** Each once, in the order of the normal course, and where it begins. */
const inOrder: Readonly<Record<StatefulKind, string>> = {
  sheet: "open quoted turned-down",
  quote: "open accepted withdrawn",
  order: "waiting released building ready shipped delivered cancelled",
  pair: "waiting released building ready shipped delivered cancelled",
  operation: "blocked ready running done redo",
  ski: "good held scrapped",
  proof: "none issued changes-asked approved",
  "proof-issue": "issued changes-asked approved void",
  payment: "requested received waived",
  strip: "free reserved used",
  incident: "open decided closed",
  notice: "draft sent dropped",
  letter: "waiting sent dead",
};

const kinds = Object.keys(written) as StatefulKind[];

interface Cell {
  readonly kind: StatefulKind;
  readonly from: string;
  readonly to: string;
  readonly verb: string;
  readonly needsReason: boolean;
}

const cells: readonly Cell[] = kinds.flatMap((kind) =>
  inOrder[kind].split(" ").flatMap((from) =>
    inOrder[kind].split(" ").map((to) => {
      const told = written[kind].find((move) => move.startsWith(`${from} > ${to}: `))?.split(": ")[1] ?? "";
      return { kind, from, to, verb: told.replace("!", ""), needsReason: told.endsWith("!") };
    }),
  ),
);

describe("moves", () => {
  it.each(kinds)("a %s has the states of this table and begins in the first", (kind) => {
    expect(states[kind].join(" ")).toBe(inOrder[kind]);
    expect(moves[kind]).toHaveLength(written[kind].length);
  });

  it.each(cells)("$kind: $from > $to $verb", ({ kind, from, to, verb, needsReason }) => {
    // The states of one kind are not those of another: the table walks them all by their words.
    const [a, b] = [from as never, to as never];
    const allowed = cells.filter((each) => each.kind === kind && each.from === from && each.verb !== "");
    const given = transition(kind, a, b, "told by telephone");
    expect(nextStates(kind, a).includes(b)).toBe(verb !== "");
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
