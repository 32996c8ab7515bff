"use client";
/**
 * One axis, tip to tail: outline, side view, stiffness, core and mass stacked station for station, and one hairline
 * through all of them. The pointer moves it; so do the arrow keys (10 mm, with Page keys 100 mm, Home and End the ends).
 * Every value at the hairline is written out with its unit and read to a screen reader; the table below holds the same
 * numbers. Wide screens lay the axis down, phones stand it up. Up to three builds lie over one another, mount line on
 * mount line, and are told apart by their line and letter.
 */
import { type ReactNode, useMemo, useState } from "react";
import { textForPeople } from "#engine/units";
import { axisFrame, axisQuantities, mostBuilds, readingFromMount } from "./axis-builds";
import { axisSeries } from "./axis-data";
import {
  type AxisDrawingProps,
  LyingDrawing,
  showsPair,
  stripHeight,
  UprightDrawing,
  uprightColumns,
  uprightPlanWidth,
} from "./axis-drawings";
import { Hairline } from "./axis-hairline.client";
import { LineKey, lookOf } from "./axis-looks";
import { plotScale } from "./axis-plot";
import { AxisReadout } from "./axis-readout";
import { AxisTable } from "./axis-table";

export interface AxisChartProps extends Omit<AxisDrawingProps, "scales"> {
  /** "Midlow 95, 178 cm": heads the figure and the file. */
  readonly title: string;
}

export function AxisChart({ title, builds: given, pair }: AxisChartProps) {
  const builds = useMemo(() => {
    const [main, ...others] = given;
    return [main, ...others.slice(0, mostBuilds - 1)] as const;
  }, [given]);
  const [wanted, setWanted] = useState(0);
  const { fromMm, toMm } = axisFrame(builds);
  const fromMountMm = Math.min(toMm, Math.max(fromMm, wanted));
  const scales = useMemo(
    () => axisSeries.map((s) => plotScale(builds.flatMap((build) => build.flex.stations.map(s.value)))),
    [builds],
  );
  if (builds[0].flex.stations.length === 0) return null;
  const moving = { builds, scales, pair, fromMountMm, onMove: setWanted };
  return (
    <figure className="min-w-0">
      <figcaption className="mb-2 flex flex-wrap items-baseline justify-between gap-x-6">
        <span className="font-medium">{title}</span>
        <span className="no-print text-sm text-pencil">
          Move the line with the pointer or the arrow keys; it reads every value there.
        </span>
      </figcaption>
      {builds.length > 1 ? <Legend builds={builds} /> : null}
      <div className="max-md:hidden">
        <Lying {...moving} />
      </div>
      <div className="md:hidden">
        <Upright {...moving} />
      </div>
      <AxisReadout builds={builds} fromMountMm={fromMountMm} />
      <AxisTable title={title} builds={builds} />
    </figure>
  );
}

interface Moving extends AxisDrawingProps {
  readonly fromMountMm: number;
  readonly onMove: (fromMountMm: number) => void;
}

/** Only what the memoised drawings compare. */
function still({ builds, scales, pair }: Moving): AxisDrawingProps {
  return { builds, scales, pair };
}

function Legend({ builds }: { readonly builds: AxisDrawingProps["builds"] }) {
  return (
    <ul className="mb-3 flex flex-wrap gap-x-8 gap-y-1 text-sm" aria-label="Lines">
      {builds.map((build, index) => (
        <li key={lookOf(index).letter} className="flex items-baseline gap-2">
          <LineKey index={index} />
          <span>{build.label}</span>
        </li>
      ))}
      <li className="text-pencil">laid over one another at the mount line</li>
    </ul>
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

/** Rows under one another; the drawings share one column, so one slider spans them all. */
function Lying(m: Moving) {
  const labels: readonly ReactNode[] = [
    label("Outline, true shape", showsPair(m) ? "left ski below, right above" : "one ski of each pair"),
    label("Side view, unloaded", "height drawn larger than length"),
    ...axisSeries.map((series) => label(series.title, series.unit)),
  ];
  return (
    <div className="grid grid-cols-[10.5rem_minmax(0,1fr)_8.5rem] gap-x-4">
      <Beside cells={labels} className="text-sm" />
      <Hairline orientation="lying" {...m} className="min-w-0">
        <LyingDrawing {...still(m)} />
      </Hairline>
      <Beside cells={valuesBeside(m)} className="measure text-sm" />
    </div>
  );
}

/** Of all that is read out, what stands beside the plan, the side view and the charts. */
const besidePlots = axisQuantities.filter((quantity) => quantity.title !== "Ski thickness");
const adjectives: Readonly<Record<string, string>> = { Width: " wide", "Height of running surface": " high" };

function valuesBeside({ builds, fromMountMm }: Moving): readonly ReactNode[] {
  const readings = builds.map((build) => readingFromMount(build, fromMountMm));
  return besidePlots.map(({ title, unit, decimals, value }) => (
    <span key={title} className="grid gap-0.5 leading-tight">
      {readings.map((reading, index) => (
        <span key={lookOf(index).letter} className="whitespace-nowrap">
          {builds.length > 1 ? <span className="text-pencil">{lookOf(index).letter} </span> : null}
          {reading ? `${textForPeople(value(reading), decimals)} ${unit}${adjectives[title] ?? ""}` : "–"}
        </span>
      ))}
    </span>
  ));
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

/** The skis stand against the wall; the charts are columns beside them. */
function Upright(m: Moving) {
  return (
    <div className="[--axis:34rem]">
      <div aria-hidden="true" className={`mb-1 text-xs text-pencil ${uprightColumns}`}>
        <span style={uprightPlanWidth(m)}>{showsPair(m) ? <>L&ensp;pair&ensp;R</> : "plan"}</span>
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
