"use client";
/**
 * One axis, tip to tail: outline, side view, stiffness, core and mass stacked station for station, and one hairline
 * through all of them. The pointer moves it; so do the arrow keys (10 mm, with Page keys 100 mm, Home and End the ends).
 * Every value at the hairline is written out with its unit and read to a screen reader; the table below holds the same
 * numbers. Wide screens lay the axis down, phones stand it up.
 */
import { type KeyboardEvent, type PointerEvent, type ReactNode, useMemo, useState } from "react";
import type { SkiFlex } from "../../lib/engine/flex";
import type { SkiShape } from "../../lib/engine/geometry";
import { textForPeople } from "../../lib/engine/units";
import { csvHref } from "../_ui/csv";
import { type AxisReading, axisSeries, axisTable, readingAt } from "./axis-data";
import { AxisPlot, type Orientation, type PlotScale, ProfilePlot, plotScale, profileTopMm } from "./axis-plot";
import { type SkiGraphic, SkiPair, type WoodStrip } from "./ski-drawing";

export interface AxisChartProps {
  /** "Midlow 95, 178 cm": heads the figure and the file. */
  readonly title: string;
  readonly shape: SkiShape;
  readonly flex: SkiFlex;
  readonly mountMm: number;
  readonly graphic?: SkiGraphic | undefined;
  readonly wood?: readonly WoodStrip[];
  /** Another build of the same ski to compare with, drawn dashed, and what the dashes stand for. */
  readonly reference?: { readonly flex: SkiFlex; readonly label: string } | undefined;
}

const tableStepMm = 100;
const csvStepMm = 10;

export function AxisChart(props: AxisChartProps) {
  const { title, shape, flex, mountMm } = props;
  const [wanted, setWanted] = useState(mountMm);
  const xMm = Math.min(shape.lengthMm, Math.max(0, wanted));
  const reading = readingAt(shape, flex, xMm);
  const other = props.reference?.flex;
  const scales = useMemo(
    () => axisSeries.map((s) => plotScale([...flex.stations, ...(other?.stations ?? [])].map(s.value))),
    [flex, other],
  );
  if (!reading) return null;
  const shared = { ...props, xMm, reading, scales, onMove: setWanted };
  return (
    <figure className="min-w-0">
      <figcaption className="mb-2 flex flex-wrap items-baseline justify-between gap-x-6">
        <span className="font-medium">{title}</span>
        <span className="no-print text-sm text-pencil">
          Move the line with the pointer or the arrow keys; it reads every value there
          {props.reference ? ` (${props.reference.label})` : ""}.
        </span>
      </figcaption>
      <div className="max-md:hidden">
        <Lying {...shared} />
      </div>
      <div className="md:hidden">
        <Upright {...shared} />
      </div>
      <Readout reading={reading} mountMm={mountMm} />
      <DataTable {...props} />
    </figure>
  );
}

interface Moving extends AxisChartProps {
  readonly xMm: number;
  readonly reading: AxisReading;
  readonly scales: readonly PlotScale[];
  readonly onMove: (xMm: number) => void;
}

/** The whole drawing is one slider: it takes the keys, the pointer and the spoken value. */
function Hairline({
  orientation,
  children,
  className,
  style,
  ...m
}: Moving & {
  readonly orientation: Orientation;
  readonly children: ReactNode;
  readonly className: string;
  readonly style?: Record<string, string>;
}) {
  const { shape, xMm, mountMm, reading, onMove } = m;
  const pointed = (event: PointerEvent<HTMLDivElement>) => {
    if (event.pointerType === "touch" && event.type === "pointermove" && event.buttons === 0) return;
    const box = event.currentTarget.getBoundingClientRect();
    const share =
      orientation === "lying" ? (event.clientX - box.left) / box.width : (event.clientY - box.top) / box.height;
    onMove(Math.round(Math.min(1, Math.max(0, share)) * shape.lengthMm));
  };
  const keyed = (event: KeyboardEvent) => {
    const step = { ArrowLeft: -10, ArrowUp: -10, ArrowRight: 10, ArrowDown: 10, PageUp: -100, PageDown: 100 }[
      event.key
    ];
    if (step !== undefined) onMove(Math.min(shape.lengthMm, Math.max(0, xMm + step)));
    else if (event.key === "Home") onMove(0);
    else if (event.key === "End") onMove(shape.lengthMm);
    else return;
    event.preventDefault();
  };
  return (
    <div
      role="slider"
      tabIndex={0}
      aria-label="Station along the ski"
      aria-orientation={orientation === "lying" ? "horizontal" : "vertical"}
      aria-valuemin={0}
      aria-valuemax={Math.round(shape.lengthMm)}
      aria-valuenow={Math.round(xMm)}
      aria-valuetext={spoken(reading, mountMm)}
      onKeyDown={keyed}
      onPointerDown={pointed}
      onPointerMove={pointed}
      className={`relative cursor-crosshair ${className}`}
      style={style}
    >
      {children}
      <span
        aria-hidden="true"
        className={
          orientation === "lying"
            ? "pointer-events-none absolute -top-1 -bottom-1 border-l border-larch"
            : "pointer-events-none absolute -right-1 -left-1 border-t border-larch"
        }
        style={
          orientation === "lying"
            ? { left: `${(xMm / shape.lengthMm) * 100}%` }
            : { top: `${(xMm / shape.lengthMm) * 100}%` }
        }
      />
    </div>
  );
}

