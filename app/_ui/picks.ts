/** Several ticked rows in a plain form: each tick is a field of its own, named by its row's id. */
const prefix = "pick-";

export const pickName = (id: string): string => `${prefix}${id}`;

/** Ids of the rows that were ticked. */
export function pickedIn<Id extends string>(fields: Readonly<Record<string, unknown>>): readonly Id[] {
  return Object.keys(fields)
    .filter((key) => key.startsWith(prefix))
    .map((key) => key.slice(prefix.length) as Id);
}
