/** A proof to be answered, on the page itself: both skis whole, then large enough to read, with the day and what happens then. */
import { weekdayText } from "#app/_ui/date-range.tsx";
import { Notice } from "#app/_ui/notice.tsx";
import { fill } from "#app/_ui/words.ts";
import { SceneDrawing } from "#app/_visuals/scene-drawing.tsx";
import paperWords from "#content/copy/papers.json";
import words from "#content/copy/skier.json";
import { pairScene, withPlacing } from "#engine/scene";
import type { ProgressView } from "#services";

const w = words.pair;

export function ProofInSight({
  proof,
  pictureBase,
}: {
  readonly proof: NonNullable<ProgressView["proofToAnswer"]>;
  readonly pictureBase: string;
}) {
  const { look, safeMm, answerBy, meanwhile } = proof;
  const { text } = look.graphic;
  const drawing = { ...withPlacing(pairScene(look), look, {}, safeMm), turn: "lying", pictureBase } as const;
  const then = paperWords.proof.ifLate[meanwhile];
  return (
    <>
      {answerBy ? (
        <Notice tone="amber" title={fill(w.proofBy, { day: weekdayText(answerBy) })}>
          <p>{then}</p>
        </Notice>
      ) : (
        <p>{then}</p>
      )}
      <SceneDrawing {...drawing} className="h-auto w-full" description={w.proofPicture} />
      <figure>
        <figcaption className="mb-1 text-sm text-pencil">{w.proofClose}</figcaption>
        {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what slides is slid with the arrow keys too */}
        <section aria-label={w.proofClose} tabIndex={0} className="overflow-x-auto border border-rule bg-sheet p-2">
          <SceneDrawing {...drawing} className="h-auto w-[90rem] max-w-none" />
        </section>
      </figure>
      <p className="text-sm text-pencil">{w.proofMarks}</p>
      {text ? <p className="font-medium">{fill(w.proofText, { text: text.text })}</p> : null}
    </>
  );
}
