/**
 * Stock of everything else: one open lot of each material that any pair of the line-up asks for. All base colours share the
 * number of their thickness lot, so that counterchanged letters fit. Invented; the same catalogue gives the same shelves.
 */

import type { Tx } from "#data/client";
import { newId } from "#data/ids";
import { insertLots, type LotRecord } from "#data/lots";
import { assessSheet, type EngineCatalog, type SheetChoices } from "#engine/assessment";

const day = 86_400_000;
const baseThicknessLot = "UH-31";
const shelves = ["A", "B", "C", "D"] as const;
/** Quantity a lot opens with, by the unit of its part. */
const opening: Readonly<Record<string, number>> = { piece: 60, set: 40, g: 8000, ml: 900, mm: 200_000 };
/** Laminating epoxy and its hardener keep a year (common practice, no source: the data sheet decides). */
const shelfLifeDays: Readonly<Record<string, number>> = { resin: 365, hardener: 365, "edge-adhesive": 180 };

export async function seedLots(tx: Tx, catalog: EngineCatalog, now: Date): Promise<void> {
  const parts = new Map(
    everyChoice(catalog)
      .flatMap((choices) => assessSheet({ answers: {}, choices }, catalog).parts?.lines ?? [])
      .filter(({ code }) => !code.startsWith("strip-"))
      .map((line) => [line.material, line] as const),
  );
  const lots = [...parts.values()].map(({ code, material, unit }, index): LotRecord => {
    const receivedAt = new Date(now.getTime() - (20 + ((index * 7) % 40)) * day);
    const life = shelfLifeDays[code];
    return {
      id: newId(),
      material,
      number: code.startsWith("base-left") || code.startsWith("base-right") ? baseThicknessLot : lotNumber(code, index),
      quantity: opening[unit] ?? 1,
      unit,
      location: `${shelves[index % shelves.length]}${1 + Math.floor(index / shelves.length)}`,
      receivedAt,
      expiresAt: life === undefined ? null : new Date(receivedAt.getTime() + life * day),
    };
  });
  await insertLots(tx, lots);
}

const lotNumber = (code: string, index: number) => `${code.slice(0, 2).toUpperCase()}-${40 + index}`;

/** Pairs that between them use every material: each model, each reinforcement, each base colour, each kind of end. */
function everyChoice({ build }: EngineCatalog): readonly SheetChoices[] {
  const models = build.models.filter(({ state }) => state === "active");
  const plain = models.map(({ id, shape }): SheetChoices => ({ model: id, lengthCm: shape.refLengthCm }));
  const reinforced = models.flatMap(({ id, shape, use }) =>
    build.reinforcements
      .filter(({ forUses }) => forUses.includes(use))
      .map((each): SheetChoices => ({ model: id, lengthCm: shape.refLengthCm, reinforcements: [each.id] })),
  );
  const [first] = plain;
  const coloured = build.baseColours.map(
    ({ id }): SheetChoices => ({
      ...first,
      base: { left: id, right: id, inlay: "none" },
      tipTailProtectors: true,
    }),
  );
  return [...plain, ...reinforced, ...coloured];
}
