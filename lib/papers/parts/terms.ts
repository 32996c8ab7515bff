/** What an offer or an order says of money and time, in words. */
import words from "#content/copy/papers.json";
import type { Price } from "#engine/pricing";
import { fill } from "#engine/units";
import type { Row, TermFacts } from "./facts";
import { money, plainNumber } from "./format";

const w = words.terms;

/** What the clock waits for. */
export const clockStartTerms: readonly string[] = w.clockStart;

export function taxNote({ taxCents }: Pick<Price, "taxCents">): string {
  return taxCents > 0 ? w.taxIncluded : w.taxElsewhere;
}

/** What the shop keeps at each stage. */
export function cancellationRows({ cancellation }: Pick<TermFacts, "cancellation">): readonly Row[] {
  return cancellation.map((step) => ({ label: step.label, value: keptText(step) }));
}

function keptText({ keepBasisPoints, keepCents, keepsArtFee }: TermFacts["cancellation"][number]): string {
  const kept = [
    ...(keepBasisPoints > 0 ? [fill(w.keptShare, { percent: plainNumber(keepBasisPoints / 100, 2) })] : []),
    ...(keepCents > 0 ? [money(keepCents)] : []),
    ...(keepsArtFee ? [w.keptArtFee] : []),
  ];
  return kept.length === 0 ? w.nothingKept : fill(w.kept, { what: kept.join(w.and) });
}
