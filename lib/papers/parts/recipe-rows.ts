/** Resin and press in numbers, and the working time at the room's temperature. */

import words from "#content/copy/papers.json";
import { hardenerLimits, type PartsList, type PressLoad, potsOf, workingMinutesAt } from "#engine/parts";
import { fill } from "#engine/units";
import type { FloorFacts, Row } from "./facts";
import { grams, numberText, plainNumber } from "./format";

const w = words.recipe;

export function resinRows(parts: PartsList, floor: FloorFacts): readonly Row[] {
  const { resinG, hardenerG, system, stays } = parts.resin;
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
    ...(stays ? [{ label: w.stays, value: staysText(stays) }] : []),
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

function staysText({ inClothG, onFacesG, marginPercent }: NonNullable<PartsList["resin"]["stays"]>): string {
  return fill(w.staysValue, {
    netG: grams(inClothG + onFacesG),
    inClothG: grams(inClothG),
    onFacesG: grams(onFacesG),
    marginPercent: plainNumber(marginPercent),
  });
}

/** Rooms between a cool and a hot day. */
const ROOMS_C = [18, 20, 22, 24, 26, 28] as const;

export function workingTimes({ resin }: FloorFacts) {
  return ROOMS_C.map((roomC) => ({ roomC, minutes: workingMinutesAt(resin, roomC) }));
}

/** What the press programme of one ski's stack is beside the floor's usual one; null where a release does not say. */
export interface OwnPress {
  readonly heatUpMinutes: number | null;
  readonly load: PressLoad | null;
}

export function pressRows({ press }: FloorFacts, own: OwnPress = { heatUpMinutes: null, load: null }): readonly Row[] {
  const heatUpMinutes = own.heatUpMinutes ?? press.heatUpMinutes;
  const total = heatUpMinutes + press.dwellMinutes + press.coolMinutes;
  const warmC = press.dwellC - (press.heating?.withinC ?? 0);
  const heatUp = own.heatUpMinutes === null ? w.heatUpValue : w.heatUpOwn;
  return [
    { label: w.pressure, value: fill(w.pressureValue, { pressureBar: plainNumber(press.pressureBar, 1) }) },
    ...(press.panelPartedAt === undefined
      ? []
      : [{ label: w.panel, value: fill(w.panelValue, { station: press.panelPartedAt }) }]),
    ...(own.load ? [{ label: w.force, value: loadText(own.load) }] : []),
    { label: w.heatUp, value: fill(heatUp, { minutes: heatUpMinutes, dwellC: press.dwellC, warmC }) },
    { label: w.dwell, value: fill(w.dwellValue, { minutes: press.dwellMinutes, dwellC: press.dwellC }) },
    { label: w.coolDown, value: fill(w.coolDownValue, { minutes: press.coolMinutes }) },
    {
      label: w.demould,
      value: fill(w.demouldValue, { minutes: total, demouldBelowC: press.demouldBelowC }),
    },
    { label: w.rest, value: fill(w.restValue, { hours: press.restHours }) },
  ];
}

function loadText({ forceKn, lengthMm, widthMm }: PressLoad): string {
  return fill(w.forceValue, {
    forceKn: numberText(forceKn),
    lengthMm: plainNumber(lengthMm),
    widthMm: plainNumber(widthMm),
  });
}
