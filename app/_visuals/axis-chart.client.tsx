"use client";
/**
 * One axis, tip to tail: outline, side view, stiffness, core and mass stacked station for station, and one hairline
 * through all of them. The pointer moves it; so do the arrow keys (10 mm, with Page keys 100 mm, Home and End the ends).
 * Every value at the hairline is written out with its unit and read to a screen reader; the table below holds the same
 * numbers. Wide screens lay the axis down, phones stand it up.
 */
import { type KeyboardEvent, type PointerEvent, type ReactNode, useMemo, useState } from "react";
import { textForPeople } from "../../lib/engine/units";
import { type AxisReading, axisSeries, readingAt } from "./axis-data";
import {
  type AxisDrawingProps,
  LyingDrawing,
  stripHeight,
  UprightDrawing,
  uprightColumns,
  uprightPlanWidth,
} from "./axis-drawings";
import { type Orientation, plotScale } from "./axis-plot";
import { AxisTable } from "./axis-table";

export interface AxisChartProps extends Omit<AxisDrawingProps, "scales"> {
  /** "Midlow 95, 178 cm": heads the figure and the file. */
  readonly title: string;
}

export function AxisChart({ title, ...drawing }: AxisChartProps) {
  const { shape, flex, mountMm, reference } = drawing;
  const [wanted, setWanted] = useState(mountMm);
  const xMm = Math.min(shape.lengthMm, Math.max(0, wanted));
  const reading = readingAt(shape, flex, xMm);
  const other = reference?.flex;
  const scales = useMemo(
    () => axisSeries.map((s) => plotScale([...flex.stations, ...(other?.stations ?? [])].map(s.value))),
    [flex, other],
  );
  if (!reading) return null;
  const moving = { ...drawing, scales, xMm, reading, onMove: setWanted };
  return (
    <figure className="min-w-0">
      <figcaption className="mb-2 flex flex-wrap items-baseline justify-between gap-x-6">
        <span className="font-medium">{title}</span>
        <span className="no-print text-sm text-pencil">
          Move the line with the pointer or the arrow keys; it reads every value there
          {reference ? ` (${reference.label})` : ""}.
        </span>
      </figcaption>
      <div className="max-md:hidden">
        <Lying {...moving} />
      </div>
      <div className="md:hidden">
        <Upright {...moving} />
      </div>
      <Readout reading={reading} mountMm={mountMm} />
      <AxisTable title={title} shape={shape} flex={flex} mountMm={mountMm} />
    </figure>
  );
}

interface Moving extends AxisDrawingProps {
  readonly xMm: number;
  readonly reading: AxisReading;
  readonly onMove: (xMm: number) => void;
}

/** Only what the memoised drawings compare. */
function still({ xMm: _x, reading: _reading, onMove: _move, ...drawing }: Moving): AxisDrawingProps {
  return drawing;
}

/** The whole drawing is one slider: it takes the keys, the pointer and the spoken value. */
function Hairline({
  orientation,
  children,
  className,
  ...m
}: Moving & {
  readonly orientation: Orientation;
  readonly children: ReactNode;
  readonly className: string;
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

function label(text: string, detail: string): ReactNode {
  return (
    <>
      <span className="block leading-tight">{text}</span>
      <span className="text-xs text-pencil">{detail}</span>
    </>
  );
}

const lyingLabels: readonly ReactNode[] = [
  label("Outline, true shape", "left ski below, right above"),
  label("Side view, unloaded", "height drawn larger than length"),
  ...axisSeries.map((series) => label(series.title, series.unit)),
];

/** Rows under one another; the drawings share one column, so one slider spans them all. */
function Lying(m: Moving) {
  const { reading } = m;
  const values = [
    `${textForPeople(reading.widthMm, 1)} mm wide`,
    `${textForPeople(reading.surfaceMm, 1)} mm high`,
    ...axisSeries.map((series) => `${textForPeople(series.value(reading), series.decimals)} ${series.unit}`),
  ];
  return (
    <div className="grid grid-cols-[10.5rem_minmax(0,1fr)_8rem] gap-x-4">
      <Beside cells={lyingLabels} className="text-sm" />
      <Hairline orientation="lying" {...m} className="min-w-0">
        <LyingDrawing {...still(m)} />
      </Hairline>
      <Beside cells={values} className="measure text-sm" />
    </div>
  );
}

/** Labels or readings beside the drawings, row for row; the first row takes what the plan is high. */
function Beside({ cells, className }: { readonly cells: readonly ReactNode[]; readonly className: string }) {
  return (
    <div aria-hidden="true" className={`flex flex-col ${className}`}>
      {cells.map((cell, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: rows never change their order
        <div key={i} className={`flex flex-col justify-center ${i === 0 ? "flex-1" : `mt-3 ${stripHeight}`}`}>
          {cell}
        </div>
      ))}
      <div className="h-7" />
    </div>
  );
}

/** The pair stands against the wall; the charts are columns beside it. */
function Upright(m: Moving) {
  return (
    <div className="[--axis:34rem]">
      <div aria-hidden="true" className={`mb-1 text-xs text-pencil ${uprightColumns}`}>
        <span style={uprightPlanWidth(m.shape)}>L&ensp;pair&ensp;R</span>
        <span>side</span>
        {axisSeries.map((series) => (
          <span key={series.key}>
            {series.short}
            <span className="block text-[0.6875rem]">{series.unit}</span>
          </span>
        ))}
      </div>
      <Hairline orientation="upright" {...m} className={`h-(--axis) touch-pan-y ${uprightColumns}`}>
        <UprightDrawing {...still(m)} />
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
