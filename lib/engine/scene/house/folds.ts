/**
 * Layers of rock folded along the ski: an arch under the shovel, a trough under the boot, a fault behind it where one side
 * has slipped. Beds are thick and thin, each with a seam; they run on from one ski to the other.
 */
import { tenth as r } from "../paths";
import { along, type Draw, fixed, groundOf, mixed, type PatternArea } from "./area";

const beds = 23;

export const folds: Draw = (area, colours) => {
  const shapes = [groundOf(area, colours.at(-1))];
  const thickness = Array.from({ length: beds + 6 }, (_, k) => 0.35 + fixed(k, 4) ** 1.6 * 1.5);
  const total = thickness.slice(0, beds).reduce((sum, each) => sum + each, 0);
  let from = -0.16;
  for (const [k, thick] of thickness.entries()) {
    const colour = along(colours, tone(k));
    shapes.push({ d: belowEdge(area, from), fill: colour });
    const seam = from + (thick / total) * 0.72;
    shapes.push({
      d: edgeLine(area, seam),
      stroke: mixed(colour, "#000000", 0.22),
      strokeWidthMm: 1 + 1.6 * fixed(k, 9),
    });
    from += thick / total;
  }
  return shapes;
};

/** Never the same tone twice running, and no order that repeats. */
function tone(k: number): number {
  const walk = fixed(k, 7) * 0.6 + (k % 2) * 0.4;
  return Math.min(1, Math.max(0, walk));
}

/** Where a bed that lies at `share` of the length crosses, y at x. */
function edgeAt({ lengthMm, reachMm }: PatternArea, share: number, x: number): number {
  const across = x / reachMm;
  const y0 = share * lengthMm;
  const arch = -62 * Math.exp(-(((share - 0.2) / 0.22) ** 2)) * (1 - (across - 0.15) ** 2);
  const trough = 46 * Math.exp(-(((share - 0.52) / 0.2) ** 2)) * (1 - (across + 0.2) ** 2);
  const dip = 0.42 * x * (0.3 + share);
  const wave = 5 * Math.sin(x / 29 + share * 17) + 3 * Math.sin(x / 13 - share * 31);
  return y0 + arch + trough + dip + wave;
}

/** Behind the boot the right-hand side has slipped towards the tail along a slanting line. */
function slip({ lengthMm, reachMm }: PatternArea, x: number, y: number): number {
  const faultX = reachMm * (0.1 + 1.5 * (y / lengthMm - 0.72));
  return y > lengthMm * 0.55 && x > faultX ? 34 : 0;
}

function edgePoints(area: PatternArea, share: number): string {
  const points: string[] = [];
  for (let x = -area.reachMm - 4; x <= area.reachMm + 4; x += 7) {
    const y = edgeAt(area, share, x);
    points.push(`${r(x)} ${r(y + slip(area, x, y))}`);
  }
  return points.join("L");
}

const edgeLine = (area: PatternArea, share: number) => `M${edgePoints(area, share)}`;

function belowEdge(area: PatternArea, share: number): string {
  const far = area.lengthMm + 300;
  return `M${edgePoints(area, share)}L${r(area.reachMm + 12)} ${far}L${r(-area.reachMm - 4)} ${far}Z`;
}
