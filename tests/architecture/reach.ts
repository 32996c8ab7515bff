/**
 * Which exports the product reaches. From its entries the walk follows names, not files: a function that only another unreached
 * function calls is not reached. Types are left out; they are gone when the product runs.
 */
import { readFileSync } from "node:fs";
import path from "node:path";
import { parseSync } from "@swc/core";

const root = path.resolve(import.meta.dirname, "../..");

interface Names {
  /** Top-level declarations: what each of them names. */
  readonly declared: Map<string, Set<string>>;
  /** Local name → where it comes from; "*" stands for everything in there. */
  readonly imported: Map<string, { readonly file: string; readonly name: string }>;
  /** Exported name → local name. */
  readonly exported: Map<string, string>;
  /** Exported name → another file's export. */
  readonly passedOn: Map<string, { readonly file: string; readonly name: string }>;
  readonly passedOnWhole: string[];
  /** Named by statements that run when the file is loaded. */
  readonly whenLoaded: Set<string>;
  /** Files imported for what they do, or when they are asked for. */
  readonly loaded: string[];
}

type Node = { readonly type: string } & Readonly<Record<string, unknown>>;

const isNode = (value: unknown): value is Node =>
  typeof value === "object" && value !== null && typeof (value as Node).type === "string";
const asNode = (value: unknown): Node => value as Node;
const textOf = (value: unknown): string => String(asNode(value).value);

/** The aliases of package.json, longest first. */
const aliases = Object.entries(
  (JSON.parse(readFileSync(path.join(root, "package.json"), "utf8")) as { imports: Record<string, string> }).imports,
)
  .map(([from, to]) => ({ before: from.replace("*", ""), isPattern: from.includes("*"), to }))
  .sort((a, b) => b.before.length - a.before.length);

/** Finds the project's own file that a specifier names; null for packages and for what is no code. */
export function resolver(files: ReadonlySet<string>): (from: string, specifier: string) => string | null {
  const existing = (base: string) =>
    ["", ".ts", ".tsx", "/index.ts", "/index.tsx"].map((end) => base + end).find((file) => files.has(file)) ?? null;
  return (from, specifier) => {
    if (specifier.startsWith(".")) return existing(path.posix.join(path.posix.dirname(from), specifier));
    const alias = aliases.find(({ before, isPattern }) =>
      isPattern ? specifier.startsWith(before) : specifier === before,
    );
    return alias === undefined
      ? null
      : existing(path.posix.normalize(alias.to.replace("*", specifier.slice(alias.before.length))));
  };
}

/** Every name of a value in a piece of syntax, those of dynamic imports too. */
function collect(value: unknown, names: Set<string>, loaded: (specifier: string) => void): void {
  if (Array.isArray(value)) {
    for (const each of value) collect(each, names, loaded);
    return;
  }
  if (typeof value !== "object" || value === null) return;
  const node = value as Node;
  if (typeof node.type === "string" && node.type.startsWith("Ts") && !valuesOfTypeScript.has(node.type)) return;
  if (node.type === "Identifier") names.add(textOf(node));
  if (node.type === "CallExpression" && asNode(node.callee).type === "Import") {
    const [first] = node.arguments as readonly { readonly expression: Node }[];
    if (first?.expression.type === "StringLiteral") loaded(textOf(first.expression));
  }
  for (const [key, child] of Object.entries(node)) {
    const isPlainName = isNode(child) && child.type === "Identifier";
    if (key === "property" && isPlainName && node.type === "MemberExpression") continue;
    if (key === "key" && isPlainName && node.type !== "Computed") continue;
    if (key !== "span") collect(child, names, loaded);
  }
}

const valuesOfTypeScript = new Set([
  "TsAsExpression",
  "TsSatisfiesExpression",
  "TsNonNullExpression",
  "TsConstAssertion",
  "TsTypeAssertion",
  "TsInstantiation",
  "TsParameterProperty",
  "TsEnumDeclaration",
]);

/** The names that a pattern binds: `a`, `{ a, b: c }`, `[a]`. */
function boundBy(pattern: Node): string[] {
  const names = new Set<string>();
  collect(pattern, names, () => undefined);
  return [...names];
}

