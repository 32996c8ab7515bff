/** Resin and press in numbers, and the working time at the room's temperature. */

import words from "#content/copy/papers.json";
import { hardenerLimits, type PartsList, potsOf, workingMinutesAt } from "#engine/parts";
import { fill } from "#engine/units";
import type { FloorFacts, Row } from "./facts";
import { grams, numberText, plainNumber } from "./format";

const w = words.recipe;

export function resinRows(parts: PartsList, floor: FloorFacts): readonly Row[] {
  const { resinG, hardenerG, system } = parts.resin;
  const { resin } = floor;
  const pots = potsOf({ resinG, hardenerG }, resin.maxBatchG);
  const { low, high } = hardenerLimits(resin.hardenerPer100, resin.tolerancePercent);
  return [
    { label: w.system, value: system },
    {
      label: w.forThisPair,
      value: fill(w.amounts, {
        resinG: grams(resinG),
        hardenerG: grams(hardenerG),
        totalG: grams(resinG + hardenerG),
      }),
    },
    {
      label: w.mixAs,
      value: fill(w.batches, {
        batches: pots.count,
        resinG: grams(pots.resinG),
        hardenerG: grams(pots.hardenerG),
        maxBatchG: grams(resin.maxBatchG),
      }),
    },
    {
      label: w.ratioByWeight,
      value: fill(w.ratio, {
        hardenerPer100: plainNumber(resin.hardenerPer100, 1),
        low: numberText(low, 1),
        high: numberText(high, 1),
      }),
    },
    { label: w.room, value: fill(w.roomValue, { fromC: resin.roomFromC, toC: resin.roomToC }) },
    {
      label: w.lots,
      value: fill(w.lotsValue, {
        resinLot: resin.resinLot ?? words.parts.writeIn,
        hardenerLot: resin.hardenerLot ?? words.parts.writeIn,
      }),
    },
  ];
}

/** Rooms between a cool and a hot day. */
const ROOMS_C = [18, 20, 22, 24, 26, 28] as const;

export function workingTimes({ resin }: FloorFacts) {
  return ROOMS_C.map((roomC) => ({ roomC, minutes: workingMinutesAt(resin, roomC) }));
}

export function pressRows(floor: FloorFacts): readonly Row[] {
  const { press } = floor;
  const total = press.heatUpMinutes + press.dwellMinutes + press.coolMinutes;
  return [
    { label: w.pressure, value: fill(w.pressureValue, { pressureBar: plainNumber(press.pressureBar, 1) }) },
    { label: w.heatUp, value: fill(w.heatUpValue, { minutes: press.heatUpMinutes, dwellC: press.dwellC }) },
    { label: w.dwell, value: fill(w.dwellValue, { minutes: press.dwellMinutes, dwellC: press.dwellC }) },
    { label: w.coolDown, value: fill(w.coolDownValue, { minutes: press.coolMinutes }) },
    {
      label: w.demould,
      value: fill(w.demouldValue, { minutes: total, demouldBelowC: press.demouldBelowC }),
    },
    { label: w.rest, value: fill(w.restValue, { hours: press.restHours }) },
  ];
}
