import type { z } from "zod";
import type { IsoDate, Outcome } from "#engine/units";

/** What a verb may use beside its input: files named on the command line. */
export interface VerbFlags {
  /** Values of `--name value`, by name. */
  readonly files: Readonly<Record<string, string>>;
  /** Writes bytes or text to a file the caller named. */
  readonly write: (path: string, content: string | Uint8Array) => Promise<void>;
  /** Monotonic milliseconds; searches use it only as a cap. */
  readonly clock: () => number;
  /** The day it is, for what is in force by date. */
  readonly today: IsoDate;
}

/** One verb of the command line: the same schema and function as the pages. */
export interface Verb<Input = unknown> {
  readonly name: string;
  readonly summary: string;
  readonly input: z.ZodType<Input>;
  readonly output: z.ZodType;
  /** Flags that take a file name, with what is written there. */
  readonly fileFlags?: Readonly<Record<string, string>>;
  readonly run: (input: Input, flags: VerbFlags) => Outcome<unknown> | Promise<Outcome<unknown>>;
}

/** Keeps the input's type for `run` and forgets it for the list of verbs. */
export function verb<Input>(definition: Verb<Input>): Verb {
  return definition as unknown as Verb;
}
