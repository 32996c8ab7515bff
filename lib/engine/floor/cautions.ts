/**
 * Where a hazard is told: at the stations where it bites, on pages, papers and labels, and some only for the skis and skiers
 * they concern. The hazards themselves are the shop's own data (content/catalog/safety.json).
 */
import { findStation, type StationId, type StationRole, stationFor, type WithStations } from "./stations";

export const cautionPages = [
  /** The skier's sheet, on the web and on the telephone. */
  "sheet",
  /** The skier's quote. */
  "quote",
  /** The skier's page of a pair. */
  "pair",
  /** Beside what is done next on a pair in the shop. */
  "shop-pair",
  /** One station at a time. */
  "floor",
  /** Readings of the quality bench. */
  "bench",
  /** A measured pair typed in from the book. */
  "measured",
  /** Ways on from a breakdown. */
  "breakdown",
  /** An order that is ready to be sent or fetched. */
  "delivery",
] as const;
export type CautionPage = (typeof cautionPages)[number];

/** Pages of the floor's own work; the others are read at the desk and by skiers. */
export const stationPages: readonly CautionPage[] = ["shop-pair", "floor", "bench", "measured", "breakdown"];

export const cautionPapers = ["kit-list", "labels", "quote", "club-quote", "order-confirmation"] as const;
export type CautionPaper = (typeof cautionPapers)[number];

/** What a label is stuck on. */
export const cautionLabels = ["strip-bundle", "core", "base", "print", "cassette", "finished-ski"] as const;
export type CautionLabel = (typeof cautionLabels)[number];

export const cautionIcons = [
  "gloves",
  "no-gloves",
  "mask",
  "goggles",
  "hearing",
  "hot",
  "fire",
  "dust",
  "crush",
  "blade",
  "two-people",
  "ventilate",
  "wait",
  "note",
] as const;
export type CautionIcon = (typeof cautionIcons)[number];

/** What is said of a hazard: one line beside the action, the whole text with its reference one step away. */
export interface Caution {
  readonly id: string;
  readonly icon: CautionIcon;
  readonly line: string;
  readonly full: string;
  readonly reference: string;
}

/** A hazard with the places where it bites. */
export interface Hazard extends Caution {
  readonly stations: readonly StationRole[];
  readonly pages: readonly CautionPage[];
  readonly papers: readonly CautionPaper[];
  readonly labels: readonly CautionLabel[];
  /** Told only where any of these holds; absent: always. */
  readonly onlyFor?: {
    /** Uses of the model. */
    readonly uses?: readonly string[];
    /** Share of days off the piste, %, from which it is told. */
    readonly offPisteFromPercent?: number;
    /** Age in years below which it is told. */
    readonly belowAgeYears?: number;
  };
}

/** A ski and who it is for, as far as is known. */
export interface SoldFor {
  readonly use?: string | undefined;
  readonly offPistePercent?: number | undefined;
  readonly ageYears?: number | undefined;
}

/** What is known of a ski that is sold and of its skier. */
export function soldFor(
  spec: { readonly model: string } | null,
  models: readonly { readonly id: string; readonly use: string }[],
  { offPistePercent, ageYears }: Pick<SoldFor, "offPistePercent" | "ageYears">,
): SoldFor {
  return { use: models.find(({ id }) => id === spec?.model)?.use, offPistePercent, ageYears };
}

export type CautionPlace =
  | { readonly page: CautionPage }
  | { readonly paper: CautionPaper }
  | { readonly label: CautionLabel };

/**
 * What is told at a place, in the shop's own order.
 * @param soldFor the skis it is about; a hazard of certain skis or skiers is told when it concerns any of them
 */
export function cautionsAt(
  hazards: readonly Hazard[],
  place: CautionPlace,
  soldFor: readonly SoldFor[] = [],
): readonly Hazard[] {
  return hazards.filter((hazard) => isToldAt(hazard, place) && concerns(hazard, soldFor));
}

/** What is told at a station: of its own work, and of work that it does for want of a station of its own. */
export function cautionsOfStation(
  hazards: readonly Hazard[],
  floor: WithStations,
  station: StationId,
): readonly Hazard[] {
  const own = findStation(floor, station)?.role;
  if (own === undefined) return [];
  const isDoneHere = (role: StationRole) => role === own || stationFor(floor, role).id === station;
  return hazards.filter(({ stations }) => stations.some(isDoneHere));
}

function isToldAt({ pages, papers, labels }: Hazard, place: CautionPlace): boolean {
  if ("page" in place) return pages.includes(place.page);
  if ("paper" in place) return papers.includes(place.paper);
  return labels.includes(place.label);
}

function concerns({ onlyFor }: Hazard, soldFor: readonly SoldFor[]): boolean {
  if (onlyFor === undefined) return true;
  const { uses = [], offPisteFromPercent: from, belowAgeYears: below } = onlyFor;
  return soldFor.some(
    ({ use, offPistePercent, ageYears }) =>
      (use !== undefined && uses.includes(use)) ||
      (from !== undefined && offPistePercent !== undefined && offPistePercent >= from) ||
      (below !== undefined && ageYears !== undefined && ageYears < below),
  );
}
