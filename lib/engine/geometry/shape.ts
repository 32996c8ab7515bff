/** One model-length from its model. */
import { taperedArc } from "./sidecut";
import type { ModelShape, SkiShape } from "./types";

/**
 * The shape of a model at a length. Tip and tail length, sidecut length and mount offset grow with L/Lref; widths, rise
 * and camber stay; rocker is a share of the length. The radius therefore grows with (L/Lref)² within one per cent.
 *
 * @param lengthCm developed length, cm
 * @throws RangeError when the length is not above 0 or the model's widths make no sidecut
 */
export function shapeAtLength(model: ModelShape, lengthCm: number): SkiShape {
  if (!(lengthCm > 0 && Number.isFinite(lengthCm))) throw new RangeError(`lengthCm: ${lengthCm} must be above 0`);
  const kept = shapes.get(model) ?? new Map<number, SkiShape>();
  shapes.set(model, kept);
  const shape = kept.get(lengthCm) ?? shapeOf(model, lengthCm);
  if (kept.size < KEPT_LENGTHS) kept.set(lengthCm, shape);
  return shape;
}

/** The same model and length are asked for again and again, and what is worked out of a shape is kept beside it. */
const shapes = new WeakMap<ModelShape, Map<number, SkiShape>>();
const KEPT_LENGTHS = 100;

function shapeOf(model: ModelShape, lengthCm: number): SkiShape {
  const lengthMm = lengthCm * 10;
  const scale = lengthCm / model.refLengthCm;
  const tipLengthMm = model.tipLengthMm * scale;
  const tailLengthMm = model.tailLengthMm * scale;
  const { shoulderWidthMm, waistWidthMm, heelWidthMm } = model;
  const sidecutLengthMm = lengthMm - tipLengthMm - tailLengthMm;
  const arc = taperedArc({ shoulderWidthMm, waistWidthMm, heelWidthMm, sidecutLengthMm });
  return {
    lengthMm,
    shoulderWidthMm,
    waistWidthMm,
    heelWidthMm,
    tipLengthMm,
    tailLengthMm,
    tipExponent: model.tipExponent,
    tailExponent: model.tailExponent,
    sidecutLengthMm,
    sidecutRadiusMm: arc.radiusMm,
    waistFromTipMm: tipLengthMm + arc.waistFromShoulderMm,
    mountFromTipMm: lengthMm / 2 + model.mountBehindCentreMm * scale,
    tipTangentMm: (model.tipRockerPercent / 100) * lengthMm,
    tailTangentMm: lengthMm - (model.tailRockerPercent / 100) * lengthMm,
    tipRiseMm: model.tipRiseMm,
    tailRiseMm: model.tailRiseMm,
    camberMm: model.camberMm,
    edgeWrap: model.edgeWrap,
  };
}

/** Where the mount line lies, mm from the tip, when the order moves it by `offsetMm` (positive = towards the tip). */
export function mountLineMm(shape: SkiShape, offsetMm: number): number {
  return shape.mountFromTipMm - offsetMm;
}
