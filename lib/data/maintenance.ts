/** What the scripts in .ci do with the database: migrate, compare, back up. Not for use cases. */
export { backUpFolder, restoreFolder } from "./backup";
export { closeDatabase, database, openDatabase } from "./client";
export { prepareDatabase } from "./first-start";
export { checkFolder, DatabaseProblem } from "./folder-problem";
export { migrationDifference } from "./migrate";
