/** What the scripts in .ci do with the database: migrate, compare, back up. Not for use cases. */
export {
  filesOf,
  packCopy,
  readBackupFile,
  readManifest,
  restoreFolder,
  rotateBackups,
  tryDump,
  writeBackup,
} from "./backup";
export { closeDatabase, database, openDatabase } from "./client";
export { requestCopy } from "./copy-request";
export { prepareDatabase } from "./first-start";
export { checkFolder, DatabaseProblem } from "./folder-problem";
export { FolderInUse, lockFolder } from "./lock";
export { migrationDifference } from "./migrate";
export { dumpPostgres } from "./postgres-dump";
