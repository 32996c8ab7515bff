/** The proof: both skis at scale with picture, outline, safe line and what the binding hides; to approve or send back. */
import { G, Image, Path, Rect, Svg, Text, View } from "@react-pdf/renderer";
import { MONO } from "./fonts";
import { dayText, mm, plainNumber, shortHash } from "./format";
import { type AxisScale, axisScale, hatch, Label, mirroredOutline, polyline } from "./parts/drawing";
import { Frame } from "./parts/frame";
import { Rows, Section, WriteBox } from "./parts/table";
import { HAIRLINE, INK, LARCH, PENCIL, pageBox, THIN, WHITE } from "./parts/theme";
import type { Paper, ProofData, SkiSide } from "./types";

export function ProofPages({ data, paper }: { readonly data: ProofData; readonly paper: Paper }) {
  const { innerPt } = pageBox(paper, "landscape");
  const scale = axisScale(data.drawing.lengthMm, 20, innerPt - 28);
  return (
    <Frame
      paper={paper}
      orientation="landscape"
      kind="Proof"
      part={`revision ${data.stamp.revision}: seen from above, tip to the left, 1 : ${plainNumber(scale.denominator, 1)}`}
      subject={data.pair.number}
      subjectNote={data.title}
      codeText={data.pair.pageUrl}
      shop={data.shop}
      stamp={data.stamp}
    >
      <BothSkis data={data} scale={scale} innerPt={innerPt} />
      <View style={{ flexDirection: "row", marginTop: 6 }}>
        <View style={{ flexGrow: 1.1, flexBasis: 0, marginRight: 16 }}>
          <Rows rows={facts(data)} labelWidth={92} size={8} />
        </View>
        <View style={{ flexGrow: 1, flexBasis: 0 }}>
          <Answer data={data} />
        </View>
      </View>
    </Frame>
  );
}

/** Seen from above with the tips to the left, the right ski lies above the left one: inside edges face each other. */
const ORDER = ["R", "L"] as const;

interface SkiPlace {
  readonly data: ProofData;
  readonly scale: AxisScale;
  readonly half: number;
  readonly axisY: number;
}

function BothSkis({
  data,
  scale,
  innerPt,
}: {
  readonly data: ProofData;
  readonly scale: AxisScale;
  readonly innerPt: number;
}) {
  const { drawing } = data;
  const half = scale.len(Math.max(drawing.shoulder.widthMm, drawing.heel.widthMm) / 2);
  const rowPt = 2 * half + 30;
  const height = 2 * rowPt;
  const places = ORDER.map((side, index) => ({ side, data, scale, half, axisY: index * rowPt + half + 14 }));
  const box = { left: scale.x(0), width: scale.len(drawing.lengthMm), height: 2 * half };
  return (
    <View style={{ width: innerPt, height }}>
      {places.map(({ side, axisY }) => {
        const picture = data.pictures[side];
        if (!picture) return null;
        return (
          <Image
            key={side}
            src={picture}
            style={{ position: "absolute", ...box, top: axisY - half, objectFit: "fill" }}
          />
        );
      })}
      <Svg
        width={innerPt}
        height={height}
        viewBox={`0 0 ${innerPt} ${height}`}
        style={{ position: "absolute", left: 0, top: 0 }}
      >
        {places.map(({ side, ...place }) => (
          <G key={side}>
            {data.pictures[side] ? <Surround {...place} /> : null}
            <Marks {...place} />
            <Names {...place} side={side} />
          </G>
        ))}
      </Svg>
    </View>
  );
}

/** White paper over everything of the picture that lies outside the ski: above the one edge and below the other. */
function Surround({ data, scale, half, axisY }: SkiPlace) {
  return (
    <G>
      {[1, -1].map((side) => {
        const edge = data.drawing.outline.map((p) => ({ x: scale.x(p.x), y: axisY - side * scale.len(p.y) }));
        const far = axisY - side * (half + 1);
        const [left, right] = [scale.x(0) - 1, scale.x(data.drawing.lengthMm) + 1];
        const around = [
          { x: left, y: axisY },
          ...edge,
          { x: right, y: axisY },
          { x: right, y: far },
          { x: left, y: far },
        ];
        return <Path key={side} d={`${polyline(around)}Z`} fill={WHITE} />;
      })}
    </G>
  );
}

