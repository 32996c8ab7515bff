/** The ski's shape as the drawing pages need it: points and dimensions, straight from the engine's geometry. */
import { type BuildRules, mouldCamberMm, type PairSpec } from "#engine/configuration";
import {
  CONTACT_GAUGE_MM,
  edgeSpanMm,
  gaugePointsMm,
  halfOutline,
  halfWidthAt,
  mountLineMm,
  profileHeightMm,
  type ShapeMeasures,
  type SkiShape,
} from "#engine/geometry";
import type { Corrections } from "#engine/materials";
import type { DrawingData, XY } from "./facts";

const PROFILE_STEPS = 240;

export function composeDrawing(input: {
  readonly shape: SkiShape;
  readonly measures: ShapeMeasures;
  readonly spec: PairSpec;
  readonly rules: BuildRules;
  readonly corrections?: Corrections | undefined;
}): DrawingData {
  const { shape, measures, spec, rules, corrections } = input;
  const gauge = gaugePointsMm(shape, CONTACT_GAUGE_MM);
  const heelMm = shape.lengthMm - shape.tailLengthMm;
  const mountMm = mountLineMm(shape, spec.mount.offsetMm);
  const around = (lengthMm: number) => ({ fromMm: mountMm - lengthMm / 2, toMm: mountMm + lengthMm / 2 });
  return {
    lengthMm: shape.lengthMm,
    outline: halfOutline(shape, { endSegments: 60, arcStepMm: 15 }).map((p) => ({ x: p.xMm, y: p.halfWidthMm })),
    profile: sampleProfile(shape),
    shoulder: { xMm: shape.tipLengthMm, widthMm: shape.shoulderWidthMm },
    waist: { xMm: shape.waistFromTipMm, widthMm: shape.waistWidthMm },
    heel: { xMm: heelMm, widthMm: shape.heelWidthMm },
    mountMm,
    mountOffsetMm: spec.mount.offsetMm,
    widthAtMountMm: 2 * halfWidthAt(shape, mountMm),
    contact: { fromMm: gauge.tipMm, toMm: gauge.tailMm, lengthMm: measures.contactLengthMm, gaugeMm: CONTACT_GAUGE_MM },
    tangent: { fromMm: shape.tipTangentMm, toMm: shape.tailTangentMm, lengthMm: measures.tangentContactMm },
    edge: {
      ...edgeSpanMm(shape, rules.edge),
      lengthMm: shape.edgeWrap === "full" ? measures.perimeterMm : measures.edgeCarryingMm,
      wrap: shape.edgeWrap,
    },
    edgeWidthMm: rules.edge.widthMm,
    camberMm: shape.camberMm,
    mouldCamberMm: mouldCamberMm(shape, rules, corrections),
    tipRiseMm: shape.tipRiseMm,
    tailRiseMm: shape.tailRiseMm,
    projectedLengthMm: measures.projectedLengthMm,
    sidecutRadiusM: measures.sidecutRadiusM,
    federationRadiusM: measures.federationRadiusM,
    planAreaMm2: measures.planAreaMm2,
    windows: spec.graphic.windows.map((w) => ({ fromMm: w.fromXMm, toMm: w.toXMm, halfWidthMm: w.halfWidthMm })),
    matZone: around(rules.mat.lengthMm),
    bindingZone: around(rules.print.bindingZoneMm),
  };
}

function sampleProfile(shape: SkiShape): readonly XY[] {
  return Array.from({ length: PROFILE_STEPS + 1 }, (_, i) => {
    const x = (shape.lengthMm * i) / PROFILE_STEPS;
    return { x, y: profileHeightMm(shape, x, "free") };
  });
}
