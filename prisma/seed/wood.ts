/** Strips in stock: boards scatter, the strips of one board little (the shares are the shop's own). */
import type { Tx } from "#data/client";
import { insertStrips, type NewStrip } from "#data/strips";
import { normalQuantile, seededRandom, unitFromU32 } from "#engine/math";

const day = 86_400_000;
/** Strips cut from one board. */
const perBoard = 4;
/** Coefficient of variation between boards and within one. */
const scatter = { boards: 0.12, strips: 0.02, density: 0.05 } as const;

/** Rough sections by the width of the skis they are for; every third board is sawn for the wide ones. */
const sections = {
  usual: { widthMm: 20.5, heightMm: 15.5 },
  wide: { widthMm: 22.5, heightMm: 17 },
} as const;
const wideBoardEvery = 3;

/** As axial modulus on the 1,200 mm bench: 1.10 times the handbook's bending value. */
const stock: readonly {
  readonly species: string;
  readonly count: number;
  readonly modulusMpa: number;
  readonly density: number;
}[] = [
  { species: "aspen", count: 720, modulusMpa: 8910, density: 426 },
  { species: "ash", count: 400, modulusMpa: 13_200, density: 672 },
  { species: "poplar", count: 220, modulusMpa: 9790, density: 440 },
  { species: "maple", count: 180, modulusMpa: 13_860, density: 706 },
  // Nearly out: a pair with beech in it goes short.
  { species: "beech", count: 2, modulusMpa: 13_090, density: 717 },
  { species: "birch", count: 140, modulusMpa: 15_290, density: 694 },
  { species: "cherry", count: 140, modulusMpa: 11_330, density: 560 },
  { species: "basswood", count: 140, modulusMpa: 11_110, density: 414 },
  { species: "paulownia", count: 160, modulusMpa: 4708, density: 317 },
];

export async function seedWood(tx: Tx, now: Date): Promise<void> {
  const draw = seededRandom(4711);
  const random = { uniform: () => unitFromU32(draw()), normal: () => normalQuantile(unitFromU32(draw())) };
  for (const { species, count, modulusMpa, density } of stock) {
    const strips: NewStrip[] = [];
    let board = { modulus: modulusMpa, density };
    for (let index = 0; index < count; index += 1) {
      if (index % perBoard === 0) {
        board = {
          modulus: modulusMpa * (1 + scatter.boards * random.normal()),
          density: density * (1 + scatter.density * random.normal()),
        };
      }
      const boardNumber = Math.floor(index / perBoard) + 1;
      strips.push({
        id: `${species.slice(0, 3).toUpperCase()}-${String(index + 1).padStart(4, "0")}`,
        species,
        board: `${species.slice(0, 3).toUpperCase()}-B${String(boardNumber).padStart(3, "0")}`,
        modulusMpa: Math.round(board.modulus * (1 + scatter.strips * random.normal())),
        densityKgM3: Math.round(board.density * (1 + 0.008 * random.normal())),
        ...(boardNumber % wideBoardEvery === 0 ? sections.wide : sections.usual),
        lengthMm: 1820,
        grade: random.uniform() < 0.35 ? "W" : "P",
        location: `rack ${String.fromCharCode(65 + (boardNumber % 6))}${1 + (boardNumber % 9)}`,
        measuredAt: new Date(now.getTime() - Math.round(20 + 160 * random.uniform()) * day),
      });
    }
    await insertStrips(tx, strips);
  }
}
