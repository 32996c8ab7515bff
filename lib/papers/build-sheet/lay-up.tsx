/** Lay-up and press: faces to prepare, the stack, resin, working time and press programme with lines to write in. */
import { Text, View } from "@react-pdf/renderer";
import words from "#content/copy/papers.json";
import { MONO } from "#papers/parts/fonts";
import { HAIRLINE, INK, PENCIL, THIN } from "#papers/parts/theme";
import { Rows, Section, TickLine, WriteBox } from "../parts/table";
import type { BuildSheetData } from "./printed";
import { StackPicture } from "./stack";

const w = words.buildSheet.layUp;

export function LayUp({ data }: { readonly data: BuildSheetData }) {
  return (
    <View>
      <Section title={w.stack} note={w.stackNote} keep={false}>
        <StackPicture stack={data.stack} />
      </Section>
      <Section title={w.surfaces} note={w.surfacesNote}>
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
          <Section title={w.resinForThisPair}>
            <Rows rows={data.resin} labelWidth={66} size={8} />
          </Section>
        </View>
        <View style={{ flexGrow: 1, flexBasis: 0 }}>
          <Section title={w.pressProgramme}>
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
    <Section title={w.workingTime} note={w.workingTimeNote}>
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
            <Text style={{ fontFamily: MONO, fontWeight: 600, fontSize: 8.5 }}>
              {minutes} {w.min}
            </Text>
          </View>
        ))}
        {[w.mixedAt, w.roomTemperature, w.closeBy, w.closed].map((hint) => (
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
    [w.batchOne, w.batchTwo, w.batchThree, w.batchFour],
    [w.pressClosed, w.pressure, w.dwell, w.closeSigned],
    [w.earliestDemould, w.coreTemperature, w.demoulded, w.demouldSigned],
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
