/** Every station: who did what when, with the second signature where one is owed and the cautions beside the work. */
import { Text, View } from "@react-pdf/renderer";
import words from "#content/copy/papers.json";
import { fill } from "#engine/units";
import type { StationFact } from "#papers/parts/facts";
import { MONO } from "#papers/parts/fonts";
import { HAIRLINE, INK, PENCIL, RULE, THIN, TINT } from "#papers/parts/theme";
import { CautionLines } from "../parts/cautions";
import type { BuildSheetData } from "./printed";

const w = words.buildSheet.stations;

const WIDTHS = { number: 20, times: 36, sign: 44, tick: 15, notes: 60 };

export function StationTable({ data }: { readonly data: BuildSheetData }) {
  return (
    <View>
      <Text style={{ fontSize: 7.5, color: PENCIL, marginBottom: 3 }}>{w.note}</Text>
      <View
        style={{
          flexDirection: "row",
          borderTopWidth: THIN,
          borderBottomWidth: THIN,
          borderColor: INK,
          paddingVertical: 1,
        }}
      >
        <Head text="" width={WIDTHS.number} />
        <Head text={w.station} />
        <Head text="L" width={WIDTHS.tick} />
        <Head text="R" width={WIDTHS.tick} />
        <Head text={w.start} width={WIDTHS.times} />
        <Head text={w.end} width={WIDTHS.times} />
        <Head text={w.remarks} width={WIDTHS.notes} />
        <Head text={w.signed} width={WIDTHS.sign} />
        <Head text={w.second} width={WIDTHS.sign} />
      </View>
      {data.stations.map((station) => (
        <StationRow key={station.number} station={station} />
      ))}
    </View>
  );
}

function Head({ text, width }: { readonly text: string; readonly width?: number }) {
  return (
    <Text
      style={{
        fontSize: 7,
        color: PENCIL,
        ...(width ? { width, textAlign: "center" } : { flexGrow: 1, flexBasis: 0 }),
      }}
    >
      {text}
    </Text>
  );
}

function StationRow({ station }: { readonly station: StationFact }) {
  return (
    <View
      style={{ flexDirection: "row", borderBottomWidth: HAIRLINE, borderBottomColor: INK, minHeight: 41 }}
      wrap={false}
    >
      <Text style={{ width: WIDTHS.number, fontFamily: MONO, fontWeight: 600, fontSize: 11, paddingTop: 1 }}>
        {station.number}
      </Text>
      <View style={{ flexGrow: 1, flexBasis: 0, paddingVertical: 1.5, paddingRight: 4 }}>
        <Text style={{ fontWeight: 600, fontSize: 8.5, lineHeight: 1.15 }}>
          {station.name}
          <Text style={{ fontWeight: 400, fontSize: 7, color: PENCIL }}>
            {fill(w.typical, {
              typicalMinutes: station.typicalMinutes,
              wait: station.wait ? `; ${station.wait}` : "",
            })}
          </Text>
        </Text>
        <CautionLines lines={station.safety} size={6.5} />
      </View>
      <Tick />
      <Tick />
      <Blank width={WIDTHS.times} />
      <Blank width={WIDTHS.times} />
      <Blank width={WIDTHS.notes} />
      <Blank width={WIDTHS.sign} />
      <Blank width={WIDTHS.sign} {...(station.needsSecondSignOff ? { hint: w.secondSignOff } : { off: true })} />
    </View>
  );
}

function Tick() {
  return (
    <View style={{ width: WIDTHS.tick, alignItems: "center", paddingTop: 4 }}>
      <View style={{ width: 10, height: 10, borderWidth: THIN, borderColor: INK }} />
    </View>
  );
}

function Blank({ width, hint, off }: { readonly width: number; readonly hint?: string; readonly off?: boolean }) {
  return (
    <View
      style={{
        width,
        borderLeftWidth: HAIRLINE,
        borderLeftColor: PENCIL,
        justifyContent: "flex-end",
        ...(hint ? { backgroundColor: TINT, borderWidth: 1.1, borderColor: INK } : {}),
      }}
    >
      {hint ? <Text style={{ fontSize: 6, paddingLeft: 2, fontWeight: 600, lineHeight: 1.2 }}>{hint}</Text> : null}
      {off ? <Text style={{ fontSize: 7, textAlign: "center", color: RULE, marginBottom: 12 }}>–</Text> : null}
    </View>
  );
}
