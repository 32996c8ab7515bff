/** What the finished pair is measured against: target, limit to target, limit between the twins. */

import words from "#content/copy/papers.json";
import type { PairSpec } from "#engine/configuration";
import { newtonsPerCm, type SkiFlex, type SpringTest, type TwistTest, twistDeg } from "#engine/flex";
import { barRiseMm, type SidewallBevel, topWidthMm } from "#engine/geometry";
import { fill } from "#engine/units";
import type { DrawingData, FloorFacts, QcLimit, QcMeasure, Row, StoneFacts } from "#papers/parts/facts";
import { grams, mm, numberText, plainNumber } from "#papers/parts/format";
import type { QcRow } from "./printed";

const w = words.buildSheet.check;

/** Of releases that say nothing of their twist bench. */
const TORQUE_NMM = 10_000;

export function composeQc(input: {
  readonly spec: PairSpec;
  readonly drawing: DrawingData;
  readonly flex: SkiFlex;
  readonly floor: FloorFacts;
  readonly springTest: SpringTest;
  /** Absent in releases that read no twist. */
  readonly twistTest?: TwistTest | undefined;
}): readonly QcRow[] {
  const { spec, drawing: d, flex, floor } = input;
  const limits = floor.qcLimits;
  const row = (measure: QcMeasure, name: string, method: string, target: string, value?: Banded): QcRow => ({
    measure: name,
    method,
    target: value ? withBand(target, limits[measure], value) : target,
    toTarget: limits[measure].toTarget,
    twins: limits[measure].twins,
  });
  const banded = (value: number, decimals: number): Banded => ({ value, decimals });
  const centre = newtonsPerCm(flex.springCentreNPerMm);
  const fore = newtonsPerCm(flex.springForebodyNPerMm);
  const aft = newtonsPerCm(flex.springAfterbodyNPerMm);
  const { frontSupportMm, rearSupportMm, loadMm } = input.springTest;
  const bench = input.twistTest;
  const span = bench
    ? { fromMm: Math.min(bench.clampMm, bench.armAtMm), toMm: Math.max(bench.clampMm, bench.armAtMm) }
    : { fromMm: d.shoulder.xMm, toMm: d.mountMm };
  const twist = twistDeg(flex.stations, span, bench ? bench.torqueNm * 1000 : TORQUE_NMM);
  const end = (name: string, where: string, spanMm: number, v: number) =>
    row(
      "springEnds",
      name,
      fill(w.endMethod, { where, spanMm: mm(spanMm) }),
      fill(w.springTarget, { springNPerCm: numberText(v, 1) }),
      banded(v, 1),
    );
  return [
    row("length", w.length, w.lengthMethod, mm(d.lengthMm), banded(d.lengthMm, 0)),
    row("widths", w.shoulder, w.widthMethod, mm(d.shoulder.widthMm, 1), banded(d.shoulder.widthMm, 1)),
    row("widths", w.waist, w.widthMethod, mm(d.waist.widthMm, 1), banded(d.waist.widthMm, 1)),
    row("widths", w.heel, w.widthMethod, mm(d.heel.widthMm, 1), banded(d.heel.widthMm, 1)),
    row(
      "sidecut",
      w.sidecutRadius,
      w.sidecutMethod,
      `${numberText(d.federationRadiusM, 2)} m`,
      banded(d.federationRadiusM, 2),
    ),
    row("mass", w.mass, w.massMethod, grams(flex.massKg * 1000), banded(flex.massKg * 1000, 0)),
    row("balance", w.balancePoint, w.balanceMethod, mm(flex.balancePointMm), banded(flex.balancePointMm, 0)),
    row("camber", w.camber, w.camberMethod, mm(d.camberMm, 1), banded(d.camberMm, 1)),
    row("splay", w.splay, w.splayMethod, `${mm(d.tipRiseMm)} / ${mm(d.tailRiseMm)}`),
    row(
      "contact",
      w.contactPoints,
      fill(w.contactMethod, { gaugeMm: d.contact.gaugeMm }),
      fill(w.contactTarget, { fromMm: mm(d.contact.fromMm), toMm: mm(d.contact.toMm) }),
    ),
    row(
      "springCentre",
      w.centreSpring,
      benchWords(input.springTest, d),
      fill(w.springTarget, { springNPerCm: numberText(centre, 1) }),
      banded(centre, 1),
    ),
    end(w.forebodySpring, w.endAtShoulder, loadMm - frontSupportMm, fore),
    end(w.afterbodySpring, w.endAtHeel, rearSupportMm - loadMm, aft),
    row(
      "torsion",
      w.torsion,
      bench ? twistWords(bench, d) : fill(w.torsionMethod, { torqueNm: TORQUE_NMM / 1000 }),
      `${numberText(twist, 1)}°`,
      banded(twist, 1),
    ),
    row("twist", w.twist, w.twistMethod, w.twistTarget),
    row("flatness", w.flatness, w.flatnessMethod, w.flatnessTarget),
    row(
      "bevels",
      w.bevels,
      w.bevelMethod,
      `${plainNumber(spec.finish.baseBevelDeg, 2)}° / ${plainNumber(spec.finish.sideAngleDeg, 2)}°`,
    ),
    row("visual", w.visual, w.visualMethod, w.visualTarget),
  ];
}

