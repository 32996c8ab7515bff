/**
 * One cross-section. Bending, neutral axis and the thin strip's torsion smear every layer over the section's width b (the widest
 * layer):
 *   EI = b/d11, 4b/d66, neutral axis = mid − b11/d11, EA = b/(a11 − b11²/d11)
 * of the inverted 6×6 (free edges; L. P. Kollár & G. S. Springer, Mechanics of Composite Structures, 2003, from memory).
 * For parts given by moduli alone this is ΣE·w·t for EA and the transformed section for EI. Torsion itself is Saint-Venant's,
 * with the parts where they lie (engine/torsion). No shear lag in bending: a section has no length (partial-interaction.ts has
 * one).
 *
 * Validity: strips at least ten times as wide as thick, parts that bend together. Error: EI exact for that model; the thin
 * strip of a solid rectangle 6 % high at b/h = 10 and 9 % at 7 (factors .937 and .910), since its ends are left out.
 */
import { MESHES, type TwistPart, type TwistSection, torsionalStiffnessNmm2 } from "#engine/torsion";
import type { Stiffness } from "./laminate";
import { plateCompliance, plateStiffness, transformedStiffness } from "./laminate";
import type { SectionConstants, SectionLayer, SectionPart } from "./types";

/**
 * Stiffnesses, neutral axis and mass of a section, layers from the bottom up, their parts from left to right, layers centred
 * on one another.
 *
 * @throws RangeError naming the layer and part for a missing or impossible value
 */
export function sectionConstants(layers: readonly SectionLayer[]): SectionConstants {
  layers.forEach(checkLayer);
  const widthMm = layers.reduce((widest, layer) => Math.max(widest, layerWidthMm(layer)), 0);
  const smeared = layers.map((layer) => ({ thicknessMm: layer.thicknessMm, stiffness: smear(layer, widthMm) }));
  const resistsTwist = smeared.some((layer) => layer.stiffness[5] > 0);
  // Without any shear modulus the twisting rows would be empty: give them an uncoupled one and report no torsion.
  const solvable = resistsTwist ? smeared : smeared.map(withUnitShear);
  const plate = plateStiffness(solvable);
  const { a, b, d } = plateCompliance(plate);
  const at = (matrix: typeof a, i: number) => matrix[i]?.[i] ?? Number.NaN;
  return {
    neutralAxisMm: plate.thicknessMm / 2 - at(b, 0) / at(d, 0),
    axialStiffnessN: widthMm / (at(a, 0) - at(b, 0) ** 2 / at(d, 0)),
    bendingStiffnessNmm2: widthMm / at(d, 0),
    torsionalStiffnessNmm2: resistsTwist ? torsionalStiffnessNmm2(twistSection(layers), MESHES.single) : 0,
    thinStripTorsionalStiffnessNmm2: resistsTwist ? (4 * widthMm) / at(d, 2) : 0,
    massGPerM: layers.reduce((sum, layer) => sum + layerMassGPerM(layer), 0),
    thicknessMm: plate.thicknessMm,
  };
}

const layerWidthMm = (layer: SectionLayer) => layer.parts.reduce((sum, part) => sum + part.widthMm, 0);

// mm² × kg/m³ = 1e-6 kg per m of length times 1000 g/kg.
const layerMassGPerM = (layer: SectionLayer) =>
  layer.parts.reduce((sum, part) => sum + (part.widthMm * layer.thicknessMm * (part.densityKgM3 ?? 0)) / 1000, 0);

