/** Freezing: everything that decides a quote's price, dates and millimetres, kept as it was. */
import type { Assessment, EngineCatalog } from "#engine/assessment";
import { shapeAtLength } from "#engine/geometry";
import { flexClassLabel } from "#shop/names/flex-class-label";
import { addDays, shopDay, startOfShopDay } from "#shop/time/shop-time";
import type { FrozenFit } from "./views";

/** @throws RangeError when the assessment has no recommendation, spec or stiffness to freeze */
export function frozenFit(assessment: Assessment, catalog: EngineCatalog): FrozenFit {
  const { recommendation, spec, flex, finishedFlex, spread } = assessment;
  if (recommendation === null || spec === null || flex === null || finishedFlex === null) {
    throw new RangeError("frozenFit: the assessment is not complete");
  }
  const model = catalog.build.models.find((candidate) => candidate.id === spec.model);
  if (model === undefined) throw new RangeError(`frozenFit: model ${spec.model} is not in the catalogue`);
  return {
    recommendation,
    flags: recommendation.flags,
    modelName: model.name,
    flexClassLabel: flexClassLabel(spec, catalog),
    massKg: finishedFlex.massKg,
    springCentreNPerMm: flex.springCentreNPerMm,
    sidecutRadiusM: shapeAtLength(model.shape, spec.lengthCm).sidecutRadiusMm / 1000,
    ...(spread ? { spread: { springCentre: spread.springCentre, massG: spread.massG } } : {}),
  };
}

/** The first instant after the last day of validity: calendar days to the end of the shop's day. */
export function validUntil(now: Date, days: number, timeZone: string): Date {
  return startOfShopDay(addDays(shopDay(now, timeZone), days + 1), timeZone);
}
