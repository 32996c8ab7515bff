/** Days named in letters, quotes and holds: the shop's own day, whatever the zone of the instant or of the reader. */
import { describe, expect, it } from "vitest";
import { isoDate } from "#engine/units";
import type { BaseNeed, BaseShortage, PromiseEffect } from "#services";
import { colourOffer } from "#services/planning/breakdowns/colour-offer";
import { delayLetter, longDay, replyBy } from "#services/planning/breakdowns/delay-letter";
import { lastDayToWait, softHoldUntil } from "#services/promises/slots";
import { validUntil } from "#services/quotes/freeze";
import { acceptableUntil, quoteStateOf } from "#shop/order/quote-state";

const denver = "America/Denver";

const effect = {
  skierFirstName: "Robin",
  ski: "Midlow 95, 178 cm",
  promisedOn: isoDate("2026-12-04"),
  before: { p50: isoDate("2026-12-01"), p90: isoDate("2026-12-03") },
  after: { p50: isoDate("2026-12-31"), p90: isoDate("2027-01-01") },
} as PromiseEffect;

describe("days in words", () => {
  it.each([
    ["2026-01-01", "1 January 2026"],
    ["2026-03-08", "8 March 2026"],
    ["2026-11-01", "1 November 2026"],
    ["2026-12-31", "31 December 2026"],
    ["2028-02-29", "29 February 2028"],
  ])("%s is %s", (day, words) => {
    expect(longDay(day)).toBe(words);
  });
});

describe("an answer is asked for in a week, counted on the shop's calendar", () => {
  it.each([
    // 10 November, 10:00 and 23:59 in Denver, then midnight.
    ["2026-11-10T17:00:00Z", "2026-11-17"],
    ["2026-11-11T06:59:00Z", "2026-11-17"],
    ["2026-11-11T07:00:00Z", "2026-11-18"],
    // Over the night on which clocks are set back: 31 October 23:30 is 05:30 UTC.
    ["2026-11-01T05:30:00Z", "2026-11-07"],
    ["2026-12-29T12:00:00Z", "2027-01-05"],
  ])("from %s until %s", (now, day) => {
    expect(replyBy(new Date(now))).toBe(day);
  });
});

describe("the letter of a delay", () => {
  const now = new Date("2026-11-11T05:00:00Z");

  it("names the old day, then the new ones, then the day to answer by", () => {
    const { body, data } = delayLetter(now, "press-down", effect);
    expect(body.split("\n\n")).toEqual([
      "Dear Robin,",
      "your pair (Midlow 95, 178 cm) was promised for 4 December 2026. It will now most likely be ready between 31 December 2026 and 1 January 2027; nine of ten pairs in its place are ready by the later day.",
      "The reason: our press was out of order.",
      "You can accept the new date, or cancel and get your money back. Please tell us by 17 November 2026. Until you have told us, nothing changes.",
      "With kind regards, Thistle Yard",
    ]);
    expect(data).toEqual({
      oldDate: "2026-12-04",
      newDates: { p50: "2026-12-31", p90: "2027-01-01" },
      reason: "press-down",
      options: ["accept", "cancel-and-refund"],
      replyBy: "2026-11-17",
    });
  });

  it("says how sure the new days are, where that was told", () => {
    const sure = { ...effect, after: { ...effect.after, shares: { p50: 0.61, p90: 0.93 } } };
    expect(delayLetter(now, "press-down", sure).body.split("\n\n")[1]).toBe(
      "your pair (Midlow 95, 178 cm) was promised for 4 December 2026. It will now be ready between 31 December 2026 and 1 January 2027: of pairs in its place, three of five by the first day, 19 of 20 by the last.",
    );
  });

  it.each([
    ["press-down", "our press was out of order"],
    ["person-away", "one of our makers cannot work"],
    ["supplier-late", "material we ordered has not arrived"],
    ["base-short", "the base colour you chose has run out"],
    ["ski-rebuild", "one ski did not meet our own limits"],
    ["proof-late", "the proof was approved later"],
    ["flood", "work in the shop takes longer than planned"],
  ])("gives the reason of %s", (kind, words) => {
    expect(delayLetter(now, kind, effect).body).toContain(`The reason: ${words}`);
  });
});

