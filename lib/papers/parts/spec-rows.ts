/** A frozen specification in words: the same lines on quote, confirmation and build sheet. */
import type { BuildCatalog, PairSpec } from "#engine/configuration";
import { shapeAtLength } from "#engine/geometry";
import type { Row } from "./facts";
import { mm, numberText, plainNumber } from "./format";

/** What the pair is, line by line. @throws RangeError when the spec names a model the catalogue does not have */
export function readableSpec(spec: PairSpec, catalog: BuildCatalog): readonly Row[] {
  const model = modelOf(spec, catalog);
  const shape = shapeAtLength(model.shape, spec.lengthCm);
  const widths = [shape.shoulderWidthMm, shape.waistWidthMm, shape.heelWidthMm].map((w) => plainNumber(w)).join("–");
  return [
    { label: "Model", value: `${model.name}, revision ${model.revision}` },
    { label: "Length", value: `${spec.lengthCm} cm` },
    { label: "Widths", value: `${widths} mm, sidecut radius ${numberText(shape.sidecutRadiusMm / 1000, 1)} m` },
    { label: "Flex", value: flexText(spec, catalog) },
    {
      label: "Core",
      value: catalog.blends.find((b) => b.id === spec.core)?.label ?? spec.core,
      isOption: spec.core !== model.core.blend,
    },
    ...reinforcementRows(spec, catalog),
    { label: "Graphic", value: graphicText(spec, catalog), isOption: spec.graphic.kind === "own" },
    ...windowRows(spec),
    { label: "Base", value: baseText(spec, catalog), isOption: spec.base.inlay !== "none" },
    { label: "Mount line", value: mountText(spec, shape.mountFromTipMm), isOption: spec.mount.offsetMm !== 0 },
    { label: "Edges", value: edgeText(spec) },
    { label: "Structure", value: `${STRUCTURE[spec.finish.structure]} (${spec.finish.structure})` },
    ...(spec.tipTailProtectors ? [{ label: "Protectors", value: "tip and tail", isOption: true }] : []),
  ];
}

export function modelOf(spec: PairSpec, catalog: BuildCatalog) {
  const model = catalog.models.find((m) => m.id === spec.model);
  if (!model) throw new RangeError(`spec.model: "${spec.model}" is not in the catalogue`);
  return model;
}

/** "Class 3, k 1.07 of the model's reference". */
export function flexText(spec: PairSpec, catalog: BuildCatalog): string {
  const flexClass = catalog.flexClasses.find((c) => spec.flexRatio >= c.from && spec.flexRatio < c.below);
  const k = `k ${numberText(spec.flexRatio, 2)}`;
  return flexClass ? `class ${flexClass.number} (${flexClass.label}), ${k}` : `outside the classes, ${k}`;
}

function reinforcementRows(spec: PairSpec, catalog: BuildCatalog): readonly Row[] {
  if (spec.reinforcements.length === 0) return [{ label: "Reinforcement", value: "none: the model's own lay-up" }];
  return spec.reinforcements.map((id, index) => ({
    label: index === 0 ? "Reinforcement" : `Reinforcement ${index + 1}`,
    value: catalog.reinforcements.find((r) => r.id === id)?.label ?? id,
    isOption: true,
  }));
}

const LAYOUT = {
  same: "same on both skis",
  mirrored: "mirrored, text stays readable",
  continuing: "one picture across both skis",
  alternate: "colours exchanged between the skis",
  independent: "a picture for each ski",
} as const;

export function layoutText(spec: PairSpec): string {
  return LAYOUT[spec.graphic.layout];
}

export function graphicText(spec: PairSpec, catalog: BuildCatalog): string {
  const { graphic } = spec;
  const what =
    graphic.kind === "own"
      ? "own picture"
      : `house graphic ${catalog.houseGraphics.find((g) => g.id === graphic.house)?.label ?? graphic.house ?? "to be chosen"}`;
  const text = graphic.text ? `; text “${graphic.text.text}”, cap height ${mm(graphic.text.capHeightMm)}` : "";
  return `${what}, ${layoutText(spec)}${text}`;
}

function windowRows(spec: PairSpec): readonly Row[] {
  if (spec.graphic.windows.length === 0) return [];
  const spans = spec.graphic.windows.map((w) => `${plainNumber(w.fromXMm)}–${plainNumber(w.toXMm)} mm from tip`);
  return [{ label: "Clear windows", value: spans.join("; "), isOption: true }];
}

export function colourOf(id: string, catalog: BuildCatalog) {
  return catalog.baseColours.find((c) => c.id === id) ?? { id, label: id, hex: "#FFFFFF" };
}

function baseText(spec: PairSpec, catalog: BuildCatalog): string {
  const { base } = spec;
  const left = colourOf(base.left, catalog).label;
  const right = colourOf(base.right, catalog).label;
  const colours = left === right ? `${left}, both skis` : `left ${left}, right ${right}`;
  const inlay = base.inlay === "none" ? "" : `; ${inlayText(spec)}`;
  return colours + inlay;
}

export function inlayText(spec: PairSpec): string {
  const text = spec.base.inlayText ? ` “${spec.base.inlayText}”` : "";
  return spec.base.inlay === "counterchange" ? `letters${text} exchanged between the bases` : `inlay${text}`;
}

export function mountText(spec: PairSpec, modelLineMm: number): string {
  const { offsetMm } = spec.mount;
  const at = mm(modelLineMm - offsetMm);
  if (offsetMm === 0) return `model line, ${at} from the tip`;
  return `${plainNumber(Math.abs(offsetMm))} mm ${offsetMm > 0 ? "forward" : "back"} of the model line, ${at} from the tip`;
}

function edgeText(spec: PairSpec): string {
  const { finish } = spec;
  return (
    `base bevel ${plainNumber(finish.baseBevelDeg, 2)}°, side angle ${plainNumber(finish.sideAngleDeg, 2)}°` +
    ` (${plainNumber(90 - finish.sideAngleDeg, 2)}°), detune tip ${finish.detuneTipMm} mm, tail ${finish.detuneTailMm} mm`
  );
}

export const STRUCTURE = { F: "fine", M: "medium", MC: "medium to coarse", C: "coarse" } as const;
