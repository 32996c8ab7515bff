/**
 * How long the press heats before the coldest glue line of a stack is warm: heat conducted through the layers at the thickest
 * place of the ski, from plates that warm up evenly and then hold. Heat of the resin's own reaction is left out, so that the
 * minutes are on the safe side.
 */

/** One layer across the stack. */
export interface HeatSlab {
  readonly thicknessMm: number;
  readonly conductivityWMK: number;
  /** Density times specific heat, J/(m³·K). */
  readonly volumetricHeatJM3K: number;
}

export interface Heating {
  readonly startC: number;
  readonly plateC: number;
  /** Until the plates are at their temperature, evenly from the start. */
  readonly plateMinutes: number;
  /** The coldest place counts as warm this far below the plates. */
  readonly withinC: number;
  /** Plates above and below, or below alone with the upper face insulated. */
  readonly heats: "both-faces" | "lower-face";
}

/** No cell is thicker. */
const CELL_MM = 0.5;
const STEP_S = 1;
/** A stack that takes longer is no ski. */
const MOST_HOURS = 3;

/**
 * Minutes until the coldest place of the stack is within `withinC` of the plates: a chain of cells with heat capacity, joined
 * by the resistance of the layers between their middles (Fourier's law), implicit Euler steps of 1 s.
 *
 * @throws RangeError for an empty stack, a value not above 0, or a stack that is not warm within hours
 */
export function heatUpMinutes(slabs: readonly HeatSlab[], heating: Heating): number {
  checkHeating(slabs, heating);
  const cells = slabs.flatMap(cellsOf);
  let temperatures: readonly number[] = cells.map(() => heating.startC);
  const wantedC = heating.plateC - heating.withinC;
  for (let second = STEP_S; second <= MOST_HOURS * 3600; second += STEP_S) {
    temperatures = stepped(cells, temperatures, plateAt(heating, second), heating.heats);
    if (Math.min(...temperatures) >= wantedC) return second / 60;
  }
  throw new RangeError(`heatUpMinutes: not warm within ${MOST_HOURS} hours`);
}

function plateAt({ startC, plateC, plateMinutes }: Heating, second: number): number {
  return startC + (plateC - startC) * Math.min(1, second / 60 / Math.max(plateMinutes, STEP_S / 60));
}

interface Cell {
  /** J/(m²·K) */
  readonly heat: number;
  /** From its middle to its face, m²·K/W. */
  readonly halfResistance: number;
}

function cellsOf({ thicknessMm, conductivityWMK, volumetricHeatJM3K }: HeatSlab): readonly Cell[] {
  const count = Math.max(1, Math.ceil(thicknessMm / CELL_MM));
  const m = thicknessMm / count / 1000;
  return Array.from({ length: count }, () => ({
    heat: volumetricHeatJM3K * m,
    halfResistance: m / 2 / conductivityWMK,
  }));
}

/** One implicit step: the tridiagonal system of the chain, solved from the lower face up and back (Thomas). */
function stepped(
  cells: readonly Cell[],
  before: readonly number[],
  plateC: number,
  heats: Heating["heats"],
): readonly number[] {
  const conductance = (i: number): number => {
    const [lower, upper] = [cells[i - 1], cells[i]];
    if (!lower) return 1 / (upper?.halfResistance ?? 1);
    if (!upper) return heats === "both-faces" ? 1 / lower.halfResistance : 0;
    return 1 / (lower.halfResistance + upper.halfResistance);
  };
  const c: number[] = [];
  const d: number[] = [];
  for (const [i, cell] of cells.entries()) {
    const [below, above] = [conductance(i), conductance(i + 1)];
    const store = cell.heat / STEP_S;
    const fromPlates = (i === 0 ? below * plateC : 0) + (i === cells.length - 1 ? above * plateC : 0);
    const lowerLink = i === 0 ? 0 : below;
    const upperLink = i === cells.length - 1 ? 0 : above;
    const pivot = store + below + above - lowerLink * (c[i - 1] ?? 0);
    c.push(upperLink / pivot);
    d.push((store * (before[i] ?? 0) + fromPlates + lowerLink * (d[i - 1] ?? 0)) / pivot);
  }
  const after = [...d];
  for (let i = cells.length - 2; i >= 0; i--) after[i] = (d[i] ?? 0) + (c[i] ?? 0) * (after[i + 1] ?? 0);
  return after;
}

function checkHeating(slabs: readonly HeatSlab[], { startC, plateC, withinC }: Heating): void {
  if (slabs.length === 0) throw new RangeError("slabs: there is no layer");
  for (const [i, slab] of slabs.entries()) {
    for (const [name, value] of Object.entries(slab)) {
      if (!(value > 0)) throw new RangeError(`slabs.${i}.${name}: ${value} is not above 0`);
    }
  }
  if (!(plateC > startC)) throw new RangeError(`plateC: ${plateC} °C is not above ${startC} °C`);
  if (!(withinC > 0)) throw new RangeError(`withinC: ${withinC} is not above 0`);
}
