/** Lay-up and press: faces to prepare, the stack, resin, working time and press programme with lines to write in. */
import { Text, View } from "@react-pdf/renderer";
import { MONO } from "#papers/parts/fonts";
import { HAIRLINE, INK, PENCIL, THIN } from "#papers/parts/theme";
import { Rows, Section, TickLine, WriteBox } from "../parts/table";
import type { BuildSheetData } from "./facts";
import { StackPicture } from "./stack";

export function LayUp({ data }: { readonly data: BuildSheetData }) {
  return (
    <View>
      <Section
        title="Stack, bottom to top"
        note="arrows: fibre direction, along the sheet is along the ski"
        keep={false}
      >
        <StackPicture stack={data.stack} />
      </Section>
      <Section title="Surfaces before lay-up" note="tick for both skis">
        <View style={{ flexDirection: "row", flexWrap: "wrap" }}>
          {data.surfacePreparation.map((line) => (
            <View key={line} style={{ width: "50%", paddingRight: 8 }}>
              <TickLine text={line} />
            </View>
          ))}
        </View>
      </Section>
    </View>
  );
}

export function ResinAndPress({ data }: { readonly data: BuildSheetData }) {
  return (
    <View wrap={false}>
      <View style={{ flexDirection: "row" }}>
        <View style={{ flexGrow: 1, flexBasis: 0, marginRight: 14 }}>
          <Section title="Resin for this pair">
            <Rows rows={data.resin} labelWidth={66} size={8} />
          </Section>
        </View>
        <View style={{ flexGrow: 1, flexBasis: 0 }}>
          <Section title="Press programme">
            <Rows rows={data.press} labelWidth={56} size={8} />
          </Section>
        </View>
      </View>
      <WorkingTime data={data} />
      <PressLog />
    </View>
  );
}

/** Room temperature to minutes: the press must be closed by then. */
function WorkingTime({ data }: { readonly data: BuildSheetData }) {
  return (
    <Section title="Working time" note="from the first drop of hardener to the closed press; halves for every 10 °C">
      <View style={{ flexDirection: "row", alignItems: "stretch" }}>
        {data.workingTimes.map(({ roomC, minutes }) => (
          <View
            key={roomC}
            style={{
              borderWidth: HAIRLINE,
              borderColor: INK,
              width: 37,
              alignItems: "center",
              marginRight: 2,
              paddingVertical: 1,
            }}
          >
            <Text style={{ fontSize: 7, color: PENCIL }}>{roomC} °C</Text>
            <Text style={{ fontFamily: MONO, fontWeight: 600, fontSize: 8.5 }}>{minutes} min</Text>
          </View>
        ))}
        {["mixed at", "room °C", "close by", "closed at"].map((hint) => (
          <View key={hint} style={{ flexGrow: 1, flexBasis: 0, marginLeft: 6 }}>
            <WriteBox height={25} hint={hint} />
          </View>
        ))}
      </View>
    </Section>
  );
}

/** What the press crew writes down; two signatures, at close and at demould. */
function PressLog() {
  const rows = [
    ["Batch 1: resin g / hardener g", "Batch 2", "Batch 3", "Batch 4 and more"],
    ["Closed at", "Pressure, bar", "Dwell from – to, °C", "Close: signed by two"],
    ["Earliest demould", "Core temperature, °C", "Demoulded at", "Demould: signed by two"],
  ];
  return (
    <View style={{ borderTopWidth: THIN, borderTopColor: INK, paddingTop: 3 }}>
      {rows.map((hints) => (
        <View key={hints[0]} style={{ flexDirection: "row", marginBottom: 3 }}>
          {hints.map((hint, i) => (
            <View key={hint} style={{ flexGrow: 1, flexBasis: 0, marginLeft: i === 0 ? 0 : 5 }}>
              <WriteBox height={22} hint={hint} />
            </View>
          ))}
        </View>
      ))}
    </View>
  );
}
