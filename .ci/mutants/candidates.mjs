// All the faults that a file offers.
import { operators } from "./operators.mjs";
import { linesOf, parse, walk } from "./syntax.mjs";

/**
 * @returns {readonly {file: string, line: number, operator: string, start: number, end: number, text: string, what: string}[]}
 */
export function candidatesIn(file, source) {
  const lineAt = linesOf(source);
  const found = new Map();
  walk(parse(file, source), (node, parents) => {
    if (parents.some((one) => /^(Import|ExportAll)/.test(one.type) || isKey(one))) return;
    for (const [operator, offer] of Object.entries(operators)) {
      for (const edit of offer({ node, parents, source, file })) {
        const { start, end, text } = edit;
        const key = `${start} ${end} ${text}`;
        if (source.slice(start, end) === text || found.has(key)) continue;
        const what = `${operator}: ${told(source, node, parents, edit)}`;
        found.set(key, { file, line: lineAt(start), operator, start, end, text, what });
      }
    }
  });
  return [...found.values()].sort((a, b) => a.start - b.start || (a.text < b.text ? -1 : 1));
}

/** What tells siblings apart on a page: any other value does it as well. */
const isKey = (node) => node.type === "JSXAttribute" && node.name.name === "key";

/** The source with the fault in it. */
export function planted(source, { start, end, text }) {
  return `${source.slice(0, start)}${text}${source.slice(end)}`;
}

/** Before and after, with as much around as a reader needs to find the place. */
function told(source, node, parents, edit) {
  const around = /Literal|Identifier/.test(node.type) ? (parents.at(-1) ?? node) : node;
  const [from, to] = around.end - around.start <= 90 ? [around.start, around.end] : [edit.start, edit.end];
  const after = source.slice(from, edit.start) + edit.text + source.slice(edit.end, to);
  return `${short(source.slice(from, to))} → ${after.trim() === ";" || after.trim() === "" ? "(dropped)" : short(after)}`;
}

function short(text) {
  const line = text.replace(/\s+/g, " ").trim();
  return line.length > 90 ? `${line.slice(0, 60)} … ${line.slice(-25)}` : line;
}
