/** All measured skis with what was decided about them, and the fit through them. */
import { sha256Of } from "#catalog";
import type { Tx } from "#data/client";
import {
  allBenchRecords,
  allBooks,
  allDecisions,
  type BenchRecordRow,
  type CorrectionBookRow,
  type ReadingDecisionRow,
} from "#data/learning";
import {
  type BenchValues,
  builtByRelease,
  builtOnPaper,
  type Calibration,
  calibrate,
  type LeftOut,
  type MeasuredSki,
} from "#engine/calibration";
import { resolveSpec } from "#engine/configuration";
import { handbookCatalog, releasedCatalog } from "#shop/catalogue/current";

export interface LearningData {
  readonly records: readonly BenchRecordRow[];
  readonly decisions: readonly ReadingDecisionRow[];
  /** Latest first. */
  readonly books: readonly CorrectionBookRow[];
  /** Changes with every reading, decision and book, and with the content. */
  readonly fingerprint: string;
}

export async function learningData(client: Tx): Promise<LearningData> {
  const records = await allBenchRecords(client);
  const decisions = await allDecisions(client);
  const books = await allBooks(client);
  const fingerprint = sha256Of({
    content: handbookCatalog().hash,
    readings: records.map(({ serial, version, measured }) => [serial, version, measured]),
    decisions: decisions.at(-1)?.seq ?? 0,
    books: books[0]?.number ?? 0,
  });
  return { records, decisions, books, fingerprint };
}

/** The decision that holds for a reading: the last one, if the reading is still the one it was about. */
export function decisionsInForce(data: Pick<LearningData, "records" | "decisions">): readonly ReadingDecisionRow[] {
  const last = new Map(data.decisions.map((decision) => [readingKey(decision.serial, decision.measure), decision]));
  const values = new Map(data.records.map(({ serial, measured }) => [serial, measured]));
  return [...last.values()].filter(
    ({ serial, measure, value }) => values.get(serial)?.[measure as keyof BenchValues] === value,
  );
}

export function readingKey(serial: string, measure: string): string {
  return `${serial} ${measure}`;
}

export function versionOf(number: number): string {
  return `CB-${number}`;
}

export interface Learnt {
  readonly calibration: Calibration;
  readonly leftOut: readonly LeftOut[];
  readonly notCompared: readonly string[];
}

/** The last fit: working it out anew takes longer than reading a page, and most readers come with the same data. */
let last: { readonly fingerprint: string; readonly learnt: Learnt } | undefined;

/** Fits factors to the data. The answer depends on nothing but the data and the content. */
export async function learn(client: Tx, data: LearningData): Promise<Learnt> {
  if (last?.fingerprint === data.fingerprint) return last.learnt;
  const { build, calibration: settings } = handbookCatalog();
  const known = (record: BenchRecordRow) => resolveSpec(record.spec, build).ok;
  const comparable = data.records.filter(known);
  const skis: MeasuredSki[] = [];
  for (const record of comparable) skis.push(await measuredSki(client, record));
  const leftOut = decisionsInForce(data)
    .filter(({ choice }) => choice === "leave-out")
    .map(({ serial, measure, reason }): LeftOut => ({ skiId: serial, measure: measure as keyof BenchValues, reason }));
  const version = versionOf((data.books[0]?.number ?? 0) + 1);
  const learnt: Learnt = {
    calibration: calibrate(skis, build, settings, leftOut, version),
    leftOut,
    notCompared: data.records.filter((record) => !known(record)).map(({ serial }) => serial),
  };
  last = { fingerprint: data.fingerprint, learnt };
  return learnt;
}

async function measuredSki(client: Tx, record: BenchRecordRow): Promise<MeasuredSki> {
  const release = record.releaseHash === null ? null : await releasedCatalog(client, record.releaseHash);
  const builtWith = release?.build.corrections;
  return {
    id: record.serial,
    pair: record.pairSerial,
    side: record.side === "L" ? "L" : "R",
    spec: record.spec,
    measured: record.measured,
    ...(record.strips === null ? {} : { strips: record.strips }),
    builtBy: release ? builtByRelease(release.build, release.hash) : builtOnPaper(handbookCatalog().build),
    ...(builtWith ? { builtWith } : {}),
  };
}
