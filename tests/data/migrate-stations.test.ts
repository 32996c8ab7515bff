/** Rows as they stood while stations were numbers, brought to what is read now. */
import { cpSync, mkdtempSync, readdirSync, rmSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { type OpenDatabase, openDatabase } from "#data/client";
import { applyMigrations } from "#data/migrate";

const prismaFolder = path.resolve(import.meta.dirname, "../../prisma");
const theMigration = "stations_and_counterchange";
let open: OpenDatabase;

/** The migrations up to the one that is tried. */
async function migrateUpTo(last: string): Promise<void> {
  const folder = mkdtempSync(path.join(os.tmpdir(), "migrations-"));
  const all = readdirSync(path.join(prismaFolder, "migrations")).sort();
  const end = all.findIndex((name) => name.endsWith(last));
  for (const name of all.slice(0, end))
    cpSync(path.join(prismaFolder, "migrations", name), path.join(folder, "migrations", name), { recursive: true });
  await applyMigrations(open, folder);
  rmSync(folder, { recursive: true });
}

const fillers: Readonly<Record<string, string>> = {
  text: "''",
  integer: "0",
  jsonb: "'{}'",
  boolean: "false",
  "timestamp with time zone": "now()",
};

/** A row with what is given; what else must not be empty gets something. */
async function insert(table: string, given: Readonly<Record<string, unknown>>): Promise<void> {
  const columns = await open.db.$queryRawUnsafe<{ name: string; type: string }[]>(
    `SELECT column_name AS name, data_type AS type FROM information_schema.columns
     WHERE table_name = '${table}' AND is_nullable = 'NO' AND column_default IS NULL`,
  );
  const literal = (value: unknown) =>
    typeof value === "number" ? String(value) : `'${typeof value === "string" ? value : JSON.stringify(value)}'`;
  const others = columns.filter(({ name }) => !(name in given));
  const names = [...Object.keys(given), ...others.map(({ name }) => name)];
  const values = [...Object.values(given).map(literal), ...others.map(({ type }) => fillers[type] ?? "NULL")];
  const list = names.map((name) => `"${name}"`).join(", ");
  await open.db.$executeRawUnsafe(`INSERT INTO "${table}" (${list}) VALUES (${values.join(", ")})`);
}

const drivers = [
  { code: "station-queue", workingDays: 2, station: 7 },
  { code: "mould", workingDays: 1, mould: "M95-178" },
];
const base = { left: "black", right: "yellow", inlay: "swap-letters", inlayText: "ROBIN" };
const price = { lines: [{ code: "inlay-swap-letters", lineCents: 9500 }] };

beforeAll(async () => {
  open = await openDatabase({ kind: "memory" });
  await migrateUpTo(theMigration);
  // Only what is migrated is written here; whose rows they would hang on is another matter.
  await open.db.$executeRawUnsafe("SET session_replication_role = replica");
  for (const station of [1, 3, 10, 14])
    await insert("operations", { id: `o${station}`, pair_id: "p", station, visit: 0 });
  await insert("pair_holds", { id: "h", pair_id: "p", station: 6 });
  await insert("floor_changes", {
    id: "f1",
    data: { kind: "overtime", stations: [10, 11], daily: { fromMinute: 990, toMinute: 1110 } },
  });
  await insert("floor_changes", { id: "f2", data: { kind: "station-down", station: 13 } });
  await insert("floor_changes", { id: "f3", data: { kind: "extra-person", person: { id: "hire-1", stations: [2] } } });
  await insert("incidents", {
    id: "i",
    number: 1,
    input: { kind: "ski-rebuild", fromStation: 2 },
    effect: { slack: [{ pairId: "p", promiseClass: "hard" }] },
    options: [{ way: "overnight-cure", changes: [{ kind: "overtime", stations: [10, 11] }] }],
    base: { pairs: [{ swappedWith: { label: "Graphite black", lot: "UH-31" } }] },
  });
  await insert("events", { kind: "operation-started", data: { station: 11, press: "Press 1" } });
  await insert("events", { kind: "rework-started", data: { from: 2, stations: [2, 3], fault: "core-wrong" } });
  await insert("events", { kind: "promise-fixed", data: { class: "hard", from: "2026-12-01" } });
  // Whose they are is copied by a later migration.
  await insert("customers", { id: "c" });
  await insert("orders", {
    id: "or",
    customer_id: "c",
    promise_class: "hard",
    estimate: { p50: "2026-12-01", drivers },
    price,
  });
  await insert("quotes", {
    id: "q",
    customer_id: "c",
    date_range: { drivers },
    spec: { base },
    choices: { base },
    price,
  });
  await insert("sheets", { id: "s", fields: { "choices.base": { value: base, version: 3 } } });
  await insert("pairs", { id: "p", spec: { base } });
  await insert("pair_revisions", { pair_id: "p", spec: { base }, price });
  await applyMigrations(open, prismaFolder);
}, 120_000);

afterAll(() => open.close());

const counterchanged = { ...base, inlay: "counterchange" };
const priced = { lines: [{ code: "inlay-counterchange", lineCents: 9500 }] };
const driven = [{ ...drivers[0], station: "edges" }, drivers[1]];

describe("the migration from numbers to stations", () => {
  it("names every row's station and keeps its place in the way", async () => {
    const rows = await open.db.operation.findMany({ orderBy: { position: "asc" } });
    expect(rows.map(({ station, position }) => [station, position])).toEqual([
      ["release", 1],
      ["core-glue", 3],
      ["lay-up", 10],
      ["check", 14],
    ]);
    expect(await open.db.pairHold.findMany()).toMatchObject([{ station: "base-cut" }]);
  });

  it("names stations in stored changes, incidents and estimates, and leaves other numbers alone", async () => {
    const changes = await open.db.floorChange.findMany({ orderBy: { id: "asc" } });
    expect(changes.map(({ data }) => data)).toEqual([
      { kind: "overtime", stations: ["lay-up", "press"], daily: { fromMinute: 990, toMinute: 1110 } },
      { kind: "station-down", station: "finish" },
      { kind: "extra-person", person: { id: "hire-1", stations: ["strips"] } },
    ]);
    expect(await open.db.incident.findMany()).toMatchObject([
      {
        input: { kind: "ski-rebuild", fromStation: "strips" },
        options: [{ way: "overnight-cure", changes: [{ kind: "overtime", stations: ["lay-up", "press"] }] }],
      },
    ]);
    expect(await open.db.order.findMany()).toMatchObject([{ estimate: { p50: "2026-12-01", drivers: driven } }]);
    expect(await open.db.quote.findMany()).toMatchObject([{ dateRange: { drivers: driven } }]);
  });

  it("names them in the history", async () => {
    const events = await open.db.event.findMany({ orderBy: { seq: "asc" } });
    expect(events.map(({ data }) => data)).toEqual([
      { station: "press", press: "Press 1" },
      { from: "strips", stations: ["strips", "core-glue"], fault: "core-wrong" },
      { class: "hard-date", from: "2026-12-01" },
    ]);
  });

  it("calls exchanged letters a counterchange and a hard date a hard date, wherever they are stored", async () => {
    expect(await open.db.sheet.findMany()).toMatchObject([
      { fields: { "choices.base": { value: counterchanged, version: 3 } } },
    ]);
    expect(await open.db.quote.findMany()).toMatchObject([
      { spec: { base: counterchanged }, choices: { base: counterchanged }, price: priced },
    ]);
    expect(await open.db.pair.findMany()).toMatchObject([{ spec: { base: counterchanged } }]);
    expect(await open.db.pairRevision.findMany()).toMatchObject([{ spec: { base: counterchanged }, price: priced }]);
    expect(await open.db.order.findMany()).toMatchObject([{ promiseClass: "hard-date", price: priced }]);
    expect(await open.db.incident.findMany()).toMatchObject([
      {
        base: { pairs: [{ counterchangedWith: { label: "Graphite black", lot: "UH-31" } }] },
        effect: { slack: [{ promiseClass: "hard-date" }] },
      },
    ]);
  });
});
