/** Every state is written by way of the table of moves: whoever writes one is found here, and asked what it moves. */
import { describe, expect, it } from "vitest";
import { type Move, moves, type StatefulKind, states } from "#engine/floor";
import { type Source, sources, withoutComments } from "../support/sources";

/** Functions of the data layer that write a state, and of what. */
const writers: Readonly<Record<string, StatefulKind>> = {
  answerProof: "proof-issue",
  breakOffOperations: "operation",
  consumeStrips: "strip",
  decideIncident: "incident",
  decideNotice: "notice",
  holdStrip: "strip",
  markIncidentClosed: "incident",
  markQuoteAccepted: "quote",
  markQuoteWithdrawn: "quote",
  moveLetter: "letter",
  moveOperation: "operation",
  moveOrder: "order",
  movePair: "pair",
  moveProof: "proof",
  moveSheet: "sheet",
  moveSki: "ski",
  receivePayment: "payment",
  releaseStrips: "strip",
  scrapSkiStrips: "strip",
  setOperationStates: "operation",
  voidProof: "proof-issue",
  waivePayment: "payment",
};

const data = sources("lib/data").filter(({ path }) => !path.includes("/generated/"));
const useCases = sources("lib/services", "lib/shop");

/** What stands between the bracket at `open` and its partner. */
function inBrackets(text: string, open: number): string {
  const pairs: Readonly<Record<string, string>> = { "(": ")", "{": "}" };
  const [left, right] = [text[open] ?? "", pairs[text[open] ?? ""] ?? ""];
  let depth = 0;
  for (let at = open; at < text.length; at++) {
    if (text[at] === left) depth += 1;
    else if (text[at] === right && --depth === 0) return text.slice(open, at + 1);
  }
  throw new Error("a bracket has no partner");
}

/** Every top-level function of a file with its text. */
function functionsOf({ text }: Source): readonly (readonly [string, string])[] {
  const code = withoutComments(text);
  const starts = [...code.matchAll(/^(?:export )?(?:async )?function (\w+)/gm)];
  return starts.map(({ 1: name, index }, at) => [name ?? "", code.slice(index, starts[at + 1]?.index)] as const);
}

/** Every update with a state among what it writes, spelt out or handed over whole. */
function writesState(code: string): boolean {
  return [...code.matchAll(/\.update(?:Many)?(\()/g)].some(({ index, 0: match }) => {
    const call = inBrackets(code, index + match.length - 1);
    const written = call.indexOf("data:");
    return written >= 0 && /\b(state|proofState)\b|data: to\b/.test(call.slice(written));
  });
}

/** Calls of `moveState`, as they are written. */
function movesIn({ text }: Source): readonly string[] {
  const code = withoutComments(text);
  return [...code.matchAll(/\bmoveState\(/g)]
    .filter(({ index }) => !/function $/.test(code.slice(0, index)))
    .map(({ index }) => inBrackets(code, index + "moveState".length));
}

describe("writers of states", () => {
  it("are all known", () => {
    const found = data.flatMap(functionsOf).filter(([, code]) => writesState(code));
    expect(found.map(([name]) => name).sort()).toEqual(Object.keys(writers).sort());
  });

  it("are called by use cases inside a move that was asked for, and nowhere else", () => {
    const outside = useCases.flatMap((source) => {
      const code = movesIn(source).reduce((rest, call) => rest.replace(call, ""), withoutComments(source.text));
      return Object.keys(writers)
        .filter((name) => new RegExp(`\\b${name}\\(`).test(code))
        .map((name) => `${source.path}: ${name}`);
    });
    expect(outside).toEqual([]);
  });

  it("write the kind of thing that their move names", () => {
    const calls = useCases.flatMap((source) => movesIn(source).map((call) => ({ path: source.path, call })));
    expect(calls.length).toBeGreaterThan(20);
    const wrong = calls.filter(({ call }) => {
      const kind = /kind: "([\w-]+)"/.exec(call)?.[1];
      const [first] = Object.keys(writers)
        .map((name) => ({ name, at: call.search(new RegExp(`\\b${name}\\(`)) }))
        .filter(({ at }) => at >= 0)
        .sort((a, b) => a.at - b.at);
      return first === undefined || writers[first.name] !== kind;
    });
    expect(wrong).toEqual([]);
  });
});

describe("the table of moves", () => {
  /** Moves whose states are spelt out, by kind; "*" where a variable stands. */
  const made = useCases.flatMap(movesIn).map((call) => {
    const named = (key: string) => new RegExp(`\\b${key}(?:: "([\\w-]+)"|[:,])`).exec(call)?.[1] ?? "*";
    return { kind: named("kind") as StatefulKind, from: named("from"), to: named("to") };
  });

  it("has every move that use cases spell out", () => {
    const unknown = made.filter(({ kind, from, to }) => {
      const known: readonly Move<string>[] = moves[kind];
      return !known.some((move) => (from === "*" || from === move.from) && (to === "*" || to === move.to));
    });
    expect(unknown).toEqual([]);
  });

  it("has no move that nobody makes", () => {
    const idle = (Object.keys(states) as StatefulKind[]).flatMap((kind) => {
      const table: readonly Move<string>[] = moves[kind];
      return table
        .filter(
          ({ from, to }) =>
            !made.some(
              (each) =>
                each.kind === kind && (each.from === "*" || each.from === from) && (each.to === "*" || each.to === to),
            ),
        )
        .map(({ verb, from, to }) => `${kind}: ${verb}, ${from} > ${to}`);
    });
    expect(idle).toEqual([]);
  });
});
