/** Who is let in when more ask than can be served. The expected orders are worked by hand from two places, one more for staff. */
import { EventEmitter } from "node:events";
import { beforeEach, describe, expect, it, vi } from "vitest";
import { admit } from "#app/_server/admission.ts";
import { Crowd, type Leave } from "#app/_server/crowd.ts";
import { signedIn } from "#app/_server/request.ts";
import { isSeenSession, noteSession } from "#app/_server/seen-sessions.ts";
import { newToken } from "#auth/tokens";
import { openShop } from "../support/builders/shop";
import { databaseForTests } from "../support/db";
import { browser, freshBrowser, sitDown } from "../support/page-requests";

const size = { anybody: 2, reserved: 1, waiting: 2, besideStaffMs: 0 };

/** Plays a line such as "g1 g2 s3 -g1": guests and staff who come and leave. @returns who was begun, in order, and who was refused */
function played(line: string) {
  const crowd = new Crowd(size);
  const leaves = new Map<string, Leave>();
  const begun: string[] = [];
  const refused: string[] = [];
  for (const step of line.split(" ")) {
    if (step.startsWith("-")) {
      leaves.get(step.slice(1))?.();
      continue;
    }
    const leave = crowd.enter(step.startsWith("s"), () => begun.push(step));
    if (leave === null) refused.push(step);
    else leaves.set(step, leave);
  }
  return [begun.join(" "), refused.join(" ")];
}

describe("a crowd", () => {
  it.each([
    ["two at once, two wait, the next is told", "g1 g2 g3 g4 g5", "g1 g2", "g5"],
    ["a place for staff stays free", "g1 g2 g3 s1", "g1 g2 s1", ""],
    ["staff have no more than all places, and a line of their own", "g1 g2 s1 g3 g4 s2 s3 s4", "g1 g2 s1", "s4"],
    ["staff may have every place", "s1 s2 s3 s4 g1", "s1 s2 s3", ""],
    ["the longest waiting is next", "g1 g2 g3 g4 -g2 -g1", "g1 g2 g3 g4", ""],
    ["staff before whoever waits longer", "g1 g2 s1 g3 s2 -g1 -g2", "g1 g2 s1 s2 g3", ""],
    ["a reserved place given back is no guest's", "g1 g2 s1 g3 -s1", "g1 g2 s1", ""],
    ["who gives the wait up is not begun, and makes room in the line", "g1 g2 g3 g4 -g3 g5 -g1 -g2", "g1 g2 g4 g5", ""],
    ["leaving twice frees one place", "g1 g2 g3 g4 -g1 -g1", "g1 g2 g3", ""],
    ["an empty shop is open again", "g1 g2 -g1 -g2 g3 g4 g5", "g1 g2 g3 g4", ""],
  ])("%s", (_, line, begun, refused) => {
    expect(played(line)).toEqual([begun, refused]);
  });
});

describe("a crowd while staff wait for a page", () => {
  const waits = { anybody: 2, reserved: 1, waiting: 5, besideStaffMs: 250 };
  beforeEach(() => {
    vi.useFakeTimers();
    return () => void vi.useRealTimers();
  });

  it("begins one of anybody's in every quarter of a second, and as many as there are places when staff have left", () => {
    const crowd = new Crowd(waits);
    const begun: string[] = [];
    const enter = (name: string) => crowd.enter(name.startsWith("s"), () => begun.push(name));
    const later = (ms: number) => {
      vi.advanceTimersByTime(ms);
      return begun.join(" ");
    };
    const first = enter("g1");
    const staff = enter("s1");
    for (const name of ["g2", "g3", "g4", "g5"]) enter(name);
    first?.();
    expect([later(0), later(249), later(1)]).toEqual(["g1 s1", "g1 s1", "g1 s1 g2"]);
    expect([later(249), later(1)]).toEqual(["g1 s1 g2", "g1 s1 g2 g3"]);
    // Both places of anybody are taken now, however long the next one waits.
    expect(later(1000)).toBe("g1 s1 g2 g3");
    staff?.();
    expect(later(1000)).toBe("g1 s1 g2 g3");
  });

  it("is not held up when staff have none in work", () => {
    const crowd = new Crowd(waits);
    const begun: string[] = [];
    const staff = crowd.enter(true, () => begun.push("s1"));
    for (const name of ["g1", "g2", "g3", "g4"]) crowd.enter(false, () => begun.push(name));
    expect(begun).toEqual(["s1", "g1"]);
    staff?.();
    expect(begun).toEqual(["s1", "g1", "g2"]);
  });
});

