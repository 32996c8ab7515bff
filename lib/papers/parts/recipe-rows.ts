/** Resin and press in numbers, and the working time at the room's temperature. */
import type { PartsList } from "#engine/parts";
import type { FloorFacts, Row } from "./facts";
import { grams, numberText, plainNumber } from "./format";

export function resinRows(parts: PartsList, floor: FloorFacts): readonly Row[] {
  const { resinG, hardenerG, system } = parts.resin;
  const { resin } = floor;
  const batches = Math.max(1, Math.ceil((resinG + hardenerG) / resin.maxBatchG));
  const low = resin.hardenerPer100 * (1 - resin.tolerancePercent / 100);
  const high = resin.hardenerPer100 * (1 + resin.tolerancePercent / 100);
  return [
    { label: "System", value: system },
    {
      label: "For this pair",
      value: `${grams(resinG)} resin + ${grams(hardenerG)} hardener = ${grams(resinG + hardenerG)}`,
    },
    {
      label: "Mix as",
      value: `${batches} batches of ${grams(resinG / batches)} + ${grams(hardenerG / batches)} (at most ${grams(resin.maxBatchG)} in one pot)`,
    },
    {
      label: "Ratio by weight",
      value: `100 : ${plainNumber(resin.hardenerPer100, 1)}; weigh both, accept ${numberText(low, 1)} to ${numberText(high, 1)}`,
    },
    { label: "Room", value: `${resin.roomFromC} to ${resin.roomToC} °C` },
    { label: "Lots", value: `resin ${resin.resinLot ?? "________"}   hardener ${resin.hardenerLot ?? "________"}` },
  ];
}

/** Working time halves for every 10 °C above the data sheet's temperature: t = t0 / 2^((T − T0)/10). */
export function workingTimes(floor: FloorFacts) {
  const { resin } = floor;
  return [18, 20, 22, 24, 26, 28].map((roomC) => ({
    roomC,
    minutes: Math.floor(resin.workingMinutes / 2 ** ((roomC - resin.atC) / 10)),
  }));
}

export function pressRows(floor: FloorFacts): readonly Row[] {
  const { press } = floor;
  const total = press.heatUpMinutes + press.dwellMinutes + press.coolMinutes;
  return [
    { label: "Pressure", value: `${plainNumber(press.pressureBar, 1)} bar in the bladder, held to the end of cooling` },
    { label: "Heat-up", value: `${press.heatUpMinutes} min to ${press.dwellC} °C` },
    { label: "Dwell", value: `${press.dwellMinutes} min at ${press.dwellC} °C` },
    { label: "Cool-down", value: `${press.coolMinutes} min under pressure` },
    {
      label: "Demould",
      value: `not before ${total} min after close and not above ${press.demouldBelowC} °C in the core; both must hold`,
    },
    { label: "Rest", value: `${press.restHours} h before trimming or grinding` },
  ];
}
