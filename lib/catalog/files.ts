/** Which files the catalogue is made of, and how each is read and checked. */
import { readFileSync } from "node:fs";
import path from "node:path";
import type { z } from "zod";
import {
  baseColoursFileSchema,
  blendsFileSchema,
  buildRulesFileSchema,
  calibrationFileSchema,
  correctionsFileSchema,
  doorsFileSchema,
  finishFileSchema,
  fitFileSchema,
  flexClassesFileSchema,
  floorLearningFileSchema,
  houseGraphicsFileSchema,
  materialsFileSchema,
  modelsFileSchema,
  priceBooksFileSchema,
  recipeFileSchema,
  reinforcementsFileSchema,
  remediesFileSchema,
  safetyFileSchema,
  shopFileSchema,
  snowFileSchema,
} from "#schemas/content/index";
import { floorFileSchema } from "#schemas/floor";
import { partsRulesFileSchema } from "#schemas/parts-rules";
import { CatalogError, type CatalogProblem } from "./catalog-error";

/**
 * What decides the millimetres and cents of a pair, the way it takes over the floor and the terms it is sold under: these files together are a release,
 * hashed and stored with every quote. A later schema must still read every older release.
 */
export const releaseSchemas = {
  "models.json": modelsFileSchema,
  "materials.json": materialsFileSchema,
  "blends.json": blendsFileSchema,
  "reinforcements.json": reinforcementsFileSchema,
  "base-colours.json": baseColoursFileSchema,
  "house-graphics.json": houseGraphicsFileSchema,
  "flex-classes.json": flexClassesFileSchema,
  "build-rules.json": buildRulesFileSchema,
  "parts.json": partsRulesFileSchema,
  "fit.json": fitFileSchema,
  "finish.json": finishFileSchema,
  "price-books.json": priceBooksFileSchema,
  "shop.json": shopFileSchema,
  "floor.json": floorFileSchema,
  "recipe.json": recipeFileSchema,
} as const;

/** What a release may have besides: what measured pairs have taught. Older releases have none. */
export const extraSchemas = { "corrections.json": correctionsFileSchema } as const;

/** What the house says today and did not sell. */
export const houseSchemas = {
  "safety.json": safetyFileSchema,
  "calibration.json": calibrationFileSchema,
  "floor-learning.json": floorLearningFileSchema,
  "remedies.json": remediesFileSchema,
  "doors.json": doorsFileSchema,

  "snow.json": snowFileSchema,
} as const;

type Schemas = Readonly<Record<string, z.ZodType>>;
export type RawFiles<S extends Schemas> = { readonly [K in keyof S]: unknown };
export type ReadFiles<S extends Schemas> = { readonly [K in keyof S]: z.output<S[K]> };

/** @throws CatalogError naming every file that is missing or not JSON */
export function readJsonFiles<S extends Schemas>(folder: string, schemas: S): RawFiles<S> {
  const problems: CatalogProblem[] = [];
  const files: Record<string, unknown> = {};
  for (const file of Object.keys(schemas)) {
    try {
      files[file] = JSON.parse(readFileSync(path.join(folder, file), "utf8"));
    } catch (error) {
      const message = error instanceof Error ? error.message : String(error);
      problems.push({ file, path: "", value: undefined, message: `cannot be read: ${message}` });
    }
  }
  if (problems.length > 0) throw new CatalogError(problems);
  return files as RawFiles<S>;
}

/** @throws CatalogError naming file, path and value of everything that a schema refuses */
export function parseFiles<S extends Schemas>(files: RawFiles<S>, schemas: S): ReadFiles<S> {
  const problems: CatalogProblem[] = [];
  const parsed: Record<string, unknown> = {};
  for (const [file, schema] of Object.entries(schemas)) {
    const result = schema.safeParse(files[file]);
    if (result.success) parsed[file] = result.data;
    else problems.push(...result.error.issues.flatMap((issue) => problemsOf(file, files[file], issue)));
  }
  if (problems.length > 0) throw new CatalogError(problems);
  return parsed as ReadFiles<S>;
}

function problemsOf(file: string, content: unknown, issue: z.core.$ZodIssue): readonly CatalogProblem[] {
  const keys = issue.code === "unrecognized_keys" ? issue.keys.map((key) => [...issue.path, key]) : [issue.path];
  return keys.map((key) => ({
    file,
    path: key.map(String).join("."),
    value: valueAt(content, key),
    message: issue.code === "unrecognized_keys" ? "unknown field" : issue.message,
  }));
}

function valueAt(content: unknown, keys: readonly PropertyKey[]): unknown {
  return keys.reduce<unknown>((inner, key) => {
    if (typeof inner !== "object" || inner === null) return undefined;
    return (inner as Record<PropertyKey, unknown>)[key];
  }, content);
}
