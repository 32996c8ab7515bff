/** The kit list of one pair: a kit is complete when every line of this configuration is scanned. */
import { Text, View } from "@react-pdf/renderer";
import words from "#content/copy/papers.json";
import { fill } from "#engine/units";
import type { Paper } from "#papers/parts/facts";
import { MONO } from "#papers/parts/fonts";
import { INK, PENCIL, pageBox, THIN } from "#papers/parts/theme";
import { partCell } from "../build-sheet/cut-list";
import { Cautions } from "../parts/cautions";
import { Frame } from "../parts/frame";
import { Rows, Section, Table, WriteBox } from "../parts/table";
import type { KitListData, KitRow } from "./compose";

const w = words.kitList;

const COLUMNS = [
  { title: "#", flex: 0.3, mono: true },
  { title: w.part, flex: 2.1 },
  { title: w.material, flex: 2.3 },
  { title: w.cutSize, flex: 3.5 },
  { title: "L", flex: 0.4, align: "right" as const, mono: true },
  { title: "R", flex: 0.4, align: "right" as const, mono: true },
  { title: w.pair, flex: 0.6, align: "right" as const, mono: true },
  { title: w.lot, flex: 1, mono: true, gapBefore: 8 },
  { title: w.place, flex: 0.9 },
  { title: w.substitution, flex: 1.3 },
  { title: w.scanLeft, flex: 0.5, align: "center" as const },
  { title: w.scanRight, flex: 0.5, align: "center" as const },
];

export function KitListPages({ data, paper }: { readonly data: KitListData; readonly paper: Paper }) {
  const { widthPt } = pageBox(paper, "landscape");
  return (
    <Frame
      paper={paper}
      orientation="landscape"
      kind={w.kind}
      part={fill(w.note, { count: data.count })}
      subject={data.pair.number}
      subjectNote={data.title}
      codeText={data.pair.pageUrl}
      shop={data.shop}
      stamp={data.stamp}
      voidsOlder
    >
      <View style={{ flexDirection: "row", marginBottom: 4, fontSize: 8.5 }}>
        {[
          ...data.identity,
          { label: "L", value: data.pair.leftSerial },
          { label: "R", value: data.pair.rightSerial },
        ].map((row) => (
          <Text key={row.label} style={{ marginRight: 18 }}>
            <Text style={{ color: PENCIL }}>{row.label} </Text>
            <Text style={{ fontFamily: MONO, fontWeight: 600 }}>{row.value}</Text>
          </Text>
        ))}
      </View>
      <Table
        columns={COLUMNS}
        size={7.2}
        tight
        height={12.5}
        rows={data.rows.map((row) => ({ key: row.code + row.line, isStrong: row.isOption, cells: cells(row) }))}
      />
      <View style={{ flexDirection: "row", marginTop: 8 }} wrap={false}>
        <View style={{ width: widthPt * 0.45 }}>
          <Section title={w.resinForThisPair}>
            <Rows rows={data.resin} labelWidth={76} size={8} />
          </Section>
        </View>
        <View style={{ flexGrow: 1, flexBasis: 0, marginLeft: 16 }}>
          <Text style={{ fontSize: 9.5, fontWeight: 600, marginBottom: 2 }}>{w.complete}</Text>
          <Text style={{ fontSize: 7.5, color: PENCIL, marginBottom: 3 }}>{w.completeNote}</Text>
          <View style={{ flexDirection: "row" }}>
            {[w.kittedBy, w.checkedBy, w.dateTime].map((hint) => (
              <View key={hint} style={{ flexGrow: 1, flexBasis: 0, marginRight: 6 }}>
                <WriteBox height={24} hint={hint} />
              </View>
            ))}
          </View>
        </View>
      </View>
      <Cautions cautions={data.cautions} />
    </Frame>
  );
}

function cells(row: KitRow) {
  const scans =
    row.pair !== "" ? [scanBox(row, true), ""] : [scanBox(row, row.left !== ""), scanBox(row, row.right !== "")];
  return [
    String(row.line),
    partCell(row),
    row.material,
    row.cut,
    row.left,
    row.right,
    row.pair,
    row.lot,
    row.location,
    row.substitution,
    ...scans,
  ];
}

function scanBox(row: KitRow, isNeeded: boolean) {
  if (!isNeeded) return "";
  return (
    <View
      style={{
        alignSelf: "center",
        width: 10,
        height: 10,
        borderWidth: row.isMandatory ? 1.4 : THIN,
        borderColor: INK,
      }}
    />
  );
}
