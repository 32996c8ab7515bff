/** How sure a number is, beside it: the band that nine of ten lie in. */
import { nineOfTen } from "#engine/configuration";
import { textForPeople } from "#engine/units";

/** "1785 ± 98", both with the same decimals; the bare number where its deviation is not known. */
export function plusMinus(value: number, deviation: number | undefined, decimals = 0): string {
  const number = textForPeople(value, decimals);
  return deviation === undefined ? number : `${number} ± ${textForPeople(nineOfTen(deviation), decimals)}`;
}
