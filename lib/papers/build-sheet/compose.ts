/** Composes the build sheet: every number a maker needs, none of a binding's settings. */

import words from "#content/copy/papers.json";
import {
  type BuildCatalog,
  benchClass,
  blendById,
  type CoreBlend,
  clothChange,
  flexClassOf,
  isPaperMirrored,
  type PairSpec,
} from "#engine/configuration";
import { type CoreLimit, newtonsPerCm, springTestOf } from "#engine/flex";
import { interpolate } from "#engine/math";
import { type PartLine, pressLoad, stackHeatUpMinutes } from "#engine/parts";
import { fill } from "#engine/units";
import type { BuildSheetFacts } from "#papers/build-sheet/facts";
import { composeDrawing } from "#papers/parts/compose-drawing";
import type { CutRow, DrawingData, Row, WoodFacts } from "#papers/parts/facts";
import { mm, numberText, plainNumber } from "#papers/parts/format";
import { type OwnPress, pressRows, resinRows, workingTimes } from "#papers/parts/recipe-rows";
import { colourOf, flexText, graphicText, inlayText, modelOf, pairTitle, readableSpec } from "#papers/parts/spec-rows";
import { composeCore, composeStrips } from "./compose-core";
import { noteText } from "./compose-notes";
import { composeQc, finishRows } from "./compose-qc";
import { composeStack } from "./compose-stack";
import type { BuildSheetData } from "./printed";

const w = words.buildSheet.pair;

/** @throws RangeError when the spec names a model or blend the catalogue does not have */
export function composeBuildSheet(facts: BuildSheetFacts): BuildSheetData {
  const { catalog, spec, solved, floor, parts } = facts;
  const model = modelOf(spec, catalog);
  const blend = blendOf(spec, catalog);
  const drawing = composeDrawing({
    shape: facts.shape,
    measures: facts.measures,
    spec,
    rules: catalog.rules,
    corrections: catalog.corrections,
  });
  return {
    shop: facts.shop,
    stamp: facts.stamp,
    pair: facts.pair,
    title: pairTitle(spec, catalog),
    identity: identityRows(facts),
    options: readableSpec(spec, catalog)
      .filter((row) => row.isOption)
      .map((row) => fill(w.option, { label: row.unnumbered ?? row.label, value: row.value })),
    bases: basesOf(spec, catalog),
    graphic: graphicRows(facts),
    finish: finishRows(spec, floor, { widthMm: drawing.waist.widthMm, thicknessMm: thicknessAtWaist(facts, drawing) }),
    notes: facts.notes.map(noteText),
    drawing,
    core: composeCore({
      build: solved.build,
      core: solved.core,
      catalog,
      blend,
      strips: facts.strips,
      wood: floor.wood,
      mould: `${mouldName(spec, catalog)}-${model.revision}`,
    }),
    stack: composeStack({ build: solved.build, catalog, parts, hasEndPatches: spec.tipTailProtectors }),
    strips: {
      areAllocated: facts.strips !== null,
      left: composeStrips("L", facts.strips, blend, catalog),
      right: composeStrips("R", facts.strips, blend, catalog),
      rest: floor.wood ? restText(floor.wood) : "",
    },
    cuts: parts.lines.filter(isCutToSize).map(cutRow),
    resin: resinRows(parts, floor),
    press: pressRows(floor, ownPress(facts)),
    workingTimes: workingTimes(floor),
    surfacePreparation: floor.surfacePreparation,
    stations: floor.stations,
    qc: composeQc({
      spec,
      drawing,
      flex: solved.flexWithPlate,
      floor,
      springTest: springTestOf(solved.build),
      twistTest: solved.build.twistTest,
    }),
    orderedClass: flexText(spec, catalog),
    classBands: classBands(facts),
  };
}

/** Of the finished ski, all its layers. */
function thicknessAtWaist({ solved }: BuildSheetFacts, { waist }: DrawingData): number {
  const { stations } = solved.flexWithPlate;
  return interpolate(
    stations.map(({ xMm }) => xMm),
    stations.map(({ thicknessMm }) => thicknessMm),
    waist.xMm,
  );
}

function ownPress({ solved, shape, floor: { press } }: BuildSheetFacts): OwnPress {
  const { heating, cassette } = press;
  return {
    heatUpMinutes: heating ? stackHeatUpMinutes(solved, heating, press.dwellC) : null,
    load: cassette ? pressLoad(shape, cassette, press.pressureBar) : null,
  };
}

function restText({ restDays, roomHumidityFromPercent, roomHumidityToPercent }: WoodFacts): string {
  return fill(words.buildSheet.strips.rest, {
    restDays,
    humidityFrom: plainNumber(roomHumidityFromPercent),
    humidityTo: plainNumber(roomHumidityToPercent),
  });
}

export function mouldName(spec: PairSpec, catalog: BuildCatalog): string {
  return modelOf(spec, catalog).lengths.find((l) => l.lengthCm === spec.lengthCm)?.mould ?? "none";
}

function blendOf(spec: PairSpec, catalog: BuildCatalog): CoreBlend {
  const blend = blendById(catalog, spec.core);
  if (!blend.ok) throw new RangeError(`spec.core: "${spec.core}" is not in the catalogue`);
  return blend.value;
}

