/**
 * A larch branch that grows from the tail to the tip across the pair: one bough with side twigs that shorten as it rises,
 * rosettes of needles as a larch bears them on short shoots, cones near its foot and a few needles that fall off the shovel.
 */
import { tenth as r } from "../paths";
import { type Draw, fixed, groundOf, type PatternArea } from "./area";

/** Colours: ground, needles, twigs and light needles. */
export const branch: Draw = (area, colours) => {
  const [ground, needle, light] = colours;
  const bough = boughOf(area);
  const twigs: string[] = [];
  const needles: string[] = [];
  const pale: string[] = [];
  const cones: string[] = [];
  twigs.push(`M${bough.points.map(({ x, y }) => `${r(x)} ${r(y)}`).join("L")}`);
  const count = Math.round(area.lengthMm / 62);
  for (let i = 0; i < count; i++) {
    const u = (i + 0.35 + 0.3 * fixed(i, 5)) / count;
    const root = bough.at(u);
    const side = i % 2 === 0 ? 1 : -1;
    const room = area.reachMm - side * root.x;
    const reach = Math.max(22, room * (0.35 + 0.5 * (1 - u)) * (0.7 + 0.5 * fixed(i, 3)));
    const rise = reach * (0.55 + 0.7 * fixed(i, 8)) + 34;
    const end = { x: root.x + side * reach, y: root.y - rise };
    const bend = { x: root.x + side * reach * 0.75, y: root.y - rise * 0.25 };
    twigs.push(`M${r(root.x)} ${r(root.y)}Q${r(bend.x)} ${r(bend.y)} ${r(end.x)} ${r(end.y)}`);
    const tufts = Math.max(2, Math.round(reach / 13));
    for (let t = 1; t <= tufts; t++) {
      const v = t / tufts;
      const w = 1 - v;
      const x = w * w * root.x + 2 * w * v * bend.x + v * v * end.x;
      const y = w * w * root.y + 2 * w * v * bend.y + v * v * end.y;
      const into = fixed(i * 7 + t, 2) > 0.72 ? pale : needles;
      into.push(rosette(x, y, 8.5 + 6 * fixed(i, t), i * 31 + t));
    }
    if (u < 0.55 && fixed(i, 12) > 0.45) cones.push(cone(root.x + side * reach * 0.42, root.y - rise * 0.16 + 8));
  }
  for (let i = 0; i < 12; i++) {
    const x = (fixed(i, 21) * 2 - 1) * area.reachMm * 0.9;
    const y = area.lengthMm * (0.02 + 0.2 * fixed(i, 22));
    const turn = Math.PI * fixed(i, 23);
    pale.push(`M${r(x)} ${r(y)}l${r(9 * Math.cos(turn))} ${r(9 * Math.sin(turn))}`);
  }
  return [
    groundOf(area, ground),
    { d: twigs.join(""), stroke: light ?? needle, strokeWidthMm: 1.8 },
    { d: needles.join(""), stroke: needle, strokeWidthMm: 1.2 },
    { d: pale.join(""), stroke: light ?? needle, strokeWidthMm: 1.2 },
    { d: cones.join(""), fill: light ?? needle, stroke: ground, strokeWidthMm: 0.8 },
  ];
};

/** The bough: two slow bends from the lower left to the upper right. u 0 at its foot, 1 at its tip. */
function boughOf({ lengthMm, reachMm }: PatternArea) {
  const at = (u: number) => ({
    x: reachMm * (0.06 - 0.62 * Math.cos(u * 5.4 - 0.5) * (1 - 0.35 * u)),
    y: lengthMm * (1.03 - 0.9 * u),
  });
  return { at, points: Array.from({ length: 41 }, (_, i) => at(i / 40)) };
}

/** Needles in a fan about a short shoot. */
function rosette(x: number, y: number, length: number, seed: number): string {
  const parts: string[] = [];
  const turn = fixed(seed, 1) * 6.28;
  for (let n = 0; n < 7; n++) {
    const angle = turn + (n / 7) * Math.PI * 2;
    const long = length * (0.7 + 0.5 * fixed(seed, n));
    parts.push(`M${r(x)} ${r(y)}l${r(long * Math.cos(angle))} ${r(long * Math.sin(angle))}`);
  }
  return parts.join("");
}

function cone(x: number, y: number): string {
  return `M${r(x)} ${r(y - 9)}q7 3 5 11q-2 7 -5 8q-3 -1 -5 -8q-2 -8 5 -11Z`;
}
