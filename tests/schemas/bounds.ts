/**
 * Limits written as a mathematician writes them, and tried at the bound and one step beyond:
 *
 *   massKg               [15, 300]      a number; round brackets exclude the bound, an empty side has none
 *   revision       whole [1, 999]       a whole number: a half between is refused too
 *   name            text [1, 120]       characters
 *   lines          items [1, 4]         entries of a list
 */
import { expect, it } from "vitest";
import type { z } from "zod";

type Kind = "number" | "whole" | "text" | "items";

interface Bound {
  readonly path: string;
  readonly kind: Kind;
  readonly least: number | null;
  readonly most: number | null;
  readonly isLeastIn: boolean;
}

interface Trial {
  readonly path: string;
  readonly what: string;
  readonly value: unknown;
  /** The limit that refuses it; null when it is accepted. */
  readonly limit: number | null;
}

const written = /^(\S+)\s+(?:(whole|text|items)\s+)?([[(])([-\d.]*), ([-\d.]*)[\])]$/;

function readBound(line: string): Bound {
  const [, path = "", kind = "number", open, least = "", most = ""] = written.exec(line.trim()) ?? [];
  if (path === "") throw new RangeError(`"${line}" is not a limit`);
  const numberOf = (text: string) => (text === "" ? null : Number(text));
  return { path, kind: kind as Kind, least: numberOf(least), most: numberOf(most), isLeastIn: open === "[" };
}

const step: Readonly<Record<Kind, number>> = { number: 1e-6, whole: 1, text: 1, items: 1 };

function trialsOf(bound: Bound, fill: string, entry: unknown): readonly Trial[] {
  const { path, kind, least, most, isLeastIn } = bound;
  const by = step[kind];
  const made = (size: number): unknown => {
    if (kind === "text") return fill.repeat(size);
    return kind === "items" ? Array.from({ length: size }, () => entry) : size;
  };
  const trial = (size: number, limit: number | null): Trial => ({
    path,
    what: kind === "text" ? `${size} characters` : kind === "items" ? `${size} entries` : String(size),
    value: made(size),
    limit,
  });
  const trials: Trial[] = [];
  if (least !== null) {
    const inside = isLeastIn ? least : least + by;
    trials.push(trial(inside, null));
    if (kind !== "items" || inside > 0) trials.push(trial(inside - by, least));
  }
  if (most !== null) trials.push(trial(most, null), trial(most + by, most));
  return trials.filter(({ what }) => !what.startsWith("-1 "));
}

function withValue(sample: unknown, path: string, value: unknown): unknown {
  const copy: unknown = structuredClone(sample);
  const keys = path.split(".");
  const last = keys.pop() ?? "";
  const parent = keys.reduce<unknown>((inner, key) => (inner as Record<string, unknown>)[key], copy);
  (parent as Record<string, unknown>)[last] = value;
  return copy;
}

export interface BoundsTable {
  readonly schema: z.ZodType;
  /** Passes the schema. */
  readonly sample: unknown;
  readonly lines: readonly string[];
  /** What texts are made of. */
  readonly fill?: string;
  /** What lists are made of. */
  readonly entry?: unknown;
}

/** One test for each value at a bound or beyond it: beyond, the message stands at the field and names the limit. */
export function tryBounds({ schema, sample, lines, fill = "x", entry = "x" }: BoundsTable): void {
  it("begins with a sample that passes", () => {
    expect(schema.safeParse(sample).error?.issues ?? []).toEqual([]);
  });

  it.each(lines.map(readBound).flatMap((bound) => trialsOf(bound, fill, entry)))(
    "$path of $what, limit $limit",
    (trial) => {
      const { path, value, limit } = trial;
      const issues = schema.safeParse(withValue(sample, path, value)).error?.issues ?? [];
      const own = issues.filter((issue) => issue.path.join(".") === path);
      if (limit === null) return expect(own).toEqual([]);
      expect(own).not.toEqual([]);
      const says = own[0]?.message ?? "";
      expect(says.includes(String(limit)) || (limit === 1 && says.endsWith("is missing"))).toBe(true);
    },
  );

  const wholes = lines.map(readBound).filter(({ kind }) => kind === "whole");
  if (wholes.length === 0) return;
  it.each(wholes)("$path must be whole", ({ path, least }) => {
    const issues = schema.safeParse(withValue(sample, path, (least ?? 0) + 0.5)).error?.issues ?? [];
    expect(issues.some((issue) => issue.path.join(".") === path)).toBe(true);
  });
}
