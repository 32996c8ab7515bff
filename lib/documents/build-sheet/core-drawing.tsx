/** Drawing 2, the core card: thickness programme with boxes on the axis, strips and pocket in plan, the section at the mount. */
import { G, Line, Path, Rect, Svg, Text, View } from "@react-pdf/renderer";
import { grams, mm, numberText, plainNumber } from "../format";
import { type AxisScale, axisScale, CentreLine, HDim, hatch, Label, MountMark, polyline, VDim } from "../parts/drawing";
import { Rows, Table } from "../parts/table";
import { HAIRLINE, INK, PENCIL, PT_PER_MM, THIN, TINT } from "../parts/theme";
import type { BuildSheetData, CoreDrawing, DrawingData, XY } from "../types";

/** Thickness is drawn larger than life where the paper allows: at most this high, mm. */
const THICKNESS_ROOM_MM = 23;
const THICKNESS_SCALES = [2, 1.5, 1] as const;

function thicknessScale(thickestMm: number): number {
  return THICKNESS_SCALES.find((s) => s * thickestMm <= THICKNESS_ROOM_MM) ?? 1;
}

export function CoreDrawingPage({ data, innerPt }: { readonly data: BuildSheetData; readonly innerPt: number }) {
  const { drawing, core } = data;
  const scale = axisScale(drawing.lengthMm, 22, innerPt - 44);
  return (
    <View>
      <ThicknessView d={drawing} core={core} scale={scale} innerPt={innerPt} />
      <CorePlan d={drawing} core={core} scale={scale} innerPt={innerPt} />
      <View style={{ flexDirection: "row", marginTop: 2 }}>
        <SectionAtMount d={drawing} core={core} />
        <View style={{ flexGrow: 1, flexBasis: 0, marginLeft: 10 }}>
          <Rows rows={pocketRows(core)} labelWidth={82} size={8} />
        </View>
        <View style={{ flexGrow: 1, flexBasis: 0, marginLeft: 10 }}>
          <Rows rows={spacerRows(core)} labelWidth={82} size={8} />
        </View>
      </View>
      <StripTables data={data} />
    </View>
  );
}

const STRIP_COLUMNS = [
  { title: "Place", flex: 1.15 },
  { title: "Species", flex: 1.3 },
  { title: "Strip", flex: 1.1, mono: true },
  { title: "Bin", flex: 1.2, mono: true },
  { title: "Board", flex: 0.8, mono: true },
  { title: "E, GPa", flex: 0.8, mono: true, align: "right" as const },
  { title: "kg/m³", flex: 0.8, mono: true, align: "right" as const },
  { title: "seen", flex: 0.5 },
];

/** Seven places a core, left to right as seen from the tail with the upper face up. */
function StripTables({ data }: { readonly data: BuildSheetData }) {
  const { strips, pair } = data;
  return (
    <View style={{ marginTop: 4 }} wrap={false}>
      <View style={{ flexDirection: "row" }}>
        {(["left", "right"] as const).map((side) => (
          <View key={side} style={{ flexGrow: 1, flexBasis: 0, marginRight: side === "left" ? 14 : 0 }}>
            <Text style={{ fontSize: 9.5, fontWeight: 600, marginBottom: 1 }}>
              Strips {side === "left" ? `L · ${pair.leftSerial}` : `R · ${pair.rightSerial}`}
              <Text style={{ fontSize: 7, fontWeight: 400, color: PENCIL }}>
                {strips.areAllocated ? " seen from the tail, upper face up" : " not allocated yet: write in"}
              </Text>
            </Text>
            <Table
              columns={STRIP_COLUMNS}
              size={7.5}
              tight
              rows={strips[side].map((s) => ({
                key: `${s.position}${s.place}`,
                cells: [
                  s.place === "centre" ? "C centre" : `${s.position} ${s.place}`,
                  s.species,
                  s.id,
                  s.bin,
                  s.board,
                  s.modulus,
                  s.density,
                  <View key="seen" style={{ width: 7, height: 7, borderWidth: THIN, borderColor: INK }} />,
                ],
              }))}
            />
          </View>
        ))}
      </View>
    </View>
  );
}

interface ViewProps {
  readonly d: DrawingData;
  readonly core: CoreDrawing;
  readonly scale: AxisScale;
  readonly innerPt: number;
}

