/** The project's own files, as the architecture tests read them. */
import { execFileSync } from "node:child_process";
import { existsSync, readdirSync, readFileSync } from "node:fs";
import path from "node:path";

const root = path.resolve(import.meta.dirname, "../..");

export interface Source {
  /** Relative to the project, with forward slashes. */
  readonly path: string;
  readonly text: string;
}

/** The TypeScript files under the given folders or files, without the generated client. */
export function sources(...places: readonly string[]): readonly Source[] {
  return places
    .flatMap((place) => walk(path.join(root, place)))
    .filter((file) => /\.tsx?$/.test(file))
    .map(read);
}

/** Every text file that git keeps. */
export function keptTexts(): readonly Source[] {
  const names = execFileSync("git", ["ls-files", "-z"], { cwd: root, encoding: "utf8" }).split("\0");
  return names
    .filter((name) => name !== "" && !/\.(png|jpe?g|webp|tiff?|ico|pdf|ttf|woff2?|gz)$/i.test(name))
    .map((name) => path.join(root, name))
    .filter((file) => existsSync(file))
    .map(read);
}

/** The text without comments, so that a rule judges what runs and not what is said about it. */
export function withoutComments(text: string): string {
  return text.replace(/\/\*[\s\S]*?\*\//g, "").replace(/(^|\s)\/\/.*$/gm, "$1");
}

function walk(place: string): readonly string[] {
  if (!existsSync(place)) return [];
  if (/\.\w+$/.test(path.basename(place))) return [place];
  return readdirSync(place, { withFileTypes: true })
    .filter((entry) => entry.name !== "generated")
    .flatMap((entry) => {
      const full = path.join(place, entry.name);
      return entry.isDirectory() ? walk(full) : [full];
    });
}

function read(file: string): Source {
  return { path: path.relative(root, file).replaceAll("\\", "/"), text: readFileSync(file, "utf8") };
}
