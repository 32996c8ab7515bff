/** The pages about the shop's people, their sign-ins, devices and screens, and the screen on the wall itself. */
import { beforeEach, describe, expect, it, vi } from "vitest";
import AccountPage from "#app/shop/(staff)/account/page.tsx";
import PersonPage from "#app/shop/(staff)/people/[staffId]/page.tsx";
import PeoplePage from "#app/shop/(staff)/people/page.tsx";
import FirstOwnerPage from "#app/shop/first-owner/page.tsx";
import SignInPage from "#app/shop/sign-in/page.tsx";
import { tellLink } from "#app/shop/told-link.ts";
import WallPage from "#app/wall/[token]/page.tsx";
import type { AccountView, PeopleView, PersonView, QueueBoard } from "#services";
import { partly } from "../../support/builders/views";
import { sentTo, shown } from "../../support/page-render";
import { freshBrowser } from "../../support/page-requests";
import { hold, refusal, seeAs, tell } from "../../support/page-views";

vi.mock("#services", async (load) => (await import("../../support/page-views")).asTold(await load()));
vi.mock("#app/_server/request.ts", async (load) => ({
  ...(await import("../../support/page-views")).seenBy(await load()),
  requestDevice: async () => ({ token: "device" }),
}));
vi.mock("next/headers", () => import("../../support/page-requests"));

const door = vi.hoisted(() => ({
  isEmpty: false,
  floor: null as null | { name: string; people: { staffId: string; name: string }[] },
}));
vi.mock("#auth", async (load) => ({
  ...(await load<typeof import("#auth")>()),
  isShopEmpty: async () => door.isEmpty,
  floorDoor: async () => door.floor,
}));

/** Winter in Denver is seven hours behind UTC. */
const denver = (time: string) => new Date(Date.parse(`2026-11-10T${time}:00.000Z`) + 7 * 3_600_000).toISOString();
const signIn = (sessionId: string, known: object = {}) => ({
  sessionId,
  kind: "full",
  device: "Firefox on Linux",
  isThis: false,
  since: denver("08:00"),
  lastUsedAt: denver("09:30"),
  endsAt: denver("10:00"),
  ...known,
});
const person = (staffId: string, name: string, known: object = {}) =>
  partly<PersonView>({
    staffId,
    name,
    email: `${name.toLowerCase()}@thistle-yard.example`,
    role: "maker",
    since: denver("07:00"),
    leftAt: null,
    hasFloorCode: false,
    isDemoPassword: false,
    signIns: [],
    ...known,
  } as never);
const mo = person("s-2", "Mo", {
  hasFloorCode: true,
  isDemoPassword: true,
  signIns: [signIn("x-1"), signIn("x-2", { kind: "floor", device: null, isThis: true })],
});
const ola = person("s-1", "Ola", { role: "owner", isDemoPassword: true });
const gone = person("s-3", "Una", { leftAt: denver("12:00") });
const view = (known: object = {}) =>
  partly<PeopleView>({
    people: [ola, mo, gone],
    devices: [],
    thisBrowser: null,
    walls: [],
    guessing: [],
    record: [],
    ...known,
  } as never);
const people = (known: object = {}) => {
  tell("readPeople", view(known));
  return shown(PeoplePage);
};

beforeEach(() => {
  Object.assign(door, { isEmpty: false, floor: null });
  seeAs("owner");
  freshBrowser();
});

