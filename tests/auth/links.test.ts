import { describe, expect, it } from "vitest";
import { guestByToken, issueLink, newToken, permit, revokeLinks, type Subject } from "#auth";
import { minutesAfter, testNow } from "../support/clock";
import { databaseForTests } from "../support/db";

const db = databaseForTests();
const sheet: Subject = { kind: "sheet", id: "sheet-1" };

describe("private links", () => {
  it("open their own subject and nothing else", async () => {
    const token = await issueLink(db(), sheet, { id: "link-1", now: testNow });
    const guest = await guestByToken(token, testNow);
    expect(guest?.subject).toEqual(sheet);
    if (!guest) return;
    expect(permit(guest.actor, "sheet.read", sheet).ok).toBe(true);
    expect(permit(guest.actor, "sheet.read", { kind: "sheet", id: "sheet-2" }).ok).toBe(false);
    expect(permit(guest.actor, "quote.read", { kind: "quote", id: "sheet-1" }).ok).toBe(false);
    expect(permit(guest.actor, "sheet.read").ok).toBe(false);
  });

  it("carry 256 random bits and are stored only as a hash", async () => {
    const token = await issueLink(db(), sheet, { id: "link-1", now: testNow });
    expect(Buffer.from(token, "base64url")).toHaveLength(32);
    expect(JSON.stringify(await db().privateLink.findMany())).not.toContain(token);
    expect(new Set(Array.from({ length: 1000 }, newToken)).size).toBe(1000);
  });

  it("open nothing once revoked, and revoking ends every link of the subject", async () => {
    const one = await issueLink(db(), sheet, { id: "link-1", now: testNow });
    const two = await issueLink(db(), sheet, { id: "link-2", now: testNow });
    expect(await revokeLinks(db(), sheet, testNow)).toBe(2);
    expect(await guestByToken(one, testNow)).toBeNull();
    expect(await guestByToken(two, testNow)).toBeNull();
    expect(await revokeLinks(db(), sheet, testNow)).toBe(0);
  });

  it("open nothing from the minute they expire", async () => {
    const token = await issueLink(db(), sheet, { id: "link-1", now: testNow, expiresAt: minutesAfter(testNow, 60) });
    expect(await guestByToken(token, minutesAfter(testNow, 59))).not.toBeNull();
    expect(await guestByToken(token, minutesAfter(testNow, 60))).toBeNull();
  });

  it("cannot be guessed from a hash, a prefix or a longer text", async () => {
    const token = await issueLink(db(), sheet, { id: "link-1", now: testNow });
    const [row] = await db().privateLink.findMany();
    for (const wrong of [row?.tokenHash ?? "", token.slice(0, -1), `${token}A`, ""]) {
      expect(await guestByToken(wrong, testNow)).toBeNull();
    }
  });
});
