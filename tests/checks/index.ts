/** Every check of the engine against a value from outside it: one table for the tests and for the Method page. */
import { beamChecks } from "./beam-checks";
import { fitChecks } from "./fit-checks";
import { laminateChecks } from "./laminate-checks";
import { materialsChecks } from "./materials-checks";
import { rowsOf } from "./results";
import { sectionChecks } from "./section-checks";
import { snowChecks } from "./snow-checks";
import type { Check, CheckRow } from "./types";
import { wholeSkiChecks } from "./whole-ski-checks";

export { caseIds } from "./cases";

export const checks: readonly Check[] = [
  ...laminateChecks,
  ...materialsChecks,
  ...sectionChecks,
  ...beamChecks,
  ...wholeSkiChecks,
  ...snowChecks,
  ...fitChecks,
];

/** What content/method-checks.json holds. */
export function methodChecks(): { readonly about: string; readonly rows: readonly CheckRow[] } {
  return {
    about:
      "Made by npm run method-checks from tests/checks; a test fails when it is stale. Differences of kind rel are relative, of the others in the value's own unit.",
    rows: rowsOf(checks),
  };
}
