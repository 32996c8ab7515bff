import { permit } from "#auth";
import type { BenchRecordRow, CorrectionBookRow } from "#data/learning";
import type { Calibration, Residual } from "#engine/calibration";
import { accept, type Outcome } from "#engine/units";
import type { Context } from "#services/context";
import { handbookCatalog } from "#shop/catalogue/current";
import { decisionsInForce, type LearningData, learn, learningData, readingKey, versionOf } from "./learn";
import type { CorrectionBookView, LearningView, MeasuredSkiView, PredictedVersusMeasured } from "./views";

/** What the measured pairs teach, with every decision and book. For owner and desk. */
export async function readLearning(ctx: Context): Promise<Outcome<LearningView>> {
  const allowed = permit(ctx.actor, "learning.read");
  if (!allowed.ok) return allowed;
  const data = await learningData(ctx.db);
  const { calibration, notCompared } = await learn(ctx.db, data);
  const holding = new Set(decisionsInForce(data).map(({ seq }) => seq));
  return accept({
    calibration,
    fingerprint: data.fingerprint,
    leastPairs: handbookCatalog().calibration.leastPairs,
    undecided: undecidedOf(calibration, data),
    skis: data.records.map(measuredSkiView),
    notCompared,
    decisions: data.decisions.toReversed().map((decision) => ({
      serial: decision.serial,
      measure: decision.measure,
      value: decision.value,
      choice: decision.choice,
      reason: decision.reason,
      by: decision.by,
      at: decision.at.toISOString(),
      holds: holding.has(decision.seq),
    })),
    books: data.books.map(bookView),
  });
}

/** How well computed and measured agree, for everybody: serials of pairs, no customers. */
export async function readPredictedVersusMeasured(ctx: Context): Promise<Outcome<PredictedVersusMeasured>> {
  const allowed = permit(ctx.actor, "learning.show");
  if (!allowed.ok) return allowed;
  const data = await learningData(ctx.db);
  const { calibration } = await learn(ctx.db, data);
  return accept({
    pairs: calibration.pairs,
    skis: new Set(calibration.residuals.map(({ skiId }) => skiId)).size,
    leastPairs: handbookCatalog().calibration.leastPairs,
    bookInForce: data.books[0] ? versionOf(data.books[0].number) : null,
    quality: calibration.quality,
    points: calibration.residuals.map(
      ({ skiId, pair, measure, measured, predictedBefore, predictedAfter, leftOut }) => ({
        skiId,
        pair,
        measure,
        measured,
        predictedBefore,
        predictedAfter,
        leftOut,
      }),
    ),
  });
}

/** Suspects that the owner has neither left out nor said to keep. */
export function undecidedOf(calibration: Calibration, data: LearningData): readonly Residual[] {
  const decided = new Set(decisionsInForce(data).map(({ serial, measure }) => readingKey(serial, measure)));
  return calibration.suspects.filter(({ skiId, measure }) => !decided.has(readingKey(skiId, measure)));
}

function measuredSkiView(record: BenchRecordRow): MeasuredSkiView {
  return {
    serial: record.serial,
    pairSerial: record.pairSerial,
    pairId: record.pairId,
    side: record.side === "L" ? "L" : "R",
    spec: record.spec,
    values: record.measured,
    version: record.version,
    measuredAt: record.measuredAt.toISOString(),
    measuredBy: record.measuredByName,
    origin: record.origin === "book" ? "book" : "bench",
  };
}

function bookView(book: CorrectionBookRow): CorrectionBookView {
  return {
    version: book.version,
    corrections: book.corrections,
    summary: book.summary,
    effectiveAt: book.effectiveAt.toISOString(),
    approvedBy: book.approvedByName,
  };
}
