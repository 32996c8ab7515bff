/**
 * The catalogue: everything that can be ordered, how it is built, what it costs and under which terms. Read from content
 * once, checked, frozen and named by the hash of its release; rebuilt from a stored release for ever.
 */
import path from "node:path";
import type { EngineCatalog, SnowKind } from "#engine/assessment";
import type { CalibrationSettings } from "#engine/calibration";
import type { BuildCatalog } from "#engine/configuration";
import type { FitCoefficients } from "#engine/fit";
import type { FloorLearningSettings } from "#engine/floor-learning";
import type { Corrections } from "#engine/materials";
import type { PartsRules } from "#engine/parts";
import type { PriceBook } from "#engine/pricing";
import type { FloorCatalog } from "#engine/routing";
import type { IsoDate } from "#engine/units";
import type { DoorBudgets, FinishRules, Recipe, RemedySettings, Safety, Shop } from "#schemas/content/index";
import { floorOf } from "#schemas/floor";
import { sha256Of } from "./canonical-json";
import { CatalogError } from "./catalog-error";
import { type Copy, readCopy } from "./copy";
import { correctionProblems, crossCheck, houseProblems, type ReleaseFiles, secondHomes } from "./cross-check";
import { deepFreeze } from "./deep-freeze";
import { extraSchemas, houseSchemas, parseFiles, type RawFiles, readJsonFiles, releaseSchemas } from "./files";

/** The files of a release as they were written: plain JSON, stored under the hash. */
export type CatalogRelease = RawFiles<typeof releaseSchemas> & Partial<RawFiles<typeof extraSchemas>>;

/** What a stored release gives back: enough to recompute every quote that names it. */
export interface ReleasedCatalog {
  /** SHA-256 of the release's canonical JSON, hexadecimal. */
  readonly hash: string;
  readonly release: CatalogRelease;
  readonly build: BuildCatalog;
  readonly fit: FitCoefficients;
  readonly finish: FinishRules;
  readonly parts: PartsRules;
  /** By first day, earliest first. */
  readonly priceBooks: readonly PriceBook[];
  readonly shop: Shop;
  /** Stations, crew, presses, moulds and calendar. */
  readonly floor: FloorCatalog;
  /** What the build sheet quotes of the floor. */
  readonly recipe: Recipe;
}

/** The catalogue in force, with the cautions and the words as they are today. */
export interface Catalog extends ReleasedCatalog {
  readonly safety: Safety;
  /** How measured pairs are learnt from. */
  readonly calibration: CalibrationSettings;
  /** How the floor's own starts and ends are learnt from. */
  readonly floorLearning: FloorLearningSettings;
  /** What extra capacity costs, and how far the ways on from a breakdown go. */
  readonly remedies: RemedySettings;
  /** What guests may ask for in an hour. */
  readonly doors: DoorBudgets;

  /** What a ski is shown on. */
  readonly snow: readonly SnowKind[];
  readonly copy: Copy;
}

/**
 * Reads and checks all of content.
 *
 * @param root the content folder; by default `content` in the working directory
 * @throws CatalogError listing file, path and value of everything that is wrong
 */
export function loadCatalog(root: string = path.resolve("content")): Catalog {
  const folder = path.join(root, "catalog");
  const files = readJsonFiles(folder, releaseSchemas);
  const elsewhere = secondHomes(files);
  if (elsewhere.length > 0) throw new CatalogError(elsewhere);
  const released = catalogFromRelease(files);
  const house = parseFiles(readJsonFiles(folder, houseSchemas), houseSchemas);
  const problems = houseProblems(house, released.floor);
  if (problems.length > 0) throw new CatalogError(problems);
  return deepFreeze({
    ...released,
    safety: withoutAbout(house["safety.json"]),
    calibration: withoutAbout(house["calibration.json"]),
    floorLearning: withoutAbout(house["floor-learning.json"]),
    remedies: withoutAbout(house["remedies.json"]),
    doors: withoutAbout(house["doors.json"]),

    snow: house["snow.json"].snow,
    copy: readCopy(path.join(root, "copy")),
  });
}

/**
 * The same catalogue with a book of corrections in its release, which then has another hash.
 *
 * @throws CatalogError when the book names a material that the catalogue does not have
 */
export function withCorrections(catalog: Catalog, corrections: Corrections): Catalog {
  return deepFreeze({ ...catalog, ...catalogFromRelease({ ...catalog.release, "corrections.json": corrections }) });
}

