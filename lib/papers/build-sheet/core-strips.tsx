/** Which strip lies where, for each ski. */
import { Text, View } from "@react-pdf/renderer";
import { INK, PENCIL, THIN } from "#papers/parts/theme";
import { Table } from "../parts/table";
import type { BuildSheetData } from "./facts";

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
export function StripTables({ data }: { readonly data: BuildSheetData }) {
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
