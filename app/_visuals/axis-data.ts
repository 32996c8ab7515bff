/**
 * What hangs on the one axis, as plain data: series for the charts and the reading at one station. Units as shown: EI and
 * GJ in N·m² (engine N·mm² / 10⁶), the rest mm and g/m.
 */
import type { FlexStation, SkiFlex } from "#engine/flex";
import { profileHeightMm, type SkiShape } from "#engine/geometry";

/** Everything at one station, interpolated between the engine's stations. */
export interface AxisReading extends FlexStation {
  /** Height of the running surface above the bench, unloaded. */
  readonly surfaceMm: number;
}

export type SeriesKey = "bending" | "torsion" | "core" | "mass";

export interface AxisSeries {
  readonly key: SeriesKey;
  readonly title: string;
  /** Under a narrow column. */
  readonly short: string;
  readonly unit: string;
  readonly decimals: number;
  readonly value: (station: FlexStation) => number;
}

export const axisSeries: readonly AxisSeries[] = [
  {
    key: "bending",
    title: "Stiffness in bending, EI",
    short: "EI",
    unit: "N·m²",
    decimals: 1,
    value: (s) => s.bendingStiffnessNmm2 / 1e6,
  },
  {
    key: "torsion",
    title: "Stiffness in twist, GJ",
    short: "GJ",
    unit: "N·m²",
    decimals: 1,
    value: (s) => s.torsionalStiffnessNmm2 / 1e6,
  },
  { key: "core", title: "Core thickness", short: "core", unit: "mm", decimals: 2, value: (s) => s.coreMm },
  { key: "mass", title: "Mass along the ski", short: "mass", unit: "g/m", decimals: 0, value: (s) => s.massGPerM },
];

function blend(a: FlexStation, b: FlexStation, xMm: number): FlexStation {
  const span = b.xMm - a.xMm;
  const u = span > 0 ? (xMm - a.xMm) / span : 0;
  const at = (key: keyof FlexStation) => a[key] + (b[key] - a[key]) * u;
  return {
    xMm,
    widthMm: at("widthMm"),
    coreMm: at("coreMm"),
    thicknessMm: at("thicknessMm"),
    bendingStiffnessNmm2: at("bendingStiffnessNmm2"),
    torsionalStiffnessNmm2: at("torsionalStiffnessNmm2"),
    neutralAxisMm: at("neutralAxisMm"),
    massGPerM: at("massGPerM"),
  };
}

/** The reading at x, mm from the tip; x is held to the stations' range. Null when there are no stations. */
export function readingAt(shape: SkiShape, flex: SkiFlex, xMm: number): AxisReading | null {
  const stations = flex.stations;
  const first = stations[0];
  const last = stations.at(-1);
  if (!first || !last) return null;
  const x = Math.min(last.xMm, Math.max(first.xMm, xMm));
  const index = Math.max(
    1,
    stations.findIndex((station) => station.xMm >= x),
  );
  const a = stations[index - 1] ?? first;
  const b = stations[index] ?? last;
  return { ...blend(a, b, x), surfaceMm: profileHeightMm(shape, Math.min(shape.lengthMm, Math.max(0, x)), "free") };
}
