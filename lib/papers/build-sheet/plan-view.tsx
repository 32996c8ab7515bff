/** The ski from above at true scale: outline, steel, widths, mount line, binding zone, windows and every length. */
import { G, Path, Rect, Svg } from "@react-pdf/renderer";
import words from "#content/copy/papers.json";
import { fill } from "#engine/units";
import type { DrawingData } from "#papers/parts/facts";
import { numberText, plainNumber } from "#papers/parts/format";
import { HAIRLINE, INK, PENCIL, RULE, THIN } from "#papers/parts/theme";
import {
  type AxisScale,
  CentreLine,
  HDim,
  hatch,
  Label,
  MountMark,
  mirroredOutline,
  polyline,
  VDim,
} from "../parts/drawing";

const w = words.buildSheet.shape;

export interface OutlineViewProps {
  readonly d: DrawingData;
  readonly scale: AxisScale;
  readonly innerPt: number;
}

export function PlanView({ d, scale, innerPt }: OutlineViewProps) {
  const half = scale.len(Math.max(d.shoulder.widthMm, d.heel.widthMm) / 2);
  const axisY = 54 + half;
  const top = axisY - half;
  const below = axisY + half;
  const height = below + 62;
  const dim = (n: number) => below + 14 + 14 * n;
  return (
    <Svg width={innerPt} height={height} viewBox={`0 0 ${innerPt} ${height}`}>
      <Label
        x={0}
        y={7}
        text={fill(w.planTitle, { denominator: plainNumber(scale.denominator, 1) })}
        size={7.5}
        colour={PENCIL}
      />
      <Path d={mirroredOutline(d.outline, scale, axisY)} stroke={INK} strokeWidth={1} fill="none" />
      <EdgeSteel d={d} scale={scale} axisY={axisY} />
      <Zones d={d} scale={scale} axisY={axisY} />
      <CentreLine x1={scale.x(-18)} x2={scale.x(d.lengthMm + 18)} y={axisY} />
      {[d.shoulder, d.waist, d.heel].map((w) => (
        <VDim
          key={w.xMm}
          x={scale.x(w.xMm)}
          y1={axisY - scale.len(w.widthMm / 2)}
          y2={axisY + scale.len(w.widthMm / 2)}
          text={plainNumber(w.widthMm, 1)}
          side="right"
          textAt={0.24}
          size={8}
          bold
        />
      ))}
      <MountMark x={scale.x(d.mountMm)} y1={top - 3} y2={below + 3} />
      <Label x={scale.x(d.mountMm) + 4} y={top - 5} text={w.mountMark} size={7} bold />
      <HDim
        x1={scale.x(d.contact.fromMm)}
        x2={scale.x(d.contact.toMm)}
        y={24}
        fromY={axisY - half * 0.75}
        text={fill(w.contact, { gaugeMm: d.contact.gaugeMm, lengthMm: numberText(d.contact.lengthMm) })}
      />
      <HDim
        x1={scale.x(d.edge.fromMm)}
        x2={scale.x(d.edge.toMm)}
        y={38}
        fromY={axisY - half * 0.8}
        text={edgeText(d)}
      />
      <HDim
        x1={scale.x(0)}
        x2={scale.x(d.shoulder.xMm)}
        y={dim(0)}
        fromY={axisY}
        text={plainNumber(d.shoulder.xMm, 1)}
      />
      <HDim
        x1={scale.x(d.shoulder.xMm)}
        x2={scale.x(d.heel.xMm)}
        y={dim(0)}
        fromY={below}
        text={fill(w.sidecutLength, { lengthMm: numberText(d.heel.xMm - d.shoulder.xMm, 1) })}
      />
      <HDim
        x1={scale.x(d.heel.xMm)}
        x2={scale.x(d.lengthMm)}
        y={dim(0)}
        fromY={axisY}
        text={plainNumber(d.lengthMm - d.heel.xMm, 1)}
      />
      <HDim
        x1={scale.x(0)}
        x2={scale.x(d.mountMm)}
        y={dim(1)}
        fromY={below + 10}
        text={fill(w.tipToMount, { mountMm: numberText(d.mountMm) })}
        bold
      />
      <HDim
        x1={scale.x(d.mountMm)}
        x2={scale.x(d.lengthMm)}
        y={dim(1)}
        fromY={below + 10}
        text={fill(w.mountToTail, { lengthMm: numberText(d.lengthMm - d.mountMm) })}
      />
      <HDim
        x1={scale.x(0)}
        x2={scale.x(d.lengthMm)}
        y={dim(2)}
        fromY={axisY}
        text={fill(w.lengthAlongBase, { lengthMm: numberText(d.lengthMm) })}
        bold
      />
    </Svg>
  );
}

function edgeText(d: DrawingData): string {
  return d.edge.wrap === "full"
    ? fill(w.edgesFull, { lengthMm: numberText(d.edge.lengthMm) })
    : fill(w.edgesPartial, { lengthMm: numberText(d.edge.lengthMm) });
}

/** A partial edge is the heavy part of the outline; a full wrap is heavy all round. */
function EdgeSteel({
  d,
  scale,
  axisY,
}: {
  readonly d: DrawingData;
  readonly scale: AxisScale;
  readonly axisY: number;
}) {
  const points = d.outline.filter((p) => d.edge.wrap === "full" || (p.x >= d.edge.fromMm && p.x <= d.edge.toMm));
  return (
    <G>
      {[1, -1].map((side) => (
        <Path
          key={side}
          d={polyline(points.map((p) => ({ x: scale.x(p.x), y: axisY - side * scale.len(p.y) })))}
          stroke={INK}
          strokeWidth={1.9}
          fill="none"
        />
      ))}
    </G>
  );
}

/** Binding zone lightly hatched, clear windows drawn and numbered. */
function Zones({ d, scale, axisY }: { readonly d: DrawingData; readonly scale: AxisScale; readonly axisY: number }) {
  const zone = { x: scale.x(d.matZone.fromMm), w: scale.len(d.matZone.toMm - d.matZone.fromMm) };
  const half = scale.len(d.waist.widthMm / 2) - 3;
  return (
    <G>
      <Path d={hatch(zone.x, axisY - half, zone.w, 2 * half, 5)} stroke={RULE} strokeWidth={HAIRLINE} />
      <Rect
        x={zone.x}
        y={axisY - half}
        width={zone.w}
        height={2 * half}
        fill="none"
        stroke={PENCIL}
        strokeWidth={HAIRLINE}
        strokeDasharray="2 1.5"
      />
      <Label
        x={zone.x + 3}
        y={axisY - 3}
        text={fill(w.matZone, { fromMm: plainNumber(d.matZone.fromMm), toMm: plainNumber(d.matZone.toMm) })}
        size={6.5}
        colour={PENCIL}
        backed
      />
      {d.windows.map((window, i) => {
        const x = scale.x(window.fromMm);
        const h = scale.len(window.halfWidthMm);
        return (
          <G key={window.fromMm}>
            <Rect
              x={x}
              y={axisY - h}
              width={scale.len(window.toMm - window.fromMm)}
              height={2 * h}
              fill="none"
              stroke={INK}
              strokeWidth={THIN}
            />
            <Label x={x + 3} y={axisY - 2} text={fill(w.windowMark, { number: i + 1 })} size={6.5} />
          </G>
        );
      })}
    </G>
  );
}
