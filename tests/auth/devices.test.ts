/** Devices: one sign-in each, known to their people, and enrolled for short codes. */
import { beforeEach, describe, expect, it } from "vitest";
import {
  changePassword,
  deviceByToken,
  floorDoor,
  letStaffGo,
  type Session,
  setFloorCode,
  signIn,
  signInByCode,
  staffBySession,
  systemActor,
  takeOnStaff,
} from "#auth";
import { enrolDevice, readGuessing, releaseDevice } from "#services";
import { minutesAfter, testNow } from "../support/clock";
import { databaseForTests } from "../support/db";
import { countingIds } from "../support/ids";

const db = databaseForTests();
const password = "larch and ash 42";
const system = systemActor("test");
const code = "480917";
let maker: string;

beforeEach(async () => {
  await person("desk");
  maker = await person("maker");
});

async function person(role: "desk" | "maker" | "owner"): Promise<string> {
  const made = await takeOnStaff(
    system,
    { email: `${role}@moor.example`, name: `Sam ${role}`, role, password },
    testNow,
  );
  if (!made.ok) throw new Error(made.refusal.code);
  return made.value.id;
}

const attempt = (who: string, word = password, token?: string | null, at = testNow) =>
  signIn({ email: `${who}@moor.example`, password: word, address: "192.0.2.7", device: token ? { token } : {} }, at);

async function session(who: string, token?: string | null, at = testNow): Promise<Session> {
  const result = await attempt(who, password, token, at);
  if (!result.ok) throw new Error(result.refusal.code);
  return result.value;
}

const ctx = (now = testNow) => ({ actor: system, now, newId: countingIds("id"), db: db() });

/** A device of the floor: somebody signs in on it, an owner enrols it. */
async function floorDevice(): Promise<string> {
  const { deviceToken } = await session("desk");
  if (deviceToken === null) throw new Error("no device");
  expect(await enrolDevice(ctx(), { deviceToken, name: "Tablet at the press" })).toMatchObject({ ok: true });
  return deviceToken;
}

describe("a device", () => {
  it("has one sign-in: a new one ends the old one there, whoever's it was, and tells of it", async () => {
    const desk = await session("desk");
    const elsewhere = await session("desk");
    const next = await session("maker", desk.deviceToken);
    expect(await staffBySession(desk.token, testNow)).toBeNull();
    expect(await staffBySession(elsewhere.token, testNow)).not.toBeNull();
    expect(await staffBySession(next.token, testNow)).toMatchObject({ role: "maker" });
    const ended = await db().event.findMany({ where: { kind: "sign-ins-ended" } });
    expect(ended).toMatchObject([{ subjectId: desk.actor.staffId, actorName: "Sam maker", data: { why: "replaced" } }]);
  });

  it("keeps one of two that sign in on it in the same instant", async () => {
    const { deviceToken } = await session("desk");
    const both = await Promise.all([session("desk", deviceToken), session("maker", deviceToken)]);
    const living = await Promise.all(both.map(({ token }) => staffBySession(token, testNow)));
    expect(living.filter((actor) => actor !== null)).toHaveLength(1);
    expect(await db().staffSession.count({ where: { revokedAt: null } })).toBe(1);
  });

  it("lets its person in while others guess, who keep everybody else out, and the owner is told once", async () => {
    const { deviceToken } = await session("desk");
    for (let n = 1; n <= 12; n += 1)
      await signIn({ email: "desk@moor.example", password: "wrong password", address: `192.0.2.${n}` }, testNow);
    expect(await attempt("desk")).toMatchObject({ ok: false, refusal: { code: "too-many-attempts" } });
    expect(await attempt("desk", password, deviceToken)).toMatchObject({ ok: true });
    const told = await readGuessing(ctx());
    expect(told).toMatchObject({ ok: true, value: [{ name: "Sam desk", times: 1 }] });
    expect(await readGuessing(ctx(minutesAfter(testNow, 7 * 24 * 60 + 1)))).toMatchObject({ ok: true, value: [] });
  });

  it("does not let guesses go on for ever, even where the person is known", async () => {
    const { deviceToken } = await session("desk");
    for (let n = 1; n <= 10; n += 1) await attempt("desk", "wrong password", deviceToken);
    expect(await attempt("desk", password, deviceToken)).toMatchObject({
      ok: false,
      refusal: { limit: "sign-in known device", retryAfterMinutes: 15 },
    });
  });

  it("is a stranger's again after a new password, and its cookie is nothing without one", async () => {
    const { deviceToken, actor } = await session("desk");
    expect((await changePassword(system, actor.staffId, "a new long password", testNow)).ok).toBe(true);
    expect(await db().knownDevice.count()).toBe(0);
    expect(await staffBySession(deviceToken ?? "", testNow)).toBeNull();
    expect(JSON.stringify(await db().device.findMany())).not.toContain(deviceToken);
  });

  it("counts no sign-in that succeeds", async () => {
    for (let n = 1; n <= 32; n += 1) expect([n, (await attempt(n % 2 ? "desk" : "maker")).ok]).toEqual([n, true]);
  });
});

