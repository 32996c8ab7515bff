import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { isoDate } from "#engine/units";
import { addDays, instantOfShopMinute, shopClock, shopDay, shopMinuteOf, startOfShopDay } from "#shop/time/shop-time";

const denver = "America/Denver";

describe("shop time", () => {
  it("is seven hours behind UTC in winter and six in summer", () => {
    expect(shopDay(new Date("2026-01-10T06:59:00Z"), denver)).toBe("2026-01-09");
    expect(shopDay(new Date("2026-01-10T07:00:00Z"), denver)).toBe("2026-01-10");
    expect(shopClock(new Date("2026-07-10T18:05:00Z"), denver)).toBe("2026-07-10T12:05");
    expect(startOfShopDay(isoDate("2026-07-10"), denver).toISOString()).toBe("2026-07-10T06:00:00.000Z");
  });

  it("keeps the start of the days on which clocks change (8 March and 1 November 2026)", () => {
    expect(startOfShopDay(isoDate("2026-03-08"), denver).toISOString()).toBe("2026-03-08T07:00:00.000Z");
    expect(startOfShopDay(isoDate("2026-03-09"), denver).toISOString()).toBe("2026-03-09T06:00:00.000Z");
    expect(startOfShopDay(isoDate("2026-11-02"), denver).toISOString()).toBe("2026-11-02T07:00:00.000Z");
    expect(addDays(isoDate("2026-02-28"), 1)).toBe("2026-03-01");
  });

  it("finds the minutes after the clock was set forward, and the first of two when it was set back", () => {
    // Denver, from the tz database: 2024-03-10 02:00 MST becomes 03:00 MDT at 09:00 UTC; 2024-11-03 shows 01:30 twice.
    for (const instant of [
      "2024-03-10T09:00:00Z",
      "2024-03-10T08:59:00Z",
      "2024-03-10T15:30:00Z",
      "2024-11-03T07:30:00Z",
    ]) {
      const minute = shopMinuteOf(new Date(instant), denver);
      expect(instantOfShopMinute(minute, denver).toISOString()).toBe(instant.replace("Z", ".000Z"));
    }
  });

  it("finds an instant that shows the minute, whatever the instant was", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1_700_000_000, max: 1_900_000_000 }), (seconds) => {
        const minute = shopMinuteOf(new Date(seconds * 1000), denver);
        expect(shopMinuteOf(instantOfShopMinute(minute, denver), denver)).toBe(minute);
      }),
      { examples: [[1_710_061_200]] },
    );
  });
});
