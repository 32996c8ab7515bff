import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { matchOneSki, type Strip, type StripPosition } from "#engine/matching";

const positions: readonly StripPosition[] = [
  { name: "C", perSki: 1, species: ["aspen"] },
  { name: "I", perSki: 2, species: ["ash"], weight: 1.4 },
  { name: "M", perSki: 2, species: ["aspen"], weight: 0.9 },
];
/** Trade practice: the rebuilt ski's ΣE within 1.5 % of the other one's actual. */
const limits = { twinPercent: 1.5 };

const strip = (id: string, species: string, modulusMpa: number): Strip => ({
  id,
  species,
  modulusMpa,
  densityKgM3: species === "ash" ? 670 : 425,
  grade: "P",
  board: id,
});

const weighed = (strips: Readonly<Record<string, readonly Strip[]>>) =>
  positions.reduce(
    (sum, { name, weight = 1 }) =>
      sum + (strips[name] ?? []).reduce((inner, each) => inner + weight * each.modulusMpa, 0),
    0,
  );

/** Every way to fill the positions, counted out plainly. */
function bruteForce(stock: readonly Strip[], target: number): number {
  const aspen = stock.filter(({ species }) => species === "aspen");
  const ash = stock.filter(({ species }) => species === "ash");
  const twos = (list: readonly Strip[]) => list.flatMap((a, i) => list.slice(i + 1).map((b) => [a, b]));
  let best = Number.POSITIVE_INFINITY;
  for (const c of aspen) {
    for (const m of twos(aspen.filter((each) => each !== c))) {
      for (const i of twos(ash)) best = Math.min(best, Math.abs(weighed({ C: [c], I: i, M: m }) / target - 1));
    }
  }
  return 100 * best;
}

const modulus = fc.integer({ min: 7500, max: 11_000 });
const stiff = fc.integer({ min: 11_500, max: 15_500 });

describe("matchOneSki", () => {
  it("finds a set within the limit exactly when counting out every set finds one, and is nearly as close", () => {
    fc.assert(
      fc.property(
        fc.array(modulus, { minLength: 2, maxLength: 6 }),
        fc.array(stiff, { minLength: 1, maxLength: 5 }),
        fc.tuple(modulus, stiff, stiff, modulus, modulus),
        (aspen, ash, [c, i1, i2, m1, m2]) => {
          const stock = [
            ...aspen.map((value, index) => strip(`a${index}`, "aspen", value)),
            ...ash.map((value, index) => strip(`h${index}`, "ash", value)),
          ];
          const other = {
            C: [strip("c", "aspen", c)],
            I: [strip("i1", "ash", i1), strip("i2", "ash", i2)],
            M: [strip("m1", "aspen", m1), strip("m2", "aspen", m2)],
          };
          const closest = bruteForce(stock, weighed(other));
          const found = matchOneSki({ strips: stock, positions, other, limits });
          expect(found !== null).toBe(closest <= 1.5);
          if (found === null) return;
          const byId = new Map(stock.map((each) => [each.id, each]));
          const taken = Object.fromEntries(
            Object.entries(found.strips).map(([name, ids]) => [name, ids.map((id) => byId.get(id) as Strip)]),
          );
          expect(new Set(Object.values(found.strips).flat()).size).toBe(5);
          expect(taken.I?.every(({ species }) => species === "ash")).toBe(true);
          const off = 100 * (weighed(taken) / weighed(other) - 1);
          expect(found.differencePercent).toBeCloseTo(off, 6);
          expect(Math.abs(off)).toBeLessThanOrEqual(1.5 + 1e-6);
        },
      ),
    );
  });

  it("takes the other ski's own twins when they are in stock", () => {
    const other = {
      C: [strip("c", "aspen", 9000)],
      I: [strip("i1", "ash", 13_000), strip("i2", "ash", 13_400)],
      M: [strip("m1", "aspen", 8800), strip("m2", "aspen", 9100)],
    };
    const twins = Object.values(other).flatMap((list) => list.map((each) => ({ ...each, id: `${each.id}-twin` })));
    const noise = Array.from({ length: 60 }, (_, i) => strip(`n${i}`, i % 2 ? "ash" : "aspen", 7500 + 130 * i));
    const found = matchOneSki({ strips: [...noise, ...twins], positions, other, limits });
    expect(Math.abs(found?.differencePercent ?? 9)).toBeLessThan(0.1);
  });

  it("says which strip the other ski lacks", () => {
    expect(() => matchOneSki({ strips: [], positions, other: {}, limits })).toThrow(/other\.C/);
  });
});
