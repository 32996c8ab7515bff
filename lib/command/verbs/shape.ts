import { z } from "zod";
import { modelById, modelLength } from "#engine/configuration";
import {
  federationRadiusM,
  machineOutline,
  measure,
  type OutlineDrawing,
  outlineDxf,
  outlineSvg,
  shapeAtLength,
  taperedArc,
} from "#engine/geometry";
import { accept, type Outcome, refuse } from "#engine/units";
import { catalogue } from "../catalogue";
import { type VerbFlags, verb } from "../verb";
import { positive } from "./schemas";

const widths = z.strictObject({
  shoulderMm: positive.max(400),
  waistMm: positive.max(400),
  heelMm: positive.max(400),
  sidecutLengthMm: positive.max(3000),
});
const modelLengthInput = z.strictObject({ model: z.string().min(1), lengthCm: positive.max(220) });

type Widths = z.infer<typeof widths>;
type ModelLengthInput = z.infer<typeof modelLengthInput>;

function shapeOfWidths(input: Widths): Outcome<unknown> {
  const sidecut = {
    shoulderWidthMm: input.shoulderMm,
    waistWidthMm: input.waistMm,
    heelWidthMm: input.heelMm,
    sidecutLengthMm: input.sidecutLengthMm,
  };
  for (const [path, width] of [["shoulderMm", input.shoulderMm] as const, ["heelMm", input.heelMm] as const]) {
    if (width <= input.waistMm) return refuse({ code: "no-sidecut", path, [path]: width, waistMm: input.waistMm });
  }
  const deepest = Math.max(input.shoulderMm, input.heelMm) - input.waistMm;
  if (input.sidecutLengthMm <= deepest) {
    const { sidecutLengthMm } = input;
    return refuse({ code: "sidecut-too-short", path: "sidecutLengthMm", sidecutLengthMm, leastMm: deepest });
  }
  const arc = taperedArc(sidecut);
  return accept({
    sidecutRadiusM: arc.radiusMm / 1000,
    fisRadiusM: federationRadiusM(sidecut),
    waistFromShoulderMm: arc.waistFromShoulderMm,
    effectiveEdgeMm: arc.effectiveEdgeMm,
  });
}

async function shapeOfModel(input: ModelLengthInput, flags: VerbFlags): Promise<Outcome<unknown>> {
  const { build } = catalogue();
  const model = modelById(build, input.model);
  if (!model.ok) return model;
  const offered = modelLength(model.value, input.lengthCm);
  if (!offered.ok) return offered;
  const shape = shapeAtLength(model.value.shape, input.lengthCm);
  const measures = measure(shape, { edge: build.rules.edge });
  const outline = machineOutline(shape);
  const marks = [
    { layer: "MOUNT", xMm: shape.mountFromTipMm, halfWidthMm: shape.waistWidthMm / 2 },
    { layer: "WAIST", xMm: shape.waistFromTipMm, halfWidthMm: shape.waistWidthMm / 2 },
  ];
  const title = `${model.value.name} ${input.lengthCm} cm, revision ${model.value.revision}`;
  const drawing: OutlineDrawing = { title, outlines: [{ layer: "SKI", outline }], marks };
  if (flags.files.dxf !== undefined) await flags.write(flags.files.dxf, outlineDxf(drawing));
  if (flags.files.svg !== undefined) await flags.write(flags.files.svg, outlineSvg(drawing));
  return accept({
    sidecutRadiusM: measures.sidecutRadiusM,
    fisRadiusM: measures.federationRadiusM,
    waistFromShoulderMm: shape.waistFromTipMm - shape.tipLengthMm,
    effectiveEdgeMm: measures.effectiveEdgeMm,
    planAreaMm2: measures.planAreaMm2,
    perimeterMm: measures.perimeterMm,
    contactLengthMm: measures.contactLengthMm,
    tangentContactMm: measures.tangentContactMm,
    projectedLengthMm: measures.projectedLengthMm,
    waistFromTipMm: shape.waistFromTipMm,
    mountFromTipMm: shape.mountFromTipMm,
    mould: offered.value.mould,
    outline,
  });
}

export const shapeVerb = verb({
  name: "shape",
  summary: "sidecut radii from four widths and lengths, or the whole outline of a model at a length",
  input: z.union([widths, modelLengthInput]),
  output: z.object({
    sidecutRadiusM: z.number(),
    fisRadiusM: z.number(),
    waistFromShoulderMm: z.number(),
    effectiveEdgeMm: z.number(),
    planAreaMm2: z.number().optional(),
    perimeterMm: z.number().optional(),
    contactLengthMm: z.number().optional(),
    outline: z.array(z.object({ xMm: z.number(), halfWidthMm: z.number() })).optional(),
  }),
  fileFlags: { dxf: "writes the machine outline as DXF R12", svg: "writes the machine outline as SVG at true scale" },
  run: (input, flags) => {
    if ("model" in input) return shapeOfModel(input, flags);
    const [file] = Object.keys(flags.files);
    if (file !== undefined) return refuse({ code: "no-outline", path: `--${file}`, needs: "model and lengthCm" });
    return shapeOfWidths(input);
  },
});
