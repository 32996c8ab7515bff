/** Whether a question makes sense: each refusal names the field, the value and the limit. */

import problems from "#content/copy/problems.json";
import { accept, fill, type IsoDate, type Outcome, refuse } from "#engine/units";
import type { Context } from "#services/context";
import { floorCatalog } from "#shop/floor/recipe";
import { farthestDays, isTooFar, shopDay } from "#shop/time/shop-time";
import type { WhatIfInput } from "./views";

const w = problems.whatIf;

const mostPairs = 24;
const mostWeeks = 26;
const mostFactor = 10;

export function checkedWhatIf(ctx: Context, input: WhatIfInput): Outcome<void> {
  const floor = floorCatalog();
  const today = shopDay(ctx.now, floor.hours.timeZone);
  switch (input.kind) {
    case "hire": {
      const known = new Set(floor.stations.map(({ id }) => id));
      if (input.stations.length === 0 || input.stations.some((station) => !known.has(station))) {
        return invalid("stations", w.stations);
      }
      return within("from", input.from, today, today);
    }
    case "second-press":
      return within("from", input.from, today, today);
    case "closure":
      return window(input, today);
    case "drop-mould":
      if (!floor.moulds.some(({ id }) => id === input.mould)) return invalid("mould", w.mould);
      return window(input, today);
    case "club-order":
      return whole("pairs", "Pairs", input.pairs, mostPairs);
    case "supplier-lead":
      if (!floor.stations.some(({ id }) => id === input.station)) {
        return invalid("station", w.station);
      }
      return whole("weeks", "Weeks", input.weeks, mostWeeks);
    case "rework":
      return input.factor >= 0 && input.factor <= mostFactor
        ? accept(undefined)
        : invalid("factor", fill(w.rework, { mostFactor, factor: input.factor }));
  }
}

function window(input: { readonly from: IsoDate; readonly until: IsoDate }, today: IsoDate): Outcome<void> {
  const from = within("from", input.from, today, today);
  return from.ok ? within("until", input.until, input.from, today) : from;
}

function within(path: string, date: IsoDate, least: IsoDate, today: IsoDate): Outcome<void> {
  if (date < least) return invalid(path, fill(w.tooEarly, { field: path === "from" ? w.from : w.until, least, date }));
  if (isTooFar(date, today)) {
    return invalid(path, fill(w.tooFar, { field: path === "from" ? w.from : w.until, farthestDays, date }));
  }
  return accept(undefined);
}

function whole(path: string, label: string, value: number, most: number): Outcome<void> {
  return Number.isInteger(value) && value >= 1 && value <= most
    ? accept(undefined)
    : invalid(path, fill(w.whole, { label, most, value }));
}

function invalid(path: string, message: string) {
  return refuse({ code: "invalid-field", path, message });
}
