/** What stays the same during a fit: cores, handbook predictions and slopes of all skis, and which unknowns matter. */
import type { BuildCatalog } from "#engine/configuration";
import { type Unknown, unknownsOf } from "./factors";
import { type Programme, predictBuilt, programmedCore } from "./predict-ski";
import { BENCH_MEASURES, readingSd } from "./readings";
import { byMeasure, type Slopes, slopesOf } from "./sensitivity";
import type { CalibrationSettings, MeasuredSki, PredictedValues } from "./types";

/** An unknown that moves no reading by this share of its standard deviation when it is off by its own is left out. */
const LEAST_EFFECT = 0.1;

/** What skis of one construction have in common, whatever was read of them. */
interface Construction {
  readonly programme: Programme;
  readonly before: PredictedValues;
  readonly slopes: Slopes;
}

/** A ski with what does not change during the fit. */
export interface PreparedSki extends Construction {
  readonly ski: MeasuredSki;
  /** Skis with one key were programmed alike, of equal strips. */
  readonly key: string;
}

export type Prepared = ReadonlyMap<MeasuredSki, PreparedSki>;

/** @throws RangeError for a ski whose spec is not of this catalogue */
export function prepare(
  skis: readonly MeasuredSki[],
  nominal: BuildCatalog,
  settings: CalibrationSettings,
): { readonly unknowns: readonly Unknown[]; readonly prepared: Prepared } {
  const all = unknownsOf(nominal.materials, settings);
  const rows = skis.map((ski): PreparedSki => {
    const key = constructionKey(ski);
    const known = constructionsOf(nominal, settings, ski.builtBy);
    const construction = known.get(key) ?? constructionOf(ski, nominal, all);
    if (known.size >= KEPT_CONSTRUCTIONS) known.clear();
    known.set(key, construction);
    return { ski, key, ...construction };
  });
  const matters = all.map((unknown, i) => rows.some((row) => effectOf(row, i, unknown, settings) >= LEAST_EFFECT));
  const kept = <T>(values: readonly T[]): readonly T[] => values.filter((_, i) => matters[i]);
  const prepared = rows.map((row): readonly [MeasuredSki, PreparedSki] => {
    return [row.ski, { ...row, slopes: byMeasure((measure) => kept(row.slopes[measure])) }];
  });
  return { unknowns: kept(all), prepared: new Map(prepared) };
}

/*
 * Readings are left out and taken back, and new ones come; what the skis before them were built as stays. The memory holds
 * only what its arguments determine and goes with them.
 */
type Constructions = Map<string, Construction>;
const kept = new WeakMap<BuildCatalog, WeakMap<CalibrationSettings, WeakMap<object, Constructions>>>();
const KEPT_CONSTRUCTIONS = 1000;

function constructionsOf(
  nominal: BuildCatalog,
  settings: CalibrationSettings,
  builtBy: object = nominal,
): Constructions {
  const bySettings = kept.get(nominal) ?? new WeakMap<CalibrationSettings, WeakMap<object, Constructions>>();
  kept.set(nominal, bySettings);
  const byBuilder = bySettings.get(settings) ?? new WeakMap<object, Constructions>();
  bySettings.set(settings, byBuilder);
  const constructions: Constructions = byBuilder.get(builtBy) ?? new Map();
  byBuilder.set(builtBy, constructions);
  return constructions;
}

function constructionKey({ spec, strips, builtWith, builtBy, measured }: MeasuredSki): string {
  const { model, lengthCm, core, reinforcements, flexRatio, lightening, plate, mount } = spec;
  return JSON.stringify([
    model,
    lengthCm,
    core,
    reinforcements,
    flexRatio,
    lightening,
    plate,
    mount?.offsetMm,
    strips,
    builtWith,
    builtBy?.name,
    measured.twistNmPerDeg !== undefined,
  ]);
}

function constructionOf(ski: MeasuredSki, nominal: BuildCatalog, unknowns: readonly Unknown[]): Construction {
  const core = programmedCore(ski, nominal);
  if (!core.ok) throw new RangeError(`${ski.id}: ${JSON.stringify(core.refusal)}`);
  const programme = core.value;
  return {
    programme,
    before: predicted(ski, programme, nominal),
    slopes: slopesOf(ski, programme, nominal, unknowns),
  };
}

export function predicted(ski: MeasuredSki, programme: Programme, catalog: BuildCatalog): PredictedValues {
  const values = predictBuilt(ski, programme, catalog);
  if (!values.ok) throw new RangeError(`${ski.id}: ${JSON.stringify(values.refusal)}`);
  return values.value;
}

/** Largest move of a reading of this ski, in its standard deviations, when the unknown is off by its own. */
function effectOf(row: PreparedSki, i: number, { priorSd }: Unknown, settings: CalibrationSettings): number {
  // What twist would be is worked out only for a ski that was twisted.
  const isTwisted = row.ski.measured.twistNmPerDeg !== undefined;
  const effects = BENCH_MEASURES.filter((measure) => isTwisted || measure !== "twistNmPerDeg").map(
    (measure) => (Math.abs(row.slopes[measure][i] ?? 0) * priorSd) / readingSd(measure, row.before, settings),
  );
  return Math.max(...effects);
}
