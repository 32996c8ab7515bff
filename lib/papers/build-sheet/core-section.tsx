/** The section across the core at the mount line, full size. */
import { G, Path, Rect, Svg, View } from "@react-pdf/renderer";
import words from "#content/copy/papers.json";
import { stripWidthLeftMm } from "#engine/flex";
import { fill } from "#engine/units";
import type { DrawingData } from "#papers/parts/facts";
import { numberText, plainNumber } from "#papers/parts/format";
import { HAIRLINE, INK, PENCIL, PT_PER_MM, THIN } from "#papers/parts/theme";
import { HDim, hatch, Label, VDim } from "../parts/drawing";
import type { CoreDrawing } from "./printed";

const w = words.buildSheet.core;

/** The words of the section need this much. */
const SECTION_TEXT_PT = 268;

/** A line of text for each lightening pocket. */
const HOLLOW_LINE_PT = 10;

function hollowText({ fromMm, toMm, widthMm, depthMm }: CoreDrawing["hollows"][number], index: number): string {
  return fill(w.hollowValue, {
    name: index === 0 ? w.hollowFore : w.hollowAft,
    fromMm: numberText(fromMm, 1),
    toMm: numberText(toMm, 1),
    widthMm: plainNumber(widthMm, 1),
    depthMm: plainNumber(depthMm, 2),
  });
}

/** Section across the ski's core at the mount line, full size. */
export function SectionAtMount({ d, core }: { readonly d: DrawingData; readonly core: CoreDrawing }) {
  const pt = PT_PER_MM;
  const half = (d.widthAtMountMm / 2) * pt;
  const t = core.thicknessAtMountMm * pt;
  const cx = half + 4;
  const top = 30;
  const width = Math.max(2 * half + 40, SECTION_TEXT_PT);
  const below = top + t + 30;
  const height = below + core.hollows.length * HOLLOW_LINE_PT;
  const wall = core.sidewall.widthMm * pt;
  const woodHalfMm = d.widthAtMountMm / 2 - core.sidewall.widthMm;
  const left = core.strips.map((s, index) => {
    const widthMm = stripWidthLeftMm(core.strips, index, woodHalfMm);
    return { position: s.position, fromMm: s.position === "C" ? -widthMm : s.innerMm, toMm: s.innerMm + widthMm };
  });
  const columns = [
    ...left.map((s) => ({ ...s, side: 1 })),
    ...left.filter((s) => s.position !== "C").map((s) => ({ ...s, side: -1 })),
  ];
  return (
    <View style={{ width }}>
      <Svg width={width} height={height} viewBox={`0 0 ${width} ${height}`}>
        <Label x={0} y={8} text={w.sectionTitle} size={7.5} colour={PENCIL} />
        <Rect x={cx - half} y={top} width={2 * half} height={t} fill="none" stroke={INK} strokeWidth={1} />
        {[cx - half, cx + half - wall].map((x) => (
          <G key={x}>
            <Path d={hatch(x, top, wall, t, 3, -1)} stroke={PENCIL} strokeWidth={HAIRLINE} />
            <Rect x={x} y={top} width={wall} height={t} fill="none" stroke={INK} strokeWidth={THIN} />
          </G>
        ))}
        {columns.map((c) => {
          const from = c.fromMm * pt;
          const to = c.toMm * pt;
          if (to - from < 0.5) return null;
          const x = c.side === 1 ? cx + from : cx - to;
          return (
            <G key={`${c.position}${c.side}`}>
              <Rect x={x} y={top} width={to - from} height={t} fill="none" stroke={INK} strokeWidth={THIN} />
              {to - from > 8 ? (
                <Label x={x + (to - from) / 2} y={top + t - 6} anchor="middle" text={c.position} size={9} bold />
              ) : null}
            </G>
          );
        })}
        {core.pocket ? (
          <Rect
            x={cx - (core.pocket.widthMm / 2) * pt}
            y={top}
            width={core.pocket.widthMm * pt}
            height={Math.max(core.pocket.depthMm * pt, 1.2)}
            fill={INK}
          />
        ) : null}
        <VDim x={cx + half + 6} y1={top} y2={top + t} text={numberText(core.thicknessAtMountMm, 2)} size={8} bold />
        <HDim x1={cx - half} x2={cx + half} y={top - 10} fromY={top} text={plainNumber(d.widthAtMountMm, 1)} />
        <Label
          x={0}
          y={top + t + 12}
          text={core.strips.map((s) => `${s.position} ${s.species}`).join(" · ")}
          size={7.5}
        />
        <Label
          x={0}
          y={top + t + 22}
          text={fill(w.sectionNote, {
            material: core.sidewall.material,
            widthMm: plainNumber(core.sidewall.widthMm, 1),
            pocketNote: core.pocket ? w.sectionPocket : "",
          })}
          size={7.5}
        />
        {core.hollows.map((hollow, index) => (
          <Label
            key={hollow.fromMm}
            x={0}
            y={below + 2 + index * HOLLOW_LINE_PT}
            text={hollowText(hollow, index)}
            size={7.5}
          />
        ))}
      </Svg>
    </View>
  );
}
