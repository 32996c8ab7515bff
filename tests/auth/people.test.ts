/** Taking on, letting go, passwords and the first owner: what is refused, what races, and that each is in the record. */
import { describe, expect, it } from "vitest";
import {
  changeOwnPassword,
  isShopEmpty,
  letStaffGo,
  makeFirstOwner,
  offerFirstOwner,
  type Session,
  setFloorCode,
  signIn,
  staffBySession,
  systemActor,
  takeOnStaff,
  visitor,
} from "#auth";
import { minutesAfter, testNow } from "../support/clock";
import { databaseForTests } from "../support/db";

const db = databaseForTests();
const password = "larch and ash 42";
const system = systemActor("test");

async function person(name: string, role: "desk" | "maker" | "owner"): Promise<Session> {
  const email = `${name}@moor.example`;
  const made = await takeOnStaff(system, { email, name, role, password }, testNow);
  if (!made.ok) throw new Error(made.refusal.code);
  return again(email);
}

async function again(email: string, word = password): Promise<Session> {
  const inside = await signIn({ email, password: word, address: "192.0.2.7" }, testNow);
  if (!inside.ok) throw new Error(inside.refusal.code);
  return inside.value;
}

const kinds = async () => (await db().event.findMany({ orderBy: { seq: "asc" } })).map(({ kind }) => kind);

describe("one's own password", () => {
  it("needs the present one, ends one's other sign-ins and keeps this one", async () => {
    const here = await person("ada", "desk");
    const there = await again("ada@moor.example");
    const next = { current: password, password: "kettle gravel moth" };
    expect(await changeOwnPassword(here.actor, { ...next, current: "birch and oak 17" }, testNow)).toMatchObject({
      refusal: { code: "wrong-password", path: "currentPassword" },
    });
    expect(await changeOwnPassword(here.actor, { ...next, password: "ada" }, testNow)).toMatchObject({
      refusal: { code: "password-length", path: "password" },
    });
    expect((await changeOwnPassword(here.actor, next, testNow)).ok).toBe(true);
    expect(await staffBySession(here.token, testNow)).not.toBeNull();
    expect(await staffBySession(there.token, testNow)).toBeNull();
    expect((await again("ada@moor.example", next.password)).actor.name).toBe("ada");
    expect(await changeOwnPassword(visitor(), next, testNow)).toMatchObject({ refusal: { code: "not-allowed" } });
  });

  it("is not guessed by whoever sits down at an open session", async () => {
    const { actor } = await person("ada", "desk");
    const wrong = { current: "birch and oak 17", password: "kettle gravel moth" };
    for (let n = 1; n <= 10; n += 1) await changeOwnPassword(actor, wrong, testNow);
    expect(await changeOwnPassword(actor, { ...wrong, current: password }, testNow)).toMatchObject({
      refusal: { code: "too-many-attempts" },
    });
  });
});

describe("leaving", () => {
  it("ends every sign-in in the same instant, and stands in the record with how many", async () => {
    const owner = await person("ola", "owner");
    const one = await person("mo", "maker");
    const two = await again("mo@moor.example");
    expect((await letStaffGo(owner.actor, one.actor.staffId, testNow)).ok).toBe(true);
    for (const { token } of [one, two]) expect(await staffBySession(token, testNow)).toBeNull();
    expect(await db().event.findMany({ where: { kind: "staff-left" } })).toMatchObject([
      { subjectId: one.actor.staffId, actorName: "ola", data: { sessions: 2 } },
    ]);
    expect(await letStaffGo(owner.actor, one.actor.staffId, testNow)).toMatchObject({
      refusal: { code: "staff-unknown" },
    });
  });

  it("leaves one owner of two who let each other go at once", async () => {
    const ola = await person("ola", "owner");
    const kim = await person("kim", "owner");
    const answers = await Promise.all([
      letStaffGo(ola.actor, kim.actor.staffId, testNow),
      letStaffGo(kim.actor, ola.actor.staffId, testNow),
    ]);
    expect(answers.filter(({ ok }) => ok)).toHaveLength(1);
    expect(answers.find(({ ok }) => !ok)).toMatchObject({ refusal: { code: "last-owner" } });
    expect(await db().staff.count({ where: { role: "owner", closedAt: null } })).toBe(1);
  });

  it("is nothing a desk, a maker or somebody by short code can bring about", async () => {
    const owner = await person("ola", "owner");
    const desk = await person("ida", "desk");
    const byCode = { ...owner.actor, sessionKind: "floor" } as const;
    for (const actor of [desk.actor, (await person("mo", "maker")).actor, byCode, visitor()]) {
      const denied = { ok: false, refusal: { code: "not-allowed" } };
      expect(await letStaffGo(actor, desk.actor.staffId, testNow)).toMatchObject(denied);
      expect(await setFloorCode(actor, { staffId: "somebody", code: null }, testNow)).toMatchObject(denied);
      expect(
        await takeOnStaff(actor, { email: "x@moor.example", name: "X", role: "owner", password }, testNow),
      ).toMatchObject(denied);
    }
  });
});

