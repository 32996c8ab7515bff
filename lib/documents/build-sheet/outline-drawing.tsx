/** Drawing 1: plan outline at true scale, side profile on the same axis, and every length and width as a number. */
import { G, Line, Path, Rect, Svg, Text, View } from "@react-pdf/renderer";
import { MONO } from "../fonts";
import { mm, numberText, plainNumber } from "../format";
import {
  type AxisScale,
  axisScale,
  CentreLine,
  HDim,
  hatch,
  Label,
  MountMark,
  mirroredOutline,
  polyline,
  VDim,
} from "../parts/drawing";
import { Rows, WriteBox } from "../parts/table";
import { HAIRLINE, INK, PENCIL, RULE, THIN } from "../parts/theme";
import type { BuildSheetData, DrawingData } from "../types";

/** Heights of the profile are drawn this many times the scale of the lengths. */
const PROFILE_STRETCH = 3;

export function OutlineDrawing({ data, innerPt }: { readonly data: BuildSheetData; readonly innerPt: number }) {
  const { drawing } = data;
  const scale = axisScale(drawing.lengthMm, 22, innerPt - 44);
  return (
    <View>
      <PlanView d={drawing} scale={scale} innerPt={innerPt} />
      <ProfileView d={drawing} scale={scale} innerPt={innerPt} />
      <View style={{ flexDirection: "row", marginTop: 4 }}>
        <View style={{ flexGrow: 1, flexBasis: 0, marginRight: 12 }}>
          <Rows rows={lengthRows(drawing)} labelWidth={118} size={8} />
        </View>
        <View style={{ flexGrow: 1, flexBasis: 0, marginRight: 12 }}>
          <Rows rows={edgeRows(drawing)} labelWidth={100} size={8} />
        </View>
        <View style={{ flexGrow: 1, flexBasis: 0 }}>
          <Rows rows={placeRows(data)} labelWidth={84} size={8} />
        </View>
      </View>
      <Checks d={drawing} />
    </View>
  );
}

/** Boxes for what is measured before the lay-up, when a wrong width can still be put right. */
function Checks({ d }: { readonly d: DrawingData }) {
  const items = [
    ["Shoulder", plainNumber(d.shoulder.widthMm, 1)],
    ["Waist", plainNumber(d.waist.widthMm, 1)],
    ["Heel", plainNumber(d.heel.widthMm, 1)],
    ["Length", plainNumber(d.lengthMm)],
    ["Flip test, at most", "0.5"],
  ] as const;
  return (
    <View style={{ marginTop: 8 }} wrap={false}>
      <Text style={{ fontSize: 9.5, fontWeight: 600 }}>
        Bases with edges set, before lay-up
        <Text style={{ fontSize: 7.5, fontWeight: 400, color: PENCIL }}>
          {" "}
          mm over the steel; flip test: base turned over on its own outline; lay both bases on the drawing of their own
          length
        </Text>
      </Text>
      <View style={{ flexDirection: "row", marginTop: 2 }}>
        {items.map(([label, target]) => (
          <View key={label} style={{ flexGrow: 1, flexBasis: 0, marginRight: 8 }}>
            <Text style={{ fontSize: 8 }}>
              {label} <Text style={{ fontFamily: MONO, fontWeight: 600 }}>{target}</Text>
            </Text>
            <View style={{ flexDirection: "row" }}>
              <WriteBox width="48%" height={18} hint="L" />
              <View style={{ width: "4%" }} />
              <WriteBox width="48%" height={18} hint="R" />
            </View>
          </View>
        ))}
      </View>
    </View>
  );
}

interface ViewProps {
  readonly d: DrawingData;
  readonly scale: AxisScale;
  readonly innerPt: number;
}

