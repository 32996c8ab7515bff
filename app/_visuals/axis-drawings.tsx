/**
 * What stands still while the hairline moves: plan, side view and charts, lying or upright. Memoised, since the hairline
 * redraws with every move of the pointer and these need not.
 */
import { memo, type ReactNode } from "react";
import { drawnGapMm, greatestHalfWidthMm, type PairLook } from "#engine/scene";
import { type AxisBuild, axisFrame } from "./axis-builds";
import { axisSeries } from "./axis-data";
import { type Orientation, OutlinesPlot, outlinesAcrossMm, type PlotScale, ProfilePlot, SeriesPlot } from "./axis-plot";
import { SkiPair } from "./ski-drawing";

/** What is drawn on the plan of the first build, where the plan shows its pair. */
export interface DrawnPair {
  readonly look: PairLook;
  /** Skiers' pictures are at this address, a slash and their id. */
  readonly pictureBase: string;
}

export interface AxisDrawingProps {
  /** One to three; the first is the main one. */
  readonly builds: readonly [AxisBuild, ...AxisBuild[]];
  readonly scales: readonly PlotScale[];
  /** Draws the pair as it will look. Left out, or where the outlines differ, the plan shows outlines over one another. */
  readonly pair?: DrawnPair | undefined;
}

/** Height of one chart when the axis lies, as a class; labels beside the charts use the same. */
export const stripHeight = "h-20";

/** The pair's own picture says enough about outlines only when every build shares its length and mount line. */
export function showsPair({ builds, pair }: AxisDrawingProps): boolean {
  const [main] = builds;
  const isSame = (build: AxisBuild) =>
    build.mountMm === main.mountMm &&
    build.shape.lengthMm === main.shape.lengthMm &&
    build.shape.waistWidthMm === main.shape.waistWidthMm &&
    build.shape.shoulderWidthMm === main.shape.shoulderWidthMm;
  return pair !== undefined && builds.every(isSame);
}

function Plan({
  orientation,
  className,
  ...p
}: AxisDrawingProps & { readonly orientation: Orientation; readonly className: string }) {
  const { builds, pair } = p;
  if (!pair || !showsPair(p)) return <OutlinesPlot orientation={orientation} builds={builds} className={className} />;
  return <SkiPair look={pair.look} pictureBase={pair.pictureBase} orientation={orientation} className={className} />;
}

function Series({
  index,
  orientation,
  builds,
  scales,
}: AxisDrawingProps & { readonly index: number; readonly orientation: Orientation }) {
  const series = axisSeries[index];
  const scale = scales[index];
  if (!series || !scale) return null;
  const top = scale.ticks.at(-1);
  return (
    <>
      <SeriesPlot orientation={orientation} builds={builds} series={series} scale={scale} />
      {top !== undefined && orientation === "lying" ? (
        <span
          aria-hidden="true"
          className="measure absolute left-0 bg-paper pr-1 text-xs leading-none text-pencil"
          style={{ bottom: `calc(${(top / scale.max) * 100}% - 0.5em)` }}
        >
          {top}
        </span>
      ) : null}
    </>
  );
}

function Strip({ children }: { readonly children: ReactNode }) {
  return <div className={`relative mt-3 ${stripHeight}`}>{children}</div>;
}

const rulerStepMm = 200;

/** A build alone is measured from its tip, several from the mount line that they share. */
function Ruler({ builds }: { readonly builds: AxisDrawingProps["builds"] }) {
  const { fromMm, toMm } = axisFrame(builds);
  const zero = builds.length === 1 ? fromMm : 0;
  const marks: number[] = [];
  for (let x = Math.ceil((fromMm - zero) / rulerStepMm) * rulerStepMm; x <= toMm - zero; x += rulerStepMm)
    marks.push(x);
  return (
    <div aria-hidden="true" className="relative h-7 border-t border-ink">
      {marks.map((x) => (
        <span
          key={x}
          className="measure absolute top-0 border-l border-ink pt-1 pl-1 text-xs whitespace-nowrap text-pencil"
          style={{ left: `${((x + zero - fromMm) / (toMm - fromMm)) * 100}%` }}
        >
          {x < 0 ? `−${-x}` : x}
          {x === 0 ? " mm" : ""}
        </span>
      ))}
    </div>
  );
}

/** One under the other, over a ruler. */
export const LyingDrawing = memo(function LyingDrawing(p: AxisDrawingProps) {
  return (
    <>
      <div className={showsPair(p) ? undefined : "flex min-h-16 items-center"}>
        <Plan {...p} orientation="lying" className="w-full" />
      </div>
      <Strip>
        <ProfilePlot orientation="lying" builds={p.builds} />
      </Strip>
      {axisSeries.map((series, index) => (
        <Strip key={series.key}>
          <Series {...p} index={index} orientation="lying" />
        </Strip>
      ))}
      <Ruler builds={p.builds} />
    </>
  );
});

/** Columns of the upright figure; the first is as wide as the plan is at the figure's height, `--axis`. */
export const uprightColumns = "grid gap-x-2 grid-cols-[auto_minmax(1.5rem,0.8fr)_repeat(4,minmax(0,1fr))]";

export function uprightPlanWidth(p: AxisDrawingProps) {
  const { fromMm, toMm } = axisFrame(p.builds);
  const [{ shape }] = p.builds;
  const acrossMm = showsPair(p) ? 4 * greatestHalfWidthMm(shape) + drawnGapMm : outlinesAcrossMm(p.builds);
  return { width: `calc(var(--axis) * ${acrossMm / (toMm - fromMm)})` };
}

/** Side by side, tips up. */
export const UprightDrawing = memo(function UprightDrawing(p: AxisDrawingProps) {
  return (
    <>
      <div style={uprightPlanWidth(p)}>
        <Plan {...p} orientation="upright" className="h-full w-full" />
      </div>
      <div className="relative">
        <ProfilePlot orientation="upright" builds={p.builds} />
      </div>
      {axisSeries.map((series, index) => (
        <div key={series.key} className="relative">
          <Series {...p} index={index} orientation="upright" />
        </div>
      ))}
    </>
  );
});
