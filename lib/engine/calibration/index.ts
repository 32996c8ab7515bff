/**
 * What the bench has read against what was computed: the factors that explain the difference, and the readings that do not
 * fit. Entry points: calibrate (the fit) and predictSki (what one finished ski should read).
 */
export { builtByRelease, builtOnPaper } from "./built-by";
export { calibrate } from "./calibrate";
export { predictSki } from "./predict-ski";
export * from "./types";
