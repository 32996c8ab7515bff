/** Pieces that the papers for customers share: the strip of key facts, bullets, the range of dates. */
import { Text, View } from "@react-pdf/renderer";
import type { ReactNode } from "react";
import words from "#content/copy/papers.json";
import { fill } from "#engine/units";
import type { OfferedDates } from "./facts";
import { dayText } from "./format";
import { Section } from "./table";
import { HAIRLINE, INK, PENCIL } from "./theme";

const w = words.parts;

/** The three or four things everybody looks for first. */
export function KeyFacts({ facts }: { readonly facts: readonly (readonly [string, string])[] }) {
  return (
    <View style={{ flexDirection: "row", borderWidth: 1.1, borderColor: INK, marginBottom: 9 }} wrap={false}>
      {facts.map(([label, value], index) => (
        <View
          key={label}
          style={{
            flexGrow: 1,
            flexBasis: 0,
            padding: 5,
            borderLeftWidth: index === 0 ? 0 : HAIRLINE,
            borderLeftColor: INK,
          }}
        >
          <Text style={{ fontSize: 7, color: PENCIL }}>{label}</Text>
          <Text style={{ fontSize: 10, fontWeight: 600, lineHeight: 1.2 }}>{value}</Text>
        </View>
      ))}
    </View>
  );
}

export function Bullets({ lines }: { readonly lines: readonly string[] }) {
  return (
    <View>
      {lines.map((line) => (
        <View key={line} style={{ flexDirection: "row", marginBottom: 1 }} wrap={false}>
          <Text style={{ width: 9 }}>·</Text>
          <Text style={{ flexGrow: 1, flexShrink: 1, flexBasis: 0 }}>{line}</Text>
        </View>
      ))}
    </View>
  );
}

export function rangeText(dates: OfferedDates): string {
  return fill(w.range, { from: dayText(dates.from), to: dayText(dates.to) });
}

/** The range before the clock starts, and what starts it. */
export function When({ dates }: { readonly dates: OfferedDates }) {
  return (
    <Section title={w.when}>
      <Text>{fill(w.whenText, { range: rangeText(dates), confidence: dates.confidence })}</Text>
      <Bullets lines={dates.startsWhen} />
    </Section>
  );
}

/** Two columns that start at the same height. */
export function TwoColumns({ left, right }: { readonly left: ReactNode; readonly right: ReactNode }) {
  return (
    <View style={{ flexDirection: "row" }} wrap={false}>
      <View style={{ flexGrow: 1, flexBasis: 0, marginRight: 16 }}>{left}</View>
      <View style={{ flexGrow: 1, flexBasis: 0 }}>{right}</View>
    </View>
  );
}
