/** The thickness programme along the axis, with nine stations: planned values and a box for each ski under them. */
import { G, Line, Path, Rect, Svg } from "@react-pdf/renderer";
import words from "#content/copy/papers.json";
import { fill } from "#engine/units";
import type { DrawingData } from "#papers/parts/facts";
import { numberText, plainNumber } from "#papers/parts/format";
import { between } from "#papers/parts/points";
import { HAIRLINE, INK, PENCIL, PT_PER_MM, THIN, TINT } from "#papers/parts/theme";
import { type AxisScale, Label, MountMark, polyline } from "../parts/drawing";
import type { CoreDrawing } from "./printed";

const w = words.buildSheet.core;

export interface CoreViewProps {
  readonly d: DrawingData;
  readonly core: CoreDrawing;
  readonly scale: AxisScale;
  readonly innerPt: number;
}

/** Thickness is drawn larger than life where the paper allows: at most this high, mm. */
const THICKNESS_ROOM_MM = 23;
/** What lines about lightening pockets take of it, so that the strips stay on the same page. */
const HOLLOW_LINES_MM = 5;
const THICKNESS_SCALES = [2, 1.5, 1] as const;

function thicknessScale(thickestMm: number, { hollows }: Pick<CoreDrawing, "hollows">): number {
  const roomMm = THICKNESS_ROOM_MM - (hollows.length > 0 ? HOLLOW_LINES_MM : 0);
  return THICKNESS_SCALES.find((s) => s * thickestMm <= roomMm) ?? 1;
}

export function ThicknessView({ d, core, scale, innerPt }: CoreViewProps) {
  const thickest = Math.max(...core.thickness.map((p) => p.y));
  const ratio = thicknessScale(thickest, core);
  const perMm = PT_PER_MM * ratio;
  const deepest = thickest * perMm;
  const floorY = deepest + 24;
  const rows = { at: floorY + 14, planned: floorY + 25, L: floorY + 32, R: floorY + 49 };
  const height = rows.R + 18;
  const step = scale.len((core.wood.toMm - core.wood.fromMm) / (core.stations.length - 1));
  const boxWidth = Math.min(step - 4, 58);
  const curve = between(core.thickness, core.wood.fromMm, core.wood.toMm).map((p) => ({
    x: scale.x(p.x),
    y: floorY - p.y * perMm,
  }));
  const area = [...curve, { x: scale.x(core.wood.toMm), y: floorY }, { x: scale.x(core.wood.fromMm), y: floorY }];
  return (
    <Svg width={innerPt} height={height} viewBox={`0 0 ${innerPt} ${height}`}>
      <Label
        x={0}
        y={7}
        text={fill(w.profileTitle, {
          profileId: core.profileId,
          denominator: plainNumber(scale.denominator, 1),
          ratio: plainNumber(ratio, 1),
        })}
        size={7.5}
        colour={PENCIL}
      />
      <Path d={`${polyline(area)}Z`} fill={TINT} stroke={INK} strokeWidth={1} />
      <MountMark x={scale.x(d.mountMm)} y1={17} y2={floorY} />
      <Label
        x={scale.x(d.mountMm) + 4}
        y={20}
        text={fill(w.mountLineAt, { mountMm: plainNumber(d.mountMm) })}
        size={7}
        bold
      />
      {core.stations.map((s) => {
        const x = scale.x(s.xMm);
        return (
          <G key={s.name}>
            <Line
              x1={x}
              x2={x}
              y1={floorY - s.plannedMm * perMm}
              y2={floorY + 6}
              stroke={PENCIL}
              strokeWidth={HAIRLINE}
            />
            <Label
              x={x}
              y={rows.at}
              anchor="middle"
              text={`${s.name} · ${plainNumber(s.xMm)}`}
              size={7}
              colour={PENCIL}
              mono
            />
            <Label x={x} y={rows.planned} anchor="middle" text={numberText(s.plannedMm, 2)} size={10} mono bold />
            <Rect
              x={x - boxWidth / 2}
              y={rows.L}
              width={boxWidth}
              height={15}
              fill="none"
              stroke={INK}
              strokeWidth={THIN}
            />
            <Rect
              x={x - boxWidth / 2}
              y={rows.R}
              width={boxWidth}
              height={15}
              fill="none"
              stroke={INK}
              strokeWidth={THIN}
            />
          </G>
        );
      })}
      <Label x={0} y={rows.at} text={w.stationPlace} size={6.5} colour={PENCIL} />
      <Label x={0} y={rows.planned} text={w.planned} size={7} colour={PENCIL} />
      <Label x={0} y={rows.L + 11} text={w.leftMeasured} size={7} bold />
      <Label x={0} y={rows.R + 11} text={w.rightMeasured} size={7} bold />
    </Svg>
  );
}