const bindingHalfMm = 150;

/** Rows under one another; the plots share one column, so one slider spans them all. */
function Lying(m: Moving) {
  const { shape, flex, mountMm, graphic, wood, reading, scales } = m;
  const topMm = profileTopMm(shape, flex);
  const rows = ["h-(--plan)", "h-20", ...axisSeries.map(() => "h-20")];
  const label = (text: string, unit: string) => (
    <>
      <span className="block leading-tight">{text}</span>
      <span className="text-xs text-pencil">{unit}</span>
    </>
  );
  const labels = [
    label("Outline, true shape", "left ski below, right above"),
    label("Side view, unloaded", "height drawn larger than length"),
    ...axisSeries.map((series) => label(series.title, series.unit)),
  ];
  const values = [
    `${textForPeople(reading.widthMm, 1)} mm wide`,
    `${textForPeople(reading.surfaceMm, 1)} mm high`,
    ...axisSeries.map((series) => `${textForPeople(series.value(reading), series.decimals)} ${series.unit}`),
  ];
  // Two skis and their gap in true proportion to the length of the plot column.
  const across = 2 * Math.max(shape.shoulderWidthMm, shape.heelWidthMm) + 24;
  return (
    <div className="grid grid-cols-[10.5rem_minmax(0,1fr)_8rem] gap-x-4">
      <Column rows={rows} cells={labels} across={across} lengthMm={shape.lengthMm} className="text-sm" />
      <Hairline orientation="lying" {...m} className="min-w-0">
        <SkiPair
          shape={shape}
          orientation="lying"
          graphic={graphic}
          wood={wood ?? []}
          marks={{ mountMm, bindingHalfMm }}
          className="w-full"
        />
        <Strip size="h-20">
          <ProfilePlot orientation="lying" shape={shape} flex={flex} topMm={topMm} />
        </Strip>
        {axisSeries.map((series, i) => (
          <Strip key={series.key} size="h-20">
            <Series m={m} index={i} scale={scales[i]} orientation="lying" />
          </Strip>
        ))}
        <Ruler lengthMm={shape.lengthMm} />
      </Hairline>
      <Column rows={rows} cells={values} across={across} lengthMm={shape.lengthMm} className="measure text-sm" output />
    </div>
  );
}

/** Labels or readings beside the plots, row for row. The first row is as high as the drawing is in its own column. */
function Column({
  rows,
  cells,
  className,
  output,
}: {
  readonly rows: readonly string[];
  readonly cells: readonly ReactNode[];
  readonly across: number;
  readonly lengthMm: number;
  readonly className: string;
  readonly output?: boolean;
}) {
  return (
    <div aria-hidden={output ? true : undefined} className={`flex flex-col ${className}`}>
      {cells.map((cell, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: rows never change their order
        <div key={i} className={`flex flex-col justify-center ${i === 0 ? "flex-1" : `mt-3 ${rows[i]}`}`}>
          {cell}
        </div>
      ))}
      <div className="h-7" />
    </div>
  );
}

function Strip({ size, children }: { readonly size: string; readonly children: ReactNode }) {
  return <div className={`relative mt-3 ${size}`}>{children}</div>;
}

