// Where an import leads inside the project: relative paths, the paths of tsconfig.json, the imports of package.json.
import { existsSync, readFileSync, statSync } from "node:fs";
import path from "node:path";

const endings = ["", ".ts", ".tsx", ".mjs", ".json", "/index.ts", "/index.tsx"];

/** @returns {(specifier: string, from: string) => string | null} null for packages; paths are relative to the root */
export function resolverFor(root) {
  const read = (name) => {
    const file = path.join(root, name);
    return existsSync(file) ? JSON.parse(readFileSync(file, "utf8")) : {};
  };
  const aliases = [
    ...Object.entries(read("tsconfig.json").compilerOptions?.paths ?? {}),
    ...Object.entries(read("package.json").imports ?? {}),
  ].map(([pattern, target]) => ({ pattern, targets: targetsOf(target) }));

  return (specifier, from) => {
    const starts = /^\.\.?(\/|$)/.test(specifier)
      ? [path.posix.join(path.posix.dirname(from), specifier)]
      : aliases.flatMap(({ pattern, targets }) => {
          const [head, tail] = pattern.split("*");
          if (tail === undefined) return specifier === pattern ? targets : [];
          if (!specifier.startsWith(head) || !specifier.endsWith(tail)) return [];
          const middle = specifier.slice(head.length, specifier.length - tail.length);
          return targets.map((target) => target.replaceAll("*", middle));
        });
    for (const start of starts.map((one) => path.posix.normalize(one)))
      for (const ending of endings) {
        const file = path.join(root, start + ending);
        if (existsSync(file) && statSync(file).isFile()) return start + ending;
      }
    return null;
  };
}

function targetsOf(target) {
  if (typeof target === "string") return [target];
  return Object.values(target ?? {}).flatMap(targetsOf);
}
