/** Finds what people read in a source: strings, templates and JSX text that look like prose. */
import { parseSync } from "@swc/core";

/** Two words of letters, one of them longer than a unit's sign, with a space between. */
const PROSE = /\p{L}{2,}[,.:;!?]* +[\p{L}{]|[\p{L}}][,.:;!?]* +\p{L}{2,}/u;

/** Signs of units are no words. */
const UNITS = /\b(mm|cm|m|kg|g|min|h|bar|GPa|cm|dpi)\b/g;

/** Statements of a query language and markup are no prose. */
const CODE = /^(select|insert|update|delete|<)/i;

type Node = { readonly type?: string } & Readonly<Record<string, unknown>>;

/** Every literal of the source that looks like prose; `{}` stands for an expression inside a template. */
export function proseIn(text: string, file = "page.tsx"): readonly string[] {
  const found: string[] = [];
  visit(parseSync(text, { syntax: "typescript", tsx: file.endsWith("x") }) as unknown as Node, found);
  return found.filter(
    (literal) => PROSE.test(literal) && /\p{L}{2}/u.test(literal.replaceAll(UNITS, "")) && !CODE.test(literal.trim()),
  );
}

/** Bugs are thrown in English: whoever reads them reads code. Names of locks are read by nobody. */
function isForNobody(node: Node): boolean {
  const callee = String((node.callee as Node | undefined)?.value ?? "");
  return node.type === "NewExpression" ? callee.endsWith("Error") : callee === "lockName";
}

function visit(node: Node, found: string[]): void {
  if (/^(Import|Export\w*From|ExportAll|TsLiteralType|TsImport)/.test(node.type ?? "") || isForNobody(node)) return;
  const literal = textOf(node);
  if (literal !== null) found.push(literal);
  for (const value of Object.values(node)) {
    for (const child of Array.isArray(value) ? value : [value]) {
      if (typeof child === "object" && child !== null) visit(child as Node, found);
    }
  }
}

function textOf(node: Node): string | null {
  if (node.type === "StringLiteral") return String(node.value);
  if (node.type === "JSXText") return String(node.value).replace(/\s+/g, " ").trim();
  if (node.type === "TemplateLiteral" && Array.isArray(node.quasis))
    return (node.quasis as readonly Node[]).map((part) => String(part.cooked ?? part.raw)).join("{}");
  return null;
}
