/** A frozen specification in words: the same lines on quote, confirmation and build sheet. */

import words from "#content/copy/papers.json";
import { type BuildCatalog, coreLabel, type PairSpec } from "#engine/configuration";
import { shapeAtLength } from "#engine/geometry";
import { type PairLook, pairLook } from "#engine/scene";
import { fill } from "#engine/units";
import type { Row } from "./facts";
import { mm, numberText, plainNumber } from "./format";

const w = words.spec;

/** What the pair is, line by line. @throws RangeError when the spec names a model the catalogue does not have */
export function readableSpec(spec: PairSpec, catalog: BuildCatalog): readonly Row[] {
  const model = modelOf(spec, catalog);
  const shape = shapeAtLength(model.shape, spec.lengthCm);
  const widths = [shape.shoulderWidthMm, shape.waistWidthMm, shape.heelWidthMm].map((w) => plainNumber(w)).join("–");
  return [
    { label: w.model, value: fill(w.modelValue, { name: model.name, revision: model.revision }) },
    { label: w.length, value: fill(w.lengthValue, { lengthCm: spec.lengthCm }) },
    {
      label: w.widths,
      value: fill(w.widthsValue, { widths, radiusM: numberText(shape.sidecutRadiusMm / 1000, 1) }),
    },
    { label: w.flex, value: flexText(spec, catalog) },
    {
      label: w.core,
      value: coreLabel(spec.core, catalog),
      isOption: spec.core !== model.core.blend,
    },
    ...reinforcementRows(spec, catalog),
    { label: w.graphic, value: graphicText(spec, catalog), isOption: spec.graphic.kind === "own" },
    ...windowRows(spec),
    { label: w.base, value: baseText(spec, catalog), isOption: spec.base.inlay !== "none" },
    { label: w.mountLine, value: mountText(spec, shape.mountFromTipMm), isOption: spec.mount.offsetMm !== 0 },
    { label: w.edges, value: edgeText(spec) },
    {
      label: w.structure,
      value: fill(w.structureValue, { name: w.structures[spec.finish.structure], code: spec.finish.structure }),
    },
    ...plateRows(spec, catalog),
    ...pocketRows(spec, catalog),
    ...(spec.tipTailProtectors ? [{ label: w.protectors, value: w.tipAndTail, isOption: true }] : []),
  ];
}

function pocketRows({ lightening }: PairSpec, { rules }: BuildCatalog) {
  return lightening && rules.lightening ? [{ label: w.pockets, value: rules.lightening.label, isOption: true }] : [];
}

function plateRows({ plate }: PairSpec, { rules }: BuildCatalog) {
  const chosen = rules.plate.choices?.find((each) => each.id === plate);
  return chosen ? [{ label: w.plate, value: chosen.label, isOption: true }] : [];
}

export function modelOf(spec: PairSpec, catalog: BuildCatalog) {
  const model = catalog.models.find((m) => m.id === spec.model);
  if (!model) throw new RangeError(`spec.model: "${spec.model}" is not in the catalogue`);
  return model;
}

/** How the pair of a specification looks. @throws RangeError when the catalogue does not have its model */
export function lookOf(spec: PairSpec, catalog: BuildCatalog): PairLook {
  const look = pairLook(spec, catalog);
  if (!look) throw new RangeError(`spec.model: "${spec.model}" is not in the catalogue`);
  return look;
}

/** "Class 3, k 1.07 of the model's reference". */
export function flexText(spec: PairSpec, catalog: BuildCatalog): string {
  const flexClass = catalog.flexClasses.find((c) => spec.flexRatio >= c.from && spec.flexRatio < c.below);
  const k = fill(w.ratio, { ratio: numberText(spec.flexRatio, 2) });
  return flexClass
    ? fill(w.flexClass, { number: flexClass.number, label: flexClass.label, ratio: k })
    : fill(w.noClass, { ratio: k });
}

function reinforcementRows(spec: PairSpec, catalog: BuildCatalog): readonly Row[] {
  if (spec.reinforcements.length === 0) return [{ label: w.reinforcement, value: w.noReinforcement }];
  return spec.reinforcements.map((id, index) => ({
    label: index === 0 ? w.reinforcement : fill(w.reinforcementNumbered, { number: index + 1 }),
    value: catalog.reinforcements.find((r) => r.id === id)?.label ?? id,
    unnumbered: w.reinforcement,
    isOption: true,
  }));
}

