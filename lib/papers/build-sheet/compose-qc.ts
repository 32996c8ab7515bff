/** What the finished pair is measured against: target, limit to target, limit between the twins. */
import type { PairSpec } from "#engine/configuration";
import { type SkiFlex, type SpringTest, twistPerNmm } from "#engine/flex";
import type { DrawingData, FloorFacts, QcLimit, QcMeasure, Row } from "#papers/parts/facts";
import { grams, mm, numberText, plainNumber } from "#papers/parts/format";
import { STRUCTURE } from "#papers/parts/spec-rows";
import type { QcRow } from "./facts";

/** N/mm at the bench is spoken of as newtons per centimetre. */
const CM = 10;
const TORQUE_NMM = 10_000;

export function composeQc(input: {
  readonly spec: PairSpec;
  readonly drawing: DrawingData;
  readonly flex: SkiFlex;
  readonly floor: FloorFacts;
  readonly springTest: SpringTest;
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
  const centre = flex.springCentreNPerMm * CM;
  const fore = flex.springForebodyNPerMm * CM;
  const aft = flex.springAfterbodyNPerMm * CM;
  const twist = twistPerTenNm(flex, d);
  const end = (name: string, where: string, v: number) =>
    row("springEnds", name, `held at mount, load at ${where}`, `${numberText(v, 1)} N/cm`, banded(v, 1));
  return [
    row("length", "Length", "tape, along the base", mm(d.lengthMm), banded(d.lengthMm, 0)),
    row("widths", "Shoulder", "caliper", mm(d.shoulder.widthMm, 1), banded(d.shoulder.widthMm, 1)),
    row("widths", "Waist", "caliper", mm(d.waist.widthMm, 1), banded(d.waist.widthMm, 1)),
    row("widths", "Heel", "caliper", mm(d.heel.widthMm, 1), banded(d.heel.widthMm, 1)),
    row(
      "sidecut",
      "Sidecut radius",
      "Ls²/(2000(S+H−2W))",
      `${numberText(d.federationRadiusM, 2)} m`,
      banded(d.federationRadiusM, 2),
    ),
    row("mass", "Mass", "scale, 1 g", grams(flex.massKg * 1000), banded(flex.massKg * 1000, 0)),
    row("balance", "Balance point", "knife edge, from tip", mm(flex.balancePointMm), banded(flex.balancePointMm, 0)),
    row("camber", "Camber, unloaded", "flat bench, middle", mm(d.camberMm, 1), banded(d.camberMm, 1)),
    row("splay", "Tip / tail height", "flat bench, base side", `${mm(d.tipRiseMm)} / ${mm(d.tailRiseMm)}`),
    row(
      "contact",
      "Contact points",
      "0.5 mm gauge, pressed flat",
      `${mm(d.contact.fromMm)} / ${mm(d.contact.toMm)} from tip`,
    ),
    row(
      "springCentre",
      "Centre spring",
      benchWords(input.springTest, d),
      `${numberText(centre, 1)} N/cm`,
      banded(centre, 1),
    ),
    end("Forebody spring", "shoulder", fore),
    end("Afterbody spring", "heel", aft),
    row("torsion", "Torsion", "10 N·m, mount to shoulder", `${numberText(twist, 1)}°`, banded(twist, 1)),
    row("twist", "Twist of running surface", "winding sticks", "0°"),
    row("flatness", "Base flatness", "true bar between contact points", "flat"),
    row(
      "bevels",
      "Base bevel / side angle",
      "gauge",
      `${plainNumber(spec.finish.baseBevelDeg, 2)}° / ${plainNumber(spec.finish.sideAngleDeg, 2)}°`,
    ),
    row("visual", "Visual", "voids, dents, print, sidewall, edge gap", "A-grade"),
  ];
}

/** Where the bench holds and presses: by name where the shop's setting says so, else in millimetres from the tip. */
function benchWords({ frontSupportMm, rearSupportMm, loadMm }: SpringTest, d: DrawingData): string {
  const isAt = (a: number, b: number) => Math.abs(a - b) < 0.5;
  const ends = isAt(frontSupportMm, d.shoulder.xMm) && isAt(rearSupportMm, d.heel.xMm);
  const supports = ends ? "shoulder and heel" : `${mm(frontSupportMm)} and ${mm(rearSupportMm)} from tip`;
  return `supports ${supports}, load at ${isAt(loadMm, d.mountMm) ? "mount" : `${mm(loadMm)} from tip`}`;
}

interface Banded {
  readonly value: number;
  readonly decimals: number;
}

function withBand(target: string, limit: QcLimit, { value, decimals }: Banded): string {
  if (!limit.band) return target;
  const half = limit.band.kind === "percent" ? (value * limit.band.amount) / 100 : limit.band.amount;
  return `${target}  (${numberText(value - half, decimals)} to ${numberText(value + half, decimals)})`;
}

/** Twist over the forebody under 10 N·m, degrees, from shoulder to mount line. */
function twistPerTenNm({ stations }: SkiFlex, d: DrawingData): number {
  return (TORQUE_NMM * twistPerNmm(stations, d.shoulder.xMm, d.mountMm) * 180) / Math.PI;
}

const RISE_AT_MM = 60;

/** Base and edge work: what the tuner sets, with the check a true bar allows. */
export function finishRows(spec: PairSpec, wax: string): readonly Row[] {
  const { finish } = spec;
  const rise = RISE_AT_MM * Math.tan((finish.baseBevelDeg * Math.PI) / 180);
  return [
    {
      label: "Base bevel",
      value: `${plainNumber(finish.baseBevelDeg, 2)}° (true bar rises ${numberText(rise, 2)} mm at 60 mm)`,
    },
    {
      label: "Side angle",
      value: `${plainNumber(finish.sideAngleDeg, 2)}° (${plainNumber(90 - finish.sideAngleDeg, 2)}° edge)`,
    },
    { label: "Detune", value: `tip ${finish.detuneTipMm} mm, tail ${finish.detuneTailMm} mm from the contact points` },
    { label: "Structure", value: `${finish.structure}: ${STRUCTURE[finish.structure]}` },
    { label: "Wax", value: wax },
    { label: "Base thickness", value: "at least 1.0 mm; take off 0.15 mm at most" },
  ];
}
