/**
 * What can hurt here: one line a hazard, the whole text with its reference one tap away. Native disclosures, so it works by
 * keyboard, without scripts, and the browser's page search opens them.
 */
import words from "#content/copy/cautions.json";
import type { Caution } from "#engine/floor";
import { cx } from "./cx";
import { fill } from "./words";

export interface CautionsProps {
  readonly cautions: readonly Caution[];
  /** Said with every full text; null where the page says it once for all of them. */
  readonly localRules: string | null;
  /** "floor" has targets of 48 px for gloves. */
  readonly size?: "normal" | "floor";
  /** All texts at once, where they are read rather than looked up. */
  readonly open?: boolean;
}

export function Cautions({ cautions, localRules, size = "normal", open }: CautionsProps) {
  if (cautions.length === 0) return null;
  return (
    <ul aria-label={words.title} className="border-t border-rule">
      {cautions.map(({ id, line, full, reference }) => (
        <li key={id} data-caution={id} className="border-b border-rule">
          <details open={open} className="min-w-0">
            <summary
              className={cx(
                "chevron flex items-center gap-3 py-1 hover:bg-sheet",
                size === "floor" ? "min-h-12" : "min-h-9",
              )}
            >
              <span aria-hidden="true" className="flex-none font-mono font-bold text-amber">
                !
              </span>
              <span className="min-w-0">{line}</span>
            </summary>
            <div className="grid max-w-measure gap-1 pt-1 pb-3 pl-11">
              <p>{full}</p>
              <p className="text-sm text-pencil">{fill(words.reference, { reference })}</p>
              {localRules === null ? null : <p className="text-sm text-pencil">{localRules}</p>}
            </div>
          </details>
        </li>
      ))}
    </ul>
  );
}