describe("the page of people", () => {
  it("tells who is here and where they are signed in, and apart from them who has left", async () => {
    const page = await people();
    expect(page.table("Working here").map((row) => Object.values(row))).toEqual([
      ["Ola", "owner", "ola@thistle-yard.example", "none", "nowhere"],
      [
        "Mo",
        "maker",
        "mo@thistle-yard.example",
        "yes",
        "Firefox on Linux, 10 Nov 2026, 09:30from before devices were known, 10 Nov 2026, 09:30",
      ],
    ]);
    expect(page.links.Mo).toBe("/shop/people/s-2");
    expect(page.table("Have left").map((row) => Object.values(row))).toEqual([["Una", "maker", "10 Nov 2026, 12:00"]]);
    expect(page.text).toContain("Ola, Mo: the demo's published password");
    const own = await people({ people: [person("s-1", "Ola")] });
    expect(own.text).not.toContain("the demo's published password");
    expect(own.hasPart("Have left")).toBe(false);
    expect(own.text).toContain("Nothing yet.");
    tell("readPeople", refusal("not-allowed"));
    expect(await sentTo(PeoplePage)).toBe("not-found");
  });

  it("shows who guesses at whom, and what happened to whom, the newest first as told", async () => {
    const page = await people({
      guessing: [{ staffId: "s-2", name: "Mo", times: 7, lastAt: denver("09:30") }],
      record: [
        { seq: "2", at: denver("09:00"), about: "Mo", by: "Ola", kind: "password-set", data: { sessions: 2 } },
        { seq: "1", at: denver("08:00"), about: "Ola", by: "Ola", kind: "floor-code-set", data: {} },
      ],
    });
    expect(page.text).toContain("Somebody is guessing how to sign in as Mo");
    expect(Object.keys(page.links)).not.toContain("Look at People");
    const rows = page.table("Record").map(({ When, About, Who }) => [When, About, Who]);
    expect(rows).toEqual([
      ["10 Nov 2026, 09:00", "Mo", "Ola"],
      ["10 Nov 2026, 08:00", "Ola", "Ola"],
    ]);
    expect(new Set(page.table("Record").map(({ What }) => What)).size).toBe(2);
  });

  it("takes somebody on with a role and a first password", async () => {
    const form = (await people()).form("Take on");
    expect(form.sent).toEqual({ name: "", email: "", role: "desk", password: "" });
    expect(Object.keys(form.fields.role?.choices ?? {}).sort()).toEqual(["desk", "maker", "owner"]);
    expect(form.fields.password).toMatchObject({ kind: "password", hint: expect.stringContaining("At least 15") });
  });

  it("enrols the device one sits at, and gives back those that are", async () => {
    const device = (deviceId: string, isThis: boolean) => ({
      deviceId,
      name: `Tablet ${deviceId}`,
      browser: "Chrome",
      enrolledBy: "Ola",
      lastSeenAt: denver("11:00"),
      isThis,
    });
    const none = await people();
    expect(none.part("Devices of the floor").text).toContain("No device is enrolled.");
    expect(none.text).toContain("To enrol a device, sign in on it");
    const known = await people({ thisBrowser: "Firefox on Linux" });
    expect(known.form("Enrol this device").fields.name?.hint).toContain("You are sitting at Firefox on Linux.");
    expect(known.text).not.toContain("To enrol a device, sign in on it");
    const two = await people({ devices: [device("d-1", false), device("d-2", true)] });
    expect(two.table("Devices of the floor").map((row) => Object.values(row).slice(0, 4))).toEqual([
      ["Tablet d-1", "Chrome", "Ola", "10 Nov 2026, 11:00"],
      ["Tablet d-2 (this one)", "Chrome", "Ola", "10 Nov 2026, 11:00"],
    ]);
    expect(two.text).not.toContain("To enrol a device, sign in on it");
    expect(two.form("Give back: Tablet d-2").sent).toEqual({ deviceId: "d-2" });
  });

  it("opens and ends screens, and tells a new one's link once", async () => {
    const wall = (wallId: string, isOver: boolean) => ({
      wallId,
      name: `By ${wallId}`,
      openedAt: denver("08:00"),
      until: denver("20:00"),
      isOver,
    });
    expect((await people()).part("Screens on the wall").text).toContain("No screen has a link.");
    const page = await people({ walls: [wall("w-1", false), wall("w-2", true)] });
    expect(page.table("Screens on the wall").map((row) => Object.values(row).slice(0, 3))).toEqual([
      ["By w-1", "10 Nov 2026, 08:00", "10 Nov 2026, 20:00"],
      ["By w-2", "10 Nov 2026, 08:00", "10 Nov 2026, 20:00 (over since then)"],
    ]);
    expect(page.form("End: By w-2").sent).toEqual({ wallId: "w-2" });
    expect(page.form("Open a screen").sent).toEqual({ name: "" });
    expect(page.text).not.toContain("The screen's link");
    await tellLink("wall", "w-2", "tok");
    const told = await people({ walls: [wall("w-1", false), wall("w-2", true)] });
    expect(told.text).toContain("The screen's link");
    expect(Object.values(told.links).some((to) => to.endsWith("/wall/tok"))).toBe(true);
  });
});

