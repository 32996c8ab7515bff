/**
 * The data folder as an archive that is small enough to keep: what the embedded database never reads again is left out.
 * That is the log behind the last checkpoint, what is left over at the end of its last file, and the two template databases.
 */
import { gzipSync } from "node:zlib";
import { openFolder } from "#data/embedded";

const block = 512;

export async function slimArchive(folder: string): Promise<Uint8Array> {
  const { pglite, close } = await openFolder(folder);
  try {
    await pglite.exec("VACUUM FULL");
    await pglite.exec("UPDATE pg_database SET datistemplate = false, datallowconn = true");
    for (const name of ["template0", "template1"]) await pglite.exec(`DROP DATABASE IF EXISTS ${name}`);
    await pglite.exec("SELECT pg_switch_wal()");
    await pglite.exec("CHECKPOINT");
    const { rows } = await pglite.query<{ file_name: string; file_offset: number }>(
      "SELECT * FROM pg_walfile_name_offset(pg_current_wal_insert_lsn())",
    );
    const [end] = rows;
    if (end === undefined) throw new Error("the database does not say where its log ends");
    const tar = Buffer.from(await (await pglite.dumpDataDir("none")).arrayBuffer());
    return gzipSync(withoutOldLog(tar, end.file_name, end.file_offset), { level: 9 });
  } finally {
    await close();
  }
}

/** Entries of a tar: a header with name (from 0) and octal size (from 124), then the content in whole blocks. */
function withoutOldLog(tar: Buffer, lastLog: string, endOfLog: number): Buffer {
  const kept: Buffer[] = [];
  for (let at = 0; at < tar.length; ) {
    const name = text(tar, at, 100);
    if (name === "") break;
    const size = Number.parseInt(text(tar, at + 124, 12), 8) || 0;
    const next = at + block + Math.ceil(size / block) * block;
    const log = /pg_wal\/([0-9A-F]{24})$/.exec(name)?.[1];
    if (log === lastLog) tar.fill(0, at + block + endOfLog, next);
    if (log === undefined || log === lastLog) kept.push(tar.subarray(at, next));
    at = next;
  }
  return Buffer.concat([...kept, Buffer.alloc(2 * block)]);
}

function text(bytes: Buffer, from: number, length: number): string {
  const end = bytes.indexOf(0, from);
  return bytes.toString("latin1", from, Math.min(end < 0 ? from + length : end, from + length)).trim();
}