function checkLayer(layer: SectionLayer, index: number): void {
  if (layer.parts.length === 0) throw new RangeError(`layers[${index}].parts: there must be at least one`);
  layer.parts.forEach((part, i) => {
    const path = `layers[${index}].parts[${i}]`;
    if (!(part.widthMm > 0)) throw new RangeError(`${path}.widthMm: ${part.widthMm} mm is not above 0`);
    if (!((part.densityKgM3 ?? 0) >= 0)) throw new RangeError(`${path}.densityKgM3: ${part.densityKgM3} is below 0`);
    if ("ply" in part) {
      const { g13Mpa } = part.ply;
      if (g13Mpa !== undefined && !(g13Mpa > 0)) {
        throw new RangeError(`${path}.ply.g13Mpa: ${g13Mpa} MPa is not above 0`);
      }
      return;
    }
    if (!(part.modulusMpa > 0)) throw new RangeError(`${path}.modulusMpa: ${part.modulusMpa} MPa is not above 0`);
    if (!((part.shearModulusMpa ?? 0) >= 0)) {
      throw new RangeError(`${path}.shearModulusMpa: ${part.shearModulusMpa} MPa is below 0`);
    }
  });
}

/** Q of a part: full Q̄ of a ply; for moduli Q11 = E, Q22 = E, Q66 = G and no coupling. */
function partStiffness(part: SectionPart): Stiffness {
  if ("ply" in part) return transformedStiffness(part.ply);
  return [part.modulusMpa, 0, 0, part.modulusMpa, 0, part.shearModulusMpa ?? 0];
}

/** Averages a layer's parts by their share of the width b; across the ski (22) the parts act in series. */
function smear(layer: SectionLayer, widthMm: number): Stiffness {
  const sum = [0, 0, 0, 0, 0, 0];
  let seriesCompliance = 0;
  for (const part of layer.parts) {
    const share = part.widthMm / widthMm;
    const stiffness = partStiffness(part);
    stiffness.forEach((q, i) => {
      sum[i] = (sum[i] ?? 0) + q * share;
    });
    seriesCompliance += part.widthMm / stiffness[3];
  }
  const [q11 = 0, q12 = 0, q16 = 0, , q26 = 0, q66 = 0] = sum;
  const layerWidth = layerWidthMm(layer);
  const q22 = layer.parts.length === 1 ? (sum[3] ?? 0) : ((layerWidth / widthMm) * layerWidth) / seriesCompliance;
  return [q11, q12, q16, q22, q26, q66];
}

function withUnitShear(layer: { readonly thicknessMm: number; readonly stiffness: Stiffness }) {
  const [q11, q12, q16, q22, q26] = layer.stiffness;
  return { ...layer, stiffness: [q11, q12, q16, q22, q26, 1] as const };
}

/** The parts in their places; a section that is its own mirror image is described by its right half. */
function twistSection(layers: readonly SectionLayer[]): TwistSection {
  const isHalf = layers.every(isMirrored);
  return {
    isHalf,
    layers: layers.map((layer) => {
      let fromMm = -layerWidthMm(layer) / 2;
      const parts = layer.parts.map((part) => {
        const toMm = fromMm + part.widthMm;
        const placed: TwistPart = { fromMm, toMm, ...shearOf(part) };
        fromMm = toMm;
        return placed;
      });
      return { thicknessMm: layer.thicknessMm, parts: isHalf ? parts.flatMap(rightOfMiddle) : parts };
    }),
  };
}

function rightOfMiddle(part: TwistPart): readonly TwistPart[] {
  return part.toMm > 0 ? [{ ...part, fromMm: Math.max(0, part.fromMm) }] : [];
}

function isMirrored({ parts }: SectionLayer): boolean {
  return parts.every((part, i) => {
    const other = parts[parts.length - 1 - i];
    if (!other || other.widthMm !== part.widthMm) return false;
    const [a, b] = [shearOf(part), shearOf(other)];
    return a.inPlaneMpa === b.inPlaneMpa && a.throughMpa === b.throughMpa;
  });
}

/** A part given by moduli is isotropic in shear; a ply has Q̄66 in its plane and, through the thickness, its G13 or else G12. */
function shearOf(part: SectionPart): Pick<TwistPart, "inPlaneMpa" | "throughMpa"> {
  if ("ply" in part) {
    const { g12Mpa, g13Mpa = g12Mpa } = part.ply;
    return { inPlaneMpa: transformedStiffness(part.ply)[5], throughMpa: g13Mpa };
  }
  const { shearModulusMpa = 0 } = part;
  return { inPlaneMpa: shearModulusMpa, throughMpa: shearModulusMpa };
}
