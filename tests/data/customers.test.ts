/** Whatever a guest types of a known number, the rows that the desk knows stay as they are. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { customerOf, isSameName } from "#data/customers";
import { transaction } from "#data/transaction";
import { databaseForTests } from "../support/db";

const db = databaseForTests();
const number = "+13035550101";
const at = new Date("2026-11-10T17:00:00Z");

describe("a guest's word about a known number", () => {
  it("changes no column of any row the desk has written", async () => {
    const robin = { name: "Robin Alder", email: "robin@mail.example", phone: "303 555 0101", phoneNormalised: number };
    const known = { ...robin, phoneForms: [], address: null, by: "desk" } as const;
    await transaction(db(), (tx) => customerOf(tx, "known", known, at));
    const before = await db().customer.findUnique({ where: { id: "known" } });
    const names = fc.oneof(fc.constantFrom("Robin Alder", "ROBIN ALDER", "robin  alder"), fc.string({ minLength: 1 }));
    const mails = fc.constantFrom(null, "robin@mail.example", "ROBIN@mail.example", "x@evil.example");
    let next = 0;
    await fc.assert(
      fc.asyncProperty(names, mails, fc.string(), async (typedName, email, line) => {
        const name = typedName.replaceAll("\0", "");
        next += 1;
        const address = { lines: [line.replaceAll("\0", "")], town: "x", postcode: "x", country: "US" };
        const typed = { name, email, phone: "(303) 555-0101", phoneNormalised: number, phoneForms: [], address };
        const given = await transaction(db(), (tx) => customerOf(tx, `guest-${next}`, { ...typed, by: "skier" }, at));
        expect(await db().customer.findUnique({ where: { id: "known" } })).toEqual(before);
        expect(given.before).toBeNull();
        // The same row only for the same name and no other mail.
        const isOwn = isSameName(name, robin.name) && (email === null || email.toLowerCase() === robin.email);
        if (isOwn || given.customer.id === "known") expect([given.customer.id, isOwn]).toEqual(["known", true]);
      }),
      { numRuns: 60 },
    );
  });
});
