import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { pairSerial, readSerial, skiSerial } from "#shop/names/serial";

describe("skiSerial", () => {
  it("gives the left and right serial of pair 417 as worked by hand", () => {
    // Luhn by hand: 04170 → 0+7+2+4+0 = 13 → 7; 04171 → 2+7+2+4+0 = 15 → 5 (ISO/IEC 7812-1 Annex B)
    expect(skiSerial("TY", 417, "L")).toBe("TY-0417-L-7");
    expect(skiSerial("TY", 417, "R")).toBe("TY-0417-R-5");
  });

  it("gives a ski built again its build and a check of its own, as worked by hand", () => {
    // Luhn by hand: 04172 → 4+7+2+4+0 = 17 → 3; 04173 → 6+7+2+4+0 = 19 → 1
    expect(skiSerial("TY", 417, "L", 2)).toBe("TY-0417-L2-3");
    expect(skiSerial("TY", 417, "R", 2)).toBe("TY-0417-R2-1");
    expect(readSerial("TY", "ty 417 l2 3")).toEqual({ kind: "ski", number: 417, side: "L", build: 2 });
    expect(readSerial("TY", "TY-0417-R2-3").kind).toBe("wrong-check");
  });

  it("is read back to the same pair and ski, and any other check digit is refused", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 99_999 }),
        fc.constantFrom("L", "R"),
        fc.integer({ min: 1, max: 9 }),
        fc.integer({ min: 1, max: 4 }),
        (number, side, step, build) => {
          const serial = skiSerial("TY", number, side, build);
          expect(readSerial("TY", serial)).toEqual({ kind: "ski", number, side, build });
          const wrong = serial.slice(0, -1) + ((Number(serial.at(-1)) + step) % 10);
          expect(readSerial("TY", wrong)).toMatchObject({ kind: "wrong-check", expected: serial });
        },
      ),
    );
  });

  it("catches a swapped side and two neighbouring digits swapped", () => {
    expect(readSerial("TY", "TY-0417-R-7").kind).toBe("wrong-check");
    expect(readSerial("TY", "TY-0471-L-7").kind).toBe("wrong-check");
    expect(readSerial("TY", "ty 417")).toEqual({ kind: "pair", number: 417 });
    expect(readSerial("TY", "hello")).toEqual({ kind: "none" });
    expect(pairSerial("TY", 12_345)).toBe("TY-12345");
  });
});
