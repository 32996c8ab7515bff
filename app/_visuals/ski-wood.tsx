/** The wood of the core as it is seen through a clear window. */

import { stripSides } from "#engine/configuration";
import { stripWidthLeftMm } from "#engine/flex";

/** A strip of the core as the eye sees it through a window. */
export interface WoodStrip {
  readonly innerMm: number;
  readonly outerMm: number;
  readonly dense: boolean;
}

export interface ClearWindow {
  readonly fromXMm: number;
  readonly toXMm: number;
  readonly halfWidthMm: number;
}

/** What a clear window shows: the core's strips, inside the window's own outline. */
export function Windows({
  id,
  windows,
  wood,
  lengthMm,
}: {
  readonly id: string;
  readonly windows: readonly ClearWindow[];
  readonly wood: readonly WoodStrip[];
  readonly lengthMm: number;
}) {
  return (
    <>
      <clipPath id={id}>
        {windows.map((w) => (
          <rect
            key={w.fromXMm}
            x={-w.halfWidthMm}
            y={w.fromXMm}
            width={2 * w.halfWidthMm}
            height={w.toXMm - w.fromXMm}
            rx={Math.min(w.halfWidthMm, 14)}
          />
        ))}
      </clipPath>
      <g clipPath={`url(#${id})`}>
        <Wood wood={wood} lengthMm={lengthMm} />
      </g>
      {windows.map((w) => (
        <rect
          key={w.fromXMm}
          x={-w.halfWidthMm}
          y={w.fromXMm}
          width={2 * w.halfWidthMm}
          height={w.toXMm - w.fromXMm}
          rx={Math.min(w.halfWidthMm, 14)}
          fill="none"
          stroke="#1b2023"
          strokeWidth={1}
        />
      ))}
    </>
  );
}

/** The core's strips with a little grain, symmetric about the centre line. */
function Wood({ wood, lengthMm }: { readonly wood: readonly WoodStrip[]; readonly lengthMm: number }) {
  const bands = wood.flatMap((strip) =>
    strip.innerMm <= 0
      ? [{ from: -strip.outerMm, to: strip.outerMm, dense: strip.dense }]
      : [
          { from: strip.innerMm, to: strip.outerMm, dense: strip.dense },
          { from: -strip.outerMm, to: -strip.innerMm, dense: strip.dense },
        ],
  );
  return (
    <>
      {bands.map((band) => (
        <rect
          key={band.from}
          x={band.from}
          y={0}
          width={band.to - band.from}
          height={lengthMm}
          fill={band.dense ? "var(--wood-dense)" : "var(--wood)"}
          stroke="#7a5a30"
          strokeOpacity={0.55}
          strokeWidth={0.5}
        />
      ))}
      {bands.map((band, i) => (
        <path
          key={`grain${band.from}`}
          d={[0.3, 0.62].map((u) => grainLine(band.from + (band.to - band.from) * u, lengthMm, i + u)).join("")}
          fill="none"
          stroke="#7a5a30"
          strokeOpacity={0.35}
          strokeWidth={0.5}
        />
      ))}
    </>
  );
}

function grainLine(x: number, lengthMm: number, phase: number): string {
  let d = `M${x.toFixed(1)} 0`;
  for (let y = 60; y <= lengthMm; y += 60) d += `L${(x + 1.4 * Math.sin(y / 97 + phase * 2.3)).toFixed(1)} ${y}`;
  return d;
}

/** Core strips C I I M M O O as drawn through a window, from their width and which positions are dense wood. */
export function woodStrips(
  stripWidthMm: number,
  isDense: { readonly C: boolean; readonly I: boolean; readonly M: boolean; readonly O: boolean },
): readonly WoodStrip[] {
  const sides = stripSides(stripWidthMm);
  // The outermost strip is made as wide as the ski needs; no ski is wider than one strip more.
  const widestMm = stripWidthMm * (sides.length + 0.5);
  return sides.map(({ position, innerMm }, index) => ({
    innerMm,
    outerMm: innerMm + stripWidthLeftMm(sides, index, widestMm),
    dense: isDense[position],
  }));
}
