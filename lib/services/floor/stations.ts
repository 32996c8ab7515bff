/** Stations that the use cases name; their order is the engine's (engine/routing). */

/** The station whose start uses up the strips. */
export const coreStation = 3;
/** The last station of a pair. */
export const lastStation = 14;
