/**
 * A content folder of a shop with another floor: its stations, people and presses from a fixture, everything else from this
 * project's content. What content names by station (parts, minutes) moves to the station that does that work there.
 */
import { cpSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { type StationRole, stationFor } from "#engine/floor";
import { floorFileSchema } from "#schemas/floor";

const own = path.resolve(import.meta.dirname, "../../content");
const fixtures = path.resolve(import.meta.dirname, "../fixtures/floors");

type Json = Record<string, unknown>;
const readJson = (...at: readonly string[]): Json => JSON.parse(readFileSync(path.join(...at), "utf8"));

/**
 * @param name a file of tests/fixtures/floors
 * @returns a folder for loadCatalog
 */
export function contentWithFloor(name: string): string {
  const demo = readJson(own, "catalog", "floor.json");
  const floor = { ...demo, ...readJson(fixtures, `${name}.json`) };
  const stations = floorFileSchema.parse(floor).stations;
  const demoRoles = new Map(
    (demo.stations as { id: string; role: StationRole }[]).map(({ id, role }) => [id, role] as const),
  );
  /** The station there that does the work of one of ours. */
  const there = (id: string) => stationFor({ stations }, demoRoles.get(id) as StationRole).id;
  const moved = (value: unknown): unknown => {
    if (Array.isArray(value)) return value.map(moved);
    if (typeof value !== "object" || value === null) return value;
    const entries = Object.entries(value).map(([key, each]) =>
      key === "station" && typeof each === "string" ? [key, there(each)] : [key, moved(each)],
    );
    return Object.fromEntries(entries);
  };
  const once = (file: Json): Json => ({
    ...file,
    stations: stations
      .map(({ id }) => (file.stations as { station: string }[]).find((each) => there(each.station) === id))
      .map((each) => moved(each)),
  });
  const recipe = readJson(own, "catalog", "recipe.json");
  const press = recipe.press as { panel: { partedAt: string } };
  const remedies = readJson(own, "catalog", "remedies.json");
  const cure = remedies.overnightCure as { stations: string[] };
  const changed: Readonly<Record<string, unknown>> = {
    "floor.json": floor,
    "parts.json": moved(readJson(own, "catalog", "parts.json")),
    "reinforcements.json": moved(readJson(own, "catalog", "reinforcements.json")),
    "recipe.json": { ...once(recipe), press: { ...press, panel: { partedAt: there(press.panel.partedAt) } } },
    "remedies.json": { ...remedies, overnightCure: { ...cure, stations: cure.stations.map(there) } },
  };
  const root = mkdtempSync(path.join(tmpdir(), "content-"));
  cpSync(own, root, { recursive: true });
  const folder = path.join(root, "catalog");
  for (const file of readdirSync(folder)) {
    if (changed[file] !== undefined) writeFileSync(path.join(folder, file), JSON.stringify(changed[file]));
  }
  return root;
}
