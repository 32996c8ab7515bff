import { permit } from "#auth";
import problems from "#content/copy/problems.json";
import { recordEvents } from "#data/events";
import { benchRecordOf, insertBenchRecords, replaceReadings, setSkiMeasured } from "#data/learning";
import { type PairRecord, pairById } from "#data/pairs";
import { transaction } from "#data/transaction";
import type { BenchValues, MeasuredSki } from "#engine/calibration";
import type { BuildableSpec } from "#engine/configuration";
import { isOneOf, unbuiltStates } from "#engine/floor";
import type { PairId } from "#engine/units";
import { accept, type Outcome, type Refusal, refuse } from "#engine/units";
import { asBenchReads, benchReadingsSchema } from "#schemas";
import type { EventFacts } from "#schemas/events";
import type { Context } from "#services/context";
import { eventWith, nameOf } from "#services/record";

const w = problems.learning;

export interface BenchInput {
  readonly pairId: PairId;
  readonly side: "L" | "R";
  /** All that was read of this ski; what is absent was not read. */
  readonly values: BenchValues;
  /** Of the readings on the screen, 0 when there were none; absent: whatever is there is corrected. */
  readonly version?: number;
}

/**
 * Keeps what the bench read of one ski, with its spec, release and strips. Readings that are there already are corrected;
 * the old ones stay in the events. Refuses `invalid-field` (path, value, message), `nothing-measured`, `not-built-yet`
 * (state) and `changed-meanwhile`.
 */
export async function recordBenchValues(
  ctx: Context,
  input: BenchInput,
): Promise<Outcome<{ readonly serial: string; readonly version: number }>> {
  const allowed = permit(ctx.actor, "bench.record");
  if (!allowed.ok) return allowed;
  const values = checkedValues(input.values);
  if (!values.ok) return values;
  return transaction(ctx.db, async (tx) => {
    const pair = await pairById(tx, input.pairId);
    const ski = pair?.skis.find(({ side, state }) => side === input.side && state !== "scrapped");
    if (pair === null || ski === undefined) return refuse({ code: "not-found", what: "pair", path: "pairId" });
    if (isOneOf(unbuiltStates, pair.state)) return refuse({ code: "not-built-yet", state: pair.state });
    const before = await benchRecordOf(tx, ski.serial);
    const now = {
      ...builtOf(pair, input.side),
      measured: values.value,
      measuredAt: ctx.now,
      measuredByName: nameOf(ctx.actor),
    };
    const serials = { serial: ski.serial, pairSerial: pair.serial, side: input.side };
    const isKept =
      (before?.version ?? 0) === (input.version ?? before?.version ?? 0) &&
      (before === null
        ? (await insertBenchRecords(tx, [
            { id: ctx.newId(), pairId: pair.id, ...serials, origin: "bench", ...now },
          ])) === 1
        : await replaceReadings(tx, before, now));
    if (!isKept) return refuse({ code: "changed-meanwhile", what: "ski" });
    await setSkiMeasured(tx, ski.id, values.value);
    const data = { serial: ski.serial, side: input.side, values: values.value };
    const facts: EventFacts =
      before === null
        ? { kind: "ski-measured", data }
        : { kind: "reading-corrected", data: { ...data, old: before.measured, oldBy: before.measuredByName } };
    await recordEvents(tx, [eventWith(ctx, { kind: "pair", id: pair.id }, facts)]);
    return accept({ serial: ski.serial, version: (before?.version ?? 0) + 1 });
  });
}

/** Readings within what a bench can read of a ski. Refuses `invalid-field` with the field, value and limit in words. */
export function checkedValues(values: BenchValues, path = "values"): Outcome<BenchValues, Refusal> {
  const parsed = benchReadingsSchema.safeParse(asBenchReads(values));
  if (!parsed.success) {
    const [issue] = parsed.error.issues;
    const at = issue?.path.map(String).join(".") ?? "";
    return refuse({ code: "invalid-field", path: `${path}.${at}`, message: issue?.message ?? w.noReading });
  }
  if (Object.keys(parsed.data).length === 0) return refuse({ code: "nothing-measured", path });
  return accept(values);
}

/** What the ski was built as: spec, release and the means of its strips. */
function builtOf(pair: PairRecord, side: "L" | "R") {
  const { model, lengthCm, core, reinforcements, flexRatio, mount } = pair.spec;
  const spec: BuildableSpec = { model, lengthCm, core, reinforcements, flexRatio, mount };
  return { spec, releaseHash: pair.releaseHash, strips: stripMeans(pair.heldStrips, side) };
}

/** Means of the strips in each position of one ski; null when none was measured. */
export function stripMeans(
  strips: PairRecord["heldStrips"],
  side: "L" | "R",
): NonNullable<MeasuredSki["strips"]> | null {
  const own = strips.filter((strip) => strip.side === side);
  const positions = (["C", "I", "M", "O"] as const).flatMap((position) => {
    const here = own.filter((strip) => strip.position === position);
    if (here.length === 0) return [];
    const mean = (key: "modulusMpa" | "densityKgM3") => here.reduce((sum, strip) => sum + strip[key], 0) / here.length;
    return [[position, { modulusMpa: mean("modulusMpa"), densityKgM3: mean("densityKgM3") }] as const];
  });
  return positions.length === 0 ? null : Object.fromEntries(positions);
}