function PlanView({ d, scale, innerPt }: ViewProps) {
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
        text={`Plan, L and R alike: 1 : ${plainNumber(scale.denominator, 1)}, all dimensions in mm, tip to the left`}
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
      <Label x={scale.x(d.mountMm) + 4} y={top - 5} text="mount line" size={7} bold />
      <HDim
        x1={scale.x(d.contact.fromMm)}
        x2={scale.x(d.contact.toMm)}
        y={24}
        fromY={axisY - half * 0.75}
        text={`contact ${numberText(d.contact.lengthMm)} (0.5 mm gauge, pressed flat)`}
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
        text={`sidecut ${numberText(d.heel.xMm - d.shoulder.xMm, 1)}`}
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
        text={`tip to mount line ${numberText(d.mountMm)}`}
        bold
      />
      <HDim
        x1={scale.x(d.mountMm)}
        x2={scale.x(d.lengthMm)}
        y={dim(1)}
        fromY={below + 10}
        text={`mount line to tail ${numberText(d.lengthMm - d.mountMm)}`}
      />
      <HDim
        x1={scale.x(0)}
        x2={scale.x(d.lengthMm)}
        y={dim(2)}
        fromY={axisY}
        text={`length ${numberText(d.lengthMm)} along the base`}
        bold
      />
    </Svg>
  );
}

function edgeText(d: DrawingData): string {
  return d.edge.wrap === "full"
    ? `edges all round: ${numberText(d.edge.lengthMm)} a ski`
    : `edges ${numberText(d.edge.lengthMm)} a side`;
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
        text={`binding mat ${plainNumber(d.matZone.fromMm)}–${plainNumber(d.matZone.toMm)}`}
        size={6.5}
        colour={PENCIL}
        backed
      />
      {d.windows.map((w, i) => {
        const x = scale.x(w.fromMm);
        const h = scale.len(w.halfWidthMm);
        return (
          <G key={w.fromMm}>
            <Rect
              x={x}
              y={axisY - h}
              width={scale.len(w.toMm - w.fromMm)}
              height={2 * h}
              fill="none"
              stroke={INK}
              strokeWidth={THIN}
            />
            <Label x={x + 3} y={axisY - 2} text={`window ${i + 1}`} size={6.5} />
          </G>
        );
      })}
    </G>
  );
}

/** Narrower than these, a dimension drops a word of its text. */
const NARROW_PT = 34;
const MIDDLING_PT = 75;

function endText(name: string, rockerMm: number, scale: AxisScale): string {
  const width = scale.len(rockerMm);
  if (width < NARROW_PT) return numberText(rockerMm);
  return `${name} ${width < MIDDLING_PT ? "" : "rocker "}${numberText(rockerMm)}`;
}

function ProfileView({ d, scale, innerPt }: ViewProps) {
  const rise = scale.len(Math.max(d.tipRiseMm, d.tailRiseMm)) * PROFILE_STRETCH;
  const benchY = rise + 24;
  const height = benchY + 32;
  const y = (z: number) => benchY - scale.len(z) * PROFILE_STRETCH;
  const middle = (d.tangent.fromMm + d.tangent.toMm) / 2;
  return (
    <Svg width={innerPt} height={height} viewBox={`0 0 ${innerPt} ${height}`}>
      <Label
        x={scale.x(d.lengthMm / 2)}
        y={8}
        anchor="middle"
        text={`Side profile of the finished ski, lying free: lengths 1 : ${plainNumber(scale.denominator, 1)}, heights ${PROFILE_STRETCH} times that`}
        size={7.5}
        colour={PENCIL}
      />
      <Line
        x1={scale.x(-15)}
        x2={scale.x(d.lengthMm + 15)}
        y1={benchY}
        y2={benchY}
        stroke={PENCIL}
        strokeWidth={THIN}
      />
      <Path d={hatch(scale.x(-15), benchY, scale.len(d.lengthMm + 30), 3, 4)} stroke={RULE} strokeWidth={HAIRLINE} />
      <Path
        d={polyline(d.profile.map((p) => ({ x: scale.x(p.x), y: y(p.y) })))}
        stroke={INK}
        strokeWidth={1.1}
        fill="none"
      />
      <VDim
        x={scale.x(0)}
        y1={y(d.tipRiseMm)}
        y2={benchY}
        text={plainNumber(d.tipRiseMm, 1)}
        side="left"
        size={8}
        bold
      />
      <VDim
        x={scale.x(d.lengthMm)}
        y1={y(d.tailRiseMm)}
        y2={benchY}
        text={plainNumber(d.tailRiseMm, 1)}
        size={8}
        bold
      />
      <Label
        x={scale.x(middle)}
        y={y(d.camberMm) - 5}
        anchor="middle"
        text={`camber ${plainNumber(d.camberMm, 1)} finished · mould camber ${plainNumber(d.mouldCamberMm, 1)}`}
        size={8}
        mono
        bold
      />
      <HDim
        x1={scale.x(0)}
        x2={scale.x(d.tangent.fromMm)}
        y={benchY + 17}
        fromY={benchY}
        text={endText("tip", d.tangent.fromMm, scale)}
      />
      <HDim
        x1={scale.x(d.tangent.fromMm)}
        x2={scale.x(d.tangent.toMm)}
        y={benchY + 17}
        fromY={benchY}
        text={`between tangent points ${numberText(d.tangent.lengthMm)}`}
      />
      <HDim
        x1={scale.x(d.tangent.toMm)}
        x2={scale.x(d.lengthMm)}
        y={benchY + 17}
        fromY={benchY}
        text={endText("tail", d.lengthMm - d.tangent.toMm, scale)}
        textAt={scale.len(d.lengthMm - d.tangent.toMm) < NARROW_PT ? "after" : "middle"}
      />
    </Svg>
  );
}

