/** The words of pages and mails, file by file. Pages import their own file; here all are checked and can be listed. */
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { copyFileSchema, type RefusalWords, refusalWordsSchema } from "#schemas/words";
import { CatalogError, type CatalogProblem } from "./catalog-error";
import { parseFiles } from "./files";

export interface Copy {
  readonly refusals: RefusalWords;
  /** Every file of content/copy by its name without ending. */
  readonly pages: Readonly<Record<string, unknown>>;
}

/** @throws CatalogError naming the file and path of a word that is empty, not text, or holds a broken `{parameter}` */
export function readCopy(folder: string): Copy {
  const names = readdirSync(folder).filter((name) => name.endsWith(".json"));
  const raw = Object.fromEntries(names.map((name) => [name, read(folder, name)]));
  const schemas = Object.fromEntries(
    names.map((name) => [name, name === "refusals.json" ? refusalWordsSchema : copyFileSchema]),
  );
  const files = parseFiles(raw, schemas);
  const refusals = files["refusals.json"];
  if (refusals === undefined) throw new CatalogError([missing("refusals.json")]);
  return {
    refusals: refusalWordsSchema.parse(refusals),
    pages: Object.fromEntries(Object.entries(files).map(([name, words]) => [name.replace(/\.json$/, ""), words])),
  };
}

function read(folder: string, name: string): unknown {
  try {
    return JSON.parse(readFileSync(path.join(folder, name), "utf8"));
  } catch (error) {
    throw new CatalogError([{ ...missing(name), message: `cannot be read: ${String(error)}` }]);
  }
}

function missing(file: string): CatalogProblem {
  return { file, path: "", value: undefined, message: "is missing" };
}