/** Where the bench holds and presses: by name where the shop's setting says so, else in millimetres from the tip. */
function benchWords({ frontSupportMm, rearSupportMm, loadMm }: SpringTest, d: DrawingData): string {
  const isAt = (a: number, b: number) => Math.abs(a - b) < 0.5;
  const ends = isAt(frontSupportMm, d.shoulder.xMm) && isAt(rearSupportMm, d.heel.xMm);
  const supports = ends
    ? w.supportsNamed
    : fill(w.supportsAt, { frontSupportMm: mm(frontSupportMm), rearSupportMm: mm(rearSupportMm) });
  return fill(w.springMethod, {
    supports,
    spanMm: mm(rearSupportMm - frontSupportMm),
    load: isAt(loadMm, d.mountMm) ? w.loadAtMount : fill(w.loadAt, { loadMm: mm(loadMm) }),
  });
}

/** What is hung where: torque, weight and arm, and between which places. */
function twistWords({ torqueNm, armMm, clampMm, armAtMm }: TwistTest, d: DrawingData): string {
  const isAt = (a: number, b: number) => Math.abs(a - b) < 0.5;
  const isNamed = isAt(clampMm, d.mountMm) && isAt(armAtMm, d.shoulder.xMm);
  return fill(isNamed ? w.torsionBench : w.torsionBenchAt, {
    torqueNm: plainNumber(torqueNm, 1),
    weightN: plainNumber((torqueNm * 1000) / armMm, 1),
    armMm: plainNumber(armMm, 0),
    clampMm: mm(clampMm),
    armAtMm: mm(armAtMm),
  });
}

interface Banded {
  readonly value: number;
  readonly decimals: number;
}

function withBand(target: string, limit: QcLimit, { value, decimals }: Banded): string {
  if (!limit.band) return target;
  const half = limit.band.kind === "percent" ? (value * limit.band.amount) / 100 : limit.band.amount;
  return fill(w.targetWithBand, {
    target,
    low: numberText(value - half, decimals),
    high: numberText(value + half, decimals),
  });
}

const RISE_AT_MM = 60;

/** Base and edge work: what the tuner sets, with the check a true bar allows. */
export function finishRows(
  { finish }: PairSpec,
  floor: Pick<FloorFacts, "wax" | "stone" | "sidewall">,
  waist: { readonly widthMm: number; readonly thicknessMm: number },
): readonly Row[] {
  const stone = floor.stone?.[finish.structure];
  const rise = barRiseMm(finish.baseBevelDeg, RISE_AT_MM);
  return [
    {
      label: w.baseBevel,
      value: fill(w.baseBevelValue, {
        baseBevelDeg: plainNumber(finish.baseBevelDeg, 2),
        rise: numberText(rise, 2),
        atMm: RISE_AT_MM,
      }),
    },
    {
      label: w.sideAngle,
      value: fill(w.sideAngleValue, {
        sideAngleDeg: plainNumber(finish.sideAngleDeg, 2),
        edgeDeg: plainNumber(90 - finish.sideAngleDeg, 2),
      }),
    },
    {
      label: w.detune,
      value: fill(w.detuneValue, { detuneTipMm: finish.detuneTipMm, detuneTailMm: finish.detuneTailMm }),
    },
    {
      label: w.structure,
      value: fill(w.structureValue, { code: finish.structure, name: words.spec.structures[finish.structure] }),
    },
    ...(stone ? [{ label: w.stone, value: stoneText(stone) }] : []),
    { label: w.wax, value: floor.wax },
    { label: w.baseThickness, value: w.baseThicknessValue },
    ...(floor.sidewall ? [{ label: w.sidewall, value: sidewallText(floor.sidewall, waist) }] : []),
  ];
}

function stoneText({ dresserMmPerTurn, passes, pattern, roughnessUm: [fromUm, toUm] }: StoneFacts): string {
  return fill(w.stoneValue, {
    dresserMmPerTurn: plainNumber(dresserMmPerTurn, 2),
    passes,
    pattern: w.patterns[pattern],
    fromUm,
    toUm,
  });
}

function sidewallText(
  bevel: SidewallBevel,
  { widthMm, thicknessMm }: { readonly widthMm: number; readonly thicknessMm: number },
): string {
  return fill(w.sidewallValue, {
    bevelDeg: plainNumber(bevel.bevelDeg, 1),
    uprightMm: plainNumber(bevel.uprightMm, 1),
    topMm: numberText(topWidthMm(widthMm, thicknessMm, bevel), 1),
    baseMm: numberText(widthMm, 1),
  });
}
