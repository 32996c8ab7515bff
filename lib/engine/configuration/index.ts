/**
 * From what was ordered to what is built: the catalogue's items, one complete spec, its construction and what of it clashes.
 */
export * from "./build";
export * from "./designed-profile";
export * from "./flex-class";
export * from "./layer-materials";
export * from "./lookup";
export * from "./types";
