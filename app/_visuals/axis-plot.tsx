/**
 * The strips of the axis chart. Each is drawn in a box that stretches with the page; lines keep their width. Lying: x to
 * the right, value upwards. Upright: x downwards, value to the right. x is mm from where the frame begins.
 */
import { area, line } from "d3-shape";
import { profileHeightMm } from "#engine/geometry";
import { closedPath, greatestHalfWidthMm, screenOutline } from "#engine/scene";
import { type AxisBuild, type AxisFrame, axisFrame } from "./axis-builds";
import { type AxisSeries, readingAt } from "./axis-data";
import { lineOf } from "./axis-looks";
import { roundScale } from "./linear-scale";

export type Orientation = "lying" | "upright";

/** Depth of a strip in its own units; it is stretched to whatever room the page gives. */
const depth = 100;

export interface PlotScale {
  readonly max: number;
  readonly ticks: readonly number[];
}

/** A round top and two or three ticks above zero. */
export function plotScale(values: readonly number[]): PlotScale {
  return roundScale(Math.max(1e-9, ...values), 4, 3);
}

/** Where a build's tip lies in a frame, mm from where the frame begins. */
function tipAtMm(frame: AxisFrame, build: AxisBuild): number {
  return -build.mountMm - frame.fromMm;
}

interface Point {
  readonly x: number;
  readonly low: number;
  readonly high: number;
}

/** The pen of a strip: how values and spans become paths in its box. */
function pen(orientation: Orientation, lengthMm: number, top: number) {
  const lying = orientation === "lying";
  const v = (value: number) => (lying ? depth - (value / top) * depth : (value / top) * depth);
  const band = lying
    ? area<Point>()
        .x((p) => p.x)
        .y0((p) => v(p.low))
        .y1((p) => v(p.high))
    : area<Point>()
        .y((p) => p.x)
        .x0((p) => v(p.low))
        .x1((p) => v(p.high));
  const edge = lying
    ? line<Point>()
        .x((p) => p.x)
        .y((p) => v(p.high))
    : line<Point>()
        .y((p) => p.x)
        .x((p) => v(p.high));
  return {
    box: {
      viewBox: lying ? `0 0 ${lengthMm} ${depth}` : `0 0 ${depth} ${lengthMm}`,
      preserveAspectRatio: "none",
      className: "absolute inset-0 size-full overflow-visible",
    } as const,
    band: (points: readonly Point[]) => band([...points]) ?? "",
    edge: (points: readonly Point[]) => edge([...points]) ?? "",
    /** A line along the axis at one value. */
    along: (value: number) => (lying ? `M0 ${v(value)}H${lengthMm}` : `M${v(value)} 0V${lengthMm}`),
  };
}

interface PlotProps {
  readonly orientation: Orientation;
  readonly builds: readonly AxisBuild[];
}

/** A quantity along the ski: the first build as an area from zero, the others as lines over it. */
export function SeriesPlot({
  orientation,
  builds,
  series,
  scale,
}: PlotProps & { readonly series: AxisSeries; readonly scale: PlotScale }) {
  const frame = axisFrame(builds);
  const { box, band, edge, along } = pen(orientation, frame.toMm - frame.fromMm, scale.max);
  const points = builds.map((build) =>
    build.flex.stations.map((s) => ({ x: tipAtMm(frame, build) + s.xMm, low: 0, high: series.value(s) })),
  );
  return (
    <svg {...box} aria-hidden="true">
      {scale.ticks.map((tick) => (
        <path key={tick} d={along(tick)} stroke="var(--rule)" strokeWidth={1} vectorEffect="non-scaling-stroke" />
      ))}
      <path d={band(points[0] ?? [])} fill="var(--pencil)" fillOpacity={0.13} />
      {points.map((each, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the order of the builds is their identity
        <path key={index} d={edge(each)} {...lineOf(index)} />
      ))}
      <path d={along(0)} stroke="var(--control)" strokeWidth={1} vectorEffect="non-scaling-stroke" />
    </svg>
  );
}

/** Stations of the side view, mm. */
const profileStepMm = 10;

/** The side view: each ski from its running surface to its top face, and the bench under it. */
export function ProfilePlot({ orientation, builds }: PlotProps) {
  const frame = axisFrame(builds);
  const { box, band, along } = pen(orientation, frame.toMm - frame.fromMm, Math.max(...builds.map(profileTopMm)));
  const [first = "", ...others] = builds.map((build) => band(profileOf(build, tipAtMm(frame, build))));
  return (
    <svg {...box} aria-hidden="true">
      <path
        d={along(0)}
        stroke="var(--control)"
        strokeDasharray="6 3 1 3"
        strokeWidth={1}
        vectorEffect="non-scaling-stroke"
      />
      <path d={first} {...lineOf(0)} fill="var(--wood)" fillOpacity={0.55} strokeWidth={1.25} />
      {others.map((each, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the order of the builds is their identity
        <path key={index} d={each} {...lineOf(index + 1)} strokeWidth={lineOf(index + 1).strokeWidth * 0.75} />
      ))}
    </svg>
  );
}

function profileOf({ shape, flex }: AxisBuild, tipMm: number): readonly Point[] {
  const steps = Math.ceil(shape.lengthMm / profileStepMm);
  return Array.from({ length: steps + 1 }, (_, i) => {
    const x = (shape.lengthMm * i) / steps;
    const low = profileHeightMm(shape, x, "free");
    return { x: tipMm + x, low, high: low + (readingAt(shape, flex, x)?.thicknessMm ?? 0) };
  });
}

/** Height that the side view needs: the highest top face, with a little air. */
function profileTopMm({ shape, flex }: AxisBuild): number {
  const ends = [flex.stations[0]?.thicknessMm ?? 0, flex.stations.at(-1)?.thicknessMm ?? 0] as const;
  const middle = Math.max(0, ...flex.stations.map((station) => station.thicknessMm)) + shape.camberMm;
  return Math.max(shape.tipRiseMm + ends[0], shape.tailRiseMm + ends[1], middle) * 1.04;
}

/** Width of the widest build with a little air, mm. */
export function outlinesAcrossMm(builds: readonly AxisBuild[]): number {
  return 2 * Math.max(...builds.map((build) => greatestHalfWidthMm(build.shape))) + 6;
}

/** The true outlines over one another, one ski of each pair, with the mount line that they share. */
export function OutlinesPlot({ orientation, builds, className }: PlotProps & { readonly className: string }) {
  const frame = axisFrame(builds);
  const lengthMm = frame.toMm - frame.fromMm;
  const across = outlinesAcrossMm(builds);
  const lying = orientation === "lying";
  return (
    <svg
      viewBox={lying ? `0 ${-across / 2} ${lengthMm} ${across}` : `${-across / 2} 0 ${across} ${lengthMm}`}
      className={`block overflow-visible ${className}`}
      aria-hidden="true"
    >
      <g transform={lying ? "rotate(-90)" : undefined}>
        {builds.map((build, index) => (
          <path
            // biome-ignore lint/suspicious/noArrayIndexKey: the order of the builds is their identity
            key={index}
            d={closedPath(screenOutline(build.shape))}
            transform={`translate(0 ${tipAtMm(frame, build)})`}
            {...lineOf(index)}
            fill={index === 0 ? "var(--sheet)" : "none"}
          />
        ))}
        <path
          d={`M${-across / 2} ${-frame.fromMm}H${across / 2}`}
          stroke="var(--larch)"
          strokeWidth={1.5}
          vectorEffect="non-scaling-stroke"
        />
      </g>
    </svg>
  );
}
