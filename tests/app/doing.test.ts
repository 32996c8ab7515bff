/** What counts as a person's doing, what browsers call themselves, and what cookies are called. */
import { describe, expect, it } from "vitest";
import { browserName } from "#app/_server/browser-name.ts";
import { cookieName } from "#app/_server/cookies.ts";
import { isTheirDoing } from "#app/_server/doing.ts";

describe("a request", () => {
  // Sec-Fetch-Mode as the Fetch standard gives it: a page that is gone to, a script's call, a form sent by a script.
  it.each([
    ["a page gone to", { "sec-fetch-mode": "navigate" }, true],
    ["a form without scripts", { "sec-fetch-mode": "navigate", "content-type": "multipart/form-data" }, true],
    ["a form by scripts", { "sec-fetch-mode": "cors", "next-action": "4f" }, true],
    ["a page read again by itself", { "sec-fetch-mode": "cors" }, false],
    ["events that are followed", { "sec-fetch-mode": "cors", accept: "text/event-stream" }, false],
    ["a picture", { "sec-fetch-mode": "no-cors" }, false],
    ["a program that says nothing", {}, true],
  ])("%s", (_what, headers, isTheirs) => {
    expect(isTheirDoing(new Headers(headers))).toBe(isTheirs);
  });
});

describe("a browser", () => {
  it.each([
    ["Mozilla/5.0 (X11; Linux x86_64; rv:128.0) Gecko/20100101 Firefox/128.0", "Firefox on Linux"],
    [
      "Mozilla/5.0 (Windows NT 10.0; Win64; x64) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/126.0.0.0 Safari/537.36 Edg/126.0",
      "Edge on Windows",
    ],
    [
      "Mozilla/5.0 (iPad; CPU OS 17_5 like Mac OS X) AppleWebKit/605.1.15 (KHTML, like Gecko) Version/17.5 Mobile/15E148 Safari/604.1",
      "Safari on iPad",
    ],
    [
      "Mozilla/5.0 (Linux; Android 14; Pixel 8) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/126.0.0.0 Mobile Safari/537.36",
      "Chrome on Android",
    ],
    ["curl/8.5.0", undefined],
    ["", undefined],
    [null, undefined],
  ])("%s", (userAgent, name) => {
    expect(browserName(userAgent)).toBe(name);
  });
});

describe("a cookie's name", () => {
  it("says on https that it belongs to this host alone, or at least came by https (RFC 6265bis, 4.1.3)", () => {
    expect(cookieName("pairwright-session", "/", false)).toBe("pairwright-session");
    expect(cookieName("pairwright-session", "/", true)).toBe("__Host-pairwright-session");
    expect(cookieName("club-typed", "/club/x", true)).toBe("__Secure-club-typed");
  });
});
