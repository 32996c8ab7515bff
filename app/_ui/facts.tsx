/** Pairs of name and value, set like the title block of a drawing. */
import type { ReactNode } from "react";
import { cx } from "./cx";

export interface Fact {
  readonly name: string;
  readonly value: ReactNode;
  /** A measure: mono, tabular. */
  readonly measure?: boolean;
}

export function Facts({ facts, columns = 1 }: { readonly facts: readonly Fact[]; readonly columns?: 1 | 2 | 3 }) {
  const grid = { 1: "", 2: "sm:grid-cols-2 gap-x-8", 3: "sm:grid-cols-2 lg:grid-cols-3 gap-x-8" }[columns];
  return (
    <dl className={cx("grid border-t border-rule", grid)}>
      {facts.map((fact) => (
        <div
          key={fact.name}
          className="flex flex-wrap items-baseline justify-between gap-x-4 border-b border-rule py-1.5"
        >
          <dt className="text-sm text-pencil">{fact.name}</dt>
          <dd className={cx("text-right", fact.measure && "measure")}>{fact.value}</dd>
        </div>
      ))}
    </dl>
  );
}
