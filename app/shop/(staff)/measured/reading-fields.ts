/** The bench's readings as form fields: typed in the bench's units, handed on in the engine's. */
import { z } from "zod";
import type { BenchMeasure, BenchValues } from "#engine/calibration";
import { benchMeasures, benchReadingsSchema, benchScales } from "#schemas";

const decimal = /^[+-]?\d+([.,]\d+)?$/;

/** A number as people type it, with point or comma. */
export function typedNumber(label: string) {
  return z
    .string()
    .trim()
    .regex(decimal, { error: (issue) => `${label} "${String(issue.input).slice(0, 40)}" is not a number` })
    .transform((text) => Number(text.replace(",", ".")));
}

type FieldName<Prefix extends string> = `${Prefix}${BenchMeasure}`;

function readingField(measure: BenchMeasure) {
  const typed = typedNumber(benchScales[measure].label).pipe(benchReadingsSchema.shape[measure].unwrap());
  return z
    .string()
    .trim()
    .prefault("")
    .transform((text, context): number | undefined => {
      if (text === "") return undefined;
      const read = typed.safeParse(text);
      if (read.success) return read.data;
      context.addIssue({ code: "custom", message: read.error.issues[0]?.message ?? `"${text}" is not a reading` });
      return z.NEVER;
    });
}

/** One text field for each measure; an empty one was not read, and a bench that reads no twist has no field for it. */
export function readingFields<Prefix extends string>(prefix: Prefix) {
  const fields = benchMeasures.map((measure) => [`${prefix}${measure}`, readingField(measure)] as const);
  return Object.fromEntries(fields) as Record<FieldName<Prefix>, ReturnType<typeof readingField>>;
}

/** What was read, of the fields with this prefix. */
export function readingsIn(fields: Readonly<Record<string, unknown>>, prefix: string): BenchValues {
  return Object.fromEntries(
    benchMeasures.flatMap((measure) => {
      const value = fields[`${prefix}${measure}`];
      return typeof value === "number" ? [[measure, value]] : [];
    }),
  );
}
