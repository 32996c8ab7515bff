/** Words come from content/copy; `{name}` in them stands for a parameter. */
export function fill(text: string, values: Readonly<Record<string, string | number>>): string {
  return text.replaceAll(/\{(\w+)\}/g, (whole, name: string) => String(values[name] ?? whole));
}

/** A word of a group by its key; the key itself where the group has none, so that a new code never shows a blank. */
export function wordOf(group: Readonly<Record<string, string>>, key: string): string {
  return group[key] ?? key;
}
