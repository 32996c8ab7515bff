/** Views made by hand for components that draw them: the fields that a test is about, each checked against its type. */
type Loose<T> = T extends string
  ? string
  : T extends number
    ? number
    : T extends boolean | null | undefined
      ? T
      : T extends readonly (infer Each)[]
        ? readonly Loose<Each>[]
        : { readonly [Key in keyof T]?: Loose<T[Key]> | undefined };

/** A view of which a component reads no more than what is given here; what it reads besides is missing and shows as an error. */
export function partly<T>(known: Loose<T>): T {
  return known as T;
}