describe("a short code", () => {
  it("opens only what is done on the floor, on an enrolled device", async () => {
    expect((await setFloorCode(system, { staffId: maker, code }, testNow)).ok).toBe(true);
    const token = await floorDevice();
    expect(await floorDoor({ token })).toEqual({
      name: "Tablet at the press",
      people: [{ staffId: maker, name: "Sam maker" }],
    });
    const inside = await signInByCode({ staffId: maker, code, device: { token } }, testNow);
    expect(inside).toMatchObject({ ok: true, value: { actor: { role: "maker", sessionKind: "floor" } } });
    const unknown = (await session("desk")).deviceToken ?? "";
    for (const device of [{ token: unknown }, {}, { token: "x" }]) {
      expect(await floorDoor(device)).toBeNull();
      expect(await signInByCode({ staffId: maker, code, device }, testNow)).toMatchObject({
        refusal: { code: "not-a-floor-device" },
      });
    }
  });

  it("cannot tell a wrong code from a person without one, and stops after five tries by person", async () => {
    await setFloorCode(system, { staffId: maker, code }, testNow);
    const device = { token: await floorDevice() };
    const wrong = { ok: false, refusal: { code: "wrong-floor-code", path: "passcode" } };
    expect(await signInByCode({ staffId: "nobody", code, device }, testNow)).toEqual(wrong);
    for (let n = 1; n <= 5; n += 1)
      expect(await signInByCode({ staffId: maker, code: "480918", device }, testNow)).toEqual(wrong);
    expect(await signInByCode({ staffId: maker, code, device }, testNow)).toMatchObject({
      refusal: { limit: "sign-in floor person", retryAfterMinutes: 15 },
    });
    expect((await signInByCode({ staffId: maker, code, device }, minutesAfter(testNow, 15))).ok).toBe(true);
  });

  it("stops after twenty wrong tries on a device, whoever is tried", async () => {
    await setFloorCode(system, { staffId: maker, code }, testNow);
    const device = { token: await floorDevice() };
    for (let n = 1; n <= 20; n += 1) await signInByCode({ staffId: `nobody-${n}`, code, device }, testNow);
    expect(await signInByCode({ staffId: maker, code, device }, testNow)).toMatchObject({
      refusal: { limit: "sign-in floor device" },
    });
  });

  it("ends with the code, with the device and with the person", async () => {
    const device = { token: await floorDevice() };
    const inside = async () => {
      await setFloorCode(system, { staffId: maker, code }, testNow);
      const result = await signInByCode({ staffId: maker, code, device }, testNow);
      if (!result.ok) throw new Error(result.refusal.code);
      return result.value.token;
    };
    const first = await inside();
    await setFloorCode(system, { staffId: maker, code: null }, testNow);
    expect(await staffBySession(first, testNow)).toBeNull();

    const second = await inside();
    const deviceId = (await deviceByToken(db(), device.token))?.id ?? "";
    expect((await releaseDevice(ctx(), { deviceId })).ok).toBe(true);
    expect(await staffBySession(second, testNow)).toBeNull();
    expect(await floorDoor(device)).toBeNull();
    expect(await releaseDevice(ctx(), { deviceId })).toMatchObject({ refusal: { code: "device-not-enrolled" } });

    await enrolDevice(ctx(), { deviceToken: device.token, name: "Tablet" });
    const third = await inside();
    await letStaffGo(system, maker, testNow);
    expect(await staffBySession(third, testNow)).toBeNull();
    expect(await signInByCode({ staffId: maker, code, device }, testNow)).toMatchObject({ ok: false });
  });

  it.each(["12345", "1234567", "12a456", "123456", "987654", "890123", "777777", "121212", "123123", "٣٤٥٦٧٨"])(
    "cannot be %s",
    async (weak) => {
      expect(await setFloorCode(system, { staffId: maker, code: weak }, testNow)).toMatchObject({
        ok: false,
        refusal: { path: "passcode" },
      });
    },
  );
});
