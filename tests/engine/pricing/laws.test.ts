/** Laws of money: nothing is lost or made by rounding. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { loadCatalog, priceBookNamed } from "#catalog";
import { type Price, priceSpec, shareHalfUpCents, splitByLargestRemainder } from "#engine/pricing";
import { plainSpec } from "./plain-spec";

const catalog = loadCatalog();
const book = priceBookNamed(catalog, "PB-3");
const { build } = catalog;

const anyPrice: fc.Arbitrary<Price> = fc
  .record({
    model: fc.constantFrom(...build.models.map((model) => model.id)),
    core: fc.constantFrom(...build.blends.map((blend) => blend.id)),
    reinforcements: fc.subarray(build.reinforcements.map((each) => each.id)),
    flexRatio: fc.double({ min: 0.62, max: 1.44, noNaN: true }),
    tipTailProtectors: fc.boolean(),
    // Odd cents, so that every rounding is met.
    extraCents: fc.integer({ min: 0, max: 999_999 }),
    destination: fc.constantFrom("home", "domestic", "abroad", "collect"),
    discount: fc.option(fc.constantFrom("repeat-order", "second-pair", "pro-deal")),
    isRushed: fc.boolean(),
  })
  .map(({ extraCents, destination, discount, isRushed, ...spec }) => {
    const odd = { ...book, optionCents: { ...book.optionCents, odd: { label: "Odd", cents: extraCents } } };
    const why = { reason: "test", approvedBy: "owner" };
    const result = priceSpec({ ...plainSpec, ...spec }, odd, build, {
      destination,
      extras: [{ code: "odd", quantity: 3 }],
      ...(discount === null ? {} : { discounts: [{ code: discount, ...why }] }),
      ...(isRushed ? { rush: why } : {}),
    });
    if (!result.ok) throw new Error(JSON.stringify(result.refusal));
    return result.value;
  });

const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);

describe("every price", () => {
  it("has lines that sum to its totals, to the cent", () => {
    fc.assert(
      fc.property(anyPrice, (price) => {
        expect(sum(price.lines.map((line) => line.lineCents))).toBe(price.exTaxCents);
        expect(sum(price.lines.map((line) => line.taxCents))).toBe(price.taxCents);
        expect(price.exTaxCents + price.shippingCents + price.taxCents).toBe(price.totalCents);
        expect(price.depositCents + price.balanceCents).toBe(price.totalCents);
        for (const line of price.lines) expect(line.unitCents * line.quantity).toBe(line.lineCents);
      }),
    );
  });

  it("holds whole cents alone", () => {
    fc.assert(
      fc.property(anyPrice, (price) => {
        const amounts = Object.entries(price).filter(([name]) => name.endsWith("Cents"));
        expect(amounts).toHaveLength(6);
        for (const [, amount] of amounts) expect(Number.isSafeInteger(amount)).toBe(true);
        for (const line of price.lines) expect(Number.isSafeInteger(line.lineCents)).toBe(true);
      }),
    );
  });
});

describe("shareHalfUpCents", () => {
  it("rounds half a cent away from zero", () => {
    // 50 % of 0.01; 6 % of 0.25 = 0.015; 6 % of 0.24 = 0.0144
    expect(shareHalfUpCents(1, 5_000)).toBe(1);
    expect(shareHalfUpCents(25, 600)).toBe(2);
    expect(shareHalfUpCents(24, 600)).toBe(1);
    expect(shareHalfUpCents(-25, 600)).toBe(-2);
  });

  it("is within half a cent of the exact share", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -10_000_000, max: 10_000_000 }),
        fc.integer({ min: 0, max: 10_000 }),
        (amount, rate) => {
          const twiceOff = 2n * BigInt(shareHalfUpCents(amount, rate)) * 10_000n - 2n * BigInt(amount) * BigInt(rate);
          expect(twiceOff <= 10_000n && twiceOff >= -10_000n).toBe(true);
        },
      ),
    );
  });

  it("cannot take a share of a broken cent", () => {
    expect(() => shareHalfUpCents(0.5, 100)).toThrow(/amountCents 0.5/);
    expect(() => shareHalfUpCents(100, -1)).toThrow(/basisPoints -1/);
  });
});

describe("splitByLargestRemainder", () => {
  it("gives left-over cents to the largest remainders, the earlier of equals first", () => {
    expect(splitByLargestRemainder(100, [1, 1, 1])).toEqual([34, 33, 33]);
    // 10·(1, 5, 4)/10 exactly; 7·(3, 3, 1)/7 exactly; 5·(2, 3, 3)/8 = 1.25, 1.875, 1.875
    expect(splitByLargestRemainder(5, [2, 3, 3])).toEqual([1, 2, 2]);
  });

  it("makes shares that sum to the amount and lie within a cent of their due", () => {
    const weights = fc.array(fc.integer({ min: -50_000, max: 500_000 }), { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1_000_000 }), weights, (amount, parts) => {
        const whole = sum(parts);
        fc.pre(whole > 0);
        const shares = splitByLargestRemainder(amount, parts);
        expect(sum(shares)).toBe(amount);
        for (const [index, share] of shares.entries()) {
          expect(Math.abs(share - (amount * (parts[index] ?? 0)) / whole)).toBeLessThan(1 + 1e-6);
        }
      }),
    );
  });

  it("cannot split among nothing", () => {
    expect(() => splitByLargestRemainder(5, [])).toThrow(/weights sum to 0/);
  });
});
