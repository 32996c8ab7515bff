/** What the database gave is translated in lib/data; above it nothing is called an id, a day, a state or JSON's meaning by a cast. */
import { describe, expect, it } from "vitest";
import { sources, withoutComments } from "../support/sources";

const importLine = /^\s*(import|export)\b[^;]*;/gm;
const named =
  /(?<![\w$])(?:as (?:[A-Z]\w*Id|IsoDate|[A-Z]\w*State|[A-Z]\w*Json)\b|as unknown as\b|fromJson\b|frozen<)/g;
const anyType = /(?<![\w$.])as (?:readonly )?[A-Z]\w*/g;

/** How often each file casts so; files that do not are left out. */
function casts(pattern: RegExp, ...places: readonly string[]): Readonly<Record<string, number>> {
  const seen = sources(...places);
  expect(seen.length).toBeGreaterThan(50);
  return Object.fromEntries(
    seen.flatMap(({ path, text }) => {
      const found = withoutComments(text).replaceAll(importLine, "").match(pattern) ?? [];
      return found.length === 0 ? [] : [[path, found.length] as const];
    }),
  );
}

describe("above the database", () => {
  it("no id, day, state or JSON value is cast", () => {
    expect(casts(named, "lib/services", "lib/shop")).toEqual({});
  });

  it("use cases and the shop's rooms cast to a type only where words of the catalogue become a paper's", () => {
    // May only shrink.
    expect(casts(anyType, "lib/services", "lib/shop")).toEqual({ "lib/services/papers/floor-facts.ts": 1 });
  });

  it("pages make ids by name and cast none", () => {
    // May only shrink: what a browser form holds while it is being filled in.
    expect(casts(named, "app")).toEqual({ "app/_ui/sheet/sheet-values.ts": 1 });
  });

  it("the pattern knows what it looks for", () => {
    const text = "a as PairId, b as IsoDate | null, c as OrderState, d as unknown as X, fromJson<Y>(e), f as const";
    expect(text.match(named)).toHaveLength(5);
    expect("import { x as OrderId } from 'y';".replaceAll(importLine, "").match(named)).toBeNull();
  });
});
