/**
 * How files stored before are read: a station by its number, a station without a role, an option or a field by its earlier
 * name. What they meant is data (earlier-releases.json); here is only the way of reading.
 */
import { z } from "zod";
import type { StationId } from "#engine/floor";
import earlier from "./earlier-releases.json";

type Fields = Readonly<Record<string, unknown>>;

const byId = new Map<unknown, Fields>(earlier.stations.map((station) => [station.id, station]));
const idOfNumber = new Map<number, StationId>(earlier.stations.map(({ number, id }) => [number, id]));

/** A station's id; a file stored before names it by its number. */
export const stationRef = z.union([
  z.string().min(1),
  z.number().transform((number, context): StationId => {
    const id = idOfNumber.get(number);
    if (id !== undefined) return id;
    context.addIssue({ code: "custom", message: `no station had the number ${number}` });
    return z.NEVER;
  }),
]);

function isFields(raw: unknown): raw is Fields {
  return typeof raw === "object" && raw !== null && !Array.isArray(raw);
}

/** Reads a station that was stored without a role as what it was then. */
export function asStation<S extends z.ZodType>(schema: S) {
  return z.preprocess(
    (raw) => (isFields(raw) && raw.role === undefined ? { ...byId.get(raw.id), ...raw } : raw),
    schema,
  );
}

/** Reads fields by their earlier names too. */
export function formerly<S extends z.ZodType>(names: Readonly<Record<string, string>>, schema: S) {
  return z.preprocess(
    (raw) =>
      isFields(raw) ? Object.fromEntries(Object.entries(raw).map(([key, value]) => [names[key] ?? key, value])) : raw,
    schema,
  );
}

/** Codes of options that were called otherwise before. */
export const earlierOptions: Readonly<Record<string, string>> = earlier.options;
