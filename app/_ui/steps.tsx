/** Where something stands on its way: done, now, still to come, each with a sign and words. */
import type { ReactNode } from "react";
import { cx } from "./cx";

export interface Step {
  readonly title: string;
  readonly state: "done" | "now" | "next";
  readonly detail?: ReactNode;
}

const looks = {
  done: { sign: "✓", word: "done", colour: "border-moss text-moss" },
  now: { sign: "▸", word: "now", colour: "border-larch text-larch" },
  next: { sign: "", word: "to come", colour: "border-control text-pencil" },
} as const;

export function Steps({ steps, label }: { readonly steps: readonly Step[]; readonly label: string }) {
  return (
    <ol aria-label={label} className="grid">
      {steps.map((step, index) => {
        const look = looks[step.state];
        return (
          <li
            key={step.title}
            aria-current={step.state === "now" ? "step" : undefined}
            className="relative flex gap-4 pb-5 last:pb-0"
          >
            {index < steps.length - 1 ? (
              <span aria-hidden="true" className="absolute top-7 bottom-0 left-[13px] border-l border-rule" />
            ) : null}
            <span
              aria-hidden="true"
              className={cx("grid size-7 flex-none place-items-center border bg-sheet text-sm", look.colour)}
            >
              {look.sign}
            </span>
            <div className="min-w-0">
              <p className={step.state === "now" ? "font-semibold" : step.state === "next" ? "text-pencil" : ""}>
                {step.title}
                <span className="sr-only">, {look.word}</span>
              </p>
              {step.detail ? <div className="text-sm text-pencil">{step.detail}</div> : null}
            </div>
          </li>
        );
      })}
    </ol>
  );
}
