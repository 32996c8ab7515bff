/** First page: which pair, by when, what is different about it, bases and graphic, and room for what went otherwise. */
import { Path, Svg, Text, View } from "@react-pdf/renderer";
import words from "#content/copy/papers.json";
import { fill } from "#engine/units";
import type { PairFacts, SkiSide } from "#papers/parts/facts";
import { MONO } from "#papers/parts/fonts";
import { dayText } from "#papers/parts/format";
import { HAIRLINE, INK, PENCIL, PT_PER_MM, THIN } from "#papers/parts/theme";
import { Code } from "../parts/code";
import { axisScale, Label, mirroredOutline } from "../parts/drawing";
import { OptionTag, Rows, Section, WriteBox } from "../parts/table";
import type { BuildSheetData } from "./printed";

const w = words.buildSheet.cover;

const PROMISE: Readonly<Record<PairFacts["promiseClass"], string>> = {
  estimate: w.estimate,
  promise: w.promise,
  "hard-date": w.hardDate,
};

export function Cover({ data, innerPt }: { readonly data: BuildSheetData; readonly innerPt: number }) {
  const half = (innerPt - 14) / 2;
  return (
    <View>
      <View style={{ flexDirection: "row", marginBottom: 8 }}>
        <View style={{ width: half, marginRight: 14 }}>
          <Rows rows={data.identity} labelWidth={70} />
        </View>
        <View style={{ width: half }}>
          <Dates pair={data.pair} />
          <View style={{ flexDirection: "row", marginTop: 6 }}>
            <SkiIdentity side="L" data={data} width={(half - 6) / 2} />
            <View style={{ width: 6 }} />
            <SkiIdentity side="R" data={data} width={(half - 6) / 2} />
          </View>
        </View>
      </View>
      <Options data={data} />
      <Section title={w.bases} note={w.basesNote}>
        <BaseMap data={data} innerPt={innerPt} />
      </Section>
      <Section title={w.graphicAndPrint}>
        <Rows rows={data.graphic} />
      </Section>
      <Section title={w.notes}>
        {data.notes.length === 0 ? (
          <Text style={{ color: PENCIL }}>{w.none}</Text>
        ) : (
          data.notes.map((n) => <Text key={n}>· {n}</Text>)
        )}
      </Section>
      <Section title={w.deviations} note={w.deviationsNote} gap={6}>
        <View style={{ borderWidth: THIN, borderColor: INK, height: 120 }} />
      </Section>
      <View style={{ flexDirection: "row" }} wrap={false}>
        {[w.releasedBy, w.date, w.olderPrintsVoidedBy].map((hint) => (
          <View key={hint} style={{ flexGrow: 1, flexBasis: 0, marginRight: 6 }}>
            <WriteBox height={22} hint={hint} />
          </View>
        ))}
      </View>
    </View>
  );
}

function Dates({ pair }: { readonly pair: PairFacts }) {
  const cells = [
    [w.pressBy, pair.pressBy ? dayText(pair.pressBy) : w.notPlannedYet],
    [w.readyBy, pair.readyBy ? dayText(pair.readyBy) : w.notPlannedYet],
    [w.promiseClass, PROMISE[pair.promiseClass]],
  ] as const;
  return (
    <View style={{ flexDirection: "row", borderWidth: 1.1, borderColor: INK }}>
      {cells.map(([label, value], index) => (
        <View
          key={label}
          style={{
            flexGrow: 1,
            flexBasis: 0,
            padding: 4,
            borderLeftWidth: index === 0 ? 0 : HAIRLINE,
            borderLeftColor: INK,
          }}
        >
          <Text style={{ fontSize: 7, color: PENCIL }}>{label}</Text>
          <Text style={{ fontSize: 9.8, fontWeight: 600 }}>{value}</Text>
        </View>
      ))}
    </View>
  );
}

/** The ski's letter, serial and code: the code opens the pair's page at this ski. */
function SkiIdentity({
  side,
  data,
  width,
}: {
  readonly side: SkiSide;
  readonly data: BuildSheetData;
  readonly width: number;
}) {
  const serial = side === "L" ? data.pair.leftSerial : data.pair.rightSerial;
  return (
    <View
      style={{ width, borderWidth: THIN, borderColor: INK, padding: 4, flexDirection: "row", alignItems: "center" }}
    >
      <Code text={skiUrl(data.pair.pageUrl, side)} sidePt={19 * PT_PER_MM} />
      <View style={{ marginLeft: 2 }}>
        <Text style={{ fontSize: 20, fontWeight: 600, lineHeight: 1.3 }}>{side}</Text>
        <Text style={{ fontSize: 7, color: PENCIL }}>{side === "L" ? w.leftSki : w.rightSki}</Text>
        <Text style={{ fontFamily: MONO, fontSize: 7.5, fontWeight: 600 }}>{serial}</Text>
      </View>
    </View>
  );
}

/** The address of one ski's own page: the pair's, with the side as one more parameter. */
export function skiUrl(pageUrl: string, side: SkiSide): string {
  return `${pageUrl}${pageUrl.includes("?") ? "&" : "?"}ski=${side}`;
}

function Options({ data }: { readonly data: BuildSheetData }) {
  return (
    <View style={{ borderWidth: 1.1, borderColor: INK, padding: 5, marginBottom: 8 }} wrap={false}>
      <View style={{ flexDirection: "row", alignItems: "center", marginBottom: data.options.length ? 2 : 0 }}>
        <OptionTag text={data.options.length === 0 ? w.noOptionsTag : w.optionsTag} />
        <Text style={{ marginLeft: 5, fontSize: 7.5, color: PENCIL }}>
          {data.options.length === 0 ? w.noOptions : w.optionsNote}
        </Text>
      </View>
      {data.options.map((option) => (
        <Text key={option} style={{ fontSize: 9, fontWeight: 600 }}>
          · {option}
        </Text>
      ))}
    </View>
  );
}

/** Both bases at one scale, filled with their colour lightly enough to read on a black-and-white print. */
function BaseMap({ data, innerPt }: { readonly data: BuildSheetData; readonly innerPt: number }) {
  const labelPt = 14;
  const scale = axisScale(data.drawing.lengthMm, labelPt, innerPt - labelPt);
  const half = scale.len(Math.max(data.drawing.shoulder.widthMm, data.drawing.heel.widthMm) / 2);
  const rowPt = 2 * half + 15;
  return (
    <Svg width={innerPt} height={2 * rowPt} viewBox={`0 0 ${innerPt} ${2 * rowPt}`}>
      {data.bases.map((base, index) => {
        const axisY = index * rowPt + half + 2;
        return [
          <Path
            key={`${base.ski}-shape`}
            d={mirroredOutline(data.drawing.outline, scale, axisY)}
            fill={base.hex}
            fillOpacity={0.22}
            stroke={INK}
            strokeWidth={THIN}
          />,
          <Label key={`${base.ski}-letter`} x={0} y={axisY + 5} text={base.ski} size={14} bold />,
          <Label
            key={`${base.ski}-words`}
            x={scale.x(0) + 24}
            y={axisY + 3}
            text={fill(w.baseName, { colour: base.colour })}
            size={9}
            bold
          />,
          <Label
            key={`${base.ski}-inlay`}
            x={scale.x(0) + 4}
            y={axisY + half + 8.5}
            text={fill(w.inlayLine, { ski: base.ski, colour: base.colour, inlay: base.inlay })}
            size={7.5}
          />,
        ];
      })}
    </Svg>
  );
}
