/** Everything that the lines of one pair are computed from, found once. */
import {
  type BuildCatalog,
  type PairSpec,
  type ResolvedSpec,
  resolveSpec,
  type SolvedSpec,
} from "#engine/configuration";
import type { LayerMaterial } from "#engine/flex";
import { measure, type ShapeMeasures, type SkiShape } from "#engine/geometry";
import type { PartCode, PartLine, PartRule, PartsRules } from "./types";

export interface PartsContext {
  readonly spec: PairSpec;
  readonly solved: SolvedSpec;
  readonly catalog: BuildCatalog;
  readonly rules: PartsRules;
  readonly resolved: ResolvedSpec;
  readonly shape: SkiShape;
  readonly measures: ShapeMeasures;
  readonly widestMm: number;
}

/** @throws RangeError when the spec names what this catalogue does not hold: solve it first, that refuses */
export function partsContext(
  spec: PairSpec,
  solved: SolvedSpec,
  catalog: BuildCatalog,
  rules: PartsRules,
): PartsContext {
  const resolved = resolveSpec(spec, catalog);
  if (!resolved.ok) throw new RangeError(`spec: ${JSON.stringify(resolved.refusal)}`);
  const { shape } = solved.build;
  return {
    spec,
    solved,
    catalog,
    rules,
    resolved: resolved.value,
    shape,
    measures: measure(shape, { edge: catalog.rules.edge }),
    widestMm: Math.max(shape.shoulderWidthMm, shape.heelWidthMm),
  };
}

/** Size, weight and number of one line; what is left out does not apply. */
export interface LineFacts {
  readonly cut: string;
  readonly material?: string;
  readonly sheet?: string;
  readonly lengthMm?: number;
  readonly widthMm?: number;
  readonly thicknessMm?: number;
  readonly areaMm2?: number;
  readonly netMassG?: number;
  /** Alike on both skis. */
  readonly each?: number;
  readonly left?: number;
  readonly right?: number;
  readonly pair?: number;
  readonly fromOption?: string | undefined;
  /** Keeps two lines of one kind apart. */
  readonly codeSuffix?: string;
  readonly labelSuffix?: string;
  /** Ids of the layers that it is, or is part of; absent for what is no layer of the ski. */
  readonly layers?: readonly string[];
  readonly pieceCut?: string;
}

/** One line in the shop's words. @throws RangeError when the rules have no line for the code */
export function line({ rules }: PartsContext, code: PartCode, facts: LineFacts): PartLine {
  const rule = ruleFor(rules, code);
  const { cut, material, each = 0, left, right, pair, fromOption, codeSuffix, labelSuffix, ...sizes } = facts;
  return {
    line: rule.line,
    code: codeSuffix === undefined ? code : `${code}-${codeSuffix}`,
    label: labelSuffix === undefined ? rule.label : `${rule.label}: ${labelSuffix}`,
    material: material ?? rule.material,
    cut,
    ...sizes,
    quantityLeft: left ?? each,
    quantityRight: right ?? each,
    quantityPair: pair ?? 0,
    unit: rule.unit,
    scrapFactor: rule.scrapFactor,
    ...(fromOption === undefined ? {} : { fromOption }),
    station: rule.station,
    mandatoryScan: rule.mandatoryScan,
  };
}

/** Whether the shop's list has a line for this; lists of before some parts were told lack theirs. */
export function hasLine({ rules }: PartsContext, code: PartCode): boolean {
  return rules.lines.some((each) => each.code === code);
}

function ruleFor(rules: PartsRules, code: PartCode): PartRule {
  const rule = rules.lines.find((each) => each.code === code);
  if (!rule) throw new RangeError(`parts.lines: there is no line for "${code}"`);
  return rule;
}

/** A size as a maker reads it: whole millimetres, tenths where they matter. */
export function mmText(value: number): string {
  const tenths = Math.round(value * 10) / 10;
  return Number.isInteger(tenths) ? String(tenths) : tenths.toFixed(1);
}

/** Id of the catalogue's material that a layer is made of. @throws RangeError when the layer names none */
export function materialIdOf({ id, label }: LayerMaterial): string {
  if (id !== undefined) return id;
  throw new RangeError(`build.layers: "${label}" names no material of the catalogue`);
}

/** A rectangle's facts. */
export function rectangle(lengthMm: number, widthMm: number) {
  return { lengthMm, widthMm, areaMm2: lengthMm * widthMm, cut: `${mmText(lengthMm)} × ${mmText(widthMm)} mm` };
}

/** g of a sheet: mm² × mm × kg/m³ × 1e-6. */
export function sheetMassG(areaMm2: number, thicknessMm: number, densityKgM3: number): number {
  return (areaMm2 * thicknessMm * densityKgM3) / 1e6;
}

/** g of dry cloth: mm² × g/m² × 1e-6. */
export function clothMassG(areaMm2: number, arealWeightGM2: number): number {
  return (areaMm2 * arealWeightGM2) / 1e6;
}