describe("the page of a person", () => {
  const page = (known: object = {}, staffId = "s-2") => {
    tell("readPeople", view({ people: [{ ...mo, ...known }, ola, gone] }));
    return shown(PersonPage, { params: { staffId } });
  };

  it("ends each sign-in or all, sets password and code, and lets go of anybody but oneself", async () => {
    const seen = await page();
    expect(seen.text).toContain("maker, mo@thistle-yard.example. Here since 10 Nov 2026, 07:00.");
    expect(seen.table("Signed in").map((row) => Object.values(row).slice(0, 5))).toEqual([
      ["Firefox on Linux", "password", "10 Nov 2026, 08:00", "10 Nov 2026, 09:30", "10 Nov 2026, 10:00"],
      [
        "from before devices were known (this one)",
        "short code",
        "10 Nov 2026, 08:00",
        "10 Nov 2026, 09:30",
        "10 Nov 2026, 10:00",
      ],
    ]);
    const staffId = "s-2";
    expect(seen.forms.map(({ buttons, sent }) => [buttons.join(), sent])).toEqual([
      ["End it", { sessionId: "x-1" }],
      ["End it", { sessionId: "x-2" }],
      ["End all of them", { staffId }],
      ["Set the password", { staffId, password: "" }],
      ["Set the code", { staffId, passcode: "" }],
      ["Take the code away", { staffId }],
      ["Let Mo go", { staffId }],
    ]);
    expect(seen.text).toContain("There is one. A new one replaces it.");
    const plain = await page({ signIns: [signIn("x-1")], hasFloorCode: false });
    expect(plain.buttons).not.toContain("End all of them");
    expect(plain.buttons).not.toContain("Take the code away");
    expect((await page({}, "s-1")).buttons).not.toContain("Let Ola go");
  });

  it("who has left tells since when and offers nothing; nobody unknown has one", async () => {
    const left = await page({}, "s-3");
    expect(left.text).toContain("Left on 10 Nov 2026, 12:00; what they did stays in the record.");
    expect(left.forms).toEqual([]);
    tell("readPeople", view());
    expect(await sentTo(PersonPage, { params: { staffId: "s-9" } })).toBe("not-found");
  });
});

describe("one's own account", () => {
  it("shows where one is signed in and changes one's own password and code", async () => {
    tell("readMyAccount", partly<AccountView>({ ...(mo as object), signIns: [] } as never));
    const page = await shown(AccountPage);
    expect(page.text).toContain("mo@thistle-yard.example. What you change here counts at once.");
    expect(page.text).toContain("Signed in nowhere.");
    const change = page.form("Change it");
    expect(change.sent).toEqual({ currentPassword: "", password: "" });
    expect(change.fields.password?.hint).toContain("At least 15");
    expect(page.form("Set the code").sent).toEqual({ staffId: "s-2", passcode: "" });
    tell("readMyAccount", refusal("not-allowed"));
    expect(await sentTo(AccountPage)).toBe("not-found");
  });
});