function lengthRows(d: DrawingData) {
  return [
    {
      label: "Shoulder – waist – heel, mm",
      value: [d.shoulder, d.waist, d.heel].map((w) => plainNumber(w.widthMm, 1)).join(" – "),
    },
    { label: "Width at the mount line", value: mm(d.widthAtMountMm, 1) },
    { label: "Waist, from the tip", value: mm(d.waist.xMm) },
    {
      label: "Sidecut radius",
      value: `${numberText(d.sidecutRadiusM, 2)} m (one circle); S–H–W formula ${numberText(d.federationRadiusM, 2)} m`,
    },
    { label: "Projected length", value: mm(d.projectedLengthMm) },
  ];
}

function edgeRows(d: DrawingData) {
  return [
    { label: "Edge wrap", value: d.edge.wrap === "full" ? "full" : "partial" },
    {
      label: "Edge steel",
      value: d.edge.wrap === "full" ? `${mm(d.edge.lengthMm)} round each ski` : `2 × ${mm(d.edge.lengthMm)} each ski`,
    },
    {
      label: "Edge from – to",
      value:
        d.edge.wrap === "full"
          ? "all round"
          : `${numberText(d.edge.fromMm)} – ${numberText(d.edge.toMm)} mm from the tip`,
    },
    { label: "Base sheet", value: `this outline less ${plainNumber(d.edgeWidthMm, 1)} mm where steel runs` },
    { label: "Plan area", value: `${numberText(d.planAreaMm2 / 1e6, 4)} m² a ski` },
  ];
}

function windowText(w: DrawingData["windows"][number]): string {
  return `${plainNumber(w.fromMm)} to ${plainNumber(w.toMm)} mm from the tip, ${plainNumber(2 * w.halfWidthMm)} mm wide`;
}

function placeRows({ drawing: d }: BuildSheetData) {
  const offset = d.mountOffsetMm;
  const moved =
    offset === 0
      ? "the model's own"
      : `${plainNumber(Math.abs(offset))} mm ${offset > 0 ? "forward" : "back"} of the model's`;
  return [
    { label: "Mount line", value: `${mm(d.mountMm)} from the tip: ${moved}`, isOption: offset !== 0 },
    { label: "Mould camber", value: mm(d.mouldCamberMm, 1) },
    { label: "Finished camber", value: mm(d.camberMm, 1) },
    { label: "Tip, tail height", value: `${mm(d.tipRiseMm)}, ${mm(d.tailRiseMm)}` },
    ...(d.windows.length === 0
      ? []
      : [
          {
            label: "Clear windows",
            value: d.windows.map((w, i) => `${i + 1}: ${windowText(w)}`).join("; "),
            isOption: true,
          },
        ]),
    { label: "Corners", value: "shoulder and heel rounded R 150 on the machine file" },
  ];
}
