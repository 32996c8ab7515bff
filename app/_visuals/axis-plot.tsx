/**
 * One strip of the axis chart: a quantity along the ski as an area from its own zero. Drawn in a box that stretches with
 * the page; lines keep their width. Lying: x to the right, value upwards. Upright: x downwards, value to the right.
 */
import { scaleLinear } from "d3-scale";
import { area, line } from "d3-shape";
import type { SkiFlex } from "../../lib/engine/flex";
import { profileHeightMm, type SkiShape } from "../../lib/engine/geometry";
import { readingAt } from "./axis-data";

export type Orientation = "lying" | "upright";

/** Depth of a strip in its own units; it is stretched to whatever room the page gives. */
const depth = 100;

export interface PlotScale {
  readonly max: number;
  readonly ticks: readonly number[];
}

/** A round top and two or three ticks above zero. */
export function plotScale(values: readonly number[]): PlotScale {
  const scale = scaleLinear()
    .domain([0, Math.max(1e-9, ...values)])
    .nice(4);
  const max = scale.domain()[1] ?? 1;
  return { max, ticks: scale.ticks(3).filter((tick) => tick > 0) };
}

export interface AxisPlotProps {
  readonly orientation: Orientation;
  readonly lengthMm: number;
  readonly points: readonly { readonly xMm: number; readonly value: number }[];
  readonly scale: PlotScale;
  /** A second line for comparison, dashed. */
  readonly ghost?: readonly { readonly xMm: number; readonly value: number }[];
}

export function AxisPlot({ orientation, lengthMm, points, scale, ghost }: AxisPlotProps) {
  type Point = AxisPlotProps["points"][number];
  const lying = orientation === "lying";
  const v = (value: number) => (lying ? depth - (value / scale.max) * depth : (value / scale.max) * depth);
  const zero = v(0);
  const fill = lying
    ? area<Point>()
        .x((p) => p.xMm)
        .y0(zero)
        .y1((p) => v(p.value))
    : area<Point>()
        .y((p) => p.xMm)
        .x0(zero)
        .x1((p) => v(p.value));
  const stroke = lying
    ? line<Point>()
        .x((p) => p.xMm)
        .y((p) => v(p.value))
    : line<Point>()
        .y((p) => p.xMm)
        .x((p) => v(p.value));
  return (
    <svg
      viewBox={lying ? `0 0 ${lengthMm} ${depth}` : `0 0 ${depth} ${lengthMm}`}
      preserveAspectRatio="none"
      className="absolute inset-0 size-full overflow-visible"
      aria-hidden="true"
    >
      {scale.ticks.map((tick) => (
        <path
          key={tick}
          d={lying ? `M0 ${v(tick)}H${lengthMm}` : `M${v(tick)} 0V${lengthMm}`}
          stroke="var(--rule)"
          strokeWidth={1}
          vectorEffect="non-scaling-stroke"
        />
      ))}
      <path d={fill([...points]) ?? ""} fill="var(--pencil)" fillOpacity={0.13} />
      {ghost ? (
        <path
          d={stroke([...ghost]) ?? ""}
          fill="none"
          stroke="var(--pencil)"
          strokeDasharray="4 3"
          strokeWidth={1}
          vectorEffect="non-scaling-stroke"
        />
      ) : null}
      <path
        d={stroke([...points]) ?? ""}
        fill="none"
        stroke="var(--ink)"
        strokeWidth={1.5}
        strokeLinejoin="round"
        vectorEffect="non-scaling-stroke"
      />
      <path
        d={lying ? `M0 ${zero}H${lengthMm}` : `M${zero} 0V${lengthMm}`}
        stroke="var(--control)"
        strokeWidth={1}
        vectorEffect="non-scaling-stroke"
      />
    </svg>
  );
}

/** Stations of the side view, mm. */
const profileStepMm = 10;

/** Heights of the side view: the ski from its running surface to its top face, and the bench under it. */
export function ProfilePlot({
  orientation,
  shape,
  flex,
  topMm,
}: {
  readonly orientation: Orientation;
  readonly shape: SkiShape;
  readonly flex: SkiFlex;
  /** Height that fills the strip. */
  readonly topMm: number;
}) {
  const lying = orientation === "lying";
  const v = (heightMm: number) => (lying ? depth - (heightMm / topMm) * depth : (heightMm / topMm) * depth);
  const points: { x: number; low: number; high: number }[] = [];
  const steps = Math.ceil(shape.lengthMm / profileStepMm);
  for (let i = 0; i <= steps; i++) {
    const x = (shape.lengthMm * i) / steps;
    const low = profileHeightMm(shape, x, "free");
    points.push({ x, low, high: low + (readingAt(shape, flex, x)?.thicknessMm ?? 0) });
  }
  type Point = (typeof points)[number];
  const body = lying
    ? area<Point>()
        .x((p) => p.x)
        .y0((p) => v(p.low))
        .y1((p) => v(p.high))
    : area<Point>()
        .y((p) => p.x)
        .x0((p) => v(p.low))
        .x1((p) => v(p.high));
  return (
    <svg
      viewBox={lying ? `0 0 ${shape.lengthMm} ${depth}` : `0 0 ${depth} ${shape.lengthMm}`}
      preserveAspectRatio="none"
      className="absolute inset-0 size-full overflow-visible"
      aria-hidden="true"
    >
      <path
        d={lying ? `M0 ${v(0)}H${shape.lengthMm}` : `M${v(0)} 0V${shape.lengthMm}`}
        stroke="var(--control)"
        strokeDasharray="6 3 1 3"
        strokeWidth={1}
        vectorEffect="non-scaling-stroke"
      />
      <path
        d={body(points) ?? ""}
        fill="var(--wood)"
        fillOpacity={0.55}
        stroke="var(--ink)"
        strokeWidth={1.25}
        strokeLinejoin="round"
        vectorEffect="non-scaling-stroke"
      />
    </svg>
  );
}

/** Height that the side view needs: the highest top face, with a little air. */
export function profileTopMm(shape: SkiShape, flex: SkiFlex): number {
  const ends = [flex.stations[0]?.thicknessMm ?? 0, flex.stations.at(-1)?.thicknessMm ?? 0] as const;
  const middle = Math.max(0, ...flex.stations.map((station) => station.thicknessMm)) + shape.camberMm;
  return Math.max(shape.tipRiseMm + ends[0], shape.tailRiseMm + ends[1], middle) * 1.04;
}
