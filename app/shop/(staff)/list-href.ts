export type Query = Readonly<Record<string, string | undefined>>;

/** The address of a list with some of its filters changed; empty ones are left out. */
export function listHref(path: string, query: Query, change: Query): string {
  const kept = Object.entries({ ...query, ...change }).filter((entry): entry is [string, string] => Boolean(entry[1]));
  const text = new URLSearchParams(kept).toString();
  return text ? `${path}?${text}` : path;
}
