import { permit } from "#auth";
import { benchRecordsOfPair } from "#data/learning";
import { pairById } from "#data/pairs";
import type { BenchMeasure, BenchValues } from "#engine/calibration";
import type { PairId } from "#engine/units";
import { accept, type Outcome, refuse } from "#engine/units";
import type { FinishRules } from "#schemas/content/index";
import { benchMeasures } from "#schemas/learning";
import type { Context } from "#services/context";
import { workedPair } from "#shop/pair/view";
import type { BenchRow, PairBenchView } from "./views";

type Limit = FinishRules["qcLimits"][number];

const limitOf: Readonly<Record<BenchMeasure, Limit["measure"]>> = {
  massKg: "mass",
  camberMm: "camber",
  springCentreNPerMm: "springCentre",
  springForebodyNPerMm: "springEnds",
  springAfterbodyNPerMm: "springEnds",
};
/** What 1 of an absolute limit, written in the bench's unit, is in the engine's. */
const perBench: Readonly<Record<BenchMeasure, number>> = {
  massKg: 0.001,
  camberMm: 1,
  springCentreNPerMm: 0.1,
  springForebodyNPerMm: 0.1,
  springAfterbodyNPerMm: 0.1,
};

/** What the bench has read of a pair, beside the targets and limits of its own release. */
export async function readPairBench(ctx: Context, input: { readonly pairId: PairId }): Promise<Outcome<PairBenchView>> {
  const allowed = permit(ctx.actor, "pair.read");
  if (!allowed.ok) return allowed;
  const pair = await pairById(ctx.db, input.pairId);
  if (pair === null) return refuse({ code: "not-found", what: "pair", path: "pairId" });
  const [{ solved, catalog }, records] = await Promise.all([
    workedPair(ctx.db, pair),
    benchRecordsOfPair(ctx.db, pair.id),
  ]);
  const standing = pair.skis.filter(({ state }) => state !== "scrapped");
  const skis = standing.map(({ side, serial }): PairBenchView["skis"][number] => {
    const record = records.find((candidate) => candidate.serial === serial);
    return {
      side: side === "L" ? "L" : "R",
      serial,
      version: record?.version ?? 0,
      values: record ? record.measured : {},
      measuredAt: record?.measuredAt.toISOString() ?? null,
      measuredBy: record?.measuredByName ?? null,
    };
  });
  const flex = solved.flexWithPlate;
  const targets: Required<BenchValues> = {
    massKg: flex.massKg,
    camberMm: solved.build.shape.camberMm,
    springCentreNPerMm: flex.springCentreNPerMm,
    springForebodyNPerMm: flex.springForebodyNPerMm,
    springAfterbodyNPerMm: flex.springAfterbodyNPerMm,
  };
  const read = (side: "L" | "R") => skis.find((ski) => ski.side === side)?.values ?? {};
  return accept({
    skis,
    rows: benchMeasures.map((measure) =>
      benchRow(measure, targets[measure], catalog.finish.qcLimits, read("L")[measure], read("R")[measure]),
    ),
  });
}

function benchRow(
  measure: BenchMeasure,
  target: number,
  limits: readonly Limit[],
  left: number | undefined,
  right: number | undefined,
): BenchRow {
  const own = limits.find((limit) => limit.measure === limitOf[measure]);
  const amount = ({ kind, amount: size }: NonNullable<Limit["band"]>) =>
    kind === "percent" ? (Math.abs(target) * size) / 100 : size * perBench[measure];
  const limit = own?.band ? amount(own.band) : null;
  const twinLimit = own?.twinBands ? Math.max(...own.twinBands.map(amount)) : null;
  const twinDifference = left === undefined || right === undefined ? null : Math.abs(left - right);
  const within = (distance: number | null, most: number | null) =>
    distance === null || most === null ? null : distance <= most + 1e-9 ? "in" : "out";
  const offTarget = (value: number | undefined) => (value === undefined ? null : Math.abs(value - target));
  return {
    measure,
    target,
    limit,
    twinLimit,
    left: left ?? null,
    right: right ?? null,
    twinDifference,
    states: {
      L: within(offTarget(left), limit),
      R: within(offTarget(right), limit),
      twins: within(twinDifference, twinLimit),
    },
  };
}
