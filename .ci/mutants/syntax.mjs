// Reading TypeScript: the parser that the test runner already has, and one walk over what runs.
import { parseAst } from "vitest/node";

/** The tree of a file; offsets count UTF-16 units, as JavaScript's strings do. */
export function parse(file, text) {
  return parseAst(text, { lang: file.endsWith("x") ? "tsx" : file.endsWith(".mjs") ? "js" : "ts" });
}

/** TypeScript's own nodes that hold an expression; all others of its nodes are erased before anything runs. */
const wrappers = new Set(["TSAsExpression", "TSNonNullExpression", "TSSatisfiesExpression", "TSParameterProperty"]);

/** Calls `visit(node, parents)` for everything that runs, outermost first; parents are nearest last. */
export function walk(node, visit, parents = []) {
  if (node === null || typeof node !== "object") return;
  if (typeof node.type === "string") {
    if (node.type.startsWith("TS") && !wrappers.has(node.type)) return;
    visit(node, parents);
    parents.push(node);
  }
  for (const key of Object.keys(node)) {
    if (key === "type" || key === "start" || key === "end") continue;
    const value = node[key];
    if (Array.isArray(value)) for (const one of value) walk(one, visit, parents);
    else if (value !== null && typeof value === "object") walk(value, visit, parents);
  }
  if (typeof node.type === "string") parents.pop();
}

/** A function from an offset to its line, the first being 1. */
export function linesOf(text) {
  const starts = [0];
  for (let at = text.indexOf("\n"); at >= 0; at = text.indexOf("\n", at + 1)) starts.push(at + 1);
  return (offset) => {
    let low = 0;
    let high = starts.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (starts[middle] <= offset) low = middle;
      else high = middle - 1;
    }
    return low + 1;
  };
}
