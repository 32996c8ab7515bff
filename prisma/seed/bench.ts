/**
 * What the bench has read: pairs of the shop's paper book, and the delivered pairs of the demo. The materials and the mill of
 * this invented shop are off the handbook by amounts that only this file knows, so that there is something to learn; and one
 * mass was typed with a wrong first digit, so that there is something to find.
 */
import { systemActor } from "#auth";
import { pairById } from "#data/pairs";
import { type BenchMeasure, type BenchValues, builtOnPaper, type MeasuredSki, predictSki } from "#engine/calibration";
import type { BuildableSpec, BuildCatalog } from "#engine/configuration";
import type { Corrections } from "#engine/materials";
import { keyedDraw, normalQuantile, unitFromU32 } from "#engine/math";
import { addBookPair, type BookPairInput, type PairId, recordBenchValues } from "#services";
import { stripMeans } from "#services/learning/record-bench";
import { handbookCatalog } from "#shop/catalogue/current";
import { at, type DemoShop, done } from "./sales";
import type { DemoCalendar } from "./shop-days";

/** Invented. */
const hidden: Corrections = {
  version: "invented",
  moduli: { aspen: 0.95, "triax-750": 1.04 },
  densities: {},
  coreOffsetMm: 0.06,
  camberOffsetMm: -0.6,
  twist: 0.96,
};
/** How the bench's readings scatter: shares of mass, springs and twist, mm of camber. Invented. */
const scatter = { mass: 0.006, spring: 0.008, camberMm: 0.2, twist: 0.015 } as const;
const seed = 417;
const bookPairs = 24;
/** The pair whose right ski was typed a kilogram too heavy. */
const mistypedPair = 13;

const models: readonly { readonly id: string; readonly cores: readonly string[] }[] = [
  { id: "midlow-84", cores: ["aspen-ash", "poplar-ash", "maple-poplar-planted"] },
  { id: "midlow-95", cores: ["aspen-ash", "beech-poplar", "maple-aspen"] },
  { id: "pathwick-75", cores: ["aspen-ash", "poplar-ash"] },
  { id: "kerfline-68", cores: ["maple-aspen", "aspen-ash"] },
  { id: "ridgefold-106", cores: ["aspen-ash", "poplar-ash"] },
  { id: "upleigh-92", cores: ["paulownia-poplar", "aspen-ash"] },
];
const ratios = [0.86, 0.95, 1, 1.08, 1.2] as const;
const extras: readonly (readonly string[])[] = [[], [], ["carbon-stringers"], [], ["flax"]];

/** Seeded normal draw for one reading of one ski. */
function noise(pair: number, side: "L" | "R", measure: number): number {
  return normalQuantile(unitFromU32(keyedDraw(seed, pair, side === "L" ? 0 : 1, measure, 0)));
}

/** What the bench reads of such a ski: the hidden truth, scattered, in the bench's own steps (1 g, 0.1 mm, 0.1 N/cm, 0.01 N·m a degree). */
function benchOf(
  ski: Pick<MeasuredSki, "spec" | "strips" | "builtBy">,
  truth: BuildCatalog,
  pair: number,
  side: "L" | "R",
) {
  const exact = done(predictSki(ski, truth), "a prediction");
  const scattered = (measure: BenchMeasure, index: number, share: number, steps: number) =>
    Math.round(exact[measure] * (1 + share * noise(pair, side, index)) * steps) / steps;
  return {
    massKg: scattered("massKg", 0, scatter.mass, 1000),
    camberMm: Math.round((exact.camberMm + scatter.camberMm * noise(pair, side, 1)) * 10) / 10,
    springCentreNPerMm: scattered("springCentreNPerMm", 2, scatter.spring, 100),
    springForebodyNPerMm: scattered("springForebodyNPerMm", 3, scatter.spring, 100),
    springAfterbodyNPerMm: scattered("springAfterbodyNPerMm", 4, scatter.spring, 100),
    twistNmPerDeg: scattered("twistNmPerDeg", 5, scatter.twist, 100),
  } satisfies BenchValues;
}

/** The pairs of the paper book, oldest first: several models, lengths, cores and flex ratios in changing company. */
export function demoBookPairs(build: BuildCatalog): readonly BookPairInput[] {
  const truth: BuildCatalog = { ...build, corrections: hidden };
  return Array.from({ length: bookPairs }, (_, index): BookPairInput => {
    const spec = bookSpec(index, build);
    const ski = { spec, builtBy: builtOnPaper(build) };
    const right = benchOf(ski, truth, index, "R");
    return {
      serial: `OB-${String(101 + index)}`,
      spec,
      left: benchOf(ski, truth, index, "L"),
      right: index === mistypedPair ? { ...right, massKg: right.massKg + 1 } : right,
    };
  });
}

function bookSpec(index: number, build: BuildCatalog): BuildableSpec {
  const turn = Math.floor(index / models.length);
  const model = models[index % models.length];
  const lengths = build.models.find(({ id }) => id === model?.id)?.lengths ?? [];
  return {
    model: model?.id ?? "",
    lengthCm: lengths[(1 + turn) % lengths.length]?.lengthCm ?? 0,
    core: model?.cores[turn % model.cores.length] ?? "",
    reinforcements: extras[(index + turn) % extras.length] ?? [],
    flexRatio: ratios[(index + 2 * turn) % ratios.length] ?? 1,
  };
}

/** Types the paper book in, and measures what was delivered. No book of corrections: approving one is the owner's. */
export async function seedBench(
  shop: DemoShop,
  calendar: DemoCalendar,
  delivered: readonly { readonly pairId: PairId; readonly days: number }[],
): Promise<void> {
  const { build } = handbookCatalog();
  const bench: DemoShop = { ...shop, desk: systemActor("Mo Tarrant") };
  for (const [index, pair] of demoBookPairs(build).entries()) {
    done(await addBookPair(at(bench, calendar.back(30, 13, index)), pair), "a pair of the paper book");
  }
  const truth: BuildCatalog = { ...build, corrections: hidden };
  for (const { pairId, days } of delivered) {
    const pair = await pairById(shop.db, pairId);
    if (pair === null) throw new Error(`demo: pair ${pairId} is not there`);
    const { model, lengthCm, core, reinforcements, flexRatio, mount } = pair.spec;
    const spec: BuildableSpec = { model, lengthCm, core, reinforcements, flexRatio, mount };
    for (const side of ["L", "R"] as const) {
      const strips = stripMeans(pair.heldStrips, side);
      const values = benchOf({ spec, ...(strips === null ? {} : { strips }) }, truth, pair.serialNumber, side);
      done(
        await recordBenchValues(at(bench, calendar.back(days - 10, 14)), { pairId, side, values }),
        "a measured ski",
      );
    }
  }
}