function namesOf(file: string, resolve: (from: string, specifier: string) => string | null): Names {
  const text = readFileSync(path.join(root, file), "utf8");
  const { body } = parseSync(text, { syntax: "typescript", tsx: file.endsWith("x"), target: "es2022" });
  const names: Names = {
    declared: new Map(),
    imported: new Map(),
    exported: new Map(),
    passedOn: new Map(),
    passedOnWhole: [],
    whenLoaded: new Set(),
    loaded: [],
  };
  const load = (specifier: string) => {
    const target = resolve(file, specifier);
    if (target !== null) names.loaded.push(target);
  };
  const uses = (syntax: unknown) => {
    const found = new Set<string>();
    collect(syntax, found, load);
    return found;
  };
  const declare = (declaration: Node): string[] => {
    if (declaration.type === "VariableDeclaration")
      return (declaration.declarations as readonly Node[]).flatMap((each) => {
        const bound = boundBy(asNode(each.id));
        for (const name of bound) names.declared.set(name, uses(each));
        return bound;
      });
    if (!["FunctionDeclaration", "ClassDeclaration", "TsEnumDeclaration"].includes(declaration.type)) return [];
    const name = textOf(declaration.identifier ?? declaration.id);
    names.declared.set(name, uses(declaration));
    return [name];
  };
  for (const item of body as unknown as readonly Node[]) {
    const target = isNode(item.source) ? resolve(file, textOf(item.source)) : null;
    if (item.type === "ImportDeclaration") {
      if (item.typeOnly === true || target === null) continue;
      const specifiers = item.specifiers as readonly Node[];
      if (specifiers.length === 0) names.loaded.push(target);
      for (const each of specifiers) {
        if (each.isTypeOnly === true) continue;
        const local = textOf(each.local);
        const name =
          each.type === "ImportNamespaceSpecifier"
            ? "*"
            : each.type === "ImportDefaultSpecifier"
              ? "default"
              : isNode(each.imported)
                ? textOf(each.imported)
                : local;
        names.imported.set(local, { file: target, name });
      }
    } else if (item.type === "ExportDeclaration") {
      for (const name of declare(asNode(item.declaration))) names.exported.set(name, name);
    } else if (item.type === "ExportNamedDeclaration") {
      for (const each of item.specifiers as readonly Node[]) {
        if (item.typeOnly === true || each.isTypeOnly === true) continue;
        const own = textOf(each.orig ?? each.name);
        const outside = isNode(each.exported) ? textOf(each.exported) : own;
        if (!isNode(item.source)) names.exported.set(outside, own);
        else if (target !== null) names.passedOn.set(outside, { file: target, name: own });
      }
    } else if (item.type === "ExportAllDeclaration") {
      if (target !== null && item.typeOnly !== true) names.passedOnWhole.push(target);
    } else if (item.type === "ExportDefaultDeclaration" || item.type === "ExportDefaultExpression") {
      names.declared.set("default", uses(item));
      names.exported.set("default", "default");
    } else if (declare(item).length === 0) for (const name of uses(item)) names.whenLoaded.add(name);
  }
  return names;
}

/**
 * The exports that no entry reaches, file by file.
 *
 * @param files all code of the product, as paths from the root
 * @param entries those of it that run by themselves: all they export is reached
 */
export function unreachedExports(
  files: readonly string[],
  entries: readonly string[],
): ReadonlyMap<string, readonly string[]> {
  const resolve = resolver(new Set(files));
  const house = new Map(files.map((file) => [file, namesOf(file, resolve)] as const));
  const reached = new Set<string>();
  const loadedFiles = new Set<string>();
  const waiting: { readonly file: string; readonly name: string; readonly isExport: boolean }[] = [];
  const ask = (file: string, name: string, isExport: boolean) => waiting.push({ file, name, isExport });
  const load = (file: string) => {
    const names = house.get(file);
    if (names === undefined || loadedFiles.has(file)) return;
    loadedFiles.add(file);
    for (const name of names.whenLoaded) ask(file, name, false);
    for (const other of names.loaded) ask(other, "*", true);
  };
  for (const entry of entries) ask(entry, "*", true);
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    const { file, name, isExport } = next;
    const key = `${file} ${name} ${isExport}`;
    const names = house.get(file);
    if (names === undefined || reached.has(key)) continue;
    reached.add(key);
    load(file);
    if (!isExport) {
      for (const other of names.declared.get(name) ?? []) ask(file, other, false);
      const from = names.imported.get(name);
      if (from !== undefined) ask(from.file, from.name, true);
    } else if (name === "*") {
      for (const each of [...names.exported.keys(), ...names.passedOn.keys()]) ask(file, each, true);
      for (const other of names.passedOnWhole) ask(other, "*", true);
    } else {
      const local = names.exported.get(name);
      const further = names.passedOn.get(name);
      if (local !== undefined) ask(file, local, false);
      else if (further !== undefined) ask(further.file, further.name, true);
      else for (const other of names.passedOnWhole) ask(other, name, true);
    }
  }
  return new Map(
    [...house]
      .map(([file, { exported }]) => {
        const missing = [...exported].filter(([, local]) => !reached.has(`${file} ${local} false`));
        return [file, missing.map(([name]) => name).sort()] as const;
      })
      .filter(([, missing]) => missing.length > 0),
  );
}
