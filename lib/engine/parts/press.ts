/** What the press pushes on: the cassette of a pair, both skis side by side. */
import type { SkiShape } from "#engine/geometry";

/** Beyond the skis' own outlines, mm. */
export interface CassetteMargins {
  readonly endMm: number;
  readonly sideMm: number;
  readonly betweenMm: number;
}

export interface PressLoad {
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly forceKn: number;
}

/** 1 bar = 0.1 N/mm². */
const N_MM2_PER_BAR = 0.1;

/** Pressure times the plan of the cassette that holds both skis of a pair side by side. */
export function pressLoad(
  { lengthMm, shoulderWidthMm, heelWidthMm }: SkiShape,
  { endMm, sideMm, betweenMm }: CassetteMargins,
  pressureBar: number,
): PressLoad {
  const plan = {
    lengthMm: lengthMm + 2 * endMm,
    widthMm: 2 * Math.max(shoulderWidthMm, heelWidthMm) + betweenMm + 2 * sideMm,
  };
  return { ...plan, forceKn: (pressureBar * N_MM2_PER_BAR * plan.lengthMm * plan.widthMm) / 1000 };
}
