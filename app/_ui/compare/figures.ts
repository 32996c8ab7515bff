/** The pairs in numbers: one row for each figure, one cell for each pair. */

import { differenceText } from "#app/_visuals/axis-builds.ts";
import type { EngineCatalog } from "#engine/assessment";
import { coreLabel } from "#engine/configuration";
import { camberUnderLoad, newtonsPerCm, skiBehaviour, springSpans } from "#engine/flex";
import { measure } from "#engine/geometry";
import { fill, textForPeople } from "#engine/units";
import { moneyText } from "../money";
import type { ComparedPair } from "./candidates";
import type { CompareWords } from "./words";

export interface FigureRow {
  readonly name: string;
  readonly unit: string;
  readonly cells: readonly string[];
  /** Words rather than a measure. */
  readonly isText: boolean;
}

/** Standard gravity on 3 kg, N: presses a camber part of the way down, so that skis differ. */
const threeKilogramsN = 29.41995;

type FigureKey = keyof CompareWords["figures"];
interface Figure {
  readonly key: FigureKey;
  readonly unit: string;
  readonly isText?: boolean;
  readonly text: (pair: ComparedPair, worked: Worked) => string;
}
type Worked = ReturnType<typeof workedOut>;

function workedOut(pair: ComparedPair, catalog: EngineCatalog, words: CompareWords) {
  const { build, flexWithPlate } = pair.solved;
  const { flexClasses } = catalog.build;
  const { flexRatio, core } = pair.spec;
  const own = flexClasses.find((each) => flexRatio >= each.from && flexRatio < each.below);
  return {
    shape: build.shape,
    spans: springSpans(build),
    spring: (nPerMm: number, spanMm: number) =>
      fill(words.springOver, { spring: text(newtonsPerCm(nPerMm), 1), spanMm: text(spanMm) }),
    radiusM: measure(build.shape).sidecutRadiusM,
    behaviour: skiBehaviour(build, flexWithPlate),
    pressedMm: camberUnderLoad(build, flexWithPlate, threeKilogramsN).heightMm,
    className: own ? `${own.number}, ${own.label.toLowerCase()}` : words.noClass,
    core: coreLabel(core, catalog.build),
    price: pair.assessment.price ? moneyText(pair.assessment.price.totalCents) : words.noPrice,
  };
}

const text = textForPeople;
/** What a skier asks first, price before all. */
const firstFigures: readonly FigureKey[] = ["price", "length", "radius", "waist", "class", "mass", "core"];

const figures: readonly Figure[] = [
  { key: "model", unit: "", isText: true, text: (pair) => pair.modelName },
  { key: "length", unit: "cm", text: (pair) => String(pair.spec.lengthCm) },
  { key: "shoulder", unit: "mm", text: (_, { shape }) => text(shape.shoulderWidthMm, 1) },
  { key: "waist", unit: "mm", text: (_, { shape }) => text(shape.waistWidthMm, 1) },
  { key: "heel", unit: "mm", text: (_, { shape }) => text(shape.heelWidthMm, 1) },
  { key: "radius", unit: "m", text: (_, { radiusM }) => text(radiusM, 1) },
  { key: "class", unit: "", isText: true, text: (_, { className }) => className },
  { key: "ratio", unit: "", text: (pair) => text(pair.spec.flexRatio, 2) },
  {
    key: "centre",
    unit: "N/cm",
    text: ({ solved }, { spring, spans }) => spring(solved.flex.springCentreNPerMm, spans.centreMm),
  },
  {
    key: "fore",
    unit: "N/cm",
    text: ({ solved }, { spring, spans }) => spring(solved.flex.springForebodyNPerMm, spans.forebodyMm),
  },
  {
    key: "after",
    unit: "N/cm",
    text: ({ solved }, { spring, spans }) => spring(solved.flex.springAfterbodyNPerMm, spans.afterbodyMm),
  },
  { key: "balance", unit: "", text: ({ solved }) => text(solved.flex.balance, 2) },
  { key: "twistFore", unit: "N·m/°", text: (_, { behaviour }) => text(behaviour.twistForebodyNmPerDeg, 2) },
  { key: "twistAfter", unit: "N·m/°", text: (_, { behaviour }) => text(behaviour.twistAfterbodyNmPerDeg, 2) },
  { key: "camber", unit: "mm", text: (_, { shape }) => text(shape.camberMm, 1) },
  { key: "pressed", unit: "mm", text: (_, { pressedMm }) => text(pressedMm, 1) },
  { key: "mass", unit: "g", text: ({ solved }) => text(1000 * solved.flexWithPlate.massKg, 0) },
  {
    key: "balancePoint",
    unit: "mm",
    text: ({ solved, mountMm }) => differenceText(solved.flexWithPlate.balancePointMm - mountMm, 0),
  },
  { key: "swing", unit: "kg·m²", text: (_, { behaviour }) => text(behaviour.polarMomentAtMountKgM2, 3) },
  { key: "bendingTone", unit: "Hz", text: (_, { behaviour }) => text(behaviour.bendingHz, 1) },
  { key: "twistTone", unit: "Hz", text: (_, { behaviour }) => text(behaviour.torsionHz, 1) },
  { key: "core", unit: "", isText: true, text: (_, { core }) => core },
  { key: "price", unit: "", text: (_, { price }) => price },
];

/** How many of the rows come first; the rest is one tap away. */
export const firstRows = firstFigures.length + 1;

/** The model's name, what is asked first, then the rest in their order. */
function placeOf({ key }: Figure): number {
  if (key === "model") return -1;
  const at = firstFigures.indexOf(key);
  return at < 0 ? firstFigures.length : at;
}

export function figureRows(
  pairs: readonly ComparedPair[],
  catalog: EngineCatalog,
  words: CompareWords,
): readonly FigureRow[] {
  const worked = pairs.map((pair) => workedOut(pair, catalog, words));
  return [...figures]
    .sort((a, b) => placeOf(a) - placeOf(b))
    .map((figure) => ({
      name: words.figures[figure.key],
      unit: figure.unit,
      isText: figure.isText ?? false,
      cells: pairs.flatMap((pair, i) => {
        const each = worked[i];
        return each ? [figure.text(pair, each)] : [];
      }),
    }));
}
