// Drawing places: every product line has the same chance, whether a test runs it or not.
import { candidatesIn } from "./candidates.mjs";
import { randomFrom, shuffled } from "./random.mjs";

/** How far from a drawn line (a comment, a type, a bracket) its fault may stand. */
const reachLines = 6;

/**
 * Faults one after the other, without end until the lines are used up. At a drawn line the kinds of fault possible there
 * have the same chance; all that a place offers is yielded together, first choice first, as the compiler may refuse some.
 * @param {readonly {file: string, text: string}[]} sources
 */
export function* places(sources, seed) {
  const random = randomFrom(seed);
  const known = new Map();
  const lines = sources.flatMap(({ file, text }) =>
    text.split("\n").flatMap((line, index) => (line.trim() === "" ? [] : [{ file, line: index + 1 }])),
  );
  const textOf = new Map(sources.map(({ file, text }) => [file, text]));
  for (const { file, line } of shuffled(lines, random)) {
    if (!known.has(file)) known.set(file, candidatesIn(file, textOf.get(file)));
    const faults = inReach(known.get(file), line).flatMap((near) => inDrawnOrder(near, random));
    if (faults.length > 0) yield { file, line, faults };
  }
}

/** What the line itself offers, then the lines around it, nearest first. */
function inReach(candidates, line) {
  const away = (one) => Math.abs(one.line - line);
  return Array.from({ length: reachLines + 1 }, (_, far) => candidates.filter((one) => away(one) === far));
}

/** The kinds of fault in a drawn order, and within a kind the faults. */
function inDrawnOrder(near, random) {
  const kinds = shuffled([...new Set(near.map(({ operator }) => operator))].sort(), random);
  return kinds.flatMap((kind) =>
    shuffled(
      near.filter(({ operator }) => operator === kind),
      random,
    ),
  );
}
