/** The sheet of paper: header with what it is, footer with what makes this print the valid one. */
import { Page, StyleSheet, Text, View } from "@react-pdf/renderer";
import type { ReactNode } from "react";
import words from "#content/copy/papers.json";
import { fill } from "#engine/units";
import { Code } from "./code";
import type { Paper, PrintStamp, ShopFacts } from "./facts";
import { MONO, SANS } from "./fonts";
import { clockText, shortHash } from "./format";
import { HAIRLINE, INK, PENCIL, PT_PER_MM, pageBox, RULE } from "./theme";

const w = words.parts;

const styles = StyleSheet.create({
  page: { fontFamily: SANS, fontSize: 8.5, color: INK },
  header: {
    flexDirection: "row",
    alignItems: "flex-end",
    borderBottomWidth: 0.9,
    borderBottomColor: INK,
    paddingBottom: 4,
    marginBottom: 6,
  },
  kind: { fontSize: 16, fontWeight: 600, lineHeight: 1.1 },
  part: { fontSize: 8.5, color: PENCIL },
  right: { marginLeft: "auto", alignItems: "flex-end" },
  subject: { fontFamily: MONO, fontSize: 15, fontWeight: 600, lineHeight: 1.1 },
  footer: {
    position: "absolute",
    flexDirection: "row",
    justifyContent: "space-between",
    borderTopWidth: HAIRLINE,
    borderTopColor: RULE,
    paddingTop: 3,
    fontSize: 7,
    color: PENCIL,
  },
});

export interface FrameProps {
  readonly paper: Paper;
  readonly orientation?: "portrait" | "landscape";
  readonly kind: string;
  readonly part?: string;
  readonly subject: string;
  readonly subjectNote?: string;
  readonly codeText?: string;
  readonly shop: ShopFacts;
  readonly stamp: PrintStamp;
  /** Shop-floor papers say that this print voids the ones before it. */
  readonly voidsOlder?: boolean;
  readonly children: ReactNode;
}

const FOOTER_MM = 8;

/** One page (or a run of pages, when its content wraps) with the same header and footer on each. */
export function Frame(props: FrameProps) {
  const box = pageBox(props.paper, props.orientation ?? "portrait");
  return (
    <Page
      size={[box.widthPt, box.heightPt]}
      style={[
        styles.page,
        {
          paddingTop: 9 * PT_PER_MM,
          paddingHorizontal: box.marginPt,
          paddingBottom: (FOOTER_MM + 5) * PT_PER_MM,
        },
      ]}
    >
      <Header {...props} />
      <View style={{ fontSize: 8.5, lineHeight: 1.3 }}>{props.children}</View>
      <Footer {...props} marginPt={box.marginPt} />
    </Page>
  );
}

function Header({ kind, part, subject, subjectNote, codeText, shop }: FrameProps) {
  return (
    <View style={styles.header} fixed>
      <View>
        <Text style={styles.part}>
          {shop.name}, {shop.town}
        </Text>
        <Text style={styles.kind}>{kind}</Text>
        {part ? <Text style={styles.part}>{part}</Text> : null}
      </View>
      <View style={styles.right}>
        <Text style={styles.subject}>{subject}</Text>
        {subjectNote ? <Text style={styles.part}>{subjectNote}</Text> : null}
      </View>
      {codeText ? (
        <View style={{ marginLeft: 6, marginBottom: -3 }}>
          <Code text={codeText} sidePt={17 * PT_PER_MM} />
        </View>
      ) : null}
    </View>
  );
}

function Footer({ kind, subject, stamp, voidsOlder, marginPt }: FrameProps & { readonly marginPt: number }) {
  const revision = fill(w.print, {
    kind,
    subject,
    revision: stamp.revision,
    voids: voidsOlder ? w.voids : "",
  });
  return (
    <View style={[styles.footer, { left: marginPt, right: marginPt, bottom: 7 * PT_PER_MM }]} fixed>
      <Text style={voidsOlder ? { color: INK, fontWeight: 600 } : {}}>{revision}</Text>
      <Text>
        {w.spec} <Text style={{ fontFamily: MONO }}>{shortHash(stamp.specHash)}</Text> {w.printed}{" "}
        {clockText(stamp.printedAt)}
      </Text>
      {/* While the library still lays out, it does not know how many pages there will be. */}
      <Text
        render={({ pageNumber, totalPages = 0 }: { pageNumber: number; totalPages?: number }) =>
          fill(w.page, { pageNumber, totalPages })
        }
      />
    </View>
  );
}
