/** The demo shop's floor, as its content file says. */
import { readFileSync } from "node:fs";
import path from "node:path";
import type { FloorCatalog } from "#engine/routing";
import { floorFileSchema } from "#schemas/floor";

export function demoFloor(): FloorCatalog {
  return floorFileSchema.parse(
    JSON.parse(readFileSync(path.resolve(import.meta.dirname, "../../content/catalog/floor.json"), "utf8")),
  );
}
