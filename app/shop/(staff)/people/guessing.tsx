/** Tells an owner whose sign-in somebody guesses at; nothing where nobody does. */
import { Notice } from "#app/_ui/notice.tsx";
import { fill } from "#app/_ui/words.ts";
import { clock } from "#app/shop/say.ts";
import words from "#content/copy/people.json";
import type { GuessingView } from "#services";

const w = words.guessing;

export function Guessing({
  guessing,
  href,
}: {
  readonly guessing: readonly GuessingView[];
  /** Where more is to be seen, on another page. */
  readonly href?: string;
}) {
  return guessing.map(({ staffId, name, times, lastAt }) => (
    <Notice key={staffId} tone="amber" title={fill(w.title, { name })}>
      <p className="max-w-measure">{fill(w.note, { name, times, at: clock(lastAt) })}</p>
      {href === undefined ? null : (
        <a href={href} className="inline-flex min-h-9 items-center">
          {w.link}
        </a>
      )}
    </Notice>
  ));
}
