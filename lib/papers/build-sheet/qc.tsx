/** Last page: tuning, targets with boxes for both skis, the class ordered beside the class measured, and the verdict. */
import { Text, View } from "@react-pdf/renderer";
import type { StationFact } from "#papers/parts/facts";
import { INK, PENCIL, THIN } from "#papers/parts/theme";
import { Rows, Section, Table, WriteBox } from "../parts/table";
import type { BuildSheetData } from "./facts";

const stationWord = ({ number }: StationFact) => `station ${number}`;

const COLUMNS = [
  { title: "Measure", flex: 1.5 },
  { title: "How", flex: 1.9 },
  { title: "Target (band)", flex: 2.3, mono: true },
  { title: "Limit to target", flex: 1.35 },
  { title: "L measured", flex: 1.15 },
  { title: "R measured", flex: 1.15 },
  { title: "Twins apart, at most", flex: 1.0 },
];

export function QualityCheck({ data }: { readonly data: BuildSheetData }) {
  return (
    <View>
      <View style={{ flexDirection: "row" }}>
        <View style={{ flexGrow: 1.1, flexBasis: 0, marginRight: 14 }}>
          <Section
            title="Tune"
            note={data.stations
              .filter(({ role }) => role === "finish")
              .map(stationWord)
              .join(", ")}
          >
            <Rows rows={data.finish} labelWidth={62} size={8} />
          </Section>
        </View>
        <View style={{ flexGrow: 1, flexBasis: 0 }}>
          <Section title="Class" note="ordered beside measured">
            <OrderedBesideMeasured data={data} />
            <Rows rows={data.classBands} labelWidth={84} size={8} />
          </Section>
        </View>
      </View>
      <Section
        title="Measured against the target"
        note={`${data.stations
          .filter(({ role }) => role === "check")
          .map(stationWord)
          .join(", ")}; at 20 °C, a day after waxing; write numbers, not ticks`}
        keep={false}
      >
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
        {["Verdict: A / note / B / rebuild L / rebuild R", "Inspector", "Second", "Date"].map((hint, i) => (
          <View key={hint} style={{ flexGrow: i === 0 ? 2 : 1, flexBasis: 0, marginRight: i === 3 ? 0 : 6 }}>
            <WriteBox height={24} hint={hint} />
          </View>
        ))}
      </View>
      <Text style={{ fontSize: 7.5, color: PENCIL, marginTop: 4 }}>
        A twin limit missed: stop, tell the owner. Accept with owner and customer note, match with an open pair of the
        same specification, rebuild one ski, or B-grade. Bindings are mounted, set and inspected by a certified
        technician following ISO 11088; nothing of that is done or noted here.
      </Text>
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
        <Text style={{ fontSize: 6.5, color: PENCIL, lineHeight: 1.1 }}>ordered</Text>
        <Text style={{ fontSize: 9.5, fontWeight: 600 }}>{data.orderedClass}</Text>
      </View>
      <View style={{ flexGrow: 1, flexBasis: 0 }}>
        <WriteBox height={27} hint="measured: class, N/cm L and R" />
      </View>
    </View>
  );
}
