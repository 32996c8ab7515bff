import type { ModelShape } from "#engine/geometry";
import truth from "../../fixtures/truth/geometry.json";

export const cases = truth.cases;

/** The demo line-up's shapes with the values worked out beforehand by a separate program. */
export const models = truth.models.map((model) => ({
  ...model,
  shape: { ...model.shape, edgeWrap: "partial" } satisfies ModelShape,
}));

export const everyModelLength = models.flatMap((model) =>
  model.lengths.map((printed) => ({ name: `${model.id} ${printed.lengthCm}`, shape: model.shape, printed })),
);

export function modelShape(id: string): ModelShape {
  const model = models.find((candidate) => candidate.id === id);
  if (!model) throw new Error(`no model ${id}`);
  return model.shape;
}
