/** A house graphic as the engine works it out, as paths of a drawing; the outline that clips it is the caller's. */
import { type HouseGraphic, housePattern, otherPalette, type PatternArea } from "#engine/configuration";

export function HousePattern({
  graphic,
  area,
  swapColours,
}: {
  readonly graphic: HouseGraphic;
  readonly area: PatternArea;
  /** The second ski of an "alternate" pair takes the palette the other way round. */
  readonly swapColours?: boolean;
}) {
  return housePattern(swapColours ? otherPalette(graphic) : graphic, area).map((shape) => (
    <path
      key={`${shape.fill}${shape.stroke}${shape.d.slice(0, 24)}`}
      d={shape.d}
      fill={shape.fill ?? "none"}
      stroke={shape.stroke}
      strokeWidth={shape.strokeWidthMm}
      strokeLinecap="round"
    />
  ));
}
