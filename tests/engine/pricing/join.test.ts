import { describe, expect, it } from "vitest";
import { loadCatalog, priceBookNamed } from "#catalog";
import { joinPrices, type Price, priceSpec } from "#engine/pricing";
import { plainSpec } from "./plain-spec";

const catalog = loadCatalog();
const book = priceBookNamed(catalog, "PB-3");

function priced(destination: Price["destination"], carbon = false): Price {
  const spec = carbon ? { ...plainSpec, reinforcements: ["carbon-stringers"] } : plainSpec;
  const price = priceSpec(spec, book, catalog.build, { destination });
  if (!price.ok) throw new Error(JSON.stringify(price.refusal));
  return price.value;
}

describe("joinPrices", () => {
  it("leaves one price as it is", () => {
    const price = priced("home");
    expect(joinPrices([price])).toBe(price);
  });

  it("counts equal lines and adds everything up to the cent", () => {
    const prices = [priced("home"), priced("home", true), priced("home")];
    const joined = joinPrices(prices);
    const sum = (of: (price: Price) => number) => prices.reduce((total, price) => total + of(price), 0);
    for (const key of [
      "exTaxCents",
      "shippingCents",
      "taxCents",
      "totalCents",
      "depositCents",
      "balanceCents",
    ] as const) {
      expect(joined[key], key).toBe(sum((price) => price[key]));
    }
    expect(joined.lines[0]).toMatchObject({ quantity: 3, lineCents: 3 * (prices[0]?.lines[0]?.unitCents ?? 0) });
    expect(joined.lines.reduce((total, { lineCents }) => total + lineCents, 0)).toBe(joined.exTaxCents);
    expect(joined.lines).toHaveLength(prices[1]?.lines.length ?? 0);
  });

  it("adds nothing that goes to two places, and not nothing", () => {
    expect(() => joinPrices([priced("home"), priced("abroad")])).toThrow(/abroad does not go with home/);
    expect(() => joinPrices([])).toThrow(/0 prices/);
  });
});
