import { beforeEach, describe, expect, it } from "vitest";
import {
  changePassword,
  countAttempt,
  letStaffGo,
  sessionHours,
  signIn,
  signOut,
  staffBySession,
  systemActor,
  takeOnStaff,
  visitor,
} from "#auth";
import { idleMinutes } from "#auth/idle";
import { signInLimits } from "#auth/rate-limit";
import { minutesAfter, testNow } from "../support/clock";
import { databaseForTests } from "../support/db";

const db = databaseForTests();
const password = "larch and ash 42";
const owner = systemActor("test");
let staffId: string;

beforeEach(async () => {
  const made = await takeOnStaff(
    owner,
    { email: "Desk@Thistle-Yard.example", name: "Desk", role: "desk", password },
    testNow,
  );
  if (!made.ok) throw new Error(made.refusal.code);
  staffId = made.value.id;
});

function tryPassword(word: string, address = "192.0.2.7", email = "desk@thistle-yard.example", at = testNow) {
  return signIn({ email, password: word, address }, at);
}

async function session() {
  const result = await tryPassword(password);
  if (!result.ok) throw new Error(result.refusal.code);
  return result.value;
}

describe("signIn", () => {
  it("opens a session for the right password, in whatever case the address is typed", async () => {
    const result = await tryPassword(password, "192.0.2.7", " DESK@thistle-yard.example ");
    expect(result).toMatchObject({ ok: true, value: { actor: { kind: "staff", staffId, role: "desk" } } });
  });

  it("stores neither the password nor the token", async () => {
    const { token } = await session();
    const everything = JSON.stringify([await db().staff.findMany(), await db().staffSession.findMany()]);
    expect(everything).not.toContain(token);
    expect(everything).not.toContain(password);
    // RFC 9106 names argon2id; its encoded form tells memory (KiB), passes and lanes.
    expect(everything).toContain("$argon2id$v=19$m=19456,t=2,p=1$");
  });

  it("cannot tell an unknown address from a wrong password", async () => {
    const unknown = await tryPassword(password, "192.0.2.7", "nobody@thistle-yard.example");
    const wrong = await tryPassword("wrong password");
    expect(unknown).toEqual({ ok: false, refusal: { code: "wrong-sign-in", path: "password" } });
    expect(wrong).toEqual(unknown);
  });

  it("refuses an account after ten wrong tries from ever new addresses, and says for how long", async () => {
    for (let n = 1; n <= 10; n += 1) await tryPassword("wrong password", `192.0.2.${n}`);
    expect(await tryPassword(password, "192.0.2.99", undefined, minutesAfter(testNow, 5))).toEqual({
      ok: false,
      refusal: { code: "too-many-attempts", limit: "sign-in account", retryAfterMinutes: 10, tries: 11 },
    });
    expect((await tryPassword(password, "192.0.2.99", undefined, minutesAfter(testNow, 15))).ok).toBe(true);
  });

  it("refuses an address after thirty tries on ever new accounts", async () => {
    await Promise.all(
      Array.from({ length: 30 }, (_, n) =>
        countAttempt(db(), signInLimits.address, "192.0.2.7", minutesAfter(testNow, n / 10)),
      ),
    );
    expect(await tryPassword(password)).toMatchObject({ ok: false, refusal: { limit: "sign-in address" } });
  });

  it("counts afresh after a success", async () => {
    for (let round = 0; round < 2; round += 1) {
      for (let n = 1; n <= 9; n += 1) await tryPassword("wrong password", `192.0.2.${round * 20 + n}`);
      expect((await tryPassword(password, `192.0.2.${100 + round}`)).ok).toBe(true);
    }
  });
});

describe("countAttempt", () => {
  it("lets through exactly as many as allowed of twenty at once", async () => {
    const limit = { name: "test", allowed: 7, windowMinutes: 15 };
    const outcomes = await Promise.all(Array.from({ length: 20 }, () => countAttempt(db(), limit, "who", testNow)));
    expect(outcomes.filter((outcome) => outcome.ok)).toHaveLength(7);
    expect((await db().rateCounter.findMany()).map((row) => row.count)).toEqual([20]);
  });
});

