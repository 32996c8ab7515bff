/** Where the seven strips of a core lie. */

/** From left to right, seen from above with the tip away: C in the middle, I, M and O on both sides of it. */
export const stripPlaces = [
  { position: "O", place: "left" },
  { position: "M", place: "left" },
  { position: "I", place: "left" },
  { position: "C", place: "centre" },
  { position: "I", place: "right" },
  { position: "M", place: "right" },
  { position: "O", place: "right" },
] as const;

export type StripPlace = (typeof stripPlaces)[number];