class Answered extends EventEmitter {
  isSlow = false;
  write() {
    return !this.isSlow;
  }
}

describe("the door to the pages", () => {
  const session = newToken();
  const cookie = `pairwright-device=x; pairwright-session=${session}`;
  let crowd: Crowd;
  let begun: string[];
  beforeEach(() => {
    noteSession(session, false);
    crowd = new Crowd({ anybody: 1, reserved: 1, waiting: 0, besideStaffMs: 0 });
    begun = [];
    const written = vi.spyOn(process.stderr, "write").mockReturnValue(true);
    return () => written.mockRestore();
  });
  const ask = (url: string, cookies?: string) => {
    const answer = new Answered();
    const headers = cookies === undefined ? {} : { cookie: cookies };
    const refused = admit({ method: "GET", url, headers }, answer, () => begun.push(url), crowd);
    return { answer, refused };
  };

  it("tells whoever finds no place at once, in words and when to come again", () => {
    ask("/sheet");
    expect(ask("/").refused).toEqual({
      status: 503,
      words: expect.stringContaining("Load the page again in 5 seconds"),
      headers: { "retry-after": "5" },
    });
    for (let n = 0; n < 50; n += 1) ask("/");
    expect(begun).toEqual(["/sheet"]);
    // However many are turned away, the log has one line a minute.
    const lines = vi.mocked(process.stderr.write).mock.calls.map(([line]) => String(line));
    expect(lines.filter((line) => line.includes('"status":503'))).toHaveLength(1);
  });

  it("keeps a place for a session that was verified, and for no other cookie", () => {
    ask("/");
    expect(ask("/shop", cookie).refused).not.toBeNull();
    noteSession(session, true);
    for (const forged of [
      `pairwright-session=${newToken()}`,
      `pairwright-session=${session.slice(1)}`,
      `other=${session}`,
      "pairwright-session",
      "=;;=",
    ])
      expect(ask("/shop", forged).refused).not.toBeNull();
    expect(ask("/shop", cookie).refused).toBeNull();
    noteSession(session, false);
    expect(isSeenSession(cookie)).toBe(false);
  });

  it("forgets a session that nobody has used for half an hour", () => {
    noteSession(session, true, 0);
    expect([isSeenSession(cookie, 30 * 60_000 - 1), isSeenSession(cookie, 30 * 60_000)]).toEqual([true, false]);
    expect(isSeenSession(`__Host-pairwright-session=${session}`, 1)).toBe(true);
  });

  it("does not count files, health and live pages, nor what is only called like one", () => {
    const free = [
      "/_next/static/a.js",
      "/files/quotes/abc",
      "/health",
      "/robots.txt",
      "/shop/queue/live",
      "/wall/abc/live?x=1",
    ];
    for (const url of ["/", ...free]) expect(ask(url).refused).toBeNull();
    for (const url of ["/sheet/live", "/health/x", "/wall/a/b/live", "/x/_next/static/", "/files", "/shop/queue"])
      expect(ask(url).refused?.status).toBe(503);
  });

  it("has the place back when the connection closes, and when only a slow line is waited for", () => {
    const first = ask("/").answer;
    first.emit("close");
    const second = ask("/").answer;
    second.write();
    expect(ask("/sheet").refused).not.toBeNull();
    second.isSlow = true;
    second.write();
    second.emit("close");
    expect([ask("/sheet").refused, ask("/sheet").refused?.status]).toEqual([null, 503]);
  });
});

describe("a session that a page looks up", () => {
  const db = databaseForTests();

  it("counts from then on, and a made-up one never", async () => {
    freshBrowser();
    await openShop(db());
    await sitDown("desk1");
    const token = browser.cookies.get("pairwright-session")?.value;
    const cookie = `pairwright-session=${token}`;
    expect(isSeenSession(cookie)).toBe(false);
    expect(await signedIn()).not.toBeNull();
    expect(isSeenSession(cookie)).toBe(true);
  });
});
