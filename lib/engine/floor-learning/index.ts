export { floorWithBook } from "./apply-book";
export { learnFloor } from "./learn-floor";
export type * from "./types";