describe("the letter that offers another colour", () => {
  it("names the day of the new material, the days of waiting and the day to answer by, each in its place", () => {
    const base = { colour: "ember", label: "Ember red", expectedOn: isoDate("2026-12-15") } as BaseShortage;
    const alternatives = ["lake", "bone"].map((id) => ({ id, label: id === "lake" ? "Lake blue" : "Bone white" }));
    const need = { skierFirstName: "Robin", counterchangedWith: null, alternatives } as unknown as BaseNeed;
    const { body, data } = colourOffer(new Date("2026-11-11T05:00:00Z"), base, need, "Midlow 95, 178 cm", effect);
    const days = [...body.matchAll(/\d+ \w+ 20\d\d/g)].map(([day]) => day);
    expect(days).toEqual(["15 December 2026", "31 December 2026", "1 January 2027", "17 November 2026"]);
    expect(body).toContain("Lake blue or Bone white");
    expect(data).toMatchObject({ colour: "ember", expectedOn: "2026-12-15", replyBy: "2026-11-17" });
  });
});

describe("a quote holds to the end of its last day in the shop", () => {
  // 30 days from 10 November are the 10th of December; its end is midnight in Denver, 07:00 UTC in winter, 06:00 in summer.
  it.each([
    ["2026-11-10T17:00:00Z", 30, "2026-12-11T07:00:00.000Z"],
    ["2026-11-11T06:59:59Z", 30, "2026-12-11T07:00:00.000Z"],
    ["2026-11-11T07:00:00Z", 30, "2026-12-12T07:00:00.000Z"],
    ["2026-02-20T19:00:00Z", 30, "2026-03-23T06:00:00.000Z"],
    ["2026-10-20T19:00:00Z", 30, "2026-11-20T07:00:00.000Z"],
    ["2026-11-10T17:00:00Z", 1, "2026-11-12T07:00:00.000Z"],
  ])("from %s, %d days: until %s", (now, days, end) => {
    expect(validUntil(new Date(now), days, denver).toISOString()).toBe(end);
  });

  const end = new Date("2026-12-11T07:00:00Z");
  const quote = { state: "open", validUntil: end, honouredUntil: null, next: null };
  const justBefore = new Date(end.getTime() - 1);

  it.each([
    ["a moment before its end", quote, justBefore, "open"],
    ["at its end", quote, end, "expired"],
    ["honoured longer", { ...quote, honouredUntil: new Date("2026-12-20T07:00:00Z") }, end, "open"],
    ["honoured, and over", { ...quote, honouredUntil: end }, end, "expired"],
    ["honoured to an earlier day", { ...quote, honouredUntil: new Date("2026-12-01T07:00:00Z") }, justBefore, "open"],
    ["accepted, years on", { ...quote, state: "accepted" }, new Date("2030-01-01"), "accepted"],
    ["withdrawn", { ...quote, state: "withdrawn" }, justBefore, "withdrawn"],
    ["replaced", { ...quote, state: "withdrawn", next: { id: "q-2" } }, justBefore, "replaced"],
  ])("%s it is %s", (_when, standing, now, state) => {
    expect(quoteStateOf(standing, now as Date)).toBe(state);
  });

  it("is told by the later of its two ends", () => {
    const later = new Date("2026-12-20T07:00:00Z");
    expect(acceptableUntil({ ...quote, honouredUntil: later })).toEqual(later);
    expect(acceptableUntil(quote)).toEqual(end);
  });
});

describe("a place is kept five working days, to the end of the last", () => {
  it.each([
    // Tuesday 10 November; late that evening in Denver; Thursday before Thanksgiving week; the Wednesday of it.
    ["2026-11-10T17:00:00Z", "2026-11-17", "2026-11-18T07:00:00.000Z"],
    ["2026-11-11T06:59:00Z", "2026-11-17", "2026-11-18T07:00:00.000Z"],
    ["2026-11-19T17:00:00Z", "2026-11-30", "2026-12-01T07:00:00.000Z"],
    ["2026-11-25T17:00:00Z", "2026-12-04", "2026-12-05T07:00:00.000Z"],
  ])("from %s until %s", (from, day, end) => {
    expect(lastDayToWait(new Date(from))).toBe(day);
    expect(softHoldUntil(new Date(from)).toISOString()).toBe(end);
  });
});
