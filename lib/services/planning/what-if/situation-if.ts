/** The queue as it would be. */

import names from "#content/copy/names.json";
import {
  dateOfDay,
  dayIndex,
  type FloorChange,
  minutesPerDay,
  type PairOnFloor,
  type QueueSituation,
  shopMinute,
} from "#engine/routing";
import { isoDate } from "#engine/units";
import type { Context } from "#services/context";
import { currentCatalog } from "#shop/catalogue/current";
import { routeOf } from "#shop/floor/facts";
import { plainSpec } from "#shop/queue/plain-spec";
import type { WhatIfInput } from "./views";

/** @param begun pairs whose work has begun: their material is in the house */
export function situationIf(
  ctx: Context,
  situation: QueueSituation,
  input: WhatIfInput,
  begun: ReadonlySet<string>,
): QueueSituation {
  const { now, pairs } = situation;
  switch (input.kind) {
    case "club-order":
      return { ...situation, pairs: [...pairs, ...clubPairs(ctx, now, input.pairs)] };
    case "supplier-lead": {
      const expectedDate = dateOfDay(Math.floor(now / minutesPerDay) + input.weeks * 7);
      const wait = { reason: "material", holdsUpStation: input.station, expectedDate } as const;
      const late = (pair: PairOnFloor) =>
        begun.has(pair.pairId) ? pair : { ...pair, waitingOn: [...pair.waitingOn, wait] };
      return { ...situation, pairs: pairs.map(late) };
    }
    default:
      return { ...situation, changes: [...situation.changes, ...floorChangesOf(input, "asked")] };
  }
}

/** What would be different about the floor; a question about pairs has none. */
export function floorChangesOf(input: WhatIfInput, id: string): readonly FloorChange[] {
  switch (input.kind) {
    case "hire":
      return [
        {
          kind: "extra-person",
          person: { id: `hire-${id}`, label: names.extraPerson, stations: input.stations, isReserve: false },
          fromMinute: shopMinute(input.from, 0),
          toMinute: null,
        },
      ];
    case "second-press":
      return [
        {
          kind: "extra-press",
          press: { id: `press-${id}`, label: names.secondPress, kind: currentCatalog().remedies.secondPress.kind },
          fromMinute: shopMinute(input.from, 0),
          toMinute: null,
        },
      ];
    case "closure":
      return [{ kind: "shop-closed", ...days(input) }];
    case "drop-mould":
      return [{ kind: "mould-out", mould: input.mould, ...days(input) }];
    case "rework":
      return [{ kind: "rework-factor", factor: input.factor }];
    default:
      return [];
  }
}

/** Null where it costs nothing by itself. */
export function costCentsPerWeek({ kind }: WhatIfInput): number | null {
  const { hire, secondPress } = currentCatalog().remedies;
  if (kind === "hire") return hire.centsPerWeek;
  return kind === "second-press" ? secondPress.centsPerWeek : null;
}

/** Both days included. */
function days({ from, until }: { readonly from: string; readonly until: string }) {
  const day = (text: string) => dayIndex(isoDate(text)) * minutesPerDay;
  return { fromMinute: day(from), toMinute: day(until) + minutesPerDay };
}

function clubPairs(ctx: Context, now: number, count: number): readonly PairOnFloor[] {
  const route = routeOf(plainSpec(ctx.now), currentCatalog().build);
  return Array.from({ length: count }, (_, index) => ({
    pairId: `club-${index + 1}`,
    route,
    operations: [],
    waitingOn: [],
    queuedAtMinute: now,
    promise: null,
  }));
}
