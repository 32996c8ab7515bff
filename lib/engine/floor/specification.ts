/** The parts of a specification that can be changed one by one, until the station that uses them begins. */
export const specificationParts = [
  "shape",
  "core",
  "reinforcements",
  "flex",
  "mount",
  "base",
  "graphic",
  "protectors",
  "finish",
  "delivery",
] as const;
/** `shape` is model or length; `delivery` is name, address and shipping. */
export type SpecificationPart = (typeof specificationParts)[number];

/** What no station uses: it stays open until the pair is shipped. */
export const openUntilShipped = "delivery" satisfies SpecificationPart;
/** What some station of every floor closes. */
export type ClosingPart = Exclude<SpecificationPart, typeof openUntilShipped>;
export const closingParts: readonly ClosingPart[] = specificationParts.filter(
  (part): part is ClosingPart => part !== openUntilShipped,
);
