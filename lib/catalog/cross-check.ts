/** What no schema of one file can see: that the files agree with each other. */
import type { CoreBlend, LayupLayer, Model, OwnCoreRules, Reinforcement } from "#engine/configuration";
import { cautionsOfStation, type WithStations } from "#engine/floor";
import type { Corrections } from "#engine/materials";
import type { PriceBook } from "#engine/pricing";
import type { CatalogProblem } from "./catalog-error";
import type { houseSchemas, ReadFiles, releaseSchemas } from "./files";

export type ReleaseFiles = ReadFiles<typeof releaseSchemas>;

interface Names {
  readonly woods: ReadonlySet<string>;
  readonly fabrics: ReadonlySet<string>;
  readonly sheets: ReadonlySet<string>;
}

/** Problems between the files of a release; none when it holds together. */
export function crossCheck(files: ReleaseFiles): readonly CatalogProblem[] {
  const models = files["models.json"].models;
  const { blends, ownCore } = files["blends.json"];
  const { reinforcements } = files["reinforcements.json"];
  const names = namesOf(files);
  return [
    ...models.flatMap((model, index) => modelProblems(model, index, blends, names)),
    ...mouldProblems(models),
    ...floorMouldProblems(models, files),
    ...blends.flatMap((blend, index) => blendProblems(blend, index, names)),
    ...ownCoreProblems(ownCore, names),
    ...reinforcements.flatMap((each, index) => reinforcementProblems(each, index, names)),
    ...ruleProblems(files, names),
    ...stationProblems(files),
    ...files["price-books.json"].priceBooks.flatMap((book, index) => bookProblems(book, index, files)),
  ];
}

/** A book corrects only materials that the release has. */
export function correctionProblems(book: Corrections, files: ReleaseFiles): readonly CatalogProblem[] {
  const names = namesOf(files);
  const known = new Set([...names.woods, ...names.fabrics, ...names.sheets]);
  return (["moduli", "densities"] as const).flatMap((kind) =>
    Object.keys(book[kind])
      .filter((material) => !known.has(material))
      .map((material) => unknownName("corrections.json", `${kind}.${material}`, material, "material")),
  );
}

/**
 * The shop's time zone and currency stand in shop.json alone. Older releases have them in two more files and stay
 * readable; content is put right instead.
 */
export function secondHomes(files: Readonly<Record<keyof ReleaseFiles, unknown>>): readonly CatalogProblem[] {
  const { hours } = Object(files["floor.json"]) as { readonly hours?: unknown };
  const { timeZone } = Object(hours) as { readonly timeZone?: unknown };
  const { priceBooks } = Object(files["price-books.json"]) as { readonly priceBooks?: unknown };
  const books: readonly unknown[] = Array.isArray(priceBooks) ? priceBooks : [];
  const inShop = (file: string, path: string, value: unknown): readonly CatalogProblem[] =>
    value === undefined ? [] : [{ file, path, value, message: "stands in shop.json alone" }];
  return [
    ...inShop("floor.json", "hours.timeZone", timeZone),
    ...books.flatMap((book, index) =>
      inShop("price-books.json", `priceBooks.${index}.currency`, (Object(book) as { currency?: unknown }).currency),
    ),
  ];
}

/** Every mould of a model stands on the floor; the floor may keep moulds that no model uses any more. */
function floorMouldProblems(models: readonly Model[], files: ReleaseFiles): CatalogProblem[] {
  const onFloor = new Set(files["floor.json"].moulds.map(({ id }) => id));
  return models.flatMap((model, index) =>
    model.lengths.flatMap(({ mould }, at) =>
      onFloor.has(mould)
        ? []
        : [unknownName("models.json", `models.${index}.lengths.${at}.mould`, mould, "mould on the floor")],
    ),
  );
}