/**
 * Checks a release again, from disk or from the database, and builds the catalogue it stands for.
 *
 * @throws CatalogError when the release does not hold together
 */
export function catalogFromRelease(release: unknown): ReleasedCatalog {
  const raw = releaseOf(release);
  const files = parseFiles(raw, releaseSchemas);
  const corrections =
    raw["corrections.json"] === undefined ? null : parseFiles(raw as RawFiles<typeof extraSchemas>, extraSchemas);
  const book = corrections?.["corrections.json"];
  const problems = [...crossCheck(files), ...(book ? correctionProblems(book, files) : [])];
  if (problems.length > 0) throw new CatalogError(problems);
  const { build, ...parts } = partsOf(files);
  return deepFreeze({
    hash: sha256Of(raw),
    release: raw,
    build: book ? { ...build, corrections: book } : build,
    ...parts,
  });
}

/** The files that a release has, and no other. */
function releaseOf(release: unknown): CatalogRelease {
  const files: Readonly<Record<string, unknown>> =
    typeof release === "object" && release !== null ? { ...release } : {};
  const names = Object.keys(releaseSchemas);
  const extras = Object.keys(extraSchemas).filter((name) => files[name] !== undefined);
  const unknown = Object.keys(files).filter((file) => !names.includes(file) && !extras.includes(file));
  if (unknown.length > 0) {
    throw new CatalogError(
      unknown.map((file) => ({ file, path: "", value: undefined, message: "is not part of a release" })),
    );
  }
  return Object.fromEntries([...names, ...extras].map((name) => [name, files[name]])) as CatalogRelease;
}

function partsOf(files: ReleaseFiles): Omit<ReleasedCatalog, "hash" | "release"> {
  const shop = withoutAbout(files["shop.json"]);
  return {
    build: {
      models: files["models.json"].models,
      materials: withoutAbout(files["materials.json"]),
      blends: files["blends.json"].blends,
      ...(files["blends.json"].ownCore ? { ownCore: files["blends.json"].ownCore } : {}),
      reinforcements: files["reinforcements.json"].reinforcements,
      baseColours: files["base-colours.json"].baseColours,
      houseGraphics: files["house-graphics.json"].houseGraphics,
      flexClasses: files["flex-classes.json"].flexClasses,
      rules: withoutAbout(files["build-rules.json"]),
    },
    fit: withoutAbout(files["fit.json"]),
    finish: withoutAbout(files["finish.json"]),
    parts: withoutAbout(files["parts.json"]),
    priceBooks: files["price-books.json"].priceBooks
      .map((book): PriceBook => ({ ...book, currency: shop.currency }))
      .toSorted((a, b) => (a.effectiveFrom < b.effectiveFrom ? -1 : 1)),
    shop,
    floor: floorOf(files["floor.json"], shop.timeZone),
    recipe: withoutAbout(files["recipe.json"]),
  };
}

function withoutAbout<T extends object>(file: T): Omit<T, "about"> {
  const { about: _about, ...rest } = file as T & { readonly about?: unknown };
  return rest;
}

/**
 * The price book in force on a day of the shop.
 *
 * @throws RangeError when the day is before the first book
 */
export function priceBookOn(catalog: Pick<ReleasedCatalog, "priceBooks">, day: IsoDate): PriceBook {
  const book = catalog.priceBooks.findLast((each) => each.effectiveFrom <= day);
  if (book === undefined)
    throw new RangeError(`day ${day} is before the first price book, ${catalog.priceBooks[0]?.effectiveFrom}`);
  return book;
}

/** @throws RangeError when the release has no such book */
export function priceBookNamed(catalog: Pick<ReleasedCatalog, "priceBooks">, id: string): PriceBook {
  const book = catalog.priceBooks.find((each) => each.id === id);
  if (book === undefined) throw new RangeError(`price book "${id}" is not one of this release's`);
  return book;
}

/** What the engine and the browser are given: one price book, no releases, no terms. */
export function engineCatalog(catalog: ReleasedCatalog, priceBook: PriceBook): EngineCatalog {
  const { build, fit, finish, parts } = catalog;
  const { bevels, structureBySnow, structureUnanswered } = finish;
  return { build, fit, finish: { bevels, structureBySnow, structureUnanswered }, priceBook, parts };
}
