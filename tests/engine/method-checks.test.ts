/** The table of checks that the Method page prints: every case is in it, every value holds, the page is current. */
import { readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { loadCatalog } from "#catalog";
import copy from "#content/copy/site.json";
import { caseIds, checks, methodChecks } from "../checks";
import { checkedMaterials } from "../checks/materials-checks";
import { type CheckRow, marks } from "../checks/types";

const { rows } = methodChecks();
/** Every text that stands in a value, at any depth. */
const texts = (value: unknown): readonly string[] =>
  typeof value === "string"
    ? [value]
    : typeof value === "object" && value !== null
      ? Object.values(value).flatMap(texts)
      : [];
const file = path.resolve(import.meta.dirname, "../../content/method-checks.json");
const committed: { readonly rows: readonly CheckRow[] } = JSON.parse(readFileSync(file, "utf8"));

describe("the table of checks", () => {
  it("has a check that ran for every case, and each id once", () => {
    const ran = new Set(rows.map((row) => row.id));
    expect(caseIds.length).toBeGreaterThanOrEqual(100);
    expect(caseIds.filter((id) => !ran.has(id))).toEqual([]);
    expect(new Set(checks.map((check) => check.id)).size).toBe(checks.length);
    expect(checks.filter((check) => !ran.has(check.id))).toEqual([]);
  });

  it("checks no material that no build can use", () => {
    const { materials: _, ...build } = loadCatalog().build;
    const named = new Set(texts(build));
    expect(checkedMaterials.length).toBeGreaterThanOrEqual(11);
    expect(checkedMaterials.filter((id) => !named.has(id))).toEqual([]);
  });

  it("calls published only what names where it was printed, and says so of nothing that was worked out", () => {
    const published = rows.filter(({ mark }) => mark === "published");
    expect(published.length).toBeGreaterThan(0);
    for (const { id, source } of published) {
      expect(source, id).toMatch(/[Tt]able|Example|abstract|report/);
      expect(source, id).not.toMatch(/worked out|derivation|computation|from memory|no source/);
    }
    for (const { id, source } of rows.filter(({ mark }) => mark === "memory"))
      expect(source, id).toMatch(/from memory/);
    for (const { id, source } of rows.filter(({ topic }) => ["beam", "frequencies", "camber"].includes(topic)))
      expect(source, id).toMatch(/Roark|Timoshenko|Blevins/);
    expect(Object.keys(copy.method.marks)).toEqual([...marks]);
  });

  it("names a source for every value and computes a number for it", () => {
    for (const { id, source, computed, difference } of rows) {
      expect(source.length, id).toBeGreaterThan(5);
      expect([computed].flat(2).every(Number.isFinite), id).toBe(true);
      expect(Number.isFinite(difference), id).toBe(true);
    }
  });
});

describe("the engine", () => {
  for (const check of checks) {
    it(`meets ${check.id}: ${check.about}`, () => {
      for (const { name, expected, computed, difference, tolerance, passed } of rows.filter(
        (row) => row.id === check.id,
      )) {
        const told = `${name}: ${JSON.stringify(computed)} for ${JSON.stringify(expected)}`;
        expect(passed, `${told}, off by ${difference}, allowed ${JSON.stringify(tolerance)}`).toBe(true);
      }
    });
  }
});

describe("content/method-checks.json", () => {
  it("is what npm run method-checks would write now", () => {
    const plain = ({ computed: _, difference: __, ...rest }: CheckRow) => rest;
    expect(committed.rows.map(plain)).toEqual(JSON.parse(JSON.stringify(rows.map(plain))));
    rows.forEach((row, i) => {
      const was = [committed.rows[i]?.computed ?? []].flat(2).map(Number);
      const scale = Math.max(...[row.expected, row.computed].flat(3).map((value) => Math.abs(Number(value))));
      [row.computed].flat(2).forEach((value, k) => {
        expect(Math.abs(Number(value) - (was[k] ?? Number.NaN)), `${row.id} ${row.name}`).toBeLessThanOrEqual(
          1e-9 * scale,
        );
      });
    });
  });
});
