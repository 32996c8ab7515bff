/** Last page: tuning, targets with boxes for both skis, the class ordered beside the class measured, and the verdict. */
import { Text, View } from "@react-pdf/renderer";
import words from "#content/copy/papers.json";
import { type StationRole, stationsFor } from "#engine/floor";
import { fill } from "#engine/units";
import { INK, PENCIL, THIN } from "#papers/parts/theme";
import { Rows, Section, Table, WriteBox } from "../parts/table";
import type { BuildSheetData } from "./printed";

const w = words.buildSheet.check;

/** The stations that do one thing, by the number people know them by. */
function stationsOf({ stations }: BuildSheetData, role: StationRole): string {
  return stationsFor(stations, role)
    .map(({ number }) => fill(w.stationNumber, { number }))
    .join(", ");
}

const COLUMNS = [
  { title: w.measure, flex: 1.5 },
  { title: w.how, flex: 1.9 },
  { title: w.target, flex: 2.3, mono: true },
  { title: w.toTarget, flex: 1.35 },
  { title: w.leftMeasured, flex: 1.15 },
  { title: w.rightMeasured, flex: 1.15 },
  { title: w.twins, flex: 1.0 },
];

export function QualityCheck({ data }: { readonly data: BuildSheetData }) {
  return (
    <View>
      <View style={{ flexDirection: "row" }}>
        <View style={{ flexGrow: 1.1, flexBasis: 0, marginRight: 14 }}>
          <Section title={w.tune} note={stationsOf(data, "finish")}>
            <Rows rows={data.finish} labelWidth={62} size={8} />
          </Section>
        </View>
        <View style={{ flexGrow: 1, flexBasis: 0 }}>
          <Section title={w.class} note={w.classNote}>
            <OrderedBesideMeasured data={data} />
            <Rows rows={data.classBands} labelWidth={84} size={8} />
          </Section>
        </View>
      </View>
      <Section title={w.measured} note={fill(w.measuredNote, { stations: stationsOf(data, "check") })} keep={false}>
        <Table
          columns={COLUMNS}
          size={7.5}
          height={19}
          rows={data.qc.map((row) => ({
            key: row.measure,
            cells: [row.measure, row.method, row.target, row.toTarget, <Box key="L" />, <Box key="R" />, row.twins],
          }))}
        />
      </Section>
      <View style={{ flexDirection: "row" }} wrap={false}>
        {[w.verdict, w.inspector, w.second, w.date].map((hint, i) => (
          <View key={hint} style={{ flexGrow: i === 0 ? 2 : 1, flexBasis: 0, marginRight: i === 3 ? 0 : 6 }}>
            <WriteBox height={24} hint={hint} />
          </View>
        ))}
      </View>
      <Text style={{ fontSize: 7.5, color: PENCIL, marginTop: 4 }}>{w.note}</Text>
    </View>
  );
}

function Box() {
  return <View style={{ height: 15, borderWidth: THIN, borderColor: INK }} />;
}

function OrderedBesideMeasured({ data }: { readonly data: BuildSheetData }) {
  return (
    <View style={{ flexDirection: "row", marginBottom: 3 }}>
      <View style={{ flexGrow: 1.3, flexBasis: 0, borderWidth: 1.1, borderColor: INK, padding: 3, marginRight: 5 }}>
        <Text style={{ fontSize: 6.5, color: PENCIL, lineHeight: 1.1 }}>{w.ordered}</Text>
        <Text style={{ fontSize: 9.5, fontWeight: 600 }}>{data.orderedClass}</Text>
      </View>
      <View style={{ flexGrow: 1, flexBasis: 0 }}>
        <WriteBox height={27} hint={w.classMeasured} />
      </View>
    </View>
  );
}
