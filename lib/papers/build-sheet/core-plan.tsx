/** The core from above: wood, glue joints, pocket, spacers and the mount line. */
import { G, Line, Path, Rect, Svg } from "@react-pdf/renderer";
import words from "#content/copy/papers.json";
import { stripWidthLeftMm } from "#engine/flex";
import { fill } from "#engine/units";
import type { XY } from "#papers/parts/facts";
import { numberText, plainNumber } from "#papers/parts/format";
import { between } from "#papers/parts/points";
import { HAIRLINE, INK, PENCIL, THIN, TINT } from "#papers/parts/theme";
import { type AxisScale, CentreLine, HDim, hatch, Label, MountMark, polyline } from "../parts/drawing";
import type { CoreViewProps } from "./core-thickness";
import type { CoreDrawing } from "./printed";

const w = words.buildSheet.core;

export function CorePlan({ d, core, scale, innerPt }: CoreViewProps) {
  const half = scale.len(d.shoulder.widthMm / 2);
  const axisY = 16 + half;
  const below = axisY + half;
  const height = below + 44;
  const inWood = between(d.outline, core.wood.fromMm, core.wood.toMm);
  const edge = (side: 1 | -1, f: (p: XY) => number) =>
    inWood.map((p) => ({ x: scale.x(p.x), y: axisY - side * scale.len(f(p)) }));
  const wood = [...edge(1, (p) => coreHalf(p, core)), ...edge(-1, (p) => coreHalf(p, core)).reverse()];
  return (
    <Svg width={innerPt} height={height} viewBox={`0 0 ${innerPt} ${height}`}>
      <Label
        x={0}
        y={7}
        text={fill(w.planTitle, { denominator: plainNumber(scale.denominator, 1) })}
        size={7.5}
        colour={PENCIL}
      />
      {[1, -1].map((side) => (
        <Path
          key={side}
          d={polyline(d.outline.map((p) => ({ x: scale.x(p.x), y: axisY - side * scale.len(p.y) })))}
          stroke={PENCIL}
          strokeWidth={HAIRLINE}
          strokeDasharray="3 2"
          fill="none"
        />
      ))}
      <Path d={`${polyline(wood)}Z`} stroke={INK} strokeWidth={1} fill={TINT} />
      <StripJoints inWood={inWood} core={core} scale={scale} axisY={axisY} />
      <Pocket core={core} scale={scale} axisY={axisY} y={below + 12} />
      <Hollows core={core} scale={scale} axisY={axisY} y={below + 12} />
      <CentreLine x1={scale.x(-10)} x2={scale.x(d.lengthMm + 10)} y={axisY} />
      <MountMark x={scale.x(d.mountMm)} y1={axisY - half + 2} y2={below - 2} />
      <HDim
        x1={scale.x(0)}
        x2={scale.x(core.wood.fromMm)}
        y={below + 26}
        fromY={axisY}
        text={fill(w.tipSpacerLength, { lengthMm: plainNumber(core.spacers.tipMm) })}
      />
      <HDim
        x1={scale.x(core.wood.fromMm)}
        x2={scale.x(core.wood.toMm)}
        y={below + 26}
        fromY={axisY}
        text={fill(w.woodLength, {
          lengthMm: numberText(core.wood.toMm - core.wood.fromMm),
          scarfMm: plainNumber(core.spacers.scarfMm),
        })}
      />
      <HDim
        x1={scale.x(core.wood.toMm)}
        x2={scale.x(d.lengthMm)}
        y={below + 26}
        fromY={axisY}
        text={fill(w.tailSpacerLength, { lengthMm: plainNumber(core.spacers.tailMm) })}
      />
      <HDim
        x1={scale.x(0)}
        x2={scale.x(d.mountMm)}
        y={below + 40}
        fromY={axisY}
        text={fill(w.tipToMountLine, { mountMm: numberText(d.mountMm) })}
        bold
      />
    </Svg>
  );
}

/** Half width of the core between its sidewalls at one outline point. */
function coreHalf(p: XY, core: CoreDrawing): number {
  return Math.max(0, p.y - core.sidewall.widthMm);
}

