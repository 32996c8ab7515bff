/**
 * The unknowns of the fit. A modulus or density factor enters as its natural logarithm, so that none can turn negative and
 * 5 % more is as likely beforehand as 5 % less; offsets enter in mm. 0 is "as the handbook says, as programmed".
 */
import type { Corrections, MaterialLibrary } from "#engine/materials";
import type { CalibrationSettings, CorrectionFactor } from "./types";

export interface Unknown {
  readonly kind: CorrectionFactor["kind"];
  readonly material?: string;
  /** Standard deviation of what is believed beforehand, ln(factor) or mm. */
  readonly priorSd: number;
}

/** One modulus and one density a material, the mill's and the camber's offset, one factor of all twist: whatever might be learnt. */
export function unknownsOf(library: MaterialLibrary, { priorSd }: CalibrationSettings): readonly Unknown[] {
  const sheet = { modulus: priorSd.sheet ?? priorSd.modulus, density: priorSd.sheet ?? priorSd.density };
  const rows = [
    ...[...library.woods, ...library.fabrics].map(({ id }) => ({
      id,
      modulus: priorSd.modulus,
      density: priorSd.density,
    })),
    ...library.sheets.map(({ id }) => ({ id, ...sheet })),
  ];
  return [
    ...rows.map(({ id, modulus }): Unknown => ({ kind: "modulus", material: id, priorSd: modulus })),
    ...rows.map(({ id, density }): Unknown => ({ kind: "density", material: id, priorSd: density })),
    { kind: "core-offset", priorSd: priorSd.coreOffsetMm },
    { kind: "camber-offset", priorSd: priorSd.camberOffsetMm },
    { kind: "twist", priorSd: priorSd.twist },
  ];
}

/** A book of corrections from values of the unknowns, in their order. */
export function correctionsOf(unknowns: readonly Unknown[], values: readonly number[], version: string): Corrections {
  const moduli: Record<string, number> = {};
  const densities: Record<string, number> = {};
  let coreOffsetMm = 0;
  let camberOffsetMm = 0;
  let twist: number | undefined;
  for (const [i, { kind, material = "" }] of unknowns.entries()) {
    const value = values[i] ?? 0;
    if (kind === "modulus") moduli[material] = Math.exp(value);
    else if (kind === "density") densities[material] = Math.exp(value);
    else if (kind === "core-offset") coreOffsetMm = value;
    else if (kind === "twist") twist = Math.exp(value);
    else camberOffsetMm = value;
  }
  const learnt = { version, moduli, densities, coreOffsetMm, camberOffsetMm };
  return twist === undefined ? learnt : { ...learnt, twist };
}

/** One unknown as people read it: a factor with the standard deviation of the factor itself, or mm. */
export function factorOf({ kind, material, priorSd }: Unknown, value: number, sd: number): CorrectionFactor {
  const isFactor = kind === "modulus" || kind === "density" || kind === "twist";
  return {
    kind,
    ...(material === undefined ? {} : { material }),
    value: isFactor ? Math.exp(value) : value,
    sd: isFactor ? Math.exp(value) * sd : sd,
    learnt: Math.min(1, Math.max(0, 1 - (sd / priorSd) ** 2)),
  };
}
