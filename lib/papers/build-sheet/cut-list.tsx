/** Everything that is cut to a size for this pair, in the order of the shop's list. */
import { Text, View } from "@react-pdf/renderer";
import words from "#content/copy/papers.json";
import type { CutRow } from "#papers/parts/facts";
import { INK, THIN } from "#papers/parts/theme";
import { OptionTag, Section, Table } from "../parts/table";
import type { BuildSheetData } from "./printed";

const w = words.buildSheet.cutList;

const COLUMNS = [
  { title: "#", flex: 0.3, mono: true },
  { title: w.part, flex: 1.7 },
  { title: w.material, flex: 1.9 },
  { title: w.cutTo, flex: 2.9 },
  { title: "L", flex: 0.45, align: "right" as const, mono: true },
  { title: "R", flex: 0.45, align: "right" as const, mono: true },
  { title: w.pair, flex: 0.6, align: "right" as const, mono: true },
  { title: w.cut, flex: 0.3 },
];

export function CutList({ data }: { readonly data: BuildSheetData }) {
  return (
    <Section title={w.title} note={w.note} keep={false}>
      <Table
        columns={COLUMNS}
        size={7.5}
        rows={data.cuts.map((row) => ({
          key: String(row.line) + row.part,
          isStrong: row.isOption,
          cells: [
            String(row.line),
            partCell(row),
            row.material,
            row.cut,
            row.left,
            row.right,
            row.pair,
            <View key="tick" style={{ width: 9, height: 9, borderWidth: THIN, borderColor: INK, marginLeft: 4 }} />,
          ],
        }))}
      />
    </Section>
  );
}

export function partCell(row: CutRow) {
  if (!row.isOption) return row.part;
  return (
    <View key="part" style={{ flexDirection: "row", flexWrap: "wrap", alignItems: "center" }}>
      <Text style={{ fontSize: 7.5, fontWeight: 600, marginRight: 3 }}>{row.part}</Text>
      <OptionTag />
    </View>
  );
}