/** Glue joints run straight; where the outline is narrower than a joint it is milled away. */
function StripJoints({
  inWood,
  core,
  scale,
  axisY,
}: {
  readonly inWood: readonly XY[];
  readonly core: CoreDrawing;
  readonly scale: AxisScale;
  readonly axisY: number;
}) {
  const front = scale.x(core.wood.fromMm);
  return (
    <G>
      {core.strips.map((strip, index) => {
        const seen = runs(
          inWood.map((p) => ({ x: p.x, shown: stripWidthLeftMm(core.strips, index + 1, coreHalf(p, core)) > 0 })),
        );
        const mid = ((strip.innerMm + strip.outerMm) / 2) * (strip.position === "C" ? 0 : 1);
        return (
          <G key={strip.position}>
            {seen.flatMap(([from, to]) =>
              [1, -1].map((side) => (
                <Line
                  key={`${from}${side}`}
                  x1={scale.x(from)}
                  x2={scale.x(to)}
                  y1={axisY - side * scale.len(strip.outerMm)}
                  y2={axisY - side * scale.len(strip.outerMm)}
                  stroke={INK}
                  strokeWidth={HAIRLINE}
                />
              )),
            )}
            <Label x={front + 14} y={axisY - scale.len(mid) + 2.2} text={strip.position} size={6} bold />
            {strip.position === "C" ? null : (
              <Label x={front + 14} y={axisY + scale.len(mid) + 2.2} text={strip.position} size={6} bold />
            )}
          </G>
        );
      })}
    </G>
  );
}

/** Stretches of the axis over which something is shown. */
function runs(
  points: readonly { readonly x: number; readonly shown: boolean }[],
): readonly (readonly [number, number])[] {
  const found: [number, number][] = [];
  let open: [number, number] | null = null;
  for (const { x, shown } of points) {
    if (!shown) open = null;
    else if (open) open[1] = x;
    else {
      open = [x, x];
      found.push(open);
    }
  }
  return found;
}

/** Lightening pockets: where each begins and ends stands beside the drawing. */
function Hollows({ core, scale, axisY, y }: OnAxis) {
  return (
    <G>
      {core.hollows.map(({ fromMm, toMm, widthMm, depthMm }) => {
        const [x1, x2, half] = [scale.x(fromMm), scale.x(toMm), scale.len(widthMm / 2)];
        return (
          <G key={fromMm}>
            <Path d={hatch(x1, axisY - half, x2 - x1, 2 * half, 4, -1)} stroke={PENCIL} strokeWidth={HAIRLINE} />
            <Rect
              x={x1}
              y={axisY - half}
              width={x2 - x1}
              height={2 * half}
              fill="none"
              stroke={INK}
              strokeWidth={THIN}
            />
            <HDim
              x1={x1}
              x2={x2}
              y={y}
              fromY={axisY + half}
              text={fill(w.hollowCut, { widthMm: plainNumber(widthMm, 1), depthMm: plainNumber(depthMm, 2) })}
            />
          </G>
        );
      })}
    </G>
  );
}

interface OnAxis {
  readonly core: CoreDrawing;
  readonly scale: AxisScale;
  readonly axisY: number;
  /** Of the dimension line. */
  readonly y: number;
}

function Pocket({ core, scale, axisY, y }: OnAxis) {
  const { pocket } = core;
  if (!pocket) return null;
  const x = scale.x(pocket.fromMm);
  const width = scale.len(pocket.toMm - pocket.fromMm);
  const half = scale.len(pocket.widthMm / 2);
  return (
    <G>
      <Path d={hatch(x, axisY - half, width, 2 * half, 4)} stroke={PENCIL} strokeWidth={HAIRLINE} />
      <Rect x={x} y={axisY - half} width={width} height={2 * half} fill="none" stroke={INK} strokeWidth={THIN} />
      <HDim
        x1={x}
        x2={x + width}
        y={y}
        fromY={axisY + half}
        text={fill(w.pocketCut, {
          fromMm: plainNumber(pocket.fromMm),
          toMm: plainNumber(pocket.toMm),
          lengthMm: numberText(pocket.toMm - pocket.fromMm, 1),
          widthMm: numberText(pocket.widthMm, 1),
          depthMm: numberText(pocket.depthMm, 2),
        })}
        bold
      />
    </G>
  );
}
