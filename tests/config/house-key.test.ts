/** The key beside the data: made once, readable by its owner alone, and another one for each purpose. */
import { mkdirSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { houseDigest, houseKey } from "#config";

const scratch = mkdtempSync(path.join(tmpdir(), "pairwright-key-"));
const folder = (name: string) => ({ dataFolder: path.join(scratch, name), secret: null });

describe("the house key", () => {
  afterAll(() => rmSync(scratch, { recursive: true, force: true }));

  it("is made beside the data on first use and found there again", () => {
    const first = houseKey("a", folder("one"));
    const file = path.join(scratch, "one", "house.key");
    expect(statSync(file).mode & 0o777).toBe(0o600);
    expect(readFileSync(file, "utf8").trim()).toMatch(/^[0-9a-f]{64}$/);
    expect(houseKey("a", folder("one"))).toEqual(first);
    expect(houseKey("a", folder("two"))).not.toEqual(first);
    expect(houseKey("b", folder("one"))).not.toEqual(first);
  });

  it("is the one of the settings where there is one, and then no file is made", () => {
    const given = { dataFolder: path.join(scratch, "three"), secret: "x".repeat(32) };
    // HMAC-SHA256 of "a" under 32 times x, by Python's hmac.
    expect(houseKey("a", given).toString("hex")).toBe(
      "e1cacbc3cfa19ace3510b37653e3b6ca920778a805aeb7f70abf8f14a309b767",
    );
    expect(() => statSync(given.dataFolder)).toThrow("ENOENT");
    expect(houseDigest("a", "text", given)).toMatch(/^[0-9a-f]{64}$/);
  });

  it("is refused in words when the file was cut short", () => {
    const { dataFolder } = folder("cut");
    mkdirSync(dataFolder);
    writeFileSync(path.join(dataFolder, "house.key"), "short");
    expect(() => houseKey("a", folder("cut"))).toThrow(/house\.key holds 5 characters, a key has at least 32/);
  });
});
