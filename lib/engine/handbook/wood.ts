/**
 * Solid wood. Handbook values are of small clear specimens at 12 % moisture (USDA Forest Products Laboratory, Wood Handbook,
 * FPL-GTR-190, 2010, ch. 4 and 5). Only checks use it: it holds the catalogue's woods against that handbook.
 */
import { radians } from "#engine/units";

/** Density of wood at moisture content M, kg/m³: 1000·G·(1 + M/100), with G on the volume at M (Wood Handbook ch. 4). */
export function woodDensityKgM3(specificGravity: number, moisturePercent: number): number {
  requirePositive("specificGravity", specificGravity);
  if (!(moisturePercent >= 0)) throw new RangeError(`moisturePercent: ${moisturePercent} % is below 0`);
  return 1000 * specificGravity * (1 + moisturePercent / 100);
}

/**
 * A strength or modulus at another moisture: P = P12·(P12/Pg)^((12 − M)/(Mp − 12)) (Wood Handbook eq. 5-3).
 *
 * @param at12 the property at 12 %, any unit; `green` in the same
 * @param intersectionPercent Mp, where drying begins to matter: 25, for white ash 24
 * @throws RangeError for a moisture at which the relation does not hold
 */
export function atMoisture(
  property: { readonly at12: number; readonly green: number },
  moisturePercent: number,
  intersectionPercent = 25,
): number {
  requirePositive("at12", property.at12);
  requirePositive("green", property.green);
  if (!(intersectionPercent > 12))
    throw new RangeError(`intersectionPercent: ${intersectionPercent} % is not above 12`);
  if (!(moisturePercent >= 0 && moisturePercent <= intersectionPercent)) {
    throw new RangeError(`moisturePercent: ${moisturePercent} % is not from 0 to ${intersectionPercent}`);
  }
  return property.at12 * (property.at12 / property.green) ** ((12 - moisturePercent) / (intersectionPercent - 12));
}

/**
 * Property at an angle to the grain (Hankinson): N = P·Q/(P·sinⁿ θ + Q·cosⁿ θ).
 *
 * @param exponent 2 for the modulus (Wood Handbook ch. 5, from memory)
 */
export function atGrainAngle(
  property: { readonly along: number; readonly across: number },
  angleDeg: number,
  exponent = 2,
): number {
  requirePositive("along", property.along);
  requirePositive("across", property.across);
  if (!(angleDeg >= 0 && angleDeg <= 90)) throw new RangeError(`angleDeg: ${angleDeg}° is not from 0 to 90`);
  const angle = radians(angleDeg);
  const { along, across } = property;
  return (along * across) / (along * Math.sin(angle) ** exponent + across * Math.cos(angle) ** exponent);
}

/**
 * Axial modulus from the handbook's bending value, which contains the shear of a short specimen.
 *
 * @param factor 1.10 by the Wood Handbook ch. 5; {@link shearCorrection} gives 1.098 for span/depth 14 and E/G 16
 */
export function axialModulusMpa(bendingModulusMpa: number, factor: number): number {
  requirePositive("bendingModulusMpa", bendingModulusMpa);
  if (!(factor >= 1)) throw new RangeError(`factor: ${factor} is below 1`);
  return bendingModulusMpa * factor;
}

function requirePositive(name: string, value: number): void {
  if (!(value > 0 && Number.isFinite(value))) throw new RangeError(`${name}: ${value} is not above 0`);
}
