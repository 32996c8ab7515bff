/** How long what opens something goes on opening it, and how often somebody may try: the shop's own rules, no source. */
import { describe, expect, it } from "vitest";
import { countAttempt, issueLink, type Subject } from "#auth";
import { endsAt, idleMinutesFor, isOver, sessionHours } from "#auth/idle";
import { endLinksSoon, guestByToken, linkEnd, linkStanding, renewLinks, revokeLinks } from "#auth/links";
import { signInLimits } from "#auth/rate-limit";
import { newReadableCode, readableCode } from "#auth/tokens";
import { transaction } from "#data/transaction";
import { minutesAfter, testNow } from "../support/clock";
import { databaseForTests } from "../support/db";

const db = databaseForTests();
const daysAfter = (days: number) => minutesAfter(testNow, days * 24 * 60);

describe("a sign-in", () => {
  it("is for a working day with its overtime", () => {
    expect(sessionHours).toBe(14);
  });

  it.each([
    ["owner", true, 30],
    ["owner", false, 30],
    ["desk", true, 30],
    ["desk", false, 30],
    ["maker", true, 600],
    ["maker", false, 30],
  ] as const)("of the %s, device known: %s, bears %d minutes of rest", (role, isKnown, minutes) => {
    expect(idleMinutesFor(role, isKnown)).toBe(minutes);
  });

  it("is over at the earlier of its two ends, to the millisecond", () => {
    const times = (idleMinutes: number, hours: number) => ({
      lastSeenAt: testNow,
      idleMinutes,
      expiresAt: minutesAfter(testNow, hours * 60),
    });
    for (const [times_, minutes] of [
      [times(30, 14), 30],
      [times(600, 1), 60],
    ] as const) {
      const end = minutesAfter(testNow, minutes);
      expect(endsAt(times_ as never)).toEqual(end);
      expect(isOver(times_ as never, new Date(end.getTime() - 1))).toBe(false);
      expect(isOver(times_ as never, end)).toBe(true);
    }
  });
});

describe("tries", () => {
  it.each([
    ["account", 10],
    ["address", 30],
    ["knownDevice", 10],
    ["floorPerson", 5],
    ["floorDevice", 20],
    ["firstOwner", 10],
  ] as const)("of %s: %d in a quarter of an hour, then none until it is over", async (name, allowed) => {
    const limit = signInLimits[name];
    for (let n = 1; n <= allowed; n += 1)
      expect([n, (await countAttempt(db(), limit, "x", testNow)).ok]).toEqual([n, true]);
    expect(await countAttempt(db(), limit, "x", minutesAfter(testNow, 14))).toMatchObject({
      ok: false,
      refusal: { retryAfterMinutes: 1, tries: allowed + 1 },
    });
    expect((await countAttempt(db(), limit, "y", testNow)).ok).toBe(true);
    expect((await countAttempt(db(), limit, "x", minutesAfter(testNow, 15))).ok).toBe(true);
  });
});

describe("a private link", () => {
  it.each([
    ["sheet", 180],
    ["quote", 180],
    ["club", 180],
    ["order", 730],
    ["pair", 730],
    ["wall", 365],
  ] as const)("to a %s works for %d days, whether or not its end was told", async (kind, days) => {
    expect(linkEnd(kind, testNow)).toEqual(daysAfter(days));
    const token = await issueLink(db(), { kind, id: "one" }, { id: "link-1", now: testNow });
    expect(await guestByToken(token, new Date(daysAfter(days).getTime() - 1))).not.toBeNull();
    expect(await guestByToken(token, daysAfter(days))).toBeNull();
  });

  const order: Subject = { kind: "order", id: "o-1" };
  const other: Subject = { kind: "order", id: "o-2" };
  const link = (id: string, subject: Subject, days: number) =>
    issueLink(db(), subject, { id, now: testNow, expiresAt: daysAfter(days) });
  const ends = async () =>
    Object.fromEntries((await db().privateLink.findMany()).map(({ id, expiresAt }) => [id, expiresAt]));

  it("to what has come to its end can be read for sixty days more at most", async () => {
    for (const [id, subject, days] of [
      ["long", order, 700],
      ["short", order, 10],
      ["elsewhere", other, 700],
    ] as const)
      await link(id, subject, days);
    await transaction(db(), (tx) => endLinksSoon(tx, order, testNow));
    expect(await ends()).toEqual({ long: daysAfter(60), short: daysAfter(10), elsewhere: daysAfter(700) });
  });

  it("counts as open until its end; those that are over are told when none is open, those closed by hand never", async () => {
    const standing = async (now = testNow) => linkStanding(db(), order, now);
    expect(await standing()).toEqual({ open: 0, over: 0, until: null });
    await link("a", order, 10);
    await link("b", order, 20);
    await link("c", other, 90);
    expect(await standing()).toEqual({ open: 2, over: 0, until: daysAfter(20) });
    expect(await standing(daysAfter(10))).toEqual({ open: 1, over: 1, until: daysAfter(20) });
    expect(await standing(daysAfter(30))).toEqual({ open: 0, over: 2, until: daysAfter(20) });
    await transaction(db(), (tx) => renewLinks(tx, order, daysAfter(40)));
    expect(await standing(daysAfter(30))).toEqual({ open: 2, over: 0, until: daysAfter(40) });
    expect((await ends()).c).toEqual(daysAfter(90));
    await revokeLinks(db(), order, daysAfter(30));
    expect(await standing(daysAfter(30))).toEqual({ open: 0, over: 0, until: null });
  });
});

describe("a code to read aloud", () => {
  it("is sixteen signs in four groups that nobody takes for one another, and is typed in any way", () => {
    const codes = Array.from({ length: 300 }, newReadableCode);
    for (const code of codes) expect(code).toMatch(/^[A-HJ-NP-Z2-9]{4}(-[A-HJ-NP-Z2-9]{4}){3}$/);
    // 80 bits: none twice; each of 32 signs among 4,800.
    expect(new Set(codes).size).toBe(300);
    expect(new Set(codes.join("").replaceAll("-", "")).size).toBe(32);
    expect(readableCode(" k7qf 9xwm-2HTB.pa4e ")).toBe("K7QF9XWM2HTBPA4E");
  });
});
