/** The finished ski from the side, lying free on the bench: camber, rocker, rise. */
import { Line, Path, Svg } from "@react-pdf/renderer";
import words from "#content/copy/papers.json";
import { fill } from "#engine/units";
import { numberText, plainNumber } from "#papers/parts/format";
import { HAIRLINE, INK, PENCIL, RULE, THIN } from "#papers/parts/theme";
import { type AxisScale, HDim, hatch, Label, polyline, VDim } from "../parts/drawing";
import type { OutlineViewProps } from "./plan-view";

const w = words.buildSheet.shape;

/** Heights of the profile are drawn this many times the scale of the lengths. */
const PROFILE_STRETCH = 3;

/** Narrower than these, a dimension drops a word of its text. */
const NARROW_PT = 34;
const MIDDLING_PT = 75;

function endText(name: string, rockerMm: number, scale: AxisScale): string {
  const width = scale.len(rockerMm);
  if (width < NARROW_PT) return numberText(rockerMm);
  return fill(width < MIDDLING_PT ? w.endShort : w.endRocker, { name, lengthMm: numberText(rockerMm) });
}

export function ProfileView({ d, scale, innerPt }: OutlineViewProps) {
  const rise = scale.len(Math.max(d.tipRiseMm, d.tailRiseMm)) * PROFILE_STRETCH;
  const benchY = rise + 24;
  const height = benchY + 32;
  const y = (z: number) => benchY - scale.len(z) * PROFILE_STRETCH;
  const middle = (d.tangent.fromMm + d.tangent.toMm) / 2;
  return (
    <Svg width={innerPt} height={height} viewBox={`0 0 ${innerPt} ${height}`}>
      <Label
        x={scale.x(d.lengthMm / 2)}
        y={8}
        anchor="middle"
        text={fill(w.profileTitle, { denominator: plainNumber(scale.denominator, 1), stretch: PROFILE_STRETCH })}
        size={7.5}
        colour={PENCIL}
      />
      <Line
        x1={scale.x(-15)}
        x2={scale.x(d.lengthMm + 15)}
        y1={benchY}
        y2={benchY}
        stroke={PENCIL}
        strokeWidth={THIN}
      />
      <Path d={hatch(scale.x(-15), benchY, scale.len(d.lengthMm + 30), 3, 4)} stroke={RULE} strokeWidth={HAIRLINE} />
      <Path
        d={polyline(d.profile.map((p) => ({ x: scale.x(p.x), y: y(p.y) })))}
        stroke={INK}
        strokeWidth={1.1}
        fill="none"
      />
      <VDim
        x={scale.x(0)}
        y1={y(d.tipRiseMm)}
        y2={benchY}
        text={plainNumber(d.tipRiseMm, 1)}
        side="left"
        size={8}
        bold
      />
      <VDim
        x={scale.x(d.lengthMm)}
        y1={y(d.tailRiseMm)}
        y2={benchY}
        text={plainNumber(d.tailRiseMm, 1)}
        size={8}
        bold
      />
      <Label
        x={scale.x(middle)}
        y={y(d.camberMm) - 5}
        anchor="middle"
        text={fill(w.cambers, {
          camberMm: plainNumber(d.camberMm, 1),
          mouldCamberMm: plainNumber(d.mouldCamberMm, 1),
        })}
        size={8}
        mono
        bold
      />
      <HDim
        x1={scale.x(0)}
        x2={scale.x(d.tangent.fromMm)}
        y={benchY + 17}
        fromY={benchY}
        text={endText(w.tip, d.tangent.fromMm, scale)}
      />
      <HDim
        x1={scale.x(d.tangent.fromMm)}
        x2={scale.x(d.tangent.toMm)}
        y={benchY + 17}
        fromY={benchY}
        text={fill(w.tangents, { lengthMm: numberText(d.tangent.lengthMm) })}
      />
      <HDim
        x1={scale.x(d.tangent.toMm)}
        x2={scale.x(d.lengthMm)}
        y={benchY + 17}
        fromY={benchY}
        text={endText(w.tail, d.lengthMm - d.tangent.toMm, scale)}
        textAt={scale.len(d.lengthMm - d.tangent.toMm) < NARROW_PT ? "after" : "middle"}
      />
    </Svg>
  );
}
