/** The proof: both skis at scale with picture, outline, safe line and what the binding hides; to approve or send back. */
import { Defs, G, Image, Path, Rect, Svg, Text, View } from "@react-pdf/renderer";
import words from "#content/copy/papers.json";
import { skiOverPicture } from "#engine/scene";
import { fill } from "#engine/units";
import type { Paper, SkiSide } from "#papers/parts/facts";
import { MONO } from "#papers/parts/fonts";
import { clockText, dayText, mm, plainNumber, shortHash } from "#papers/parts/format";
import { HAIRLINE, INK, LARCH, PENCIL, pageBox, THIN, WHITE } from "#papers/parts/theme";
import { type AxisScale, axisScale, hatch, Label, mirroredOutline, polyline } from "../parts/drawing";
import { Frame } from "../parts/frame";
import { lyingAt, markElements } from "../parts/scene";
import { Rows, Section, WriteBox } from "../parts/table";
import type { ProofData } from "./compose";

const w = words.proof;

export function ProofPages({ data, paper }: { readonly data: ProofData; readonly paper: Paper }) {
  const { innerPt } = pageBox(paper, "landscape");
  const scale = axisScale(data.drawing.lengthMm, 20, innerPt - 28);
  return (
    <Frame
      paper={paper}
      orientation="landscape"
      kind={w.kind}
      part={fill(w.part, {
        draft: data.answer.state === "draft" ? w.draft : "",
        revision: data.stamp.revision,
        denominator: plainNumber(scale.denominator, 1),
      })}
      subject={data.serial}
      subjectNote={data.title}
      codeText={data.url}
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
      {places.map(({ side, axisY }) => (
        <Image
          key={side}
          src={data.pictures[side]}
          style={{ position: "absolute", ...box, top: axisY - half, objectFit: "fill" }}
        />
      ))}
      <Bodies places={places} widthPt={innerPt} heightPt={height} />
      <Svg
        width={innerPt}
        height={height}
        viewBox={`0 0 ${innerPt} ${height}`}
        style={{ position: "absolute", left: 0, top: 0 }}
      >
        {places.map(({ side, ...place }) => (
          <G key={side}>
            <Surround {...place} />
            <Marks {...place} />
            <Names {...place} side={side} />
          </G>
        ))}
      </Svg>
    </View>
  );
}

