import { textForPeople } from "#engine/units";

/** Words come from content/copy; `{name}` in them stands for a parameter. */
export function fill(text: string, values: Readonly<Record<string, unknown>>): string {
  return text.replaceAll(/\{(\w+)\}/g, (whole, name: string) => shown(values[name]) ?? whole);
}

function shown(value: unknown): string | undefined {
  if (value === undefined || value === null) return undefined;
  if (typeof value === "number") return Number.isInteger(value) ? String(value) : textForPeople(value, 1);
  return typeof value === "string" ? value : JSON.stringify(value);
}

/** A word of a group by its key; the key itself where the group has none, so that a new code never shows a blank. */
export function wordOf(group: Readonly<Record<string, string>>, key: string): string {
  return group[key] ?? key;
}

/** "Ada, Bo and Cleo" */
export function listText(items: readonly string[]): string {
  return new Intl.ListFormat("en-GB", { type: "conjunction" }).format(items);
}
