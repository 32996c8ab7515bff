/** Stations that the use cases name; their order is the engine's (engine/routing). */

/** The station whose start uses up the strips. */
export const coreStation = 3;
/** Where the topsheet is printed: what a proof shows is fixed from here on. */
export const printStation = 8;
/** The last station of a pair. */
export const lastStation = 14;
/** Both skis meet in the mould here. */
export const layUpStation = 10;
/** The one station that is as many machines as there are presses. */
export const pressStation = 11;
