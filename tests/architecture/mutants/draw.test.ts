/** Where faults are planted: every line alike, the same by the same seed, and in a room that survives a move. */
import { describe, expect, it } from "vitest";
import { places } from "../../../.ci/mutants/draw.mjs";
import entries from "../../../.ci/mutants/equivalent.json";
import { faultsOfList, type Judged, judgedEquivalent, mostSetAside } from "../../../.ci/mutants/equivalent.mjs";
import { plantedFaults } from "../../../.ci/mutants/plant.mjs";
import { isProductCode, roomOf } from "../../../.ci/mutants/rooms.mjs";
import { sources } from "../../support/sources";

const file = (name: string, lines: number) => ({
  file: `lib/${name}.ts`,
  text: Array.from({ length: lines }, (_, index) => `export const ${name}${index} = f(a${index} < b);`).join("\n"),
});
const two = [file("small", 10), file("large", 90)];
const anything = async () => true;

describe("drawing", () => {
  it("gives every line one turn", () => {
    const drawn = [...places(two, 5)].map((place) => `${place.file}:${place.line}`);
    expect(drawn).toHaveLength(100);
    expect(new Set(drawn).size).toBe(100);
  });

  it("takes files by their lines, not by their number", () => {
    const counts = Array.from({ length: 200 }, (_, seed) => places(two, seed).next().value?.file);
    const small = counts.filter((one) => one === "lib/small.ts").length;
    // 20 of 200 are expected; by files it would be 100. Binomial: 6 and 38 lie four deviations away.
    expect(small).toBeGreaterThan(5);
    expect(small).toBeLessThan(38);
  });

  it("repeats itself by its seed", async () => {
    const wish = { sources: two, sample: 20, entries: [], compiles: anything };
    const drawn = async (seed: number) => (await plantedFaults({ ...wish, seed })).faults.map((one) => one.what);
    expect(await drawn(7)).toEqual(await drawn(7));
    expect(await drawn(7)).not.toEqual(await drawn(8));
  });

  it("reaches from a comment or a type to the nearest line with a fault, and no farther than some lines", () => {
    const text = `// one\nexport const a = f(b < c);\n${"// far\n".repeat(20)}`;
    const drawn = [...places([{ file: "lib/a.ts", text }], 1)];
    expect(drawn.map(({ line }) => line).sort((a, b) => a - b)).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
    expect(drawn.every(({ faults }) => faults[0]?.line === 2)).toBe(true);
  });

  it("plants what compiles, each fault once", async () => {
    const refusesBounds = async (_file: string, text: string) => !text.includes("<=");
    const { faults, refused } = await plantedFaults({
      sources: [file("small", 10)],
      seed: 1,
      sample: 100,
      entries: [],
      compiles: refusesBounds,
    });
    expect(refused).toBeGreaterThan(0);
    expect(faults.map(({ operator }) => operator)).not.toContain("bound");
    expect(new Set(faults.map(({ start, end, text }) => `${start} ${end} ${text}`)).size).toBe(faults.length);
  });
});

describe("faults judged equivalent", () => {
  const source = "const a = 1;\n  f(a < b);\n";
  const judged: Judged = { file: "lib/a.ts", line: "f(a < b);", what: "bound: a < b → a <= b", reason: "never equal" };

  it("are found by file, line and change, wherever the line has moved", () => {
    const fault = { file: "lib/a.ts", line: 2, what: judged.what };
    expect(judgedEquivalent([judged], fault, source)).toBe(judged);
    expect(judgedEquivalent([judged], { ...fault, line: 3 }, `\n${source}`)).toBe(judged);
    expect(judgedEquivalent([judged], { ...fault, what: "comparison: a < b → a > b" }, source)).toBeUndefined();
  });

  it("are set aside and not planted", async () => {
    const sources = [{ file: "lib/a.ts", text: "f(a < b);" }];
    const wish = { sources, seed: 1, sample: 10, compiles: anything };
    const all = await plantedFaults({ ...wish, entries: [] });
    const [first] = all.faults;
    const entry = { file: "lib/a.ts", line: "f(a < b);", what: first?.what ?? "", reason: "a reason" };
    const { faults, setAside } = await plantedFaults({ ...wish, entries: [entry] });
    expect(setAside.map(({ what }) => what)).toEqual([entry.what]);
    expect(faults.map(({ what }) => what)).not.toContain(entry.what);
  });

  it("need a reason and a line that is still there", () => {
    expect(faultsOfList([judged], () => source)).toEqual([]);
    expect(faultsOfList([judged], () => "f(a > b);")).toHaveLength(1);
    expect(faultsOfList([judged], () => null)).toHaveLength(1);
    expect(faultsOfList([{ ...judged, reason: "" }], () => source)).toHaveLength(1);
  });

  it("are at most 3 % of what is planted", () => {
    expect([40, 100, 200].map(mostSetAside)).toEqual([1, 3, 6]);
  });

  it("are listed for lines that stand in the product today", () => {
    const text = new Map(sources("lib", "app", "proxy.ts").map((one) => [one.path, one.text]));
    expect(faultsOfList(entries, (one) => text.get(one) ?? null)).toEqual([]);
  });
});

describe("rooms", () => {
  it.each([
    ["lib/engine/fit/recommend.ts", "fit"],
    ["lib/engine/schedule/deep/down.ts", "schedule"],
    ["lib/papers/build-sheet/stack.tsx", "papers"],
    ["lib/papers/quote/page.tsx", "papers"],
    ["lib/shop/pair/view.ts", "shop"],
    ["app/(skier)/quote/actions.ts", "actions"],
    ["app/shop/(staff)/pair/[code]/bench-actions.ts", "actions"],
    ["app/shop/(staff)/pair/[code]/page.tsx", "app"],
    ["app/_ui/transactions.tsx", "app"],
    ["proxy.ts", "proxy"],
    ["tests/engine/fit/laws.test.ts", null],
  ])("%s is in %s", (path, room) => {
    expect(roomOf(path)).toBe(room);
  });

  it("leaves out what a generator wrote", () => {
    expect(isProductCode("lib/data/generated/client.ts")).toBe(false);
    expect(isProductCode("lib/data/client.ts")).toBe(true);
  });
});
