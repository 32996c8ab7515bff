// Who could notice: which declarations use which, from a product file to the tests. Finer than files, because the rooms
// are entered through an index that leads everywhere.
import { linesOf, parse, walk } from "./syntax.mjs";

/**
 * @param {readonly {file: string, text: string}[]} sources product, tests, their helpers and the scripts they run
 * @param {(specifier: string, from: string) => string | null} resolve
 */
export function usesOf(sources, resolve) {
  const files = new Map(sources.map((source) => [source.file, read(source)]));
  const bundles = bundlesOf(sources);
  const usedBy = new Map();
  const link = (from, to) => {
    if (!usedBy.has(to)) usedBy.set(to, new Set());
    usedBy.get(to).add(from);
  };
  for (const { file } of sources) connect(file);

  function connect(file) {
    const own = files.get(file);
    // To import a file is to run what stands in it outside of any declaration.
    for (const from of new Set(own.imported.map((specifier) => resolve(specifier, file))))
      if (files.has(from)) link(unit(file, 0), unit(from, 0));
    const spawned = [...own.strings].flatMap((one) => [bundles.get(one) ?? [], files.has(one) ? one : []].flat());
    for (const entry of spawned) if (entry !== file) linkAll(unit(file, 0), entry);
    own.units.forEach(({ names, whole }, index) => {
      const from = unit(file, index);
      // A test file, or a script, is one thing: what it holds is run together.
      if (isRun(file)) link(unit(file, 0), from);
      if (spawned.length > 0) link(from, unit(file, 0));
      for (const specifier of whole) linkAll(from, resolve(specifier, file));
      for (const name of names) for (const to of meant(file, name)) link(from, to);
    });
  }

  function linkAll(from, file) {
    files.get(file)?.units.forEach((_, index) => {
      link(from, unit(file, index));
    });
    for (const name of files.get(file)?.exports.keys() ?? []) for (const to of exported(file, name)) link(from, to);
    for (const specifier of files.get(file)?.exportsAll ?? []) linkAll(from, resolve(specifier, file));
  }

  /** The units that a name of a file stands for. */
  function meant(file, name) {
    const own = files.get(file);
    if (own.declared.has(name)) return [unit(file, own.declared.get(name))];
    const source = own.imports.get(name);
    if (source === undefined) return [];
    const from = resolve(source.specifier, file);
    if (!files.has(from)) return [];
    if (source.name !== "*") return exported(from, source.name);
    return [...files.get(from).exports.keys()].flatMap((each) => exported(from, each)).concat(starsOf(from));
  }

  function starsOf(file) {
    return files.get(file).exportsAll.flatMap((specifier) => {
      const from = resolve(specifier, file);
      if (!files.has(from)) return [];
      return [...files.get(from).exports.keys()].flatMap((each) => exported(from, each)).concat(starsOf(from));
    });
  }

  function exported(file, name, seen = new Set()) {
    const own = files.get(file);
    if (own === undefined || seen.has(file)) return [];
    seen.add(file);
    const out = own.exports.get(name);
    if (out?.specifier !== undefined) {
      const from = resolve(out.specifier, file);
      if (out.name === "*" && files.has(from)) return starsOf(file).concat(meantAll(from));
      return exported(from, out.name, seen);
    }
    if (out !== undefined) return meant(file, out.name);
    return own.exportsAll.flatMap((specifier) => exported(resolve(specifier, file), name, seen));
  }

  function meantAll(file) {
    return files.get(file).units.map((_, index) => unit(file, index));
  }

  return {
    /** The unit that a line of a file belongs to. */
    unitAt(file, line) {
      const index = files.get(file).units.findIndex(({ from, to }) => from <= line && line <= to);
      return unit(file, Math.max(index, 0));
    },
    /** All units of a file. */
    unitsOf: (file) => (files.get(file)?.units ?? []).map((_, index) => unit(file, index)),
    /** File and lines of a unit; what runs on import has none. */
    placeOf(at) {
      const [file, index] = at.split("#");
      const { from, to } = files.get(file).units[Number(index)];
      return { file, from, to };
    },
    /** The units that use a unit. */
    usersOf: (at) => usedBy.get(at) ?? [],
    /** Every file that reaches the unit, with the number of steps, of which there are at most so many. */
    reachedFrom(start, mostSteps = Number.POSITIVE_INFINITY) {
      const steps = new Map([[start, 0]]);
      const distance = new Map();
      for (const [at, far] of steps) {
        const file = at.slice(0, at.lastIndexOf("#"));
        distance.set(file, Math.min(distance.get(file) ?? Number.POSITIVE_INFINITY, far));
        if (far < mostSteps) for (const from of usedBy.get(at) ?? []) if (!steps.has(from)) steps.set(from, far + 1);
      }
      return distance;
    },
    /** The bundled programs, by the file that is spawned. */
    bundles,
  };
}

