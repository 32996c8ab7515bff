/** Ruled tables and label–value rows, in hairlines. Columns are given in relative widths. */
import { StyleSheet, Text, View } from "@react-pdf/renderer";
import type { ReactNode } from "react";
import words from "#content/copy/papers.json";
import type { Row } from "./facts";
import { MONO } from "./fonts";
import { HAIRLINE, INK, PENCIL, RULE, THIN, WHITE } from "./theme";

const styles = StyleSheet.create({
  section: { fontSize: 9.5, fontWeight: 600, marginBottom: 2 },
  head: { flexDirection: "row", borderBottomWidth: THIN, borderBottomColor: INK },
  headText: { fontSize: 7, color: PENCIL, lineHeight: 1.15 },
  row: { flexDirection: "row", borderBottomWidth: HAIRLINE, borderBottomColor: RULE },
  label: { color: PENCIL },
  tag: {
    fontSize: 5.8,
    fontWeight: 600,
    backgroundColor: INK,
    color: WHITE,
    paddingHorizontal: 2.5,
    paddingTop: 0.8,
    lineHeight: 1.15,
    alignSelf: "flex-start",
  },
  box: { borderWidth: THIN, borderColor: INK },
});

export function Section({
  title,
  note,
  children,
  gap = 8,
  keep = true,
}: {
  readonly title: string;
  readonly note?: string;
  readonly children: ReactNode;
  readonly gap?: number;
  /** Stay on one page. */
  readonly keep?: boolean;
}) {
  return (
    <View style={{ marginBottom: gap }} wrap={!keep}>
      <Text style={styles.section} minPresenceAhead={30}>
        {title}
        {note ? <Text style={{ fontWeight: 400, fontSize: 7.5, color: PENCIL }}> {note}</Text> : null}
      </Text>
      {children}
    </View>
  );
}

/** White on black: survives every copier. */
export function OptionTag({ text = words.parts.option }: { readonly text?: string }) {
  return <Text style={styles.tag}>{text}</Text>;
}

export interface Column {
  readonly title: string;
  readonly flex: number;
  readonly align?: "left" | "right" | "center";
  readonly mono?: boolean;
  /** Air to the left, where a right-aligned column stands before it. */
  readonly gapBefore?: number;
}

export type Cell = string | ReactNode;

/** A table whose header repeats on every page it runs over. `height` is the least height of a row, for writing by hand. */
export function Table({
  columns,
  rows,
  height,
  size = 8,
  tight = false,
}: {
  readonly columns: readonly Column[];
  readonly rows: readonly { readonly key: string; readonly cells: readonly Cell[]; readonly isStrong?: boolean }[];
  readonly height?: number;
  readonly size?: number;
  /** Less air between the rows. */
  readonly tight?: boolean;
}) {
  const pad = tight ? { paddingVertical: 0.9, fontSize: size, lineHeight: 1.2 } : { paddingVertical: 1.6 };
  return (
    <View style={{ borderTopWidth: THIN, borderTopColor: INK }}>
      <View style={styles.head} fixed>
        {columns.map((column) => (
          <Text key={column.title} style={[styles.headText, cellStyle(column)]}>
            {column.title}
          </Text>
        ))}
      </View>
      {rows.map((row) => (
        <View
          key={row.key}
          style={[styles.row, height ? { minHeight: height, alignItems: "stretch" } : {}]}
          wrap={false}
        >
          {row.cells.map((cell, index) => {
            const column = columns[index] ?? { title: "", flex: 1 };
            return (
              <View key={column.title} style={[cellStyle(column), pad, { justifyContent: "center" }]}>
                {typeof cell === "string" ? (
                  <Text
                    style={[
                      { fontSize: size, textAlign: column.align ?? "left" },
                      column.mono ? { fontFamily: MONO, fontSize: size } : {},
                      row.isStrong ? { fontWeight: 600 } : {},
                    ]}
                  >
                    {cell}
                  </Text>
                ) : (
                  cell
                )}
              </View>
            );
          })}
        </View>
      ))}
    </View>
  );
}

function cellStyle(column: Column) {
  return {
    flexGrow: column.flex,
    flexShrink: 1,
    flexBasis: 0,
    paddingVertical: 1.6,
    paddingRight: 4,
    paddingLeft: column.gapBefore ?? 0,
    textAlign: column.align ?? ("left" as const),
  };
}

/** Label–value lines; an option's line carries the tag. */
export function Rows({
  rows,
  labelWidth = 92,
  size = 8.5,
}: {
  readonly rows: readonly Row[];
  readonly labelWidth?: number;
  readonly size?: number;
}) {
  return (
    <View style={{ borderTopWidth: HAIRLINE, borderTopColor: RULE }}>
      {rows.map((row) => (
        <View key={row.label} style={[styles.row, { paddingVertical: 1.7 }]} wrap={false}>
          <Text style={[styles.label, { width: labelWidth, fontSize: size - 0.5 }]}>{row.label}</Text>
          <Text
            style={{ flexGrow: 1, flexShrink: 1, flexBasis: 0, fontSize: size, fontWeight: row.isOption ? 600 : 400 }}
          >
            {row.value}
          </Text>
          {row.isOption ? (
            <View style={{ justifyContent: "center", marginLeft: 3 }}>
              <OptionTag />
            </View>
          ) : null}
        </View>
      ))}
    </View>
  );
}

/** An empty box to write a measured value, a name or a tick in. */
export function WriteBox({
  width,
  height = 13,
  hint,
}: {
  readonly width?: number | string;
  readonly height?: number;
  readonly hint?: string;
}) {
  return (
    <View
      style={[
        styles.box,
        { height, justifyContent: "flex-end" },
        width === undefined ? { alignSelf: "stretch" } : { width },
      ]}
    >
      {hint ? <Text style={{ fontSize: 5.8, color: PENCIL, paddingLeft: 2, lineHeight: 1.1 }}>{hint}</Text> : null}
    </View>
  );
}

/** A line to tick once for each ski. */
export function TickLine({ text, strong }: { readonly text: string; readonly strong?: boolean }) {
  return (
    <View style={{ flexDirection: "row", alignItems: "flex-start", marginBottom: 3 }} wrap={false}>
      {["L", "R"].map((ski) => (
        <View key={ski} style={{ flexDirection: "row", marginRight: 5 }}>
          <Text style={{ fontSize: 7, color: PENCIL, marginRight: 2 }}>{ski}</Text>
          <View style={[styles.box, { width: 9, height: 9, marginTop: 1 }]} />
        </View>
      ))}
      <Text style={{ flexGrow: 1, flexShrink: 1, flexBasis: 0, fontWeight: strong ? 600 : 400 }}>{text}</Text>
    </View>
  );
}
