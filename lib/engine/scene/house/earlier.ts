/**
 * House graphics as releases drew them before they were composed along the whole ski: repeating grounds. What was sold with
 * one of them is still printed so.
 */
import { type Draw, fixed, type PatternArea, type PatternShape } from "./area";

const box = (reachMm: number, fromMm: number, alongMm: number) =>
  `M${-reachMm} ${fromMm}h${2 * reachMm}v${alongMm}h${-2 * reachMm}Z`;

function ground(area: PatternArea, fromMm: number, fill: string | undefined): PatternShape {
  return { d: box(area.reachMm, fromMm, area.lengthMm - fromMm), fill };
}

const r = (value: number) => Math.round(value * 10) / 10;

/**
 * Lines of one height on an invented hillside: the height is a smooth function of place, and each line joins the points
 * where it has one value, found by stepping across at every station.
 */
const contours: Draw = (area, colours) => {
  const across = (x: number, level: number) =>
    level * 7.5 +
    15 * Math.sin(x / 168 + level * 0.19) +
    8 * Math.sin(x / 71 - level * 0.41) +
    4 * Math.sin(x / 33 + level * 0.9) * Math.sin(x / 240);
  const lines: { readonly level: number; readonly d: string }[] = [];
  const reach = Math.ceil((area.reachMm + 30) / 7.5);
  for (let level = -reach; level <= reach; level++) {
    const points: string[] = [];
    for (let x = -10; x <= area.lengthMm + 10; x += 12) points.push(`${r(across(x, level))} ${x}`);
    lines.push({ level, d: `M${points.join("L")}` });
  }
  const isIndex = (level: number) => level % 5 === 0;
  const thin = lines.filter(({ level }) => !isIndex(level)).map(({ d }) => d);
  const thick = lines.filter(({ level }) => isIndex(level)).map(({ d }) => d);
  return [
    ground(area, 0, colours[0]),
    { d: thin.join(""), stroke: colours[2] ?? colours[0], strokeWidthMm: 1.2 },
    { d: thick.join(""), stroke: colours[1] ?? colours[0], strokeWidthMm: 2.4 },
  ];
};

const larch: Draw = (area, colours) => {
  const twigs: string[] = [];
  const needles: string[] = [];
  const pitch = 74;
  const columns = Math.ceil((2 * area.reachMm) / 150);
  for (let column = 0; column < columns; column++) {
    const axis = -area.reachMm + (2 * area.reachMm * (column + 0.5)) / columns;
    const stem: string[] = [];
    for (let x = -10; x <= area.lengthMm + 20; x += 30) stem.push(`${r(axis + 7 * Math.sin(x / 170 + column))} ${x}`);
    twigs.push(`M${stem.join("L")}`);
    for (let i = 0; i * pitch < area.lengthMm + pitch; i++) {
      const y = i * pitch + 30 * fixed(i, column);
      const side = i % 2 === 0 ? 1 : -1;
      const reach = 34 + 16 * fixed(i, column + 3);
      const x0 = axis + 7 * Math.sin(y / 170 + column);
      twigs.push(`M${r(x0)} ${r(y)}q${r(side * reach * 0.4)} -6 ${r(side * reach)} -${r(reach * 0.8)}`);
      for (let tuft = 1; tuft <= 3; tuft++) {
        const u = tuft / 3;
        const cx = x0 + side * reach * u;
        const cy = y - reach * 0.8 * u * u - 4 * u;
        for (let n = 0; n < 11; n++) {
          const angle = -Math.PI / 2 + ((n - 5) / 5) * 1.35;
          const length = 11 + 7 * fixed(n + i, tuft);
          needles.push(`M${r(cx)} ${r(cy)}l${r(length * Math.cos(angle))} ${r(length * Math.sin(angle))}`);
        }
      }
    }
  }
  return [
    ground(area, 0, colours[0]),
    { d: needles.join(""), stroke: colours[1] ?? colours[0], strokeWidthMm: 1.3 },
    { d: twigs.join(""), stroke: colours[2] ?? colours[1], strokeWidthMm: 2.2 },
  ];
};

const strata: Draw = (area, colours) => {
  const bands: PatternShape[] = [];
  const edge = (k: number, across: number) => {
    const at = (area.lengthMm * k) / 16 + 46 * (fixed(k, 2) - 0.5);
    return at + across * (0.55 + 0.3 * fixed(k, 7)) + 13 * Math.sin(across / 34 + k * 1.7);
  };
  for (let k = -1; k < 18; k++) {
    const top: string[] = [];
    for (let across = -area.reachMm; across <= area.reachMm; across += 6)
      top.push(`${r(across)} ${r(edge(k, across))}`);
    bands.push({
      d: `M${top.join("L")}L${r(area.reachMm)} ${area.lengthMm + 400}L${r(-area.reachMm)} ${area.lengthMm + 400}Z`,
      fill: colours[(k + colours.length * 4) % colours.length],
    });
  }
  return [ground(area, -200, colours.at(-1)), ...bands];
};

const facets: Draw = (area, colours) => {
  const cell = 46;
  const columns = Math.ceil((2 * area.reachMm) / cell) + 1;
  const rows = Math.ceil(area.lengthMm / cell) + 1;
  const corner = (i: number, j: number) =>
    `${r(-area.reachMm - cell / 2 + i * cell + (fixed(i, j) - 0.5) * cell * 0.8)} ${r(-cell / 2 + j * cell + (fixed(j, i + 9) - 0.5) * cell * 0.8)}`;
  const groups: string[][] = colours.map(() => []);
  for (let i = 0; i < columns; i++) {
    for (let j = 0; j < rows; j++) {
      const a = corner(i, j);
      const b = corner(i + 1, j);
      const c = corner(i, j + 1);
      const d = corner(i + 1, j + 1);
      groups[Math.floor(fixed(i * 3 + 1, j) * colours.length)]?.push(`M${a}L${b}L${c}Z`);
      groups[Math.floor(fixed(i * 3 + 2, j) * colours.length)]?.push(`M${b}L${d}L${c}Z`);
    }
  }
  return [
    ground(area, 0, colours[0]),
    ...groups.map((paths, i) => ({
      d: paths.join(""),
      fill: colours[i],
      stroke: colours[i],
      strokeWidthMm: 0.6,
    })),
  ];
};

const plain: Draw = (area, colours) => {
  const line = (share: number, moreMm: number, wideMm: number) => ({
    d: box(area.reachMm, area.lengthMm * share + moreMm, wideMm),
    fill: colours[1],
  });
  const lines = colours[1] ? [line(0.18, 0, 5), line(0.18, 12, 2), line(0.86, 0, 5)] : [];
  return [ground(area, 0, colours[0]), ...lines];
};

/** By the name of the pattern in a release's house-graphics.json. */
export const earlierDrawings = { plain, contours, larch, strata, facets } as const satisfies Readonly<
  Record<string, Draw>
>;
