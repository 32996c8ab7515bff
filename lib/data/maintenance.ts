/** What the scripts in .ci do with the database: migrate, compare, back up. Not for use cases. */
export { backUpFolder, restoreFolder } from "./backup";
export { closeDatabase, database } from "./client";
export { applyMigrations, migrationDifference } from "./migrate";
