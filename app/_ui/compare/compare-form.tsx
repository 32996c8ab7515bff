/** What to compare, as a plain form that puts the choice into the address: it works without scripts and can be kept. */
import type { EngineCatalog } from "#engine/assessment";
import { Button } from "../button";
import { CheckGroup, type Choice } from "../choice-group";
import { TextField } from "../field";
import { fill } from "../words";
import type { CandidateId } from "./candidates";
import type { CompareWords } from "./words";

export interface CompareFormProps {
  readonly words: CompareWords["form"];
  readonly catalog: EngineCatalog;
  readonly offered: { readonly recommended: readonly string[]; readonly earlier: readonly string[] };
  readonly lengthOf: (model: string) => number | undefined;
  readonly sheetName: string | null;
  readonly ticked: readonly CandidateId[];
  readonly most: number;
  readonly other: string;
  readonly otherError: string | undefined;
}

export function CompareForm(p: CompareFormProps) {
  const { words, offered, sheetName } = p;
  const choices: readonly Choice[] = [
    ...(sheetName ? [{ value: "sheet", label: words.sheet, aside: sheetName }] : []),
    ...offered.recommended.map((id) => ({ value: id, label: modelLabel(id, p), aside: words.recommended })),
    ...offered.earlier.map((id) => ({ value: id, label: modelLabel(id, p), aside: words.chosen })),
  ];
  return (
    <form method="get" className="no-print mb-8 grid gap-5" aria-label={words.which}>
      {choices.length > 0 ? (
        <CheckGroup
          name="show"
          label={words.which}
          hint={fill(words.hint, { most: p.most })}
          choices={choices}
          defaultValues={p.ticked}
        />
      ) : null}
      <TextField
        id="other"
        name="other"
        label={words.other}
        hint={words.otherHint}
        optional
        autoComplete="off"
        spellCheck={false}
        maxLength={400}
        defaultValue={p.other}
        error={p.otherError}
      />
      <p>
        <Button type="submit" tone="primary">
          {words.button}
        </Button>
      </p>
    </form>
  );
}

function modelLabel(id: string, { catalog, lengthOf }: CompareFormProps): string {
  const name = catalog.build.models.find((model) => model.id === id)?.name ?? id;
  const lengthCm = lengthOf(id);
  return lengthCm === undefined ? name : `${name}, ${lengthCm} cm`;
}
