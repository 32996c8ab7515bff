import { describe, expect, it } from "vitest";
import { z } from "zod";
import { id, isoDay, json, nullable, oneOf, readableRows, readRow, readRows, UnreadableRow } from "#data/columns";

const columns = {
  id: id("pair"),
  state: oneOf(["open", "closed"]),
  on: nullable(isoDay),
  facts: json(z.object({ widths: z.array(z.number()).readonly() })),
} as const;
const good = { id: "a", state: "open", on: "2026-11-30", facts: { widths: [1, 2] }, name: "plain" };
const read = (row: Readonly<Record<string, unknown>>) => readRow("things", columns, row, () => "T-1");

describe("a row", () => {
  it("is read column by column, what is not named as it stands", () => {
    expect(read(good)).toEqual(good);
    expect(read({ ...good, on: null })).toMatchObject({ on: null });
  });

  it.each([
    ["id", "", /no pair id/],
    ["id", 7, /not text/],
    ["state", "ajar", /"ajar" is none of open, closed/],
    ["on", "2026-02-30", /2026-02-30/],
    ["on", "30.11.2026", /YYYY-MM-DD/],
    ["facts", { widths: [1, "two"] }, /^widths\.1: /],
    ["facts", null, /object/],
  ])("that cannot be read names table, row, column and why: %s is %j", (column, value, why) => {
    expect.assertions(4);
    try {
      read({ ...good, [column]: value });
    } catch (error) {
      expect(error).toBeInstanceOf(UnreadableRow);
      expect(error).toMatchObject({ table: "things", row: "T-1", column });
      const fault = error as UnreadableRow;
      expect(fault.why).toMatch(why);
      expect(fault.message).toBe(`things T-1, column ${column}: ${fault.why}`);
    }
  });

  it("leaves out a list's rows that cannot be read, and says which", () => {
    const rows = [good, { ...good, state: "ajar" }, { ...good, id: "b" }];
    expect(readableRows(rows, read)).toHaveLength(2);
    expect(readRows(rows, read).unreadable).toMatchObject([{ column: "state" }]);
    const wrong = () => {
      throw new RangeError("a fault of ours");
    };
    expect(() => readRows(rows, wrong)).toThrow("a fault of ours");
  });
});

describe("JSON", () => {
  it("is checked once for each text, shared, and cannot be written to", () => {
    let checks = 0;
    const counted = z.object({ list: z.array(z.number()) }).refine(() => {
      checks += 1;
      return true;
    });
    const column = json(counted);
    const first = column.read({ list: [1] });
    expect(column.read({ list: [1] })).toBe(first);
    expect(checks).toBe(1);
    expect(column.read({ list: [2] })).toEqual({ list: [2] });
    expect(checks).toBe(2);
    expect(() => first.list.push(3)).toThrow(TypeError);
  });

  it("forgets the oldest and no more", () => {
    let checks = 0;
    const column = json(
      z.number().refine(() => {
        checks += 1;
        return true;
      }),
    );
    for (let value = 0; value <= 2000; value += 1) column.read(value);
    expect(checks).toBe(2001);
    column.read(2000);
    column.read(1);
    expect(checks).toBe(2001);
    column.read(0);
    expect(checks).toBe(2002);
  });
});
