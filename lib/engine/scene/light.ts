/** Light on a ski's top: it comes from the tip's left, high. What turns away from it is darker, what turns to it lighter. */
import { profileHeightMm, type SkiShape } from "#engine/geometry";
import type { GradientStop, ShadeMark } from "./types";

/** Unit vector to the light: to the skier's left, towards the tip, up. */
const light = { across: -0.42, along: -0.34, up: 0.84 } as const;
/** How much of a change of brightness is drawn: a sheen that hides no graphic. */
const strength = 0.8;
/** Stations along either end. */
const steps = 8;

/** How bright a facet is over one that lies flat: Lambert's cosine, (n·l)/(n0·l), for a slope dz/dx along the ski. */
export function brightnessAt(slope: number): number {
  // Normal of z(x): (−dz/dx, 1)/√(1 + (dz/dx)²).
  const scale = 1 / Math.hypot(1, slope);
  return Math.max(0, (-slope * light.along + light.up) * scale) / light.up;
}

/** White where it is brighter than flat, black where it is darker. */
function stop(at: number, brightness: number): GradientStop {
  const change = brightness - 1;
  const opacity = Math.min(0.55, Math.abs(change) * strength);
  return { at, paint: change > 0 ? "#ffffff" : "#000000", opacity: Math.round(opacity * 1000) / 1000 };
}

/** The turned-up ends, from the profile's own slope. */
export function endLight(shape: SkiShape, outline: string): ShadeMark {
  const stations = [
    ...Array.from({ length: steps + 1 }, (_, i) => (shape.tipTangentMm * i) / steps),
    ...Array.from(
      { length: steps + 1 },
      (_, i) => shape.tailTangentMm + ((shape.lengthMm - shape.tailTangentMm) * i) / steps,
    ),
  ];
  const stops = stations.map((x) =>
    stop(Math.round((x / shape.lengthMm) * 1e4) / 1e4, brightnessAt(slopeAt(shape, x))),
  );
  return { kind: "shade", d: outline, from: { x: 0, y: 0 }, to: { x: 0, y: shape.lengthMm }, stops };
}

function slopeAt(shape: SkiShape, xMm: number): number {
  const step = 2;
  const [a, b] = [Math.max(0, xMm - step), Math.min(shape.lengthMm, xMm + step)];
  return (profileHeightMm(shape, b, "free") - profileHeightMm(shape, a, "free")) / (b - a);
}

/** A restrained sheen across a flat top: a soft band to the light, a little shade away from it. */
export function topSheen(halfMm: number, outline: string): ShadeMark {
  return {
    kind: "shade",
    d: outline,
    from: { x: -halfMm, y: 0 },
    to: { x: halfMm, y: 0 },
    stops: [
      { at: 0, paint: "#ffffff", opacity: 0.06 },
      { at: 0.26, paint: "#ffffff", opacity: 0.13 },
      { at: 0.48, paint: "#ffffff", opacity: 0 },
      { at: 0.6, paint: "#000000", opacity: 0 },
      { at: 1, paint: "#000000", opacity: 0.17 },
    ],
  };
}

/** A leaning wall's brightness over a flat top: its normal leans outward by the bevel. */
export function wallBrightness(side: 1 | -1, bevelDeg: number): number {
  // The wall stands (90° − bevel) to the bench.
  const lean = (bevelDeg * Math.PI) / 180;
  return Math.max(0, side * Math.cos(lean) * light.across + Math.sin(lean) * light.up) / light.up;
}
