/** Small signs for the station table, drawn in strokes; the words beside them carry the message. */
import { Circle, G, Path, Svg } from "@react-pdf/renderer";
import type { CautionIcon } from "#engine/floor";
import { INK } from "./theme";

/** Line art on a 24 × 24 field. */
const GLYPHS: Readonly<Record<CautionIcon, string>> = {
  gloves:
    "M8 21V12L6 9.5a1.3 1.3 0 0 1 2-1.6L9.5 10V4.5a1.2 1.2 0 0 1 2.4 0V9V3.5a1.2 1.2 0 0 1 2.4 0V9V4.5a1.2 1.2 0 0 1 2.4 0V15a4 4 0 0 1-1 3V21ZM8 18.5H15.7",
  "no-gloves":
    "M8 20V12L6 9.5a1.3 1.3 0 0 1 2-1.6L9.5 10V4.5a1.2 1.2 0 0 1 2.4 0V9V3.5a1.2 1.2 0 0 1 2.4 0V9V4.5a1.2 1.2 0 0 1 2.4 0V15a4 4 0 0 1-1 3V20ZM3 21L21 3",
  mask: "M12 3a7 7 0 0 1 7 7v3M12 3a7 7 0 0 0-7 7v3M6 12h12v4a6 6 0 0 1-12 0ZM9 15h6M9 17.5h6",
  goggles: "M2 9h20v5a3.5 3.5 0 0 1-3.5 3.5h-2A3.5 3.5 0 0 1 13 14h-2a3.5 3.5 0 0 1-3.5 3.5h-2A3.5 3.5 0 0 1 2 14Z",
  hearing: "M5 15V11a7 7 0 0 1 14 0v4M3.5 12.5h4v7h-4ZM16.5 12.5h4v7h-4Z",
  hot: "M4 20h16M7 16c-2-3 2-4 0-8M12 16c-2-3 2-4 0-8M17 16c-2-3 2-4 0-8",
  fire: "M12 3c1 4 5 6 5 11a5 5 0 0 1-10 0c0-2 1-3 2-4c0 2 1 3 2 3c1-3-1-6 1-10Z",
  dust: "M4 8h10a2.5 2.5 0 1 0-2.5-2.5M4 12h14a2.5 2.5 0 1 1-2.5 2.5M4 16h7a2.5 2.5 0 1 1-2.5 2.5",
  crush: "M4 3h16v3H4ZM12 6v5M9.5 9L12 11.5L14.5 9M4 18h16v3H4ZM12 18v-4M9.5 16L12 13.5L14.5 16",
  blade: "M3 17L17 3l4 4L10 18ZM3 17l-0 4h4L10 18",
  "two-people":
    "M4 20v-6a3.5 3.5 0 0 1 7 0v6M13 20v-6a3.5 3.5 0 0 1 7 0v6M7.5 8.5a2.3 2.3 0 1 0 0-4.6a2.3 2.3 0 0 0 0 4.6ZM16.5 8.5a2.3 2.3 0 1 0 0-4.6a2.3 2.3 0 0 0 0 4.6Z",
  ventilate:
    "M12 12c0-4-1-8 3-8c3 0 2 5-3 8c4 0 8-1 8 3c0 3-5 2-8-3c0 4 1 8-3 8c-3 0-2-5 3-8c-4 0-8 1-8-3c0-3 5-2 8 3Z",
  wait: "M12 7v5l3.5 2.5",
  note: "M12 6.5v7M12 16.5v1.2",
};

const RINGED: ReadonlySet<CautionIcon> = new Set(["wait", "note"]);

export function SafetySign({ icon, sidePt = 11 }: { readonly icon: CautionIcon; readonly sidePt?: number }) {
  return (
    <Svg width={sidePt} height={sidePt} viewBox="0 0 24 24">
      <G>
        {RINGED.has(icon) ? <Circle cx={12} cy={12} r={9} fill="none" stroke={INK} strokeWidth={1.8} /> : null}
        <Path
          d={GLYPHS[icon]}
          fill="none"
          stroke={INK}
          strokeWidth={1.8}
          strokeLinejoin="round"
          strokeLinecap="round"
        />
      </G>
    </Svg>
  );
}