function identityRows(facts: BuildSheetFacts): readonly Row[] {
  const { catalog, spec, shape, cassette } = facts;
  const model = modelOf(spec, catalog);
  const mould = model.lengths.find((l) => l.lengthCm === spec.lengthCm);
  return [
    { label: w.model, value: fill(w.modelValue, { name: model.name, revision: model.revision, use: model.use }) },
    { label: w.length, value: fill(w.lengthValue, { lengthCm: spec.lengthCm, lengthMm: mm(shape.lengthMm) }) },
    {
      label: w.mould,
      value: fill(w.mouldValue, { mould: mould?.mould ?? w.noMould, mouldFamily: model.mouldFamily }),
    },
    { label: w.cassette, value: cassette ?? fill(w.cassetteOpen, { cassettes: mould?.cassettes ?? 0 }) },
    { label: w.flexOrdered, value: flexText(spec, catalog) },
    { label: w.core, value: blendOf(spec, catalog).label, isOption: spec.core !== model.core.blend },
    { label: w.edgeWrap, value: shape.edgeWrap === "full" ? w.wrapFull : w.wrapPartial },
    { label: w.skier, value: facts.pair.skierFirstName },
  ];
}

function basesOf(spec: PairSpec, catalog: BuildCatalog): BuildSheetData["bases"] {
  return (["L", "R"] as const).map((ski) => {
    const own = colourOf(ski === "L" ? spec.base.left : spec.base.right, catalog);
    const other = colourOf(ski === "L" ? spec.base.right : spec.base.left, catalog);
    const inlay =
      spec.base.inlay === "none"
        ? w.noInlay
        : spec.base.inlay === "counterchange"
          ? fill(w.lettersInlay, { inlay: inlayText(spec), colour: other.label })
          : inlayText(spec);
    return { ski, colour: own.label, hex: own.hex, inlay };
  });
}

function graphicRows(facts: BuildSheetFacts): readonly Row[] {
  const { spec, catalog, floor } = facts;
  const { graphic } = spec;
  const mirrored = isPaperMirrored(floor.printFace);
  const scale = floor.printScaleFactor;
  return [
    { label: w.graphic, value: graphicText(spec, catalog) },
    ...(graphic.artwork
      ? [
          {
            label: w.source,
            value: fill(w.sourceValue, {
              widthPx: graphic.artwork.widthPx,
              heightPx: graphic.artwork.heightPx,
              hash: graphic.artwork.sha256.slice(0, 12),
            }),
          },
        ]
      : []),
    {
      label: w.printFace,
      value: fill(w.printFaceValue, {
        face: floor.printFace === "top" ? w.upperSide : w.underside,
        reading: mirrored ? w.mirrored : w.asRead,
      }),
    },
    {
      label: w.printScaleFactor,
      value: scale === null ? w.scaleUnknown : fill(w.scaleValue, { scale: numberText(scale, 4) }),
    },
    { label: w.windows, value: windowText(spec) },
  ];
}

function windowText(spec: PairSpec): string {
  const { windows } = spec.graphic;
  if (windows.length === 0) return w.noWindows;
  const spans = windows.map(({ fromXMm, toXMm, halfWidthMm }) =>
    fill(w.windowSpan, {
      fromMm: plainNumber(fromXMm),
      toMm: plainNumber(toXMm),
      widthMm: plainNumber(2 * halfWidthMm),
    }),
  );
  return fill(w.windowsValue, { spans: spans.join("; ") });
}

/** Lines with a size to cut to; glue, wax and cartons are on the kit list only. */
function isCutToSize(line: PartLine): boolean {
  return line.lengthMm !== undefined || line.areaMm2 !== undefined;
}

export function cutRow(line: PartLine): CutRow {
  const count = (n: number) =>
    n === 0 ? "" : line.unit === "piece" || line.unit === "set" ? numberText(n) : `${numberText(n)} ${line.unit}`;
  return {
    line: line.line,
    part: line.label,
    material: line.material,
    cut: line.cut,
    left: count(line.quantityLeft),
    right: count(line.quantityRight),
    pair: count(line.quantityPair),
    isOption: line.fromOption !== undefined,
  };
}

/** Rounding to the mill's step is not worth a word, and another cloth has a line of its own. */
function limitNames(limits: readonly CoreLimit[]): string {
  return limits.flatMap((limit) => (limit === "step" || limit === "cloth" ? [] : [w.coreLimits[limit]])).join(w.and);
}

function limitText(limits: readonly CoreLimit[]): string {
  const told = limitNames(limits);
  return told === "" ? "" : fill(w.limits, { limits: told });
}

/** Where another cloth than the model's own is laid: which, and why. */
function clothRows({ catalog, solved }: BuildSheetFacts): readonly Row[] {
  const change = clothChange(solved.cloth, catalog.materials);
  if (!change) return [];
  const limits = limitNames(solved.cloth.because);
  return [{ label: w.clothChanged, value: fill(w.clothChangedValue[change.kind], { ...change, limits }) }];
}

/** The solved core, what the bench must read of it, and the ordered class as the bench reads it. */
function classBands(facts: BuildSheetFacts): readonly Row[] {
  const { catalog, spec, solved, floor } = facts;
  const ordered = flexClassOf(spec.flexRatio, catalog.flexClasses);
  const perCm = (springNPerMm: number) => numberText(newtonsPerCm(springNPerMm), 1);
  const rows: Row[] = [
    {
      label: w.solved,
      value: fill(w.solvedValue, {
        wanted: numberText(solved.core.wantedRatio, 3),
        reached: numberText(solved.core.achievedRatio, 3),
        limits: limitText(solved.core.limitedBy),
      }),
    },
    ...clothRows(facts),
    {
      label: w.benchTarget,
      value: fill(w.benchTargetValue, { springNPerCm: perCm(solved.flexWithPlate.springCentreNPerMm) }),
    },
  ];
  if (ordered) {
    const { fromNPerMm, belowNPerMm } = benchClass(ordered, solved, floor.classWithinPercent);
    rows.push({
      label: fill(w.classBand, { number: ordered.number }),
      value: fill(w.classBandValue, { from: perCm(fromNPerMm), to: perCm(belowNPerMm) }),
    });
  }
  return rows;
}