function Series({
  m,
  index,
  scale,
  orientation,
}: {
  readonly m: Moving;
  readonly index: number;
  readonly scale: PlotScale | undefined;
  readonly orientation: Orientation;
}) {
  const series = axisSeries[index];
  if (!series || !scale) return null;
  const of = (flex: SkiFlex) => flex.stations.map((s) => ({ xMm: s.xMm, value: series.value(s) }));
  const top = scale.ticks.at(-1);
  return (
    <>
      <AxisPlot
        orientation={orientation}
        lengthMm={m.shape.lengthMm}
        points={of(m.flex)}
        scale={scale}
        {...(m.reference ? { ghost: of(m.reference.flex) } : {})}
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

/** The pair stands against the wall; the charts are columns beside it. */
function Upright(m: Moving) {
  const { shape, flex, mountMm, graphic, wood, scales } = m;
  const topMm = profileTopMm(shape, flex);
  const across = 2 * Math.max(shape.shoulderWidthMm, shape.heelWidthMm) + 24;
  const columns = "grid-cols-[auto_minmax(1.5rem,0.8fr)_repeat(4,minmax(0,1fr))]";
  const planWidth = { width: `calc(var(--axis) * ${across / shape.lengthMm})` };
  return (
    <div className="[--axis:34rem]">
      <div aria-hidden="true" className={`mb-1 grid gap-x-2 text-xs text-pencil ${columns}`}>
        <span style={planWidth}>L&ensp;pair&ensp;R</span>
        <span>side</span>
        {axisSeries.map((series) => (
          <span key={series.key}>
            {series.short}
            <span className="block text-[0.6875rem]">{series.unit}</span>
          </span>
        ))}
      </div>
      <Hairline orientation="upright" {...m} className={`grid h-(--axis) touch-pan-y gap-x-2 ${columns}`}>
        <div style={planWidth}>
          <SkiPair
            shape={shape}
            orientation="upright"
            graphic={graphic}
            wood={wood ?? []}
            marks={{ mountMm, bindingHalfMm }}
            className="h-full w-full"
          />
        </div>
        <div className="relative">
          <ProfilePlot orientation="upright" shape={shape} flex={flex} topMm={topMm} />
        </div>
        {axisSeries.map((series, i) => (
          <div key={series.key} className="relative">
            <Series m={m} index={i} scale={scales[i]} orientation="upright" />
          </div>
        ))}
      </Hairline>
    </div>
  );
}

function spoken(reading: AxisReading, mountMm: number): string {
  const fromMount = Math.round(reading.xMm - mountMm);
  const where =
    fromMount === 0
      ? "at the mount line"
      : `${Math.abs(fromMount)} mm ${fromMount < 0 ? "ahead of" : "behind"} the mount line`;
  const values = axisSeries.map((s) => `${s.title} ${textForPeople(s.value(reading), s.decimals)} ${s.unit}`);
  return `${Math.round(reading.xMm)} mm from the tip, ${where}: ${textForPeople(reading.widthMm, 1)} mm wide, ${values.join(", ")}`;
}

/** Every value at the hairline, in one place that fits a phone. */
function Readout({ reading, mountMm }: { readonly reading: AxisReading; readonly mountMm: number }) {
  const fromMount = Math.round(reading.xMm - mountMm);
  const items: readonly (readonly [string, string])[] = [
    ["from the tip", `${Math.round(reading.xMm)} mm`],
    ["from the mount line", `${fromMount > 0 ? "+" : fromMount < 0 ? "−" : ""}${Math.abs(fromMount)} mm`],
    ["width", `${textForPeople(reading.widthMm, 1)} mm`],
    ["surface above bench", `${textForPeople(reading.surfaceMm, 1)} mm`],
    ["ski thickness", `${textForPeople(reading.thicknessMm, 2)} mm`],
    ...axisSeries.map((s) => [s.title, `${textForPeople(s.value(reading), s.decimals)} ${s.unit}`] as const),
  ];
  return (
    <dl className="mt-4 grid grid-cols-2 gap-x-8 border-t border-rule text-sm sm:grid-cols-3">
      {items.map(([name, value]) => (
        <div key={name} className="flex flex-wrap items-baseline justify-between gap-x-3 border-b border-rule py-1">
          <dt className="text-pencil">{name}</dt>
          <dd className="measure">{value}</dd>
        </div>
      ))}
    </dl>
  );
}

function DataTable({ title, shape, flex, mountMm }: AxisChartProps) {
  const { head, rows } = axisTable(shape, flex, mountMm, tableStepMm);
  const fine = axisTable(shape, flex, mountMm, csvStepMm);
  const fileName = `${title.toLowerCase().replace(/[^a-z0-9]+/g, "-")}.csv`;
  return (
    <details className="no-print mt-3">
      <summary className="chevron inline-flex min-h-9 items-center gap-2 text-tarn underline decoration-1 underline-offset-4">
        The same numbers as a table
      </summary>
      <section
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling region must be reachable by keyboard
        tabIndex={0}
        aria-label={`${title}: values along the ski`}
        className="mt-2 overflow-x-auto border-y border-rule"
      >
        <table className="w-full border-collapse text-right text-sm">
          <caption className="sr-only">{title}: values every 100 mm from the tip</caption>
          <thead>
            <tr>
              {head.map((cell) => (
                <th
                  key={cell}
                  scope="col"
                  className="border-b border-control px-2 py-1 align-bottom text-xs font-medium text-pencil"
                >
                  {cell}
                </th>
              ))}
            </tr>
          </thead>
          <tbody className="measure">
            {rows.map((row) => (
              <tr key={row[0]} className="border-b border-rule last:border-b-0">
                {row.map((cell, i) => (
                  // biome-ignore lint/suspicious/noArrayIndexKey: columns never change their order
                  <td key={i} className="px-2 py-0.5">
                    {cell}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <p className="mt-2 text-sm">
        <a href={csvHref(fine.head, fine.rows)} download={fileName}>
          Download as CSV, every 10 mm
        </a>
      </p>
    </details>
  );
}
