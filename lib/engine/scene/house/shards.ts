/**
 * Ice broken into facets: large plates at the ends, splinters under the boot. Each facet has a height at its corners and is
 * as light as it turns to the light, so that the whole reads as one relief; the palette runs from the tail's dark to the tip.
 */
import { along, type Draw, fixed, groundOf, type PatternArea, type PatternShape } from "./area";

const tones = 12;

export const shards: Draw = (area, colours) => {
  const rows = rowsOf(area);
  const groups = Array.from({ length: tones }, (): string[] => []);
  for (let j = 0; j + 1 < rows.length; j++) {
    const [upper, lower] = [rows[j] ?? [], rows[j + 1] ?? []];
    for (const facet of strip(upper, lower)) groups[toneOf(facet, area)]?.push(pathOf(facet));
  }
  return [
    groundOf(area, along(colours, 0.5)),
    ...groups.flatMap((paths, i): PatternShape[] => {
      if (paths.length === 0) return [];
      const colour = along(colours, i / (tones - 1));
      return [{ d: paths.join(""), fill: colour, stroke: colour, strokeWidthMm: 0.5 }];
    }),
  ];
};

interface Corner {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

type Facet = readonly [Corner, Corner, Corner];

/** Rows of corners across: far apart at the ends, close under the boot; more of them where they are close. */
function rowsOf({ lengthMm, reachMm }: PatternArea): readonly (readonly Corner[])[] {
  const rows: Corner[][] = [];
  let y = -70;
  for (let j = 0; y < lengthMm + 90; j++) {
    const fromBoot = Math.abs(y / lengthMm - 0.54) / 0.54;
    const pitch = 30 + 62 * fromBoot ** 1.3;
    const count = Math.max(2, Math.round((2 * reachMm) / (pitch * 0.92)) + 1);
    rows.push(
      Array.from({ length: count + 1 }, (_, i) => ({
        x:
          -reachMm -
          8 +
          ((2 * reachMm + 16) * i) / count +
          (i === 0 || i === count ? 0 : (fixed(i, j) - 0.5) * pitch * 0.7),
        y: y + (fixed(j, i + 9) - 0.5) * pitch * 0.75,
        z: fixed(i * 3 + 1, j * 5 + 2) * pitch * 0.55,
      })),
    );
    y += pitch;
  }
  return rows;
}

/** Triangles between two rows with different numbers of corners, taking each time the shorter diagonal. */
function strip(upper: readonly Corner[], lower: readonly Corner[]): readonly Facet[] {
  const facets: Facet[] = [];
  let [i, j] = [0, 0];
  while (i + 1 < upper.length || j + 1 < lower.length) {
    const [a, b] = [upper[i], lower[j]];
    const [nextA, nextB] = [upper[i + 1], lower[j + 1]];
    if (!a || !b) break;
    const takeUpper =
      nextA !== undefined && (nextB === undefined || Math.abs(nextA.x - b.x) <= Math.abs(nextB.x - a.x));
    const third = takeUpper ? nextA : nextB;
    if (!third) break;
    facets.push([a, b, third]);
    if (takeUpper) i++;
    else j++;
  }
  return facets;
}

/** Lambert's cosine from the left and the tip, and how far up the ski it lies. */
function toneOf([a, b, c]: Facet, { lengthMm }: PatternArea): number {
  const [u, v] = [
    { x: b.x - a.x, y: b.y - a.y, z: b.z - a.z },
    { x: c.x - a.x, y: c.y - a.y, z: c.z - a.z },
  ];
  const n = { x: u.y * v.z - u.z * v.y, y: u.z * v.x - u.x * v.z, z: u.x * v.y - u.y * v.x };
  const up = n.z < 0 ? -1 : 1;
  const long = Math.hypot(n.x, n.y, n.z) || 1;
  const facing = (up * (-0.5 * n.x - 0.45 * n.y + 0.74 * n.z)) / long;
  const height = (a.y + b.y + c.y) / 3 / lengthMm;
  const share = 0.78 * (1 - facing) * 1.15 + 0.5 * (height - 0.3);
  return Math.min(tones - 1, Math.max(0, Math.floor(share * tones)));
}

const r = Math.round;

const pathOf = ([a, b, c]: Facet) => `M${r(a.x)} ${r(a.y)}L${r(b.x)} ${r(b.y)}L${r(c.x)} ${r(c.y)}Z`;
