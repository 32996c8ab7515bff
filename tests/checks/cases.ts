/** The cases of tests/fixtures/truth as checks: expected values, tolerance and source come from the file, never from here. */
import geometry from "../fixtures/truth/geometry.json";
import mechanics from "../fixtures/truth/mechanics.json";
import { type Check, type CheckedValue, type Mark, marks, type Tolerance, type Topic, type Values } from "./types";

interface Case {
  readonly id: string;
  readonly topic: string;
  readonly inputs: Readonly<Record<string, unknown>>;
  readonly expected: Readonly<Record<string, unknown>>;
  readonly tolerance: Readonly<Record<string, unknown>>;
  readonly mark: string;
  readonly source: string;
}

const all: readonly Case[] = [...(mechanics.cases as readonly Case[]), ...Object.values(geometry.cases)];
const byId = new Map(all.map((one) => [one.id, one]));

/** Every case there is; each needs a check. */
export const caseIds: readonly string[] = all.map((one) => one.id);

export function caseOf(id: string): Case {
  const found = byId.get(id);
  if (!found) throw new Error(`tests/fixtures/truth has no case ${id}`);
  return found;
}

/** A numeric input of a case. */
export function input(id: string, name: string): number {
  const value = caseOf(id).inputs[name];
  if (typeof value !== "number") throw new Error(`${id}.inputs.${name} is not a number`);
  return value;
}

/** An expected value of a case. */
export function expected(id: string, name: string): Values {
  const value = caseOf(id).expected[name];
  if (value === undefined) throw new Error(`${id}.expected.${name} is missing`);
  return value as Values;
}

/**
 * A check of a case: `computed` names the case's expected values and gives the engine's. Where the engine's value is not the
 * case's own but must fit it in another way, `allowed` says how.
 */
export function caseCheck(
  id: string,
  topic: Topic,
  computed: () => Readonly<Record<string, Values>>,
  allowed: Readonly<Record<string, Tolerance>> = {},
): Check {
  const one = caseOf(id);
  return {
    id,
    topic,
    about: one.topic,
    source: one.source,
    mark: markOf(id),
    values: () =>
      Object.entries(computed()).map(([name, value]): CheckedValue => {
        const wanted = expected(id, name);
        return { name, expected: wanted, computed: value, tolerance: allowed[name] ?? toleranceOf(one, name, wanted) };
      }),
  };
}

/** The case's own tolerance, but never closer than half a unit of the last digit that is printed. */
function toleranceOf({ id, tolerance }: Case, name: string, wanted: Values): Tolerance {
  if (tolerance.range === true && Array.isArray(wanted)) return { kind: "range" };
  const stem = name.split("_")[0] ?? name;
  const find = (kind: string) =>
    [`${kind}_${name}`, `${kind}_${stem}`, kind]
      .map((key) => tolerance[key])
      .find((value) => typeof value === "number");
  const absolute = find("abs");
  const relative = find("rel");
  const flat = [wanted].flat(3).map((value) => Math.abs(Number(value)));
  const printed = Math.max(...flat.map(printedTo));
  const scale = Math.max(...flat);
  if (typeof relative === "number" && relative * scale >= printed) return { kind: "rel", value: relative };
  if (typeof absolute === "number") return { kind: "abs", value: Math.max(absolute, printed) };
  if (typeof relative === "number") return { kind: "abs", value: printed };
  throw new Error(`${id}.tolerance has nothing for ${name}`);
}

/** Half a unit of the last decimal that a value is printed with. */
function printedTo(value: number): number {
  const decimals = String(value).split(".")[1];
  return decimals && !decimals.includes("e") ? 0.5 / 10 ** decimals.length : 0;
}

/** The mark that the case was given by hand. */
export function markOf(id: string): Mark {
  const { mark } = caseOf(id);
  const found = marks.find((known) => known === mark);
  if (!found) throw new Error(`${id}.mark: ${mark}, known are ${marks.join(", ")}`);
  return found;
}