describe("staffBySession", () => {
  it("knows a person at work until the session's last hour, however busy they are", async () => {
    const { token } = await session();
    expect(await staffBySession(token, testNow)).toMatchObject({ staffId, role: "desk", sessionKind: "full" });
    // Somebody who does something every 25 minutes, up to a minute before the end.
    for (let minute = 25; minute < sessionHours * 60; minute += 25)
      expect([minute, await staffBySession(token, minutesAfter(testNow, minute))]).not.toEqual([minute, null]);
    expect(await staffBySession(token, minutesAfter(testNow, sessionHours * 60 - 1))).not.toBeNull();
    expect(await staffBySession(token, minutesAfter(testNow, sessionHours * 60))).toBeNull();
  });

  it("ends to the millisecond after half an hour in which nobody did anything", async () => {
    const { token } = await session();
    const last = new Date(testNow.getTime() + idleMinutes.desk * 60_000 - 1);
    expect(await staffBySession(token, last, false)).not.toBeNull();
    expect(await staffBySession(token, minutesAfter(testNow, idleMinutes.desk), false)).toBeNull();
    // Over is over: doing something then brings nothing back.
    expect(await staffBySession(token, minutesAfter(testNow, idleMinutes.desk))).toBeNull();
  });

  it("counts what a person does and nothing that a page asks by itself", async () => {
    const { token } = await session();
    // A page that follows the queue asks every minute, and its reader has gone.
    for (let minute = 1; minute < 30; minute += 1) await staffBySession(token, minutesAfter(testNow, minute), false);
    expect(await staffBySession(token, minutesAfter(testNow, 30), false)).toBeNull();

    const other = await session();
    expect(await staffBySession(other.token, minutesAfter(testNow, 29), true)).not.toBeNull();
    expect(await staffBySession(other.token, minutesAfter(testNow, 58), false)).not.toBeNull();
    expect(await staffBySession(other.token, minutesAfter(testNow, 59), false)).toBeNull();
  });

  it("gives a maker a shift on a device that knows them, half an hour elsewhere", async () => {
    const maker = { email: "maker@thistle-yard.example", name: "Maker", role: "maker", password } as const;
    expect((await takeOnStaff(owner, maker, testNow)).ok).toBe(true);
    const first = await tryPassword(password, "192.0.2.7", maker.email);
    if (!first.ok) throw new Error(first.refusal.code);
    expect(await staffBySession(first.value.token, minutesAfter(testNow, 30), false)).toBeNull();
    const device = { token: first.value.deviceToken ?? "" };
    const again = await signIn({ email: maker.email, password, address: "192.0.2.7", device }, testNow);
    if (!again.ok) throw new Error(again.refusal.code);
    expect(again.value.deviceToken).toBeNull();
    expect(await staffBySession(again.value.token, minutesAfter(testNow, 10 * 60 - 1), false)).not.toBeNull();
    expect(await staffBySession(again.value.token, minutesAfter(testNow, 10 * 60), false)).toBeNull();
  });

  it("knows nobody by a made-up or missing token", async () => {
    expect(await staffBySession(undefined, testNow)).toBeNull();
    expect(await staffBySession("x", testNow)).toBeNull();
    expect(await staffBySession("A".repeat(43), testNow)).toBeNull();
  });

  it("ends with the sign-out of that one session", async () => {
    const one = await session();
    const other = await session();
    await signOut(one.token, testNow);
    expect(await staffBySession(one.token, testNow)).toBeNull();
    expect(await staffBySession(other.token, testNow)).not.toBeNull();
  });

  it("ends everywhere when the password changes or the person leaves", async () => {
    const second = await session();
    expect((await changePassword(owner, staffId, "a new long password", testNow)).ok).toBe(true);
    expect(await staffBySession(second.token, testNow)).toBeNull();
    expect((await tryPassword(password)).ok).toBe(false);

    const third = await tryPassword("a new long password");
    if (!third.ok) throw new Error(third.refusal.code);
    expect((await letStaffGo(owner, staffId, testNow)).ok).toBe(true);
    expect(await staffBySession(third.value.token, testNow)).toBeNull();
    expect((await tryPassword("a new long password")).ok).toBe(false);
  });
});

describe("a later sign-in", () => {
  it("sweeps sessions and counters that ended more than thirty days ago", async () => {
    await session();
    await countAttempt(db(), signInLimits.address, "192.0.2.200", testNow);
    const muchLater = minutesAfter(testNow, 31 * 24 * 60);
    expect((await tryPassword(password, "192.0.2.8", undefined, muchLater)).ok).toBe(true);
    expect((await db().staffSession.findMany()).map((row) => row.createdAt)).toEqual([muchLater]);
    expect(await db().rateCounter.count({ where: { windowStartedAt: testNow } })).toBe(0);
  });
});

describe("takeOnStaff", () => {
  it("cannot be done by a visitor or the desk", async () => {
    const input = { email: "x@thistle-yard.example", name: "X", role: "owner", password } as const;
    const { actor: desk } = await session();
    expect(await takeOnStaff(visitor(), input, testNow)).toMatchObject({ ok: false, refusal: { code: "not-allowed" } });
    expect(await takeOnStaff(desk, input, testNow)).toMatchObject({ ok: false, refusal: { code: "not-allowed" } });
  });

  it("cannot use a taken address or a short password, and says so by field", async () => {
    const input = { email: "desk@thistle-yard.example", name: "X", role: "maker", password } as const;
    expect(await takeOnStaff(owner, input, testNow)).toMatchObject({
      ok: false,
      refusal: { code: "email-taken", path: "email" },
    });
    expect(await takeOnStaff(owner, { ...input, password: "short" }, testNow)).toMatchObject({
      ok: false,
      refusal: { code: "password-length", path: "password", length: 5, min: 15 },
    });
  });
});
