import { describe, expect, it } from "vitest";
import { isoDate } from "#engine/units";
import { clockText, dayText, money, numberText, plainNumber, shortHash } from "#papers/parts/format";

describe("money", () => {
  it("writes whole cents, and credits with a minus sign", () => {
    expect(money(192_500)).toBe("$1,925.00");
    expect(money(-28_875)).toBe("−$288.75");
    expect(money(5)).toBe("$0.05");
  });
});

describe("numberText", () => {
  it("rounds half up on the decimal string and keeps thousands apart", () => {
    expect(numberText(188.85, 1)).toBe("188.9");
    expect(numberText(1460.95, 1)).toBe("1\u00a0461.0");
    expect(plainNumber(5, 1)).toBe("5");
    expect(plainNumber(5.5, 1)).toBe("5.5");
  });
});

describe("dayText", () => {
  it("knows the weekday of civil dates", () => {
    // Published calendars: 1 January 2000 was a Saturday, 29 February 2024 a Thursday, 1 January 1900 a Monday.
    expect(dayText(isoDate("2000-01-01"))).toBe("Sat\u00a01\u00a0Jan\u00a02000");
    expect(dayText(isoDate("2024-02-29"))).toBe("Thu\u00a029\u00a0Feb\u00a02024");
    expect(dayText(isoDate("1900-01-01"))).toBe("Mon\u00a01\u00a0Jan\u00a01900");
  });
});

describe("clockText", () => {
  it("prints the shop's own clock whatever zone the machine is in", () => {
    expect(clockText("2026-11-25T09:32")).toBe("25\u00a0Nov\u00a02026, 09:32");
  });
});

describe("shortHash", () => {
  it("groups the first twelve digits", () => {
    expect(shortHash("3fa9c17e52d0b8846a1c")).toBe("3fa9 c17e 52d0");
  });
});