/** What is used, added or quoted at a station names one of the floor's. */
function stationProblems(files: ReleaseFiles): CatalogProblem[] {
  const onFloor = new Set(files["floor.json"].stations.map(({ id }) => id));
  const named = [
    ...files["reinforcements.json"].reinforcements.flatMap(({ extraMinutes }, index) =>
      extraMinutes.map(({ station }, at) => ({
        file: "reinforcements.json",
        path: `reinforcements.${index}.extraMinutes.${at}.station`,
        station,
      })),
    ),
    ...files["parts.json"].lines.map(({ station }, index) => ({
      file: "parts.json",
      path: `lines.${index}.station`,
      station,
    })),
    ...[files["recipe.json"].press.panel?.partedAt].flatMap((station) =>
      station === undefined ? [] : [{ file: "recipe.json", path: "press.panel.partedAt", station }],
    ),
    ...files["recipe.json"].stations.map(({ station }, index) => ({
      file: "recipe.json",
      path: `stations.${index}.station`,
      station,
    })),
  ];
  return named
    .filter(({ station }) => !onFloor.has(station))
    .map(({ file, path, station }) => unknownName(file, path, station, "station on the floor"));
}

/** Cautions for every station, and overtime only where there is a station. */
export function houseProblems(house: ReadFiles<typeof houseSchemas>, floor: WithStations): CatalogProblem[] {
  const { hazards } = house["safety.json"];
  const stations = floor.stations.map(({ id }) => id);
  return [
    ...stations
      .filter((station) => cautionsOfStation(hazards, floor, station).length === 0)
      .map((station) => ({
        file: "safety.json",
        path: "hazards",
        value: undefined,
        message: `station "${station}" has no cautions`,
      })),
    ...house["remedies.json"].overnightCure.stations.flatMap((station, index) =>
      stations.includes(station)
        ? []
        : [unknownName("remedies.json", `overnightCure.stations.${index}`, station, "station on the floor")],
    ),
  ];
}

function namesOf(files: ReleaseFiles): Names {
  const { woods, fabrics, sheets } = files["materials.json"];
  const ids = (rows: readonly { readonly id: string }[]) => new Set(rows.map((row) => row.id));
  return { woods: ids(woods), fabrics: ids(fabrics), sheets: ids(sheets) };
}

function unknownName(file: string, path: string, value: string, kind: string): CatalogProblem {
  return { file, path, value, message: `there is no ${kind} of this name` };
}

function modelProblems(model: Model, index: number, blends: readonly CoreBlend[], names: Names): CatalogProblem[] {
  const file = "models.json";
  const problems: CatalogProblem[] = [];
  const blend = blends.find((each) => each.id === model.core.blend);
  const at = `models.${index}.core.blend`;
  if (blend === undefined) problems.push(unknownName(file, at, model.core.blend, "core blend"));
  else if (!blend.forUses.includes(model.use)) {
    problems.push({ file, path: at, value: blend.id, message: `this blend is not for "${model.use}"` });
  }
  for (const [place, layer] of model.layup.entries()) {
    if (layer.role === "core" || known(layer, names)) continue;
    const kind = layer.role === "fabric" ? "fabric" : "sheet";
    problems.push(unknownName(file, `models.${index}.layup.${place}.material`, layer.material, kind));
  }
  return problems;
}

function known(layer: Exclude<LayupLayer, { readonly role: "core" }>, names: Names): boolean {
  return (layer.role === "fabric" ? names.fabrics : names.sheets).has(layer.material);
}

/** A mould carries one model-length: the same name twice would press the wrong ski. */
function mouldProblems(models: readonly Model[]): CatalogProblem[] {
  const owner = new Map<string, string>();
  const problems: CatalogProblem[] = [];
  for (const [index, model] of models.entries()) {
    for (const [place, { mould }] of model.lengths.entries()) {
      const other = owner.get(mould);
      const path = `models.${index}.lengths.${place}.mould`;
      if (other !== undefined) {
        problems.push({ file: "models.json", path, value: mould, message: `this mould is already one of ${other}` });
      }
      owner.set(mould, model.id);
    }
  }
  return problems;
}

function blendProblems(blend: CoreBlend, index: number, names: Names): CatalogProblem[] {
  return Object.entries(blend.strips)
    .filter(([, wood]) => !names.woods.has(wood))
    .map(([position, wood]) => unknownName("blends.json", `blends.${index}.strips.${position}`, wood, "wood"));
}

