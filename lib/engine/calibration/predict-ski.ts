/**
 * What the bench should read of one finished ski: plate and mat on, loaded at the order's mount line. The core is the one
 * that was programmed for it; materials, mill and camber are as the catalogue's corrections say. Linear beam theory with its
 * limits (engine/flex): no friction at the supports, no sag of the bench.
 */
import { type BuildCatalog, type LookupRefusal, resolveSpec, skiBuildFor, solveSpec } from "#engine/configuration";
import {
  evaluateFlex,
  type SectionTheory,
  type SkiBuild,
  type ThicknessProfile,
  twistBenchNmPerDeg,
} from "#engine/flex";
import type { Corrections } from "#engine/materials";
import { woodById } from "#engine/materials";
import { accept, type Outcome } from "#engine/units";
import type { MeasuredSki, PredictedValues } from "./types";

/** Coarser than for an order: springs and mass move by less than 0.1 %, well under what the bench can read. */
const GRID_PIECES = 40;

/** @returns mass in kg, camber in mm, springs in N/mm and twist in N·m per degree, or the first item of its spec that the catalogue does not hold */
export function predictSki(
  ski: Pick<MeasuredSki, "spec" | "strips" | "builtWith" | "reckonedAs">,
  catalog: BuildCatalog,
): Outcome<PredictedValues, LookupRefusal> {
  const profile = programmedCore(ski, catalog);
  if (!profile.ok) return profile;
  return predictBuilt(ski, profile.value, catalog);
}

/** The core as the mill was told to leave it: solved with the book the ski was built with, or with handbook values. */
export function programmedCore(
  { spec, builtWith, reckonedAs }: Pick<MeasuredSki, "spec" | "builtWith" | "reckonedAs">,
  given: BuildCatalog,
): Outcome<ThicknessProfile, LookupRefusal> {
  const catalog = reckoned(given, reckonedAs ?? given.rules.sections);
  const solved = solveSpec(spec, builtWith ? catalogWith(catalog, builtWith) : nominalCatalog(catalog));
  return solved.ok ? accept(solved.value.core.profile) : solved;
}

/** As {@link predictSki}, of a core that is known. */
export function predictBuilt(
  ski: Pick<MeasuredSki, "spec" | "strips">,
  profile: ThicknessProfile,
  catalog: BuildCatalog,
  gridPieces = GRID_PIECES,
): Outcome<PredictedValues, LookupRefusal> {
  const build = measuredBuild(ski, catalog);
  if (!build.ok) return build;
  const flex = evaluateFlex(build.value, profile, { gridPieces });
  return accept({
    massKg: flex.massKg,
    camberMm: build.value.shape.camberMm + (catalog.corrections?.camberOffsetMm ?? 0),
    springCentreNPerMm: flex.springCentreNPerMm,
    springForebodyNPerMm: flex.springForebodyNPerMm,
    springAfterbodyNPerMm: flex.springAfterbodyNPerMm,
    // Few skis have been twisted: worked out when asked for.
    get twistNmPerDeg() {
      return twistBenchNmPerDeg(build.value, flex);
    },
  });
}

/**
 * The finished ski with its own strips in place of the handbook's wood. The strip bench reads the axial modulus of a long
 * strip, so it is taken as measured; the factor of its wood multiplies it like the handbook's value.
 */
export function measuredBuild(
  { spec, strips }: Pick<MeasuredSki, "spec" | "strips">,
  catalog: BuildCatalog,
): Outcome<SkiBuild, LookupRefusal> {
  const built = skiBuildFor(spec, catalog);
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

const byTheory = new WeakMap<BuildCatalog, BuildCatalog>();

/** The catalogue with the other way of reckoning sections. */
function reckoned(catalog: BuildCatalog, sections: SectionTheory): BuildCatalog {
  if (catalog.rules.sections === sections) return catalog;
  const known = byTheory.get(catalog) ?? { ...catalog, rules: { ...catalog.rules, sections } };
  byTheory.set(catalog, known);
  return known;
}

/** The catalogue of handbook values. */
export function nominalCatalog(catalog: BuildCatalog): BuildCatalog {
  if (!catalog.corrections) return catalog;
  const known = nominals.get(catalog);
  if (known) return known;
  const { corrections: _learnt, ...nominal } = catalog;
  nominals.set(catalog, nominal);
  return nominal;
}

function catalogWith(catalog: BuildCatalog, corrections: Corrections): BuildCatalog {
  if (catalog.corrections === corrections) return catalog;
  const books = withBooks.get(catalog) ?? new WeakMap<Corrections, BuildCatalog>();
  withBooks.set(catalog, books);
  const known = books.get(corrections) ?? { ...catalog, corrections };
  books.set(corrections, known);
  return known;
}
