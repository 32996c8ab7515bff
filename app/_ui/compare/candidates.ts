/** What can be compared with a sheet, what the address asks for, and what taking one of them changes on the sheet. */

import { mostBuilds } from "#app/_visuals/axis-builds.ts";
import { type Assessment, assessSheet, type EngineCatalog, type SheetInput } from "#engine/assessment";
import { type PairSpec, type SolvedSpec, solveSpec } from "#engine/configuration";
import { mountLineMm } from "#engine/geometry";

/** "sheet", "other" or the id of a model. */
export type CandidateId = string;

/** What the address of a compare page carries, as text. */
export interface CompareQuery {
  readonly show: readonly CandidateId[];
  /** The other sheet's private link as it was typed. */
  readonly other: string;
}

type SearchParams = Readonly<Record<string, string | readonly string[] | undefined>>;

export function readCompareQuery({ show, other }: SearchParams): CompareQuery {
  const all = (value: SearchParams[string]) => (value === undefined ? [] : typeof value === "string" ? [value] : value);
  return { show: [...new Set(all(show))].slice(0, 40), other: (all(other)[0] ?? "").trim().slice(0, 400) };
}

/** The token in a private link, or in what is left of one; null when there is none. */
export function tokenIn(link: string): string | null {
  return /(?:^|\/)([A-Za-z0-9_-]{43})(?=$|[/?#\s])/.exec(link)?.[1] ?? null;
}

/** The sheet's own choices on another model: its length and flex are those that fit. */
function onModel({ answers, choices }: SheetInput, model: string): SheetInput {
  const { lengthCm: _length, flexRatio: _ratio, ...kept } = choices;
  return { answers, choices: { ...kept, model } };
}

/** Models offered for comparison: the recommended ones, and those of the address that the shop still builds. */
export function offeredModels(
  { recommendation }: Assessment,
  show: readonly CandidateId[],
  { build }: EngineCatalog,
): { readonly recommended: readonly string[]; readonly earlier: readonly string[] } {
  const recommended = (recommendation?.choices ?? []).map((choice) => choice.model);
  const isActive = (id: string) => build.models.some((model) => model.id === id && model.state === "active");
  return { recommended, earlier: show.filter((id) => isActive(id) && !recommended.includes(id)) };
}

/** What is ticked: what the address says or, when it says nothing, the sheet and the best two other models. */
export function tickedOf(
  query: CompareQuery,
  assessment: Assessment,
  offered: { readonly recommended: readonly string[]; readonly earlier: readonly string[] },
): readonly CandidateId[] {
  const known = ["sheet", ...offered.recommended, ...offered.earlier];
  if (query.show.length > 0) return known.filter((id) => query.show.includes(id));
  if (query.other !== "") return ["sheet"];
  const others = offered.recommended.filter((id) => id !== assessment.spec?.model);
  return ["sheet", ...others.slice(0, mostBuilds - 1)];
}

/** One pair worked out for comparison. */
export interface ComparedPair {
  readonly id: CandidateId;
  readonly spec: PairSpec;
  readonly modelName: string;
  readonly solved: SolvedSpec;
  readonly assessment: Assessment;
  readonly mountMm: number;
}

export interface ComparedSources {
  readonly own: SheetInput;
  readonly other: SheetInput | null;
}

/** @returns null when the choices do not come to a ski (a core that this shop no longer has, no answers yet) */
export function comparedPair(id: CandidateId, { own, other }: ComparedSources, catalog: EngineCatalog) {
  const input = id === "sheet" ? own : id === "other" ? other : onModel(own, id);
  if (!input) return null;
  const assessment = assessSheet(input, catalog);
  const { spec } = assessment;
  const solved = spec ? solveSpec(spec, catalog.build) : null;
  if (!spec || !solved?.ok) return null;
  const { shape } = solved.value.build;
  const modelName = catalog.build.models.find((model) => model.id === spec.model)?.name ?? spec.model;
  const pair: ComparedPair = {
    id,
    spec,
    modelName,
    solved: solved.value,
    assessment,
    mountMm: mountLineMm(shape, spec.mount.offsetMm),
  };
  return pair;
}

/** What to save on the sheet to take one; null when there is nothing to take. A picture belongs to its own sheet and stays. */
export function takingPatch(
  id: CandidateId,
  other: SheetInput | null,
  catalog: EngineCatalog,
): Readonly<Record<string, unknown>> | null {
  if (id === "other") {
    const spec = other ? assessSheet(other, catalog).spec : null;
    if (!spec) return null;
    const {
      model,
      lengthCm,
      flexRatio,
      core,
      reinforcements,
      tipTailProtectors,
      plate = null,
      lightening = null,
    } = spec;
    return choicePaths({ model, lengthCm, flexRatio, core, reinforcements, tipTailProtectors, plate, lightening });
  }
  const isKnown = catalog.build.models.some((model) => model.id === id && model.state === "active");
  return isKnown ? choicePaths({ model: id, lengthCm: null, flexRatio: null }) : null;
}

function choicePaths(choices: Readonly<Record<string, unknown>>): Readonly<Record<string, unknown>> {
  return Object.fromEntries(Object.entries(choices).map(([key, value]) => [`choices.${key}`, value]));
}
