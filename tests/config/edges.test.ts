import path from "node:path";
import { afterEach, describe, expect, it, vi } from "vitest";
import { isBuilding, isDevelopment, parseConfig } from "#config";

const root = path.resolve("/shop");
const parsed = (environment: Record<string, string>) => parseConfig(environment, root);
afterEach(() => vi.unstubAllEnvs());

describe("settings at their edges", () => {
  it.each([
    ["PORT", "1", "65535", "0", "65536"],
    ["PAIRWRIGHT_TRUSTED_PROXIES", "0", "10", "-1", "11"],
  ] as const)("%s from %s to %s, not %s or %s", (name, least, most, under, over) => {
    const key = name === "PORT" ? "port" : "trustedProxies";
    for (const value of [least, most]) expect(parsed({ [name]: value })[key]).toBe(Number(value));
    for (const value of [under, over, "1.5"]) expect(() => parsed({ [name]: value })).toThrow(`${name}=${value}`);
  });

  it("a pool holds 1 to 200 connections", () => {
    const url = "postgres://h/d";
    for (const size of ["1", "200"])
      expect(parsed({ DATABASE_URL: url, PAIRWRIGHT_POOL: size }).database).toEqual({
        kind: "postgres",
        url,
        poolSize: Number(size),
      });
    for (const size of ["0", "201"]) expect(() => parsed({ PAIRWRIGHT_POOL: size })).toThrow(`PAIRWRIGHT_POOL=${size}`);
  });

  it.each([
    ["0.0.0.0", "localhost"],
    ["::", "localhost"],
    ["127.0.0.1", "localhost"],
    ["::1", "[::1]"],
    ["10.0.0.4", "10.0.0.4"],
    ["shop.example", "shop.example"],
  ])("a server on %s is called http://%s", (host, called) => {
    expect(parsed({ HOST: host, PORT: "8080" })).toMatchObject({
      host,
      publicOrigin: `http://${called}:8080`,
      secureCookies: false,
    });
  });

  it("an address is http or https, its final slashes go, and several wrong settings are named at once", () => {
    expect(parsed({ PAIRWRIGHT_ORIGIN: "http://a.example//" }).publicOrigin).toBe("http://a.example");
    expect(() => parsed({ PAIRWRIGHT_ORIGIN: "ftp://a.example" })).toThrow("PAIRWRIGHT_ORIGIN=ftp://a.example");
    expect(() => parsed({ PORT: "x", PAIRWRIGHT_LOG: "y" })).toThrow(/PORT=x.*; PAIRWRIGHT_LOG=y/);
  });

  it("a data folder of its own holds the database too", () => {
    expect(parsed({ PAIRWRIGHT_DATA: "elsewhere" })).toMatchObject({
      dataFolder: path.join(root, "elsewhere"),
      database: { kind: "embedded", folder: path.join(root, "elsewhere", "database") },
    });
    expect(parsed({ PAIRWRIGHT_DATA: "/srv/shop" }).dataFolder).toBe(path.resolve("/srv/shop"));
  });

  it("knows when it is built and when it is developed", () => {
    vi.stubEnv("NEXT_PHASE", "phase-production-build");
    vi.stubEnv("NODE_ENV", "development");
    expect([isBuilding(), isDevelopment()]).toEqual([true, true]);
    vi.stubEnv("NEXT_PHASE", "phase-production-server");
    vi.stubEnv("NODE_ENV", "production");
    expect([isBuilding(), isDevelopment()]).toEqual([false, false]);
  });
});
