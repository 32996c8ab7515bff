/** Any field of a sheet in the words of the page: its name, and what stands in it. Never an id of the catalogue. */
import type { EngineCatalog, PartialAnswers } from "#engine/assessment";
import { coreLabel, type PairSpec } from "#engine/configuration";
import { type TypedHeight, type TypedMass, textForPeople } from "#engine/units";
import type { SheetContact } from "#services/views";
import { dateRangeText } from "../date-range";
import { moneyText } from "../money";
import { heightText, massText } from "../typed-measures";
import { fill, listText } from "../words";
import { flexText, graphicText, modelName, reinforcementNames } from "./labels";
import type { SheetWords } from "./words";

interface Known {
  readonly catalog: EngineCatalog;
  readonly words: SheetWords;
}

export function fieldName(path: string, words: SheetWords): string {
  const names: Readonly<Record<string, string>> = words.fields;
  return names[path] ?? words.values.other;
}

type Labels = Readonly<Record<string, string>>;

/** What stands in a field, as the page would say it. */
export function valueText(path: string, value: unknown, { catalog, words }: Known): string {
  const { values, you } = words;
  if (value === null || value === undefined || value === "" || (Array.isArray(value) && value.length === 0)) {
    return values.none;
  }
  const label = (labels: Labels) => (labels[String(value)] ?? values.other).toLowerCase();
  const labelList = (labels: Labels) => listText((value as string[]).map((each) => labels[each] ?? values.other));
  const amount = (unit: string) => `${textForPeople(Number(value), 1)} ${unit}`;
  if (typeof value === "boolean") return value ? values.yes : values.no;
  switch (path) {
    case "typed.height":
      return heightText(value as TypedHeight);
    case "typed.mass":
      return massText(value as TypedMass);
    case "answers.heightCm":
    case "choices.lengthCm":
      return amount("cm");
    case "answers.massKg":
    case "answers.packKg":
      return amount("kg");
    case "answers.ability":
      return (you.abilities[value as keyof typeof you.abilities]?.label ?? values.other).toLowerCase();
    case "answers.temperament":
      return label(you.temperaments);
    case "answers.homeSnow":
      return label(you.homeSnows);
    case "answers.turnSize":
      return label(you.turnSizes);
    case "answers.priorities":
      return labelList(you.priorityList).toLowerCase();
    case "answers.terrain":
      return labelList(you.terrainList).toLowerCase();
    case "answers.offPistePercent":
    case "answers.touringPercent":
      return amount("%");
    case "answers.daysTotal":
      return fill(values.days, { count: value });
    case "answers.ageYears":
      return fill(values.years, { count: value });
    case "answers.currentSki":
      return currentSkiText(value as CurrentSki, words);
    case "answers.bootSoleMm":
    case "answers.bindingTrackMm":
    case "answers.mountOffsetMm":
      return amount("mm");
    case "choices.flexRatio":
      return `${textForPeople(Number(value), 2)}, ${flexText(Number(value), catalog)}`;
    case "choices.model":
      return catalog.build.models.some(({ id }) => id === value) ? modelName(catalog, String(value)) : values.other;
    case "choices.core":
      return coreLabel(String(value), catalog.build);
    case "choices.reinforcements":
      return reinforcementNames(value as readonly string[], catalog).join(", ") || words.reinforcement.none;
    case "choices.plate":
      return catalog.build.rules.plate.choices?.find(({ id }) => id === value)?.label ?? values.other;
    case "choices.graphic":
      return graphicText(value as PairSpec["graphic"], catalog, words);
    case "choices.base":
      return baseText(value as PairSpec["base"], catalog, words);
    case "choices.mount":
      return mountText(value as PairSpec["mount"], words);
    case "choices.finish": {
      const { baseBevelDeg, sideAngleDeg, structure } = value as PairSpec["finish"];
      return fill(values.edges, {
        base: textForPeople(baseBevelDeg, 2),
        side: textForPeople(sideAngleDeg, 1),
        structure,
      });
    }
    case "choices.destination":
      return label(words.price.destinations);
    case "choices.discounts": {
      const codes = (value as readonly { readonly code: string }[]).map(({ code }) => code);
      const rules = catalog.priceBook.discounts.filter(({ code }) => codes.includes(code));
      return rules.map((rule) => rule.label).join(", ") || values.other;
    }
    case "contact.address": {
      const { lines, town, postcode, country } = value as NonNullable<SheetContact["address"]>;
      return [...lines, `${postcode} ${town}`, country].join(", ");
    }
    case "contact.name":
    case "contact.email":
    case "contact.phone":
    case "said.height":
    case "said.mass":
    case "notes":
      return `“${String(value)}”`;
    default:
      return values.other;
  }
}

type CurrentSki = NonNullable<PartialAnswers["currentSki"]>;

/** What a quote would be made of, beside what was seen: a field, the price in cents, or two days. */
export function seenText(path: string, value: unknown, known: Known): string {
  if (path === "price") return value === null ? known.words.values.none : moneyText(Number(value));
  if (path === "date") {
    const days = value as { readonly p50: string; readonly p90: string } | null;
    return days === null ? known.words.values.none : dateRangeText(days.p50, days.p90, true);
  }
  return valueText(path, value, known);
}

function currentSkiText(ski: CurrentSki, { you, values }: SheetWords): string {
  const parts = [
    ski.lengthCm === undefined ? "" : `${ski.lengthCm} cm`,
    ski.waistMm === undefined ? "" : `${ski.waistMm} mm`,
    ski.length === undefined ? "" : `${you.currentLengthVerdict} ${ski.length}`,
    ski.flex === undefined ? "" : `${you.currentFlexVerdict} ${ski.flex}`,
    ski.flexClass === undefined ? "" : `${you.currentFlexClass}: ${ski.flexClass}`,
    ski.newPairFor === undefined ? "" : `${you.newPairFor} ${ski.newPairFor}`,
  ].filter(Boolean);
  return parts.join(", ") || values.none;
}

function baseText(base: PairSpec["base"], { build }: EngineCatalog, { graphic, values }: SheetWords): string {
  const colour = (id: string) =>
    (build.baseColours.find((each) => each.id === id)?.label ?? values.other).toLowerCase();
  const colours = fill(values.bothColours, { left: colour(base.left), right: colour(base.right) });
  if (base.inlay === "none") return colours;
  const letters = base.inlayText ? `“${base.inlayText}”` : values.none;
  return `${colours}, ${graphic.inlay.toLowerCase()}: ${letters}`;
}

function mountText(mount: PairSpec["mount"], { values }: SheetWords): string {
  return [
    mount.offsetMm === 0 ? values.own : fill(values.offset, { mm: mount.offsetMm }),
    mount.bootSoleMm === undefined ? "" : fill(values.sole, { mm: mount.bootSoleMm }),
    mount.bindingTrackMm === undefined ? "" : fill(values.track, { mm: mount.bindingTrackMm }),
  ]
    .filter(Boolean)
    .join(", ");
}