/** Outline, safe line, binding zone and windows. */
function Marks({ data, scale, axisY }: SkiPlace) {
  const { drawing } = data;
  const zone = {
    x: scale.x(drawing.bindingZone.fromMm),
    width: scale.len(drawing.bindingZone.toMm - drawing.bindingZone.fromMm),
  };
  const zoneHalf = scale.len(drawing.waist.widthMm / 2);
  const inner = drawing.outline.filter((p) => p.y > data.safeMm).map((p) => ({ x: p.x, y: p.y - data.safeMm }));
  return (
    <G>
      <Path d={hatch(zone.x, axisY - zoneHalf, zone.width, 2 * zoneHalf, 6)} stroke={PENCIL} strokeWidth={HAIRLINE} />
      <Rect
        x={zone.x}
        y={axisY - zoneHalf}
        width={zone.width}
        height={2 * zoneHalf}
        fill="none"
        stroke={PENCIL}
        strokeWidth={HAIRLINE}
        strokeDasharray="2 1.5"
      />
      <Path
        d={mirroredOutline(inner, scale, axisY)}
        fill="none"
        stroke={LARCH}
        strokeWidth={THIN}
        strokeDasharray="3 1.5"
      />
      <Path d={mirroredOutline(drawing.outline, scale, axisY)} fill="none" stroke={INK} strokeWidth={1} />
      {drawing.windows.map((w) => {
        const h = scale.len(w.halfWidthMm);
        return (
          <Rect
            key={w.fromMm}
            x={scale.x(w.fromMm)}
            y={axisY - h}
            width={scale.len(w.toMm - w.fromMm)}
            height={2 * h}
            fill={WHITE}
            stroke={INK}
            strokeWidth={THIN}
          />
        );
      })}
    </G>
  );
}

/** Cap height of the text face over its size (IBM Plex Sans: 698 of 1000 units). */
const CAP_HEIGHT = 0.698;

function Names({ data, scale, half, axisY, side }: SkiPlace & { readonly side: SkiSide }) {
  const { drawing, text, pair } = data;
  const above = axisY - half - 4;
  const below = axisY + half + 9;
  const foot = side === "L" ? `left foot · ${pair.leftSerial}` : `right foot · ${pair.rightSerial}`;
  const hidden = plainNumber(drawing.bindingZone.toMm - drawing.bindingZone.fromMm);
  return (
    <G>
      {text ? (
        <Label
          x={scale.x(text.xMm)}
          y={axisY + scale.len(text.capHeightMm / 2)}
          text={text.transcript}
          size={scale.len(text.capHeightMm) / CAP_HEIGHT}
          anchor="middle"
          bold
        />
      ) : null}
      <Label x={0} y={axisY + 5} text={side} size={14} bold />
      <Label x={scale.x(0) + 2} y={above} text={foot} size={7} />
      <Label
        x={scale.x(drawing.bindingZone.fromMm) + 3}
        y={above}
        text={`hidden by boot and binding, ${hidden} mm`}
        size={6.5}
        colour={PENCIL}
      />
      <Label
        x={scale.x(drawing.lengthMm) - 2}
        y={side === "R" ? below : above}
        anchor="end"
        text="inside edge"
        size={6.5}
        colour={PENCIL}
      />
    </G>
  );
}

function facts(data: ProofData) {
  return [
    { label: "Layout", value: data.layout },
    { label: "Resolution", value: `${data.dpi}: ${data.dpiVerdict}` },
    {
      label: "Text, letter by letter",
      value: data.text ? `“${data.text.transcript}”, cap height ${mm(data.text.capHeightMm)}` : "no text",
    },
    {
      label: "Safe line (dashed)",
      value: `${mm(data.safeMm)} inside the edge: nothing that must be seen lies beyond it`,
    },
    { label: "Bleed", value: `${mm(data.bleedSideMm)} at the sides, ${mm(data.bleedEndMm)} at tip and tail` },
    { label: "Colours", value: `${data.colourProfile}; close, not exact` },
    { label: "Print", value: data.mirrored },
    { label: "Source file", value: data.sourceHash ? shortHash(data.sourceHash) : "house graphic" },
    ...(data.drawing.windows.length > 0
      ? [{ label: "Windows", value: `${data.drawing.windows.length} clear, showing the wood` }]
      : []),
  ];
}

function Answer({ data }: { readonly data: ProofData }) {
  return (
    <Section title="Your answer" note={data.answerBy ? `please by ${dayText(data.answerBy)}` : ""}>
      <Text style={{ marginBottom: 4 }}>{data.effectOfLateAnswer}</Text>
      <Text style={{ marginBottom: 4 }}>
        Approving means that you have read the text letter by letter and looked at both skis. Scan the code to approve
        or to ask for changes; or sign here.
      </Text>
      <View style={{ flexDirection: "row" }}>
        {["Approve as drawn: name", "Ask for changes: which", "Date"].map((hint) => (
          <View key={hint} style={{ flexGrow: 1, flexBasis: 0, marginRight: 6 }}>
            <WriteBox height={30} hint={hint} />
          </View>
        ))}
      </View>
      <Text style={{ fontFamily: MONO, fontSize: 7.5, marginTop: 4, color: PENCIL }}>
        L {data.pair.leftSerial} · R {data.pair.rightSerial}
      </Text>
    </Section>
  );
}