function ThicknessView({ d, core, scale, innerPt }: ViewProps) {
  const thickest = Math.max(...core.thickness.map((p) => p.y));
  const ratio = thicknessScale(thickest);
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
        text={`Core profile ${core.profileId}, L and R alike: along 1 : ${plainNumber(scale.denominator, 1)}, thickness ${plainNumber(ratio, 1)} : 1; ± 0.10 mm at each station, twins within 0.10 mm; pocket not yet milled`}
        size={7.5}
        colour={PENCIL}
      />
      <Path d={`${polyline(area)}Z`} fill={TINT} stroke={INK} strokeWidth={1} />
      <MountMark x={scale.x(d.mountMm)} y1={17} y2={floorY} />
      <Label x={scale.x(d.mountMm) + 4} y={20} text={`mount line ${plainNumber(d.mountMm)}`} size={7} bold />
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
      <Label x={0} y={rows.at} text="station · mm from tip" size={6.5} colour={PENCIL} />
      <Label x={0} y={rows.planned} text="planned mm" size={7} colour={PENCIL} />
      <Label x={0} y={rows.L + 11} text="L measured" size={7} bold />
      <Label x={0} y={rows.R + 11} text="R measured" size={7} bold />
    </Svg>
  );
}

/** The outline's points from one place to another, both ends exactly. */
function between(points: readonly XY[], fromMm: number, toMm: number): readonly XY[] {
  const inside = points.filter((p) => p.x > fromMm && p.x < toMm);
  return [{ x: fromMm, y: heightAt(points, fromMm) }, ...inside, { x: toMm, y: heightAt(points, toMm) }];
}

function heightAt(points: readonly XY[], x: number): number {
  const next = points.findIndex((p) => p.x >= x);
  const a = points[next - 1];
  const b = points[next];
  if (!a || !b) return b?.y ?? 0;
  return a.y + ((b.y - a.y) * (x - a.x)) / (b.x - a.x);
}

/** Half width of the core between its sidewalls at one outline point. */
function coreHalf(p: XY, core: CoreDrawing): number {
  return Math.max(0, p.y - core.sidewall.widthMm);
}

