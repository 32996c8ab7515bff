/**
 * How wood takes up heat. USDA Forest Products Laboratory, Wood Handbook, FPL-GTR-190 (2010), ch. 4 "Moisture Relations and
 * Physical Properties of Wood", equations 4-7, 4-16a, 4-17 and 4-18 (coefficients from memory).
 */

const WATER_HEAT_KJ_KG_K = 4.18;
const WATER_KG_M3 = 1000;

/**
 * Conductivity across the grain, W/(m·K): k = G_x (B + C·x) + A, for a specific gravity above 0.3, about 24 °C and a moisture
 * below 25 % (eq. 4-7).
 *
 * @param densityKgM3     with its moisture
 * @param moisturePercent of the oven-dry mass; the volume is taken as that at this moisture
 */
export function woodConductivityWMK(densityKgM3: number, moisturePercent: number): number {
  const specificGravity = densityKgM3 / WATER_KG_M3 / (1 + moisturePercent / 100);
  return specificGravity * (0.1941 + 0.004064 * moisturePercent) + 0.01864;
}

/**
 * Specific heat, J/(kg·K): dry wood 0.1031 + 0.003867 T (eq. 4-16a), its water by mass (eq. 4-17) and what their bond adds
 * (eq. 4-18), below fibre saturation.
 *
 * @param temperatureC 7 to 147
 */
export function woodHeatCapacityJKgK(moisturePercent: number, temperatureC: number): number {
  const kelvin = temperatureC + 273.15;
  const dry = 0.1031 + 0.003867 * kelvin;
  const water = moisturePercent / 100;
  const bond = moisturePercent * (-0.06191 + 2.36e-4 * kelvin - 1.33e-4 * moisturePercent);
  return 1000 * ((dry + water * WATER_HEAT_KJ_KG_K) / (1 + water) + bond);
}
