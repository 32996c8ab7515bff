/** What a house graphic fills, and the few sums that all of them share. */

export interface PatternArea {
  readonly lengthMm: number;
  /** Half of the width to fill: a ski's, or a whole pair's when the graphic continues across both. */
  readonly reachMm: number;
}

/** One path of a graphic: x to the skier's right of the centre line, y from the tip, mm. Later ones lie on earlier ones. */
export interface PatternShape {
  /** SVG path data. */
  readonly d: string;
  readonly fill?: string | undefined;
  readonly stroke?: string | undefined;
  readonly strokeWidthMm?: number;
}

/** The paths of a graphic from the ground up: it fills −reach…reach across and 0…length along, mm. */
export type Draw = (area: PatternArea, colours: readonly string[]) => readonly PatternShape[];

/** A fraction of 0…1 that depends on two whole numbers only: the same drawing every time, without a random source. */
export function fixed(a: number, b: number): number {
  const s = Math.sin(a * 127.1 + b * 311.7) * 43758.5453;
  return s - Math.floor(s);
}

/** The whole area in one colour, and a little more so that no edge shows. */
export function groundOf({ reachMm, lengthMm }: PatternArea, fill: string | undefined): PatternShape {
  return { d: `M${-reachMm - 4} -4h${2 * reachMm + 8}v${lengthMm + 8}h${-2 * reachMm - 8}Z`, fill };
}

/** A colour between two, `#rrggbb`; share 0 is the first. */
export function mixed(a: string, b: string, share: number): string {
  const part = (hex: string, at: number) => Number.parseInt(hex.slice(at, at + 2), 16);
  return `#${[1, 3, 5]
    .map((at) => Math.round(part(a, at) + (part(b, at) - part(a, at)) * share))
    .map((value) => Math.min(255, Math.max(0, value)).toString(16).padStart(2, "0"))
    .join("")}`;
}

/** A colour along a palette, 0 its first and 1 its last. */
export function along(colours: readonly string[], share: number): string {
  const last = colours.length - 1;
  const at = Math.min(last, Math.max(0, share * last));
  const i = Math.min(last - 1, Math.floor(at));
  return mixed(colours[Math.max(0, i)] ?? "#000000", colours[i + 1] ?? colours[0] ?? "#000000", at - i);
}
