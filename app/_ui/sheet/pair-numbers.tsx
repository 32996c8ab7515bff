/** The pair in two lines of numbers: flex and bend, radius and mass with how sure they are. */
import type { EngineCatalog } from "#engine/assessment";
import { measure } from "#engine/geometry";
import { textForPeople } from "#engine/units";
import { plusMinus } from "../plus-minus";
import { fill } from "../words";
import type { DrawnPair } from "./drawn-pair.client";
import { bendMm, flexText } from "./labels";
import type { SheetState } from "./use-sheet.client";
import type { SheetWords } from "./words";

export function PairNumbers({
  sheet,
  catalog,
  words,
  pair,
}: {
  readonly sheet: SheetState;
  readonly catalog: EngineCatalog;
  readonly words: SheetWords;
  readonly pair: DrawnPair;
}) {
  const { flex, finishedFlex, spread } = sheet.assessment;
  return (
    <>
      <p className="text-sm text-pencil">
        {flexText(pair.spec.flexRatio, catalog)}
        {flex
          ? `; ${fill(words.ski.bends, { mm: bendMm(flex.springCentreNPerMm, spread?.springCentre) }).toLowerCase()}`
          : ""}
      </p>
      <p className="measure text-sm text-pencil">
        R {textForPeople(measure(pair.look.shape).sidecutRadiusM, 1)} m
        {finishedFlex ? `, ${plusMinus(finishedFlex.massKg * 1000, spread?.massG)} g a ski` : ""}
        {spread ? <span className="font-sans"> ({words.ski.nineOfTen})</span> : null}
      </p>
    </>
  );
}