function ownCoreProblems(ownCore: OwnCoreRules | undefined, names: Names): CatalogProblem[] {
  return (["woods", "resinousWoods", "windowWoods"] as const).flatMap((list) =>
    (ownCore?.[list] ?? []).flatMap((wood, place) =>
      names.woods.has(wood) ? [] : [unknownName("blends.json", `ownCore.${list}.${place}`, wood, "wood")],
    ),
  );
}

function reinforcementProblems({ placement }: Reinforcement, index: number, names: Names): CatalogProblem[] {
  const at = `reinforcements.${index}.placement`;
  if (placement.kind === "metal-pair") {
    if (names.sheets.has(placement.sheet)) return [];
    return [unknownName("reinforcements.json", `${at}.sheet`, placement.sheet, "sheet")];
  }
  if (names.fabrics.has(placement.fabric)) return [];
  return [unknownName("reinforcements.json", `${at}.fabric`, placement.fabric, "fabric")];
}

function ruleProblems(files: ReleaseFiles, names: Names): CatalogProblem[] {
  const rules = files["build-rules.json"];
  const sheets: readonly (readonly [string, string])[] = [
    ["sidewall.material", rules.sidewall.material],
    ["edge.material", rules.edge.material],
    ["edgeRubber.material", rules.edgeRubber.material],
    ["spacers.material", rules.spacers.material],
    ["plate.material", rules.plate.material],
    ["plate.rubber", rules.plate.rubber],
    ...(rules.plate.choices ?? []).map(
      (choice, place) => [`plate.choices.${place}.material`, choice.material] as const,
    ),
    ...Object.entries(rules.plate.byUse ?? {}).map(
      ([use, plate]) => [`plate.byUse.${use}.material`, plate.material] as const,
    ),
  ];
  const unknownSheets = sheets
    .filter(([, sheet]) => !names.sheets.has(sheet))
    .map(([path, sheet]) => unknownName("build-rules.json", path, sheet, "sheet"));
  const fabrics: readonly (readonly [string, string])[] = [
    ["mat.fabric", rules.mat.fabric],
    ...(rules.cloth?.faces ?? []).flatMap((plies, face) =>
      plies.map((cloth, place) => [`cloth.faces.${face}.${place}`, cloth] as const),
    ),
  ];
  const unknownFabrics = fabrics
    .filter(([, fabric]) => !names.fabrics.has(fabric))
    .map(([path, fabric]) => unknownName("build-rules.json", path, fabric, "fabric"));
  return [...unknownSheets, ...unknownFabrics];
}

/** Every book prices everything that can be ordered, and nothing that cannot. */
function bookProblems(book: Omit<PriceBook, "currency">, index: number, files: ReleaseFiles): CatalogProblem[] {
  const file = "price-books.json";
  const models = files["models.json"].models.map((model) => model.id);
  const { ownCore } = files["blends.json"];
  const { lightening } = files["build-rules.json"];
  const codes = [
    ...files["reinforcements.json"].reinforcements.map((each) => each.priceCode),
    ...files["blends.json"].blends.flatMap((each) => (each.priceCode === undefined ? [] : [each.priceCode])),
    ...(files["build-rules.json"].plate.choices ?? []).map((each) => each.priceCode),
    ...(lightening === undefined ? [] : [lightening.priceCode]),
    ...(ownCore === undefined ? [] : [ownCore.priceCode, ownCore.windowPriceCode]),
  ];
  const at = `priceBooks.${index}`;
  const missing = (path: string, name: string): CatalogProblem => {
    return { file, path: `${at}.${path}.${name}`, value: undefined, message: `${book.id} has no price for "${name}"` };
  };
  return [
    ...models.filter((model) => book.modelCents[model] === undefined).map((model) => missing("modelCents", model)),
    ...codes.filter((code) => book.optionCents[code] === undefined).map((code) => missing("optionCents", code)),
    ...Object.keys(book.modelCents)
      .filter((model) => !models.includes(model))
      .map((model) => unknownName(file, `${at}.modelCents.${model}`, model, "model")),
  ];
}