function CorePlan({ d, core, scale, innerPt }: ViewProps) {
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
        text={`Core in plan, upper face up, tip to the left: 1 : ${plainNumber(scale.denominator, 1)}; dashed: finished ski`}
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
      <CentreLine x1={scale.x(-10)} x2={scale.x(d.lengthMm + 10)} y={axisY} />
      <MountMark x={scale.x(d.mountMm)} y1={axisY - half + 2} y2={below - 2} />
      <HDim
        x1={scale.x(0)}
        x2={scale.x(core.wood.fromMm)}
        y={below + 26}
        fromY={axisY}
        text={`spacer ${plainNumber(core.spacers.tipMm)}`}
      />
      <HDim
        x1={scale.x(core.wood.fromMm)}
        x2={scale.x(core.wood.toMm)}
        y={below + 26}
        fromY={axisY}
        text={`wood ${numberText(core.wood.toMm - core.wood.fromMm)} (+ scarf ${plainNumber(core.spacers.scarfMm)} each end)`}
      />
      <HDim
        x1={scale.x(core.wood.toMm)}
        x2={scale.x(d.lengthMm)}
        y={below + 26}
        fromY={axisY}
        text={`spacer ${plainNumber(core.spacers.tailMm)}`}
      />
      <HDim
        x1={scale.x(0)}
        x2={scale.x(d.mountMm)}
        y={below + 40}
        fromY={axisY}
        text={`tip to mount line ${numberText(d.mountMm)}`}
        bold
      />
    </Svg>
  );
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
      {core.strips.map((strip) => {
        const seen = runs(inWood.map((p) => ({ x: p.x, shown: coreHalf(p, core) > strip.outerMm })));
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

function Pocket({
  core,
  scale,
  axisY,
  y,
}: {
  readonly core: CoreDrawing;
  readonly scale: AxisScale;
  readonly axisY: number;
  readonly y: number;
}) {
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
        text={`pocket ${plainNumber(pocket.fromMm)} to ${plainNumber(pocket.toMm)}: ${numberText(pocket.toMm - pocket.fromMm, 1)} × ${numberText(pocket.widthMm, 1)}, ${numberText(pocket.depthMm, 2)} deep`}
        bold
      />
    </G>
  );
}

/** The words of the section need this much. */
const SECTION_TEXT_PT = 268;

/** Section across the ski's core at the mount line, full size. */
function SectionAtMount({ d, core }: { readonly d: DrawingData; readonly core: CoreDrawing }) {
  const pt = PT_PER_MM;
  const half = (d.widthAtMountMm / 2) * pt;
  const t = core.thicknessAtMountMm * pt;
  const cx = half + 4;
  const top = 30;
  const width = Math.max(2 * half + 40, SECTION_TEXT_PT);
  const wall = core.sidewall.widthMm * pt;
  const inner = half - wall;
  const columns = [
    ...core.strips.map((s) => ({ ...s, side: 1 })),
    ...core.strips.filter((s) => s.position !== "C").map((s) => ({ ...s, side: -1 })),
  ];
  return (
    <View style={{ width }}>
      <Svg width={width} height={top + t + 30} viewBox={`0 0 ${width} ${top + t + 30}`}>
        <Label
          x={0}
          y={8}
          text="Section at the mount line, seen from the tail, full size (core and sidewalls)"
          size={7.5}
          colour={PENCIL}
        />
        <Rect x={cx - half} y={top} width={2 * half} height={t} fill="none" stroke={INK} strokeWidth={1} />
        {[cx - half, cx + half - wall].map((x) => (
          <G key={x}>
            <Path d={hatch(x, top, wall, t, 3, -1)} stroke={PENCIL} strokeWidth={HAIRLINE} />
            <Rect x={x} y={top} width={wall} height={t} fill="none" stroke={INK} strokeWidth={THIN} />
          </G>
        ))}
        {columns.map((c) => {
          const from = c.position === "C" ? -Math.min(c.outerMm * pt, inner) : Math.min(c.innerMm * pt, inner);
          const to = Math.min(c.outerMm * pt, inner);
          if (to - from < 0.5) return null;
          const x = c.side === 1 ? cx + from : cx - to;
          return (
            <G key={`${c.position}${c.side}`}>
              <Rect x={x} y={top} width={to - from} height={t} fill="none" stroke={INK} strokeWidth={THIN} />
              {to - from > 8 ? (
                <Label x={x + (to - from) / 2} y={top + t - 6} anchor="middle" text={c.position} size={9} bold />
              ) : null}
            </G>
          );
        })}
        {core.pocket ? (
          <Rect
            x={cx - (core.pocket.widthMm / 2) * pt}
            y={top}
            width={core.pocket.widthMm * pt}
            height={Math.max(core.pocket.depthMm * pt, 1.2)}
            fill={INK}
          />
        ) : null}
        <VDim x={cx + half + 6} y1={top} y2={top + t} text={numberText(core.thicknessAtMountMm, 2)} size={8} bold />
        <HDim x1={cx - half} x2={cx + half} y={top - 10} fromY={top} text={plainNumber(d.widthAtMountMm, 1)} />
        <Label
          x={0}
          y={top + t + 12}
          text={core.strips.map((s) => `${s.position} ${s.species}`).join(" · ")}
          size={7.5}
        />
        <Label
          x={0}
          y={top + t + 22}
          text={`sidewall ${core.sidewall.material}, ${plainNumber(core.sidewall.widthMm, 1)} mm finished${core.pocket ? "; black on top: pocket" : ""}`}
          size={7.5}
        />
      </Svg>
    </View>
  );
}

function pocketRows(core: CoreDrawing) {
  const { pocket } = core;
  if (!pocket) return [{ label: "Pocket", value: "none" }];
  const size = [pocket.plateLengthMm, pocket.plateWidthMm].map((v) => plainNumber(v, 1)).join(" × ");
  return [
    {
      label: "Pocket, upper face",
      value: `${numberText(pocket.toMm - pocket.fromMm, 1)} × ${numberText(pocket.widthMm, 1)} mm, ${numberText(pocket.depthMm, 2)} deep`,
    },
    {
      label: "From the tip",
      value: `${numberText(pocket.fromMm, 1)} to ${numberText(pocket.toMm, 1)} mm`,
    },
    { label: "Plate", value: `${pocket.plate}, ${size} × ${plainNumber(pocket.plateMm, 2)} mm` },
    { label: "Rubber under it", value: mm(pocket.rubberMm, 2) },
    { label: "Centred on", value: "this order's mount line" },
  ];
}

function spacerRows(core: CoreDrawing) {
  const { spacers } = core;
  const one = (lengthMm: number, thicknessMm: number) =>
    `${plainNumber(lengthMm)} + ${plainNumber(spacers.scarfMm)} mm scarf, ${numberText(thicknessMm, 2)} mm thick`;
  return [
    { label: "Spacers", value: spacers.material },
    { label: "Tip spacer", value: one(spacers.tipMm, spacers.tipThicknessMm) },
    { label: "Tail spacer", value: one(spacers.tailMm, spacers.tailThicknessMm) },
    { label: "Wood, planned", value: `L ${grams(core.plannedG.L)}, R ${grams(core.plannedG.R)} (milled, pocket out)` },
    { label: "Wood, weighed", value: "L ________ g   R ________ g" },
  ];
}
