/** A question whose answers stand in the address: its kinds to choose from, what is wrong with it, and taking it along. */
import type { z } from "zod";
import { messagesByPath } from "#app/_server/form-state.ts";
import { arrival } from "#app/_ui/arrival.ts";
import { Notice } from "#app/_ui/notice.tsx";
import { say } from "#app/shop/say.ts";
import type { Outcome, Refusal } from "#engine/units";

export function KindChoice<Kind extends string>(props: {
  readonly label: string;
  readonly href: string;
  readonly kinds: readonly Kind[];
  readonly chosen: Kind | undefined;
  readonly words: Readonly<Record<Kind, string>>;
}) {
  const { label, href, kinds, chosen, words } = props;
  return (
    <nav aria-label={label}>
      <ul className="grid gap-2 sm:grid-cols-2 lg:grid-cols-4">
        {kinds.map((kind) => (
          <li key={kind}>
            <a
              href={`${href}?kind=${kind}`}
              aria-current={kind === chosen ? "true" : undefined}
              className="flex min-h-14 items-center border border-control bg-sheet px-4 no-underline aria-[current=true]:border-larch aria-[current=true]:font-semibold aria-[current=true]:text-ink"
            >
              {words[kind]}
            </a>
          </li>
        ))}
      </ul>
    </nav>
  );
}

/** Words by field: what could not be read, else what was refused; "" is the question as a whole. */
export function fieldErrors(
  parsed: z.ZodSafeParseResult<unknown> | null,
  answer: Outcome<unknown, Refusal> | null,
): Readonly<Record<string, string>> {
  if (parsed?.success === false) return messagesByPath(parsed.error.issues);
  return answer?.ok === false ? { [answer.refusal.path ?? ""]: say(answer.refusal) } : {};
}

/** The first field, in the order of the form, that has to be put right: reading goes on there. */
export function arrivalAt<Name extends string>(
  names: readonly Name[],
  errors: Readonly<Record<string, string>>,
): (name: Name) => { readonly autoFocus?: true } {
  const first = names.find((name) => errors[name] !== undefined);
  return (name) => (name === first ? { autoFocus: true } : {});
}

/** Begins the answer, in sight and with the focus: on a phone it stands far below the question. */
export function AnswerHead({ children }: { readonly children: string }) {
  return (
    <h3 {...arrival} className="text-lg">
      {children}
    </h3>
  );
}

/** What is wrong with the question as a whole. */
export function WholeError({ errors }: { readonly errors: Readonly<Record<string, string>> }) {
  const { "": error } = errors;
  return error ? <Notice tone="iron" title={error} live="assertive" takesFocus /> : null;
}

/** The answers as hidden fields, so that what is stored is what was asked. */
export const keptAnswers = (answers: Readonly<Record<string, string>>) =>
  Object.entries(answers).map(([name, value]) => ({ kind: "hidden" as const, name, value }));
