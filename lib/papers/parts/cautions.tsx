/** What can hurt, beside the work or among the terms: one line a hazard with its sign; whole where there is room for it. */
import { Text, View } from "@react-pdf/renderer";
import words from "#content/copy/cautions.json";
import type { Caution } from "#engine/floor";
import { fill } from "#engine/units";
import type { CautionFacts } from "./facts";
import { SafetySign } from "./icons";
import { PENCIL } from "./theme";

/** Signs and lines side by side. */
export function CautionLines({ lines, size = 7 }: { readonly lines: readonly Caution[]; readonly size?: number }) {
  return (
    <View style={{ flexDirection: "row", flexWrap: "wrap", marginTop: 1 }}>
      {lines.map(({ id, icon, line }) => (
        <View key={id} style={{ flexDirection: "row", alignItems: "center", marginRight: 6 }}>
          <SafetySign icon={icon} sidePt={size + 1.5} />
          <Text style={{ fontSize: size, marginLeft: 2, lineHeight: 1.15 }}>{line}</Text>
        </View>
      ))}
    </View>
  );
}

export interface CautionsProps {
  readonly cautions: CautionFacts;
  /** With full text and reference; else lines, and where to find the texts. */
  readonly isWhole?: boolean;
}

export function Cautions({ cautions: { lines, localRules }, isWhole = false }: CautionsProps) {
  if (!isWhole) {
    return (
      <View style={{ marginTop: 5 }} wrap={false}>
        <CautionLines lines={lines} size={7.5} />
        <Text style={{ fontSize: 7, color: PENCIL, marginTop: 2 }}>{fill(words.paper.more, { localRules })}</Text>
      </View>
    );
  }
  return (
    <View>
      {lines.map((each) => (
        <Whole key={each.id} caution={each} />
      ))}
      <Text style={{ fontSize: 7.5, color: PENCIL }}>{localRules}</Text>
    </View>
  );
}

function Whole({ caution: { icon, line, full, reference } }: { readonly caution: Caution }) {
  return (
    <View style={{ flexDirection: "row", marginBottom: 3 }} wrap={false}>
      <SafetySign icon={icon} sidePt={11} />
      <View style={{ flexGrow: 1, flexBasis: 0, marginLeft: 5 }}>
        <Text style={{ fontWeight: 600, fontSize: 8.5 }}>{line}</Text>
        <Text style={{ fontSize: 8 }}>
          {full} <Text style={{ color: PENCIL }}>{fill(words.reference, { reference })}</Text>
        </Text>
      </View>
    </View>
  );
}
