/** The shop floor's settings file: stations, people, presses, moulds, hours and what can go wrong. */
import { z } from "zod";
import {
  closingParts,
  type StationRole,
  stationProblems,
  stationRoles,
  stationStocks,
  stationTools,
} from "#engine/floor";
import type { FloorCatalog } from "#engine/routing";
import { type IsoDate, isoDate } from "#engine/units";
import { asStation, stationRef } from "./earlier-releases";

const id = z.string().min(1);
const text = z.string().min(1);
const source = text;
const minutes = z.number().int().nonnegative();
const share = z.number().min(0).max(1);

const threePoint = z
  .strictObject({ low: z.number().nonnegative(), typ: z.number().positive(), high: z.number().positive() })
  .refine(({ low, typ, high }) => low <= typ && typ <= high, { error: "low ≤ typ ≤ high does not hold" });
const range = z
  .strictObject({ low: z.number().nonnegative(), high: z.number().positive() })
  .refine(({ low, high }) => low <= high, { error: "low ≤ high does not hold" });

const date = z.iso.date().transform((value): IsoDate => isoDate(value));

const hours = z.strictObject({
  /** Stood here too before the shop's own file was its one home; read from there, and kept in older releases. */
  timeZone: text.exactOptional(),
  windows: z
    .array(z.strictObject({ fromMinute: minutes, toMinute: minutes.max(1440) }))
    .min(1)
    .refine(
      (windows) =>
        windows.every(
          ({ fromMinute, toMinute }, i) => fromMinute < toMinute && fromMinute >= (windows[i - 1]?.toMinute ?? 0),
        ),
      {
        error: "windows must follow each other without overlap",
      },
    ),
  workingWeekdays: z.array(z.number().int().min(1).max(7)).min(1),
  closedDays: z.array(z.strictObject({ date, label: text })),
  source,
});

const stationSchema = z.strictObject({
  number: z.number().int().min(1).max(99),
  id,
  label: text,
  role: z.enum(Object.keys(stationRoles) as [StationRole, ...StationRole[]]),
  after: z.array(id),
  uses: z.array(z.enum(stationTools)).default([]),
  consumes: z.array(z.enum(stationStocks)).default([]),
  closes: z.array(z.enum(closingParts)).default([]),
  printOnlyShare: share.exactOptional(),
  restsBeside: z.boolean().default(false),
  capacity: z.number().int().min(1),
  crewNeeded: z.number().int().min(1),
  minutes: threePoint,
  waitMinutes: threePoint.exactOptional(),
  usualBatch: text.exactOptional(),
  isUninterrupted: z.boolean(),
  skillLevel: z.union([z.literal(1), z.literal(2), z.literal(3)]),
  source,
});

const rework = z
  .strictObject({
    id,
    afterStation: stationRef,
    probability: share,
    redoStations: z.array(stationRef).min(1),
    minutesShare: z.number().positive().max(1),
    delayWorkingDays: range.exactOptional(),
    source,
  })
  .refine(({ afterStation, redoStations }) => redoStations.includes(afterStation), {
    error: "redoStations must contain afterStation",
    path: ["redoStations"],
  });

export const floorFileSchema = z
  .strictObject({
    about: text,
    id,
    hours,
    stations: z.array(asStation(stationSchema)).min(1),
    crew: z
      .array(z.strictObject({ id, label: text, stations: z.array(stationRef).min(1), isReserve: z.boolean() }))
      .min(1),
    crewSource: source,
    presses: z
      .array(z.strictObject({ id, label: text, kind: z.enum(["heated", "cold"]), initialMould: id.exactOptional() }))
      .min(1),
    pressProgramme: z.strictObject({
      unloadMinutes: minutes,
      heatUpMinutes: minutes,
      dwellMinutes: minutes,
      coolMinutes: minutes,
      closeWithinMinutes: minutes,
      source,
    }),
    moulds: z.array(
      z.strictObject({ id, family: id, lengthCm: z.number().positive(), cassettes: z.number().int().min(1) }),
    ),
    changeoverMinutes: z.strictObject({
      sameMould: minutes,
      sameFamily: minutes,
      otherFamily: minutes,
      hotExtra: minutes,
      source,
    }),
    pressDayLostProbability: share.max(0.9),
    rework: z.array(rework),
    sharedShock: z.strictObject({
      probability: share,
      windowWorkingDays: z.number().positive(),
      delayWorkingDays: range,
      source,
    }),
    proof: z.strictObject({ workingDays: threePoint, source }),
    planning: z.strictObject({
      mouldGroupingWorkingDays: z.number().nonnegative(),
      frozenWorkingDays: z.number().nonnegative(),
      softHoldWorkingDays: z.number().nonnegative(),
      source,
    }),
  })
  .superRefine((floor, context) => {
    for (const { path, message } of stationProblems(floor.stations)) {
      context.addIssue({ code: "custom", path: ["stations", ...path], message });
    }
    floor.stations.forEach(({ id, crewNeeded }, index) => {
      const people = floor.crew.filter(({ stations, isReserve }) => !isReserve && stations.includes(id)).length;
      if (people < crewNeeded) {
        context.addIssue({
          code: "custom",
          path: ["stations", index, "crewNeeded"],
          message: `station "${id}" needs ${crewNeeded} people at once and the crew has ${people} for it`,
        });
      }
    });
    const known = new Set(floor.stations.map(({ id }) => id));
    const named = [
      ...floor.crew.map(({ stations }, index) => ({ path: ["crew", index, "stations"], stations })),
      ...floor.rework.map(({ redoStations }, index) => ({
        path: ["rework", index, "redoStations"],
        stations: redoStations,
      })),
    ];
    for (const { path, stations } of named) {
      for (const station of stations.filter((each) => !known.has(each))) {
        context.addIssue({ code: "custom", path, message: `the floor has no station "${station}"` });
      }
    }
  });

/** A floor file is a floor, with its sources beside it; the hours are those of the shop's clock. */
export function floorOf(file: z.output<typeof floorFileSchema>, timeZone: string): FloorCatalog {
  return { ...file, hours: { ...file.hours, timeZone } };
}
