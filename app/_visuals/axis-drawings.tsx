/**
 * What stands still while the hairline moves: plan, side view and charts of one ski, lying or upright. Memoised, since
 * the hairline redraws with every move of the pointer and these need not.
 */
import { memo, type ReactNode } from "react";
import type { SkiFlex } from "../../lib/engine/flex";
import type { SkiShape } from "../../lib/engine/geometry";
import { axisSeries } from "./axis-data";
import { AxisPlot, type Orientation, type PlotScale, ProfilePlot, profileTopMm } from "./axis-plot";
import { greatestHalfWidthMm } from "./paths";
import { drawnGapMm, type SkiGraphic, SkiPair } from "./ski-drawing";
import type { WoodStrip } from "./ski-wood";

export interface AxisDrawingProps {
  readonly shape: SkiShape;
  readonly flex: SkiFlex;
  readonly mountMm: number;
  readonly graphic?: SkiGraphic | undefined;
  readonly wood?: readonly WoodStrip[] | undefined;
  /** Half of what boot and binding hide along the ski. */
  readonly bindingHalfMm: number;
  readonly reference?: { readonly flex: SkiFlex; readonly label: string } | undefined;
  readonly scales: readonly PlotScale[];
}

/** Height of one chart when the axis lies, as a class; labels beside the charts use the same. */
export const stripHeight = "h-20";

function Plan({
  orientation,
  className,
  ...p
}: AxisDrawingProps & { readonly orientation: Orientation; readonly className: string }) {
  return (
    <SkiPair
      shape={p.shape}
      orientation={orientation}
      graphic={p.graphic}
      wood={p.wood ?? []}
      marks={{ mountMm: p.mountMm, bindingHalfMm: p.bindingHalfMm }}
      className={className}
    />
  );
}

function Series({
  index,
  orientation,
  ...p
}: AxisDrawingProps & { readonly index: number; readonly orientation: Orientation }) {
  const series = axisSeries[index];
  const scale = p.scales[index];
  if (!series || !scale) return null;
  const of = (flex: SkiFlex) => flex.stations.map((s) => ({ xMm: s.xMm, value: series.value(s) }));
  const top = scale.ticks.at(-1);
  return (
    <>
      <AxisPlot
        orientation={orientation}
        lengthMm={p.shape.lengthMm}
        points={of(p.flex)}
        scale={scale}
        {...(p.reference ? { ghost: of(p.reference.flex) } : {})}
      />
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

function Ruler({ lengthMm }: { readonly lengthMm: number }) {
  const marks: number[] = [];
  for (let x = 0; x <= lengthMm; x += 200) marks.push(x);
  return (
    <div aria-hidden="true" className="relative h-7 border-t border-ink">
      {marks.map((x) => (
        <span
          key={x}
          className="measure absolute top-0 border-l border-ink pt-1 pl-1 text-xs text-pencil"
          style={{ left: `${(x / lengthMm) * 100}%` }}
        >
          {x}
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
      <Plan {...p} orientation="lying" className="w-full" />
      <Strip>
        <ProfilePlot orientation="lying" shape={p.shape} flex={p.flex} topMm={profileTopMm(p.shape, p.flex)} />
      </Strip>
      {axisSeries.map((series, index) => (
        <Strip key={series.key}>
          <Series {...p} index={index} orientation="lying" />
        </Strip>
      ))}
      <Ruler lengthMm={p.shape.lengthMm} />
    </>
  );
});

/** Columns of the upright figure; the first is as wide as the pair is at the figure's height, `--axis`. */
export const uprightColumns = "grid gap-x-2 grid-cols-[auto_minmax(1.5rem,0.8fr)_repeat(4,minmax(0,1fr))]";

export function uprightPlanWidth(shape: SkiShape) {
  const acrossMm = 4 * greatestHalfWidthMm(shape) + drawnGapMm;
  return { width: `calc(var(--axis) * ${acrossMm / shape.lengthMm})` };
}

/** Side by side, tips up. */
export const UprightDrawing = memo(function UprightDrawing(p: AxisDrawingProps) {
  return (
    <>
      <div style={uprightPlanWidth(p.shape)}>
        <Plan {...p} orientation="upright" className="h-full w-full" />
      </div>
      <div className="relative">
        <ProfilePlot orientation="upright" shape={p.shape} flex={p.flex} topMm={profileTopMm(p.shape, p.flex)} />
      </div>
      {axisSeries.map((series, index) => (
        <div key={series.key} className="relative">
          <Series {...p} index={index} orientation="upright" />
        </div>
      ))}
    </>
  );
});
