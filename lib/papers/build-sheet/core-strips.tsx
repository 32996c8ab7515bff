/** Which strip lies where, for each ski. */
import { Text, View } from "@react-pdf/renderer";
import words from "#content/copy/papers.json";
import { fill } from "#engine/units";
import { INK, PENCIL, THIN } from "#papers/parts/theme";
import { Table } from "../parts/table";
import type { BuildSheetData } from "./printed";

const w = words.buildSheet.strips;

const STRIP_COLUMNS = [
  { title: w.place, flex: 1.15 },
  { title: w.species, flex: 1.3 },
  { title: w.strip, flex: 1.1, mono: true },
  { title: w.bin, flex: 1.2, mono: true },
  { title: w.board, flex: 0.8, mono: true },
  { title: w.modulus, flex: 0.8, mono: true, align: "right" as const },
  { title: w.density, flex: 0.8, mono: true, align: "right" as const },
  { title: w.seen, flex: 0.5 },
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
              {side === "left"
                ? fill(w.left, { serial: pair.leftSerial })
                : fill(w.right, { serial: pair.rightSerial })}
              <Text style={{ fontSize: 7, fontWeight: 400, color: PENCIL }}>
                {strips.areAllocated ? w.seenFromTail : w.notAllocated}
                {strips.rest}
              </Text>
            </Text>
            <Table
              columns={STRIP_COLUMNS}
              size={7.5}
              tight
              rows={strips[side].map((s) => ({
                key: `${s.position}${s.place}`,
                cells: [
                  fill(w.placeValue, { position: s.position, place: w.places[s.place] }),
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
