import { permit } from "#auth";
import { benchRecordsOfPair } from "#data/learning";
import { pairById } from "#data/pairs";
import type { BenchValues } from "#engine/calibration";
import { twistBenchNmPerDeg } from "#engine/flex";
import type { PairId } from "#engine/units";
import { accept, type Outcome, refuse } from "#engine/units";
import { benchMeasures } from "#schemas/learning";
import type { Context } from "#services/context";
import { workedPair } from "#shop/pair/view";
import { benchRow } from "./bench-row";
import type { PairBenchView } from "./views";

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
    twistNmPerDeg: twistBenchNmPerDeg(solved.build, flex),
  };
  // A release from before the twist bench has no setting for it, so that nothing can be compared.
  const measures = benchMeasures.filter((measure) => measure !== "twistNmPerDeg" || solved.build.twistTest);
  const read = (side: "L" | "R") => skis.find((ski) => ski.side === side)?.values ?? {};
  return accept({
    skis,
    twistTest: solved.build.twistTest ?? null,
    rows: measures.map((measure) =>
      benchRow(measure, targets[measure], catalog.finish.qcLimits, read("L")[measure], read("R")[measure]),
    ),
  });
}
