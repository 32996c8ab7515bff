import { describe, expect, it } from "vitest";
import { alwaysSent, headerGuard } from "../../.ci/serve.mjs";

const socket = { remoteAddress: "192.0.2.7" };
const claims = () => ({
  host: "skis.example",
  "x-forwarded-for": "203.0.113.9",
  "x-forwarded-host": "evil.example",
  "x-real-ip": "1.1.1.1",
});

describe("headerGuard", () => {
  it("replaces what a visitor claims when no proxy of ours is named", () => {
    const headers = claims();
    headerGuard(0)({ headers, socket });
    expect(headers).toMatchObject({ "x-forwarded-for": "192.0.2.7", "x-forwarded-host": "skis.example" });
    expect(headers).not.toHaveProperty("x-real-ip");
  });

  it("leaves the headers of our own proxies", () => {
    const headers = claims();
    headerGuard(1)({ headers, socket });
    expect(headers).toMatchObject({ "x-forwarded-for": "203.0.113.9", "x-forwarded-host": "evil.example" });
  });

  it("keeps the visitor's address and host when the server sends an action on to itself", () => {
    const guard = headerGuard(0);
    const headers = claims();
    guard({ headers, socket });
    const sentOn = { ...headers, host: "127.0.0.1:3000" };
    guard({ headers: sentOn, socket: { remoteAddress: "127.0.0.1" } });
    expect(sentOn).toMatchObject({ "x-forwarded-for": "192.0.2.7", "x-forwarded-host": "skis.example" });
  });

  it("does not take a visitor's own mark for ours", () => {
    const headers = { ...claims(), "x-pairwright-seen": "1" };
    headerGuard(0)({ headers, socket });
    expect(headers["x-forwarded-for"]).toBe("192.0.2.7");
  });

  it("tells on that forwarded headers came from nobody we know, and takes nobody's word for it", () => {
    const told = (headers: Record<string, string>, proxies = 0) => {
      headerGuard(proxies)({ headers, socket });
      return headers["x-pairwright-forwarded"];
    };
    expect(told(claims())).toBe("1");
    expect(told({ host: "skis.example" })).toBeUndefined();
    expect(told({ host: "skis.example", "x-pairwright-forwarded": "1" })).toBeUndefined();
    expect(told(claims(), 1)).toBeUndefined();
  });
});

describe("what every answer says", () => {
  it("is that its kind is not guessed at, and that no page of anybody's frames it", () => {
    const said = alwaysSent("http://localhost:3000");
    expect(said["x-content-type-options"]).toBe("nosniff");
    expect(said["content-security-policy"]?.split("; ")).toEqual(
      expect.arrayContaining(["frame-ancestors 'none'", "base-uri 'none'", "object-src 'none'"]),
    );
  });

  it("is to come by https alone for a year, where people reach the shop by it (RFC 6797)", () => {
    const name = "strict-transport-security";
    expect(alwaysSent("https://skis.example")).toHaveProperty(name, `max-age=${365 * 24 * 60 * 60}`);
    expect(alwaysSent("http://localhost:3000")).not.toHaveProperty(name);
  });
});
