export type * from "./common";
export type * from "./ids";
export type * from "./learning";
export type * from "./order";
export type * from "./pair";
export type * from "./queue";
export type * from "./quote";
export type * from "./sheet";
