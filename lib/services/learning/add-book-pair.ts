import { permit } from "#auth";
import problems from "#content/copy/problems.json";
import { recordEvents } from "#data/events";
import { insertBenchRecords } from "#data/learning";
import { transaction } from "#data/transaction";
import type { BenchValues } from "#engine/calibration";
import { type BuildableSpec, resolveSpec } from "#engine/configuration";
import { accept, type Outcome, refuse } from "#engine/units";
import { bookPairSchema } from "#schemas";
import type { Context } from "#services/context";
import { eventOf, nameOf } from "#services/record";
import { currentCatalog, handbookCatalog } from "#shop/catalogue/current";
import { readSerial } from "#shop/names/serial";
import { checkedValues } from "./record-bench";

const w = problems.learning;

export interface BookPairInput {
  /** As it stands in the paper book. */
  readonly serial: string;
  readonly spec: BuildableSpec;
  readonly left: BenchValues;
  readonly right: BenchValues;
}

/**
 * Takes over a pair of the shop's paper book: what it was built as, and what was read of both skis. Refuses `invalid-field`,
 * `nothing-measured`, `serial-of-the-shop` (such a pair is measured on its own page), `serial-taken`, and what the catalogue
 * does not hold.
 */
export async function addBookPair(
  ctx: Context,
  input: BookPairInput,
): Promise<Outcome<{ readonly pairSerial: string }>> {
  const allowed = permit(ctx.actor, "bench.record");
  if (!allowed.ok) return allowed;
  const { model, lengthCm, core, reinforcements, flexRatio } = input.spec;
  const parsed = bookPairSchema.safeParse({ serial: input.serial, model, lengthCm, core, reinforcements, flexRatio });
  if (!parsed.success) {
    const [issue] = parsed.error.issues;
    const path = issue?.path.map(String).join(".") ?? "";
    return refuse({ code: "invalid-field", path, message: issue?.message ?? w.noPair });
  }
  const { serial, ...spec } = parsed.data;
  if (readSerial(currentCatalog().shop.serialPrefix, serial).kind !== "none")
    return refuse({ code: "serial-of-the-shop", path: "serial", serial });
  const known = resolveSpec(spec, handbookCatalog().build);
  if (!known.ok) return known;
  const skis: { readonly side: "L" | "R"; readonly measured: BenchValues }[] = [];
  for (const [side, values] of [["L", input.left] as const, ["R", input.right] as const]) {
    const checked = checkedValues(values, side === "L" ? "left" : "right");
    if (!checked.ok) return checked;
    skis.push({ side, measured: checked.value });
  }
  return transaction(ctx.db, async (tx) => {
    const records = skis.map(({ side, measured }) => ({
      id: ctx.newId(),
      pairId: null,
      serial: `${serial}-${side}`,
      pairSerial: serial,
      side,
      spec,
      releaseHash: null,
      strips: null,
      measured,
      measuredAt: ctx.now,
      measuredByName: nameOf(ctx.actor),
      origin: "book" as const,
    }));
    // Both or neither: one serial that is there already takes the whole pair back.
    const count = await insertBenchRecords(tx, records.slice(0, 1));
    if (count === 0) return refuse({ code: "serial-taken", path: "serial", serial });
    if ((await insertBenchRecords(tx, records.slice(1))) === 0) throw new Error(`${serial}: one ski was there already`);
    const subject = { kind: "measured-pair", id: serial } as const;
    await recordEvents(tx, [
      eventOf(ctx, "book-pair-added", subject, { serial, spec, left: input.left, right: input.right }),
    ]);
    return accept({ pairSerial: serial });
  });
}
