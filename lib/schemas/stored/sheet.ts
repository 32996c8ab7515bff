/** A sheet's fields as they are kept: each with its value and how it came to be; and the same by meaning. */
import { z } from "zod";
import type { PartialAnswers, SheetChoices } from "#engine/assessment";
import type { PairSpec } from "#engine/configuration";
import type { TypedMeasures } from "#engine/fit";
import type { Destination } from "#engine/pricing";
import { listOf, storedInstant, words } from "./common";
import { storedAnswers, storedBase, storedChoices, storedDestination, storedTypedMeasures } from "./pair-spec";
import type { FlagAck } from "./quote";

/** One field of a sheet: the value and who set it, at which version of the sheet. `at` is ISO 8601 text in UTC. */
export interface FieldEntry {
  readonly value: unknown;
  readonly version: number;
  readonly by: string;
  readonly at: string;
}

/** By path: answers.…, typed.height, typed.mass, said.height, said.mass, choices.…, contact.…, asked.…, notes, acks.CODE */
export type SheetFields = Readonly<Record<string, FieldEntry>>;

export interface PostalAddress {
  readonly lines: readonly string[];
  readonly town: string;
  readonly region?: string;
  readonly postcode: string;
  readonly country: string;
}

/** Who is asking, as far as they said. */
export interface SheetContact {
  readonly name?: string;
  readonly phone?: string;
  readonly email?: string;
  readonly address?: PostalAddress;
}

/** What the skier states about a picture. The shop keeps it with the order. */
export interface RightsBasis {
  readonly basis: "own" | "licensed" | "public-domain" | "commissioned";
  readonly name: string;
}

/** What every pair of a club begins with; each skier's sheet may still differ. */
export interface ClubPalette {
  readonly base: PairSpec["base"];
  readonly house: string;
  /** Each skier's name is printed on the pair, and proofed. */
  readonly isNamed: boolean;
  /** One delivery for all. */
  readonly destination: Destination;
}

export const storedAddress = z.object({
  lines: listOf(words),
  town: words,
  region: words.exactOptional(),
  postcode: words,
  country: words,
}) satisfies z.ZodType<PostalAddress>;

const contact = z.object({
  name: words.exactOptional(),
  phone: words.exactOptional(),
  email: words.exactOptional(),
  address: storedAddress.exactOptional(),
}) satisfies z.ZodType<SheetContact>;

/** Statements copied from a picture to its pair carry their instant in a column of their own. */
export const storedRights = z.object({
  basis: z.enum(["own", "licensed", "public-domain", "commissioned"]),
  name: words,
}) satisfies z.ZodType<RightsBasis>;

export const storedPalette = z.object({
  base: storedBase,
  house: words,
  isNamed: z.boolean(),
  destination: storedDestination,
}) satisfies z.ZodType<ClubPalette>;

const entry = z.object({ value: z.unknown(), version: z.number(), by: words, at: storedInstant });

export const storedSheetFields = z.record(z.string(), entry).readonly() satisfies z.ZodType<SheetFields>;

/** The words in the boxes of height and mass, as they were typed; what they were read as stands beside them. */
export interface SaidMeasures {
  readonly height?: string;
  readonly mass?: string;
}

/** A sheet by meaning: what stands in its fields, cleared ones left out. */
export interface SheetContent {
  readonly answers: PartialAnswers;
  readonly choices: SheetChoices;
  readonly typed: TypedMeasures;
  readonly said: SaidMeasures;
  readonly contact: SheetContact;
  /** Per question: asked and not answered, or refused. */
  readonly asked: Readonly<Record<string, "not asked" | "refused">>;
  readonly notes: string | null;
  readonly flagAcks: readonly FlagAck[];
}

const groups = z.object({
  answers: storedAnswers,
  choices: storedChoices,
  typed: storedTypedMeasures,
  said: z.object({ height: words.exactOptional(), mass: words.exactOptional() }) satisfies z.ZodType<SaidMeasures>,
  contact,
  asked: z.record(z.string(), z.enum(["not asked", "refused"])).readonly(),
  notes: words.nullable(),
});

const ack = z.object({ reason: words, byOwner: z.boolean() });

/** The fields by meaning. @throws z.ZodError when a value is none for its field */
export function sheetContent(fields: SheetFields): SheetContent {
  const set = Object.entries(fields).filter(([, { value }]) => value !== null && value !== undefined);
  const group = (prefix: string) =>
    Object.fromEntries(
      set.flatMap(([path, { value }]) =>
        path.startsWith(`${prefix}.`) ? [[path.slice(prefix.length + 1), value]] : [],
      ),
    );
  const read = groups.parse({
    answers: group("answers"),
    choices: group("choices"),
    typed: group("typed"),
    said: group("said"),
    contact: group("contact"),
    asked: group("asked"),
    notes: fields.notes?.value ?? null,
  });
  const flagAcks = set.flatMap(([path, { value, by, at }]) =>
    path.startsWith("acks.") ? [{ code: path.slice("acks.".length), ...ack.parse(value), by, at }] : [],
  );
  return { ...read, flagAcks };
}
