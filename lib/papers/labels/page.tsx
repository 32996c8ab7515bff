/** Labels for the joins where left and right could be taken for each other. Cut along the hairlines. */
import { Text, View } from "@react-pdf/renderer";
import words from "#content/copy/papers.json";
import { type CautionLabel, cautionLabels } from "#engine/floor";
import { fill } from "#engine/units";
import type { Paper, SkiSide } from "#papers/parts/facts";
import { MONO } from "#papers/parts/fonts";
import { HAIRLINE, INK, PENCIL, PT_PER_MM } from "#papers/parts/theme";
import { skiUrl } from "../build-sheet/cover";
import { CautionLines, Cautions } from "../parts/cautions";
import { Code } from "../parts/code";
import { Frame } from "../parts/frame";
import type { LabelsData } from "./compose";

const w = words.labels;

const PLACES = {
  "strip-bundle": w.stripBundle,
  core: w.core,
  base: w.base,
  print: w.print,
  cassette: w.cassette,
  "finished-ski": w.finishedSki,
} as const satisfies Readonly<Record<CautionLabel, string>>;
const LABEL_HEIGHT_MM = 33;

export function LabelsPages({ data, paper }: { readonly data: LabelsData; readonly paper: Paper }) {
  return (
    <Frame
      paper={paper}
      kind={w.kind}
      part={w.note}
      subject={data.pair.number}
      subjectNote={data.title}
      shop={data.shop}
      stamp={data.stamp}
      voidsOlder
    >
      <View style={{ flexDirection: "row", flexWrap: "wrap" }}>
        {cautionLabels.flatMap((place) =>
          (["L", "R"] as const).map((side) => <OneLabel key={place + side} place={place} side={side} data={data} />),
        )}
      </View>
      <Cautions cautions={data.cautions} />
    </Frame>
  );
}

function OneLabel({
  place,
  side,
  data,
}: {
  readonly place: CautionLabel;
  readonly side: SkiSide;
  readonly data: LabelsData;
}) {
  const serial = side === "L" ? data.pair.leftSerial : data.pair.rightSerial;
  return (
    <View
      style={{
        width: "50%",
        height: LABEL_HEIGHT_MM * PT_PER_MM,
        flexDirection: "row",
        alignItems: "center",
        padding: 6,
        borderWidth: HAIRLINE,
        borderColor: PENCIL,
      }}
      wrap={false}
    >
      <Code text={skiUrl(data.pair.pageUrl, side)} sidePt={27 * PT_PER_MM} />
      <View style={{ marginLeft: 6, flexGrow: 1 }}>
        <View style={{ flexDirection: "row", alignItems: "center" }}>
          <LetterBlock side={side} />
          <View style={{ marginLeft: 6 }}>
            <Text style={{ fontSize: 10, fontWeight: 600, lineHeight: 1.2 }}>{PLACES[place]}</Text>
            <Text style={{ fontFamily: MONO, fontSize: 10.5, fontWeight: 600, lineHeight: 1.2 }}>{serial}</Text>
          </View>
        </View>
        <Text style={{ fontSize: 8, lineHeight: 1.3, marginTop: 3 }}>{data.title}</Text>
        <Text style={{ fontSize: 8, lineHeight: 1.3 }}>
          {fill(w.foot, { mould: data.mould, revision: data.stamp.revision })}
        </Text>
        <CautionLines lines={data.labelCautions[place]} size={6.5} />
      </View>
    </View>
  );
}

/** L is dark on light, R light on dark: told apart across the room and on any printer. */
function LetterBlock({ side }: { readonly side: SkiSide }) {
  const isLeft = side === "L";
  return (
    <View
      style={{
        width: 30,
        height: 30,
        borderWidth: 1.4,
        borderColor: INK,
        backgroundColor: isLeft ? "#FFFFFF" : INK,
        alignItems: "center",
        justifyContent: "center",
      }}
    >
      <Text style={{ fontSize: 22, fontWeight: 600, lineHeight: 1.1, color: isLeft ? INK : "#FFFFFF" }}>{side}</Text>
    </View>
  );
}