describe("the first owner", () => {
  const wanted = (code: string) => ({
    code,
    name: "Ola Brandreth",
    email: "Ola@moor.example",
    password,
    address: "192.0.2.7",
  });

  it("is made by the code from the terminal, once, and nobody after", async () => {
    expect(await isShopEmpty()).toBe(true);
    const code = (await offerFirstOwner(testNow)) ?? "";
    const other = (await offerFirstOwner(testNow)) ?? "";
    expect(code).toMatch(/^([A-HJ-NP-Z2-9]{4}-){3}[A-HJ-NP-Z2-9]{4}$/);
    expect(JSON.stringify(await db().firstOwnerCode.findMany())).not.toContain(code);
    expect(await makeFirstOwner(visitor(), wanted("ABCD-EFGH-JKLM-NPQR"), testNow)).toMatchObject({
      refusal: { code: "wrong-first-owner-code", path: "passcode" },
    });
    expect(await makeFirstOwner(visitor(), { ...wanted(code), password: "short" }, testNow)).toMatchObject({
      refusal: { code: "password-length" },
    });
    // As somebody types it: small letters, no dashes.
    const typed = code.toLowerCase().replaceAll("-", " ");
    expect((await makeFirstOwner(visitor(), wanted(typed), testNow)).ok).toBe(true);
    expect((await again("ola@moor.example")).actor.role).toBe("owner");
    for (const late of [code, other])
      expect(await makeFirstOwner(visitor(), wanted(late), testNow)).toMatchObject({
        refusal: { code: "shop-has-people" },
      });
    expect(await offerFirstOwner(testNow)).toBeNull();
    expect(await db().firstOwnerCode.count()).toBe(0);
    expect((await kinds())[0]).toBe("first-owner-made");
  });

  it("is one, when two type the code at once", async () => {
    const code = (await offerFirstOwner(testNow)) ?? "";
    const rivals = ["ada@moor.example", "bo@moor.example"].map((email) =>
      makeFirstOwner(visitor(), { ...wanted(code), email }, testNow),
    );
    expect((await Promise.all(rivals)).filter(({ ok }) => ok)).toHaveLength(1);
    expect(await db().staff.count()).toBe(1);
  });

  it("is not found by trying", async () => {
    const code = (await offerFirstOwner(testNow)) ?? "";
    for (let n = 1; n <= 10; n += 1) await makeFirstOwner(visitor(), wanted(`WRONG-${n}`), testNow);
    expect(await makeFirstOwner(visitor(), wanted(code), testNow)).toMatchObject({
      refusal: { code: "too-many-attempts" },
    });
    expect((await makeFirstOwner(visitor(), wanted(code), minutesAfter(testNow, 15))).ok).toBe(true);
  });
});

describe("the demo's published passwords", () => {
  it("count on the shop's own machine alone, until they are changed", async () => {
    const demo = { email: "owner@demo.example", name: "Demo", role: "owner", password: "larch-owner-demo" } as const;
    expect((await takeOnStaff(system, { ...demo, isDemoPassword: true }, testNow)).ok).toBe(true);
    const from = (address: string, host?: string) =>
      signIn({ email: demo.email, password: demo.password, address, host }, testNow);
    for (const [address, host] of [["127.0.0.1"], ["::1", "localhost"], ["::ffff:127.0.0.1", "127.0.0.1"]] as const)
      expect([address, (await from(address, host)).ok]).toEqual([address, true]);
    for (const [address, host] of [
      ["192.0.2.7", "localhost"],
      ["127.0.0.1", "skis.example"],
      ["unknown", undefined],
    ] as const)
      expect(await from(address, host)).toMatchObject({ refusal: { code: "demo-here-only" } });
    // Nobody but the program's first start makes such a person.
    const { actor } = await again(demo.email, demo.password).catch(() => person("ola", "owner"));
    expect(await takeOnStaff(actor, { ...demo, email: "b@demo.example", isDemoPassword: true }, testNow)).toMatchObject(
      { refusal: { code: "password-guessable" } },
    );
  });
});
