/**
 * What the bench should read of one finished ski: plate and mat on, loaded at the order's mount line. The core is the one
 * that was programmed for it; materials, mill and camber are as the catalogue's corrections say. Linear beam theory with its
 * limits (engine/flex): no friction at the supports, no sag of the bench.
 */
import {
  type BuildCatalog,
  type LayupLayer,
  type LookupRefusal,
  nearestBuild,
  resolveSpec,
  skiBuildFor,
} from "#engine/configuration";
import { benchTwistNmPerDeg, evaluateFlex, type SkiBuild, type ThicknessProfile } from "#engine/flex";
import type { Corrections } from "#engine/materials";
import { woodById } from "#engine/materials";
import { accept, type Outcome } from "#engine/units";
import type { BuiltBy, MeasuredSki, PredictedValues } from "./types";

/** Coarser than for an order: springs and mass move by less than 0.1 %, well under what the bench can read. */
const GRID_PIECES = 40;

/** What the mill and the lay-up bench were told: thickness of the core, and what lies above and below it. */
export interface Programme {
  readonly profile: ThicknessProfile;
  readonly layup: readonly LayupLayer[];
}

type BuiltSki = Pick<MeasuredSki, "spec" | "strips" | "builtBy">;

/** @returns mass in kg, camber in mm, springs in N/mm and twist in N·m per degree, or the first item of its spec that the catalogue does not hold */
export function predictSki(
  ski: BuiltSki & Pick<MeasuredSki, "builtWith">,
  catalog: BuildCatalog,
): Outcome<PredictedValues, LookupRefusal> {
  const programme = programmedCore(ski, catalog);
  if (!programme.ok) return programme;
  return predictBuilt(ski, programme.value, catalog);
}

/**
 * Core and lay-up as they were told: solved with the book the ski was built with, or with handbook values. It was built, so
 * what a rule of today would refuse is still worked out.
 */
export function programmedCore(
  { spec, builtWith, builtBy }: Pick<MeasuredSki, "spec" | "builtWith" | "builtBy">,
  catalog: BuildCatalog,
): Outcome<Programme, LookupRefusal> {
  const nominal = nominalCatalog(catalog);
  const found = nearestBuild(spec, asBuilt(builtWith ? catalogWith(catalog, builtWith) : nominal, builtBy));
  if (!found.ok) return found;
  const { core, layup } = found.value.solved;
  return accept({ profile: core.profile, layup });
}

/** As {@link predictSki}, of a core and lay-up that are known. */
export function predictBuilt(
  ski: BuiltSki,
  { profile, layup }: Programme,
  catalog: BuildCatalog,
  gridPieces = GRID_PIECES,
  twistBy: "solved" | "thin-strip" = "solved",
): Outcome<PredictedValues, LookupRefusal> {
  const build = measuredBuild(ski, catalog, layup);
  if (!build.ok) return build;
  const flex = evaluateFlex(build.value, profile, { gridPieces });
  let twist: number | undefined;
  return accept({
    massKg: flex.massKg,
    camberMm: build.value.shape.camberMm + (catalog.corrections?.camberOffsetMm ?? 0),
    springCentreNPerMm: flex.springCentreNPerMm,
    springForebodyNPerMm: flex.springForebodyNPerMm,
    springAfterbodyNPerMm: flex.springAfterbodyNPerMm,
    // Few skis have been twisted: worked out when asked for, and once.
    get twistNmPerDeg() {
      twist ??= benchTwistNmPerDeg(build.value, profile, { gridPieces, sections: twistBy });
      return twist;
    },
  });
}

/**
 * The finished ski with its own strips in place of the handbook's wood. The strip bench reads the axial modulus of a long
 * strip, so it is taken as measured; the factor of its wood multiplies it like the handbook's value.
 */
export function measuredBuild(
  { spec, strips, builtBy }: BuiltSki,
  given: BuildCatalog,
  layup?: readonly LayupLayer[],
): Outcome<SkiBuild, LookupRefusal> {
  const catalog = asReckoned(given, builtBy);
  const built = skiBuildFor(spec, catalog, layup);
  if (!built.ok || !strips) return built;
  const resolved = resolveSpec(spec, catalog);
  if (!resolved.ok) return resolved;
  const { blend } = resolved.value;
  const columns = built.value.columns.map((column) => {
    const strip = strips[column.position];
    if (!strip) return column;
    const wood = woodById(catalog.materials, blend.strips[column.position]);
    const axialModulusMpa = strip.modulusMpa * (catalog.corrections?.moduli[wood.id] ?? 1);
    return {
      ...column,
      axialModulusMpa,
      acrossModulusMpa: axialModulusMpa * catalog.rules.acrossOverAxialModulus,
      shearModulusMpa: axialModulusMpa / wood.modulusToShearRatio,
      densityKgM3: strip.densityKgM3 * (catalog.corrections?.densities[wood.id] ?? 1),
    };
  });
  return accept({ ...built.value, columns });
}

/*
 * Cores are remembered by catalogue object (see solveSpec), so the catalogue of one book must be one object. Both memories
 * hold only what their arguments determine and go with them.
 */
const nominals = new WeakMap<BuildCatalog, BuildCatalog>();
const withBooks = new WeakMap<BuildCatalog, WeakMap<Corrections, BuildCatalog>>();

/** The catalogue of handbook values. */
export function nominalCatalog(catalog: BuildCatalog): BuildCatalog {
  if (!catalog.corrections) return catalog;
  const known = nominals.get(catalog);
  if (known) return known;
  const { corrections: _learnt, ...nominal } = catalog;
  nominals.set(catalog, nominal);
  return nominal;
}

const asBuilts = new WeakMap<BuildCatalog, WeakMap<BuiltBy, BuildCatalog>>();

/** The catalogue's materials with the models and rules that the ski was built by. */
export function asBuilt(catalog: BuildCatalog, builtBy: BuiltBy | undefined): BuildCatalog {
  if (!builtBy) return catalog;
  const others = asBuilts.get(catalog) ?? new WeakMap<BuiltBy, BuildCatalog>();
  asBuilts.set(catalog, others);
  const known = others.get(builtBy) ?? { ...catalog, models: builtBy.models, rules: builtBy.rules };
  others.set(builtBy, known);
  return known;
}

const asReckoneds = new WeakMap<BuildCatalog, WeakMap<BuiltBy, BuildCatalog>>();

/** As it was built, and reckoned as the catalogue at hand reckons sections and reads its benches. */
function asReckoned(catalog: BuildCatalog, builtBy: BuiltBy | undefined): BuildCatalog {
  if (!builtBy) return catalog;
  const others = asReckoneds.get(catalog) ?? new WeakMap<BuiltBy, BuildCatalog>();
  asReckoneds.set(catalog, others);
  const known = others.get(builtBy) ?? reckonedAs(asBuilt(catalog, builtBy), catalog);
  others.set(builtBy, known);
  return known;
}

function reckonedAs(built: BuildCatalog, { rules: { sections, acrossOverAxialModulus, twistTest } }: BuildCatalog) {
  const rules = { ...built.rules, sections, acrossOverAxialModulus, ...(twistTest ? { twistTest } : {}) };
  return { ...built, rules };
}

function catalogWith(catalog: BuildCatalog, corrections: Corrections): BuildCatalog {
  if (catalog.corrections === corrections) return catalog;
  const books = withBooks.get(catalog) ?? new WeakMap<Corrections, BuildCatalog>();
  withBooks.set(catalog, books);
  const known = books.get(corrections) ?? { ...catalog, corrections };
  books.set(corrections, known);
  return known;
}