/** How the graphic lies on the pair; what a mirror does to words is said of a picture of the skier's own. */
export function layoutText({ graphic: { kind, layout, unmirrored } }: PairSpec): string {
  if (kind !== "own" || layout !== "mirrored") return w.layouts[layout];
  return unmirrored ? `${w.layouts[layout]}${w.partUnmirrored}` : w.mirroredPicture;
}

export function graphicText(spec: PairSpec, catalog: BuildCatalog): string {
  const { graphic } = spec;
  const what =
    graphic.kind === "own"
      ? ownPicture(graphic)
      : fill(w.houseGraphic, {
          name: catalog.houseGraphics.find((g) => g.id === graphic.house)?.label ?? graphic.house ?? w.toChoose,
        });
  const text = graphic.text ? fill(w.text, { text: graphic.text.text, capHeightMm: mm(graphic.text.capHeightMm) }) : "";
  return fill(w.graphicValue, { what, layout: layoutText(spec), text });
}

/** With how it is laid out, and on what. */
function ownPicture({ arrangement, ground }: PairSpec["graphic"]): string {
  const how = arrangement === undefined || arrangement === "fill" ? "" : `, ${w.arrangements[arrangement]}`;
  const under = ground === undefined || arrangement === "tiles" ? "" : fill(w.groundColour, { ground });
  return `${w.ownPicture}${how}${under}`;
}

function windowRows(spec: PairSpec): readonly Row[] {
  if (spec.graphic.windows.length === 0) return [];
  const spans = spec.graphic.windows.map(({ fromXMm, toXMm }) =>
    fill(w.windowSpan, { fromMm: plainNumber(fromXMm), toMm: plainNumber(toXMm) }),
  );
  return [{ label: w.clearWindows, value: spans.join("; "), isOption: true }];
}

export function colourOf(id: string, catalog: BuildCatalog) {
  return catalog.baseColours.find((c) => c.id === id) ?? { id, label: id, hex: "#FFFFFF" };
}

function baseText(spec: PairSpec, catalog: BuildCatalog): string {
  const { base } = spec;
  const left = colourOf(base.left, catalog).label;
  const right = colourOf(base.right, catalog).label;
  const colours = left === right ? fill(w.sameBases, { colour: left }) : fill(w.twoBases, { left, right });
  const inlay = base.inlay === "none" ? "" : `; ${inlayText(spec)}`;
  return colours + inlay;
}

export function inlayText({ base }: PairSpec): string {
  const text = base.inlayText;
  if (base.inlay === "counterchange") return text ? fill(w.counterchangeWith, { text }) : w.counterchange;
  return text ? fill(w.inlayWith, { text }) : w.inlay;
}

export function mountText(spec: PairSpec, modelLineMm: number): string {
  const { offsetMm } = spec.mount;
  const at = mm(modelLineMm - offsetMm);
  if (offsetMm === 0) return fill(w.mountOwn, { at });
  return fill(w.mountMoved, {
    offsetMm: plainNumber(Math.abs(offsetMm)),
    direction: offsetMm > 0 ? w.forward : w.back,
    at,
  });
}

function edgeText(spec: PairSpec): string {
  const { finish } = spec;
  return fill(w.bevels, {
    baseBevelDeg: plainNumber(finish.baseBevelDeg, 2),
    sideAngleDeg: plainNumber(finish.sideAngleDeg, 2),
    edgeDeg: plainNumber(90 - finish.sideAngleDeg, 2),
    detuneTipMm: finish.detuneTipMm,
    detuneTailMm: finish.detuneTailMm,
  });
}

/** "Midlow 95 · 178 cm · revision C": over every paper of a pair. */
export function pairTitle(spec: PairSpec, catalog: BuildCatalog): string {
  const { name, revision } = modelOf(spec, catalog);
  return fill(words.parts.pairTitle, { name, lengthCm: spec.lengthCm, revision });
}