describe("the way in", () => {
  const signInPage = (query = {}) => shown(SignInPage, { query, path: "/shop/sign-in" });

  it("is by password where the device is nobody's, back to the page that was asked for and nowhere else", async () => {
    seeAs(null);
    const page = await signInPage({ back: "/shop/queue" });
    expect(page.forms.map(({ sent }) => sent)).toEqual([{ back: "/shop/queue", email: "", password: "" }]);
    expect((await signInPage({ back: "https://elsewhere.example/" })).forms[0]?.sent.back).toBe("/shop");
    expect(page.all("[role=status]")).toEqual([]);
    expect((await signInPage({ left: "yes" })).one("[role=status]").text).not.toContain("first owner");
    expect((await signInPage({ first: "yes" })).one("[role=status]").text).toContain("You are the first owner.");
    seeAs("desk");
    expect(await sentTo(SignInPage, { query: { back: "/shop/queue" } })).toBe("/shop/queue");
  });

  it("is by name and six figures on a device of the floor, and by password beside it", async () => {
    seeAs(null);
    door.floor = { name: "By the press", people: [{ staffId: "s-2", name: "Mo" }] };
    const page = await signInPage({ back: "/shop/floor" });
    const floor = page.form("Sign in on the floor");
    expect(page.part("On the floor").text).toContain("By the press. Your name and your short code");
    expect(floor.sent).toEqual({ back: "/shop/floor", staffId: "", passcode: "" });
    expect(floor.fields.staffId?.choices).toEqual({ "": "Who are you?", "s-2": "Mo" });
    expect(page.part("With a password").forms.map(({ sent }) => sent.back)).toEqual(["/shop/floor"]);
    door.floor = { name: "By the press", people: [] };
    const nobody = await signInPage();
    expect(nobody.text).toContain("Nobody has a short code yet.");
    expect(nobody.buttons).not.toContain("Sign in on the floor");
  });

  it("of a shop that has nobody leads to its first owner, and only then", async () => {
    seeAs(null);
    expect(await sentTo(FirstOwnerPage)).toBe("/shop/sign-in");
    door.isEmpty = true;
    expect(await sentTo(SignInPage)).toBe("/shop/first-owner");
    const form = (await shown(FirstOwnerPage)).form("Make me the owner");
    expect(form.sent).toEqual({ passcode: "", name: "", email: "", password: "" });
    expect(form.fields.passcode?.hint).toContain("Sixteen letters and figures");
    expect(form.fields.password?.hint).toContain("At least 15");
  });
});

describe("the screen on the wall", () => {
  const cell = (serial: string, state: string, station = "press") => ({ serial, state, station });
  const board = (cells: readonly object[], pairs: readonly object[] = []) =>
    partly<QueueBoard>({
      revision: 7,
      stations: [
        { station: "press", number: 11, name: "Press" },
        { station: "trim", number: 12, name: "Trim" },
      ],
      days: [{ cells: cells.slice(0, 1) }, { cells: cells.slice(1) }],
      pairs,
    } as never);
  const screen = async (told: QueueBoard) => {
    hold("wall", "w-1");
    tell("queueBoard", told);
    const page = await shown(WallPage, { params: { token: "tok" } });
    return page.all("main > ul > li").map(({ text }) => text);
  };

  it("says what stands at each station, at work first, and what is late, with no name and nothing to press", async () => {
    const pairs = [
      { serial: "TY-0402", slackDays: -1 },
      { serial: "TY-0403", slackDays: 0 },
      { serial: "TY-0404", slackDays: null },
    ];
    const cells = [
      cell("TY-0404", "ready"),
      cell("TY-0403", "ready"),
      cell("TY-0402", "running"),
      cell("TY-0402", "running"),
      cell("TY-0401", "planned"),
      cell("TY-0405", "done", "trim"),
    ];
    expect(await screen(board(cells, pairs))).toEqual([
      "11 Press▸ TY-0402 at work ✕ late○ TY-0403 ready○ TY-0404 ready",
      "12 Trimnothing",
    ]);
  });

  it("shows five of a station and counts the others", async () => {
    const many = (count: number) => Array.from({ length: count }, (_, index) => cell(`TY-050${index}`, "ready"));
    expect((await screen(board(many(5))))[0]).not.toContain("more");
    const [press] = await screen(board(many(7)));
    expect(press).toContain("TY-0504");
    expect(press).not.toContain("TY-0505");
    expect(press).toContain("and 2 more ready");
  });

  it("is asked for seven days of its own link's screen, and is not there when that has ended", async () => {
    const asked: unknown[] = [];
    hold("wall", "w-1");
    tell("queueBoard", (input: unknown) => {
      asked.push(input);
      return refusal("not-allowed");
    });
    expect(await sentTo(WallPage, { params: { token: "tok" } })).toBe("not-found");
    expect(asked).toEqual([{ days: 7, wallId: "w-1" }]);
  });
});
