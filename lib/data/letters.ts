/** Letters that somebody sent: on their way, gone, or given up. Drafts are in notices.ts. */
import type { LetterState } from "#engine/floor";
import type { Tx } from "./client";
import { readableRows, readRow } from "./columns";
import type { Letter } from "./generated/client";
import { letterColumns } from "./records/tables";
import { seal, Unopenable, unseal } from "./sealed";

const readLetter = (row: Letter) => readRow("letters", letterColumns, row, ({ id }) => id);

export type LetterRecord = ReturnType<typeof readLetter>;

export interface NewLetterRow {
  readonly id: string;
  readonly kind: string;
  readonly recipient: string;
  readonly heading: string;
  readonly body: string;
  readonly isSecret: boolean;
  readonly subjectKind: string;
  readonly subjectId: string;
  readonly createdAt: Date;
}

export async function insertLetter(tx: Tx, letter: NewLetterRow): Promise<void> {
  const body = seal(letter.body, rowOf(letter));
  await tx.letter.create({ data: { ...letter, body, state: "waiting" } });
}

const rowOf = ({ id }: { readonly id: string }) => `letter ${id}`;

/** What it says; null once that is forgotten. Tables and backups hold it sealed. @throws Unopenable */
export function letterText(letter: Pick<LetterRecord, "id" | "body">): string | null {
  return letter.body === null ? null : unseal(letter.body, rowOf(letter));
}

/** A row with what it says, for its person's file; what cannot be opened is told beside. */
export function withText<Row extends Pick<Letter, "id" | "body" | "problem">>(row: Row): Row {
  try {
    return { ...row, body: letterText(row) };
  } catch (error) {
    if (!(error instanceof Unopenable)) throw error;
    return { ...row, body: null, problem: error.message };
  }
}

/** Takes words out of what letters say: no question to the database finds them there. */
export async function sweepLetters(tx: Tx, words: RegExp, word: string): Promise<void> {
  for (const row of await tx.letter.findMany({ where: { body: { not: null } } })) {
    const { id, body } = withText(row);
    const rest = body?.replaceAll(words, word) ?? null;
    if (rest !== null && rest !== body)
      await tx.letter.update({ where: { id }, data: { body: seal(rest, rowOf(row)) } });
  }
}

export async function letterById(client: Tx, id: string): Promise<LetterRecord | null> {
  const row = await client.letter.findUnique({ where: { id } });
  return row === null ? null : readLetter(row);
}

/** Newest first. */
export async function listLetters(
  client: Tx,
  states: readonly LetterState[],
  take: number,
): Promise<readonly LetterRecord[]> {
  const rows = await client.letter.findMany({
    where: { state: { in: [...states] } },
    orderBy: [{ createdAt: "desc" }, { id: "asc" }],
    take,
  });
  return readableRows(rows, readLetter);
}

/** Where the letters of these ids are; one that never was a letter is not among them. */
export async function letterStates(client: Tx, ids: readonly string[]): Promise<ReadonlyMap<string, LetterState>> {
  const rows = await client.letter.findMany({ where: { id: { in: [...ids] } } });
  return new Map(readableRows(rows, readLetter).map(({ id, state }) => [id, state]));
}

/** A try that failed and is not the last. */
export async function noteLetterProblem(tx: Tx, id: string, problem: string): Promise<void> {
  await tx.letter.updateMany({ where: { id, state: "waiting" }, data: { tries: { increment: 1 }, problem } });
}

/** False when it is not in the state it comes from any more. What is secret in it goes when it needs no more tries. */
export async function moveLetter(
  tx: Tx,
  letter: Pick<LetterRecord, "id" | "state" | "isSecret">,
  to: { readonly state: LetterState; readonly problem: string | null; readonly sentAt: Date | null },
): Promise<boolean> {
  const { count } = await tx.letter.updateMany({
    where: { id: letter.id, state: letter.state },
    data: {
      ...to,
      tries: to.state === "waiting" ? 0 : { increment: 1 },
      ...(letter.isSecret && to.state !== "waiting" ? { body: null } : {}),
    },
  });
  return count === 1;
}
