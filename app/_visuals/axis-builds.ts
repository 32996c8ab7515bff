/**
 * Up to three builds on one axis. They are laid over one another at their mount lines, where the skier stands: x of the
 * axis is mm from the mount line, negative towards the tip, and every build keeps its own millimetres, so that a longer
 * ski reaches further at both ends and nothing is stretched. A build alone is also told from its tip.
 */
import type { SkiFlex } from "#engine/flex";
import type { SkiShape } from "#engine/geometry";
import { textForPeople } from "#engine/units";
import { type AxisReading, axisSeries, readingAt } from "./axis-data";

/** More lines than this cannot be told apart in black and white. */
export const mostBuilds = 3;

export interface AxisBuild {
  /** "Midlow 95, 178 cm". */
  readonly label: string;
  readonly shape: SkiShape;
  readonly flex: SkiFlex;
  /** The mount line, mm from the tip. */
  readonly mountMm: number;
}

/** Where the axis begins and ends, mm from the mount line. */
export interface AxisFrame {
  readonly fromMm: number;
  readonly toMm: number;
}

/** The frame that holds every build: from the foremost tip to the rearmost tail. */
export function axisFrame(builds: readonly AxisBuild[]): AxisFrame {
  return {
    fromMm: -Math.max(...builds.map((build) => build.mountMm)),
    toMm: Math.max(...builds.map((build) => build.shape.lengthMm - build.mountMm)),
  };
}

/** Rounding of `mount + x` may leave a station this far outside the ski, mm. */
const roundOffMm = 1e-6;

/** What a build is at x mm from its mount line; null ahead of its tip and behind its tail. */
export function readingFromMount(build: AxisBuild, fromMountMm: number): AxisReading | null {
  const xMm = build.mountMm + fromMountMm;
  if (xMm < -roundOffMm || xMm > build.shape.lengthMm + roundOffMm) return null;
  return readingAt(build.shape, build.flex, Math.min(build.shape.lengthMm, Math.max(0, xMm)));
}

export interface AxisQuantity {
  readonly title: string;
  /** Where there is little room. */
  readonly short: string;
  readonly unit: string;
  readonly decimals: number;
  readonly value: (reading: AxisReading) => number;
}

/** Everything that is read out at a station, the charted series last. */
export const axisQuantities: readonly AxisQuantity[] = [
  { title: "Width", short: "width", unit: "mm", decimals: 1, value: (r) => r.widthMm },
  { title: "Height of running surface", short: "surface", unit: "mm", decimals: 1, value: (r) => r.surfaceMm },
  { title: "Ski thickness", short: "thick", unit: "mm", decimals: 2, value: (r) => r.thicknessMm },
  ...axisSeries,
];

export interface ReadoutCell {
  readonly value: string;
  /** To the first build, signed; null for the first itself and where one of the two is not there. */
  readonly difference: string | null;
}

export interface ReadoutRow {
  readonly quantity: AxisQuantity;
  /** One for each build; null where the build has ended. */
  readonly cells: readonly (ReadoutCell | null)[];
}

/** Every quantity of every build at one station, mm from the mount line. */
export function axisReadout(builds: readonly AxisBuild[], fromMountMm: number): readonly ReadoutRow[] {
  const readings = builds.map((build) => readingFromMount(build, fromMountMm));
  const first = readings[0];
  return axisQuantities.map((quantity) => ({
    quantity,
    cells: readings.map((reading, index) => {
      if (!reading) return null;
      const value = quantity.value(reading);
      const difference = index > 0 && first ? differenceText(value - quantity.value(first), quantity.decimals) : null;
      return { value: textForPeople(value, quantity.decimals), difference };
    }),
  }));
}

/** "+1.2", "−0.30", "0" when nothing is left after rounding. */
export function differenceText(difference: number, decimals: number): string {
  const size = textForPeople(Math.abs(difference), decimals);
  if (Number(size) === 0) return "0";
  return `${difference > 0 ? "+" : "−"}${size}`;
}

export interface AxisTableData {
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/**
 * The same numbers as a table with the units in its head. A build alone: a row every `stepMm` from its tip, both ends
 * included. Several: a row every `stepMm` from the mount line and one at each tip and tail, quantity by quantity with a
 * column for each build; where a build has ended its cells are empty.
 */
export function axisTable(builds: readonly AxisBuild[], stepMm: number): AxisTableData {
  const [only, ...others] = builds;
  if (!only) return { head: [], rows: [] };
  const isAlone = others.length === 0;
  const stops = isAlone ? stopsFromTip(only, stepMm) : stopsFromMount(builds, stepMm);
  const named = (text: string, build: AxisBuild) => (isAlone ? text : `${text} (${build.label})`);
  return {
    head: [
      "from mount line, mm",
      ...builds.map((build) => named("from tip, mm", build)),
      ...axisQuantities.flatMap(({ title, unit }) => builds.map((build) => named(`${title}, ${unit}`, build))),
    ],
    rows: stops.map((stop) => rowAt(builds, stop)),
  };
}

function rowAt(builds: readonly AxisBuild[], fromMountMm: number): readonly string[] {
  const readings = builds.map((build) => readingFromMount(build, fromMountMm));
  return [
    textForPeople(fromMountMm, 0),
    ...builds.map((build, i) => (readings[i] ? textForPeople(build.mountMm + fromMountMm, 0) : "")),
    ...axisQuantities.flatMap(({ value, decimals }) =>
      readings.map((reading) => (reading ? textForPeople(value(reading), decimals) : "")),
    ),
  ];
}

function stopsFromTip({ shape, mountMm }: AxisBuild, stepMm: number): readonly number[] {
  const stops: number[] = [];
  for (let x = 0; x < shape.lengthMm; x += stepMm) stops.push(x - mountMm);
  return [...stops, shape.lengthMm - mountMm];
}

function stopsFromMount(builds: readonly AxisBuild[], stepMm: number): readonly number[] {
  const { fromMm, toMm } = axisFrame(builds);
  const stops = builds.flatMap((build) => [-build.mountMm, build.shape.lengthMm - build.mountMm]);
  for (let x = Math.ceil(fromMm / stepMm) * stepMm; x <= toMm; x += stepMm) stops.push(x);
  return [...new Set(stops)].toSorted((a, b) => a - b);
}