const unit = (file, index) => `${file}#${index}`;
const isRun = (file) => /\.(test|spec)\.tsx?$|\.mjs$/.test(file);

/** Programs that are bundled before they are spawned: name of the bundle → entry. */
function bundlesOf(sources) {
  const found = new Map();
  for (const { text } of sources)
    for (const [, entry, name] of text.matchAll(/\b(?:bundle|loadBundled)\(\s*"([^"]+)"(?:,\s*"([^"]+)")?/g))
      found.set(`${name ?? entry.replace(/.*\/|\.\w+$/g, "")}.mjs`, entry);
  return found;
}

/** What one file declares, imports, exports and names. Unit 0 is what runs when it is imported. */
function read({ file, text }) {
  const lineAt = linesOf(text);
  const found = {
    units: [{ names: new Set(), whole: new Set(), from: 0, to: 0 }],
    declared: new Map(),
    imports: new Map(),
    imported: [],
    exports: new Map(),
    exportsAll: [],
    strings: new Set(),
  };
  for (const statement of parse(file, text).body) {
    if (statement.importKind === "type" || statement.exportKind === "type") continue;
    switch (statement.type) {
      case "ImportDeclaration":
        readImport(found, statement);
        break;
      case "ExportAllDeclaration":
        found.imported.push(statement.source.value);
        if (statement.exported) found.exports.set(nameOf(statement.exported), from(statement, "*"));
        else found.exportsAll.push(statement.source.value);
        break;
      case "ExportNamedDeclaration":
        if (statement.source) found.imported.push(statement.source.value);
        for (const { local, exported } of statement.specifiers)
          found.exports.set(
            nameOf(exported),
            statement.source ? from(statement, nameOf(local)) : { name: nameOf(local) },
          );
        if (statement.declaration)
          for (const name of addUnit(found, statement.declaration, statement, lineAt))
            found.exports.set(name, { name });
        break;
      case "ExportDefaultDeclaration":
        addUnit(found, statement.declaration, statement, lineAt, "default");
        found.exports.set("default", { name: "default" });
        break;
      default:
        addUnit(found, statement, statement, lineAt);
    }
  }
  return found;
}

const nameOf = (node) => node.name ?? node.value;
const from = (statement, name) => ({ specifier: statement.source.value, name });

function readImport(found, { source, specifiers }) {
  found.imported.push(source.value);
  for (const one of specifiers) {
    if (one.importKind === "type") continue;
    const name =
      one.type === "ImportSpecifier" ? nameOf(one.imported) : one.type === "ImportDefaultSpecifier" ? "default" : "*";
    found.imports.set(one.local.name, { specifier: source.value, name });
  }
}

/** Adds a top-level statement and returns the names it declares. */
function addUnit(found, node, statement, lineAt, also) {
  const names = [...declaredBy(node), ...(also ? [also] : [])];
  const own = { names: new Set(), whole: new Set(), from: lineAt(statement.start), to: lineAt(statement.end) };
  const index = found.units.push(own) - 1;
  for (const name of names) found.declared.set(name, index);
  walk(node, (each) => {
    if (each.type === "Identifier" || each.type === "JSXIdentifier") own.names.add(each.name);
    if (each.type === "ImportExpression" && typeof each.source.value === "string") own.whole.add(each.source.value);
    if (each.type === "Literal" && typeof each.value === "string") found.strings.add(each.value);
  });
  // Statements that declare nothing run on import; declarations are used by name.
  if (names.length === 0) found.units[0].names = new Set([...found.units[0].names, ...own.names]);
  for (const name of names) own.names.delete(name);
  return names;
}

function declaredBy(node) {
  if (node.type === "VariableDeclaration") return node.declarations.flatMap(({ id }) => boundBy(id));
  return node.id?.name ? [node.id.name] : [];
}

function boundBy(pattern) {
  switch (pattern?.type) {
    case "Identifier":
      return [pattern.name];
    case "ObjectPattern":
      return pattern.properties.flatMap((one) => boundBy(one.value ?? one.argument));
    case "ArrayPattern":
      return pattern.elements.flatMap(boundBy);
    case "AssignmentPattern":
      return boundBy(pattern.left);
    case "RestElement":
      return boundBy(pattern.argument);
    default:
      return [];
  }
}
