/**
 * A loaded ski on its snow line, from the engine's solution and nothing else: true to scale along the ski, heights enlarged by
 * one stated factor, tip on the left. Under it the pressure of the snow, hanging from the ski's own places.
 */
import { area, line } from "d3-shape";
import type { BendOnSnow } from "#engine/assessment";
import { interpolate } from "#engine/math";
import type { SkiOnSnow, SkiOnSnowStation } from "#engine/snow";
import { roundScale } from "./linear-scale";

/** How much taller heights are drawn than lengths. */
export const HEIGHTS_TIMES = 4;

/** Of the frame, mm of true height above and below the snow at the widest place of the edge: it stays while the ski bends. */
const ABOVE_MM = 100;
const BELOW_MM = 115;
const BESIDE_MM = 15;
/** Of tip and tail length, counted from shoulder and heel: further out the edge turns away and the snow's line runs on level. */
const EDGE_SHARE = 0.15;

const y = (heightMm: number) => Math.round(-10 * heightMm * HEIGHTS_TIMES) / 10;

export function SkiOnSnowDrawing({ bend, description }: { readonly bend: BendOnSnow; readonly description: string }) {
  const { own, most, shape, thickness, mountMm, bootSoleMm } = bend;
  const { lengthMm } = shape;
  const snow = snowLine(bend);
  const xs = thickness.map((each) => each.xMm);
  const thick = thickness.map((each) => each.thicknessMm);
  const topOf = ({ xMm, heightMm }: SkiOnSnowStation) => heightMm + interpolate(xs, thick, xMm);
  const ski = area<SkiOnSnowStation>()
    .x((each) => each.xMm)
    .y0((each) => y(each.heightMm))
    .y1((each) => y(topOf(each)));
  const sole = line<SkiOnSnowStation>()
    .x((each) => each.xMm)
    .y((each) => y(each.heightMm));
  const ground = line<Place>()
    .x((each) => each.xMm)
    .y((each) => y(each.snowMm));
  const pressed = line<Place>()
    .x((each) => each.xMm)
    .y((each) => y(Math.min(each.snowMm, each.heightMm)));
  const boot = own.stations.filter((each) => Math.abs(each.xMm - mountMm) <= bootSoleMm / 2);
  const bootTop = line<SkiOnSnowStation>()
    .x((each) => each.xMm)
    .y((each) => y(topOf(each)) - 6);
  const under = own.stations.reduce((best, each) =>
    Math.abs(each.xMm - mountMm) < Math.abs(best.xMm - mountMm) ? each : best,
  );
  const head = y(topOf(under)) - 14;
  const hair = { fill: "none", vectorEffect: "non-scaling-stroke" } as const;
  return (
    <svg
      viewBox={`${-BESIDE_MM} ${y(ABOVE_MM)} ${lengthMm + 2 * BESIDE_MM} ${-y(ABOVE_MM + BELOW_MM)}`}
      className="block h-auto w-full"
      role="img"
      aria-label={description}
    >
      <path d={`${pressed([...snow]) ?? ""}V${y(-BELOW_MM)}H${-BESIDE_MM}Z`} fill="var(--pencil)" fillOpacity={0.14} />
      <path d={ground([...snow]) ?? ""} stroke="var(--control)" strokeWidth={1} {...hair} />
      <path
        d={ski([...own.stations]) ?? ""}
        {...hair}
        style={{ fill: "color-mix(in srgb, var(--wood) 60%, var(--paper))" }}
        stroke="var(--ink)"
        strokeWidth={1.25}
      />
      <path
        d={sole([...most.stations]) ?? ""}
        stroke="var(--pencil)"
        strokeWidth={1.5}
        strokeDasharray="5 4"
        {...hair}
      />
      <path d={bootTop([...boot]) ?? ""} stroke="var(--ink)" strokeWidth={3} {...hair} />
      <path
        d={`M${mountMm} ${head - 90}V${head}M${mountMm - 14} ${head - 26}L${mountMm} ${head}L${mountMm + 14} ${head - 26}`}
        stroke="var(--larch)"
        strokeWidth={1.75}
        {...hair}
      />
    </svg>
  );
}

interface Place {
  readonly xMm: number;
  readonly snowMm: number;
  readonly heightMm: number;
}

/** The snow under the edge, level where the ends have turned away from it. */
function snowLine({ own, shape }: BendOnSnow): readonly Place[] {
  const from = shape.tipLengthMm * (1 - EDGE_SHARE);
  const to = shape.lengthMm - shape.tailLengthMm * (1 - EDGE_SHARE);
  const first = own.stations.find((each) => each.xMm >= from)?.snowMm ?? 0;
  const last = own.stations.findLast((each) => each.xMm <= to)?.snowMm ?? 0;
  const places = own.stations.map(({ xMm, snowMm, heightMm }) => ({
    xMm,
    heightMm,
    snowMm: xMm < from ? first : xMm > to ? last : snowMm,
  }));
  const [tip, tail] = [places[0], places.at(-1)];
  return [
    ...(tip ? [{ ...tip, xMm: -BESIDE_MM }] : []),
    ...places,
    ...(tail ? [{ ...tail, xMm: shape.lengthMm + BESIDE_MM }] : []),
  ];
}

const DEPTH = 100;
/** N/mm to N/cm. */
const perCm = (nPerMm: number) => 10 * nPerMm;

/** Pressure hangs down from zero; the scale is round and shared with most skiers'. */
export function SnowPressure({ bend, unit }: { readonly bend: BendOnSnow; readonly unit: string }) {
  const { own, most, shape } = bend;
  const { max, ticks } = roundScale(perCm(Math.max(own.peakNPerMm, most.peakNPerMm)), 4, 2);
  const v = (each: SkiOnSnowStation) => Math.round((10 * DEPTH * perCm(each.pressureNPerMm)) / max) / 10;
  const edge = (ski: SkiOnSnow) =>
    line<SkiOnSnowStation>()
      .x((each) => each.xMm)
      .y(v)([...ski.stations]) ?? "";
  const top = ticks.at(-1);
  const hair = { fill: "none", vectorEffect: "non-scaling-stroke" } as const;
  return (
    <div className="relative h-20">
      <svg
        viewBox={`${-BESIDE_MM} 0 ${shape.lengthMm + 2 * BESIDE_MM} ${DEPTH}`}
        preserveAspectRatio="none"
        className="absolute inset-0 size-full overflow-visible"
        aria-hidden="true"
      >
        {ticks.map((tick) => (
          <path
            key={tick}
            d={`M${-BESIDE_MM} ${(DEPTH * tick) / max}H${shape.lengthMm + BESIDE_MM}`}
            stroke="var(--rule)"
            strokeWidth={1}
            {...hair}
          />
        ))}
        <path d={edge(own)} {...hair} fill="var(--tarn)" fillOpacity={0.2} stroke="var(--tarn)" strokeWidth={1.5} />
        <path d={edge(most)} stroke="var(--pencil)" strokeWidth={1.5} strokeDasharray="5 4" {...hair} />
        <path d={`M${-BESIDE_MM} 0H${shape.lengthMm + BESIDE_MM}`} stroke="var(--control)" strokeWidth={1} {...hair} />
      </svg>
      {top === undefined ? null : (
        <span
          aria-hidden="true"
          className="measure absolute left-0 bg-paper pr-1 text-xs leading-none text-pencil"
          style={{ top: `calc(${(top / max) * 100}% - 0.5em)` }}
        >
          {top} {unit}
        </span>
      )}
    </div>
  );
}