/** Walls, steel, wood and light, as the pages draw them, over the pictures and under every mark. */
function Bodies({
  places,
  widthPt,
  heightPt,
}: {
  readonly places: readonly SkiPlace[];
  readonly widthPt: number;
  readonly heightPt: number;
}) {
  const [first] = places;
  if (!first) return null;
  const { data, scale } = first;
  const ptPerMm = scale.len(1);
  const { drawn, kept } = markElements(skiOverPicture(data.look), { id: "body", hairlineMm: HAIRLINE / ptPerMm });
  return (
    <Svg
      width={widthPt}
      height={heightPt}
      viewBox={`0 0 ${widthPt} ${heightPt}`}
      style={{ position: "absolute", left: 0, top: 0 }}
    >
      <Defs>{kept}</Defs>
      {places.map(({ axisY }) => (
        <G key={axisY} transform={lyingAt(scale.x(0), axisY, ptPerMm)}>
          {drawn}
        </G>
      ))}
    </Svg>
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

/** White over a picture, so that the marks are seen on a dark one. */
const VEIL = 0.28;

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
      <Rect
        x={zone.x}
        y={axisY - zoneHalf}
        width={zone.width}
        height={2 * zoneHalf}
        fill={WHITE}
        fillOpacity={VEIL}
        stroke={PENCIL}
        strokeWidth={HAIRLINE}
        strokeDasharray="2 1.5"
      />
      <Path d={hatch(zone.x, axisY - zoneHalf, zone.width, 2 * zoneHalf, 6)} stroke={PENCIL} strokeWidth={HAIRLINE} />
      <Path
        d={mirroredOutline(inner, scale, axisY)}
        fill="none"
        stroke={WHITE}
        strokeOpacity={0.6}
        strokeWidth={2 * THIN}
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
            fill="none"
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

const LETTER = "#fffdf9";
const LETTER_EDGE = "#1b2023";
/**
 * Width of the dark edge around a letter over the type size. The skier's pages draw 0.06; up to here readers take the copies
 * for one word.
 */
const EDGE_SHARE = 0.045;

/** Light letters with a dark edge: the library strokes no text, so the edge is the letters again, all around. */
function Lettering(props: { readonly x: number; readonly y: number; readonly text: string; readonly size: number }) {
  const away = EDGE_SHARE * props.size;
  return (
    <G>
      {[0, 1, 2, 3, 4, 5, 6, 7].map((eighth) => {
        const angle = (eighth * Math.PI) / 4;
        const at = { x: props.x + away * Math.cos(angle), y: props.y + away * Math.sin(angle) };
        return <Label key={eighth} {...props} {...at} anchor="middle" bold colour={LETTER_EDGE} />;
      })}
      <Label {...props} anchor="middle" bold colour={LETTER} />
    </G>
  );
}

function Names({ data, scale, half, axisY, side }: SkiPlace & { readonly side: SkiSide }) {
  const { drawing, text } = data;
  const above = axisY - half - 4;
  const below = axisY + half + 9;
  const foot =
    side === "L" ? fill(w.leftFoot, { serial: data.leftSerial }) : fill(w.rightFoot, { serial: data.rightSerial });
  const hidden = plainNumber(drawing.bindingZone.toMm - drawing.bindingZone.fromMm);
  return (
    <G>
      {text ? (
        <Lettering
          x={scale.x(text.xMm)}
          y={axisY + scale.len(text.capHeightMm / 2)}
          text={text.transcript}
          size={scale.len(text.capHeightMm) / CAP_HEIGHT}
        />
      ) : null}
      <Label x={0} y={axisY + 5} text={side} size={14} bold />
      <Label x={scale.x(0) + 2} y={above} text={foot} size={7} />
      <Label
        x={scale.x(drawing.bindingZone.fromMm) + 3}
        y={above}
        text={fill(w.hidden, { lengthMm: hidden })}
        size={6.5}
        colour={PENCIL}
      />
      <Label
        x={scale.x(drawing.lengthMm) - 2}
        y={side === "R" ? below : above}
        anchor="end"
        text={w.insideEdge}
        size={6.5}
        colour={PENCIL}
      />
    </G>
  );
}

function facts(data: ProofData) {
  return [
    { label: w.layout, value: data.layout },
    { label: w.resolutionLabel, value: data.resolution },
    {
      label: w.text,
      value: data.text
        ? fill(w.textValue, { text: data.text.transcript, capHeightMm: mm(data.text.capHeightMm) })
        : w.noText,
    },
    {
      label: w.safeLine,
      value: fill(w.safeLineValue, { safeMm: mm(data.safeMm) }),
    },
    { label: w.bleed, value: fill(w.bleedValue, { bleedMm: mm(data.bleedSideMm) }) },
    { label: w.coloursLabel, value: fill(w.coloursValue, { profile: data.colourProfile }) },
    { label: w.print, value: data.mirrored },
    { label: w.sourceFile, value: data.sourceHash ? shortHash(data.sourceHash) : w.houseGraphic },
    ...(data.drawing.windows.length > 0
      ? [{ label: w.windows, value: fill(w.windowsValue, { count: data.drawing.windows.length }) }]
      : []),
  ];
}

function Answer({ data }: { readonly data: ProofData }) {
  const { answer, note } = data;
  return (
    <>
      {note === null ? null : (
        <Section title={w.note}>
          <Text>{note}</Text>
        </Section>
      )}
      {answer.state === "issued" ? <Ask answer={answer} /> : <Section title={w.answer}>{answered(answer)}</Section>}
      <Text style={{ fontFamily: MONO, fontSize: 7.5, marginTop: 4, color: PENCIL }}>
        L {data.leftSerial} · R {data.rightSerial}
      </Text>
    </>
  );
}

function answered(answer: Exclude<ProofData["answer"], { readonly state: "issued" }>) {
  if (answer.state === "draft") return <Text>{w.notSent}</Text>;
  const at = clockText(answer.at);
  if (answer.state === "approved")
    return <Text>{answer.by ? fill(w.approvedBy, { by: answer.by, at }) : fill(w.approved, { at })}</Text>;
  return <Text>{fill(w.changesAsked, { at, note: answer.note })}</Text>;
}

function Ask({ answer }: { readonly answer: Extract<ProofData["answer"], { readonly state: "issued" }> }) {
  return (
    <Section title={w.ask} note={answer.answerBy ? fill(w.askBy, { day: dayText(answer.answerBy) }) : ""}>
      <Text style={{ marginBottom: 4 }}>{answer.ifLate}</Text>
      <Text style={{ marginBottom: 4 }}>{w.approving}</Text>
      <View style={{ flexDirection: "row" }}>
        {[w.approveHint, w.changesHint, w.dateHint].map((hint) => (
          <View key={hint} style={{ flexGrow: 1, flexBasis: 0, marginRight: 6 }}>
            <WriteBox height={30} hint={hint} />
          </View>
        ))}
      </View>
    </Section>
  );
}
