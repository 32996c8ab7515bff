/** A pair of the paper book, typed in whole. */
import { PageCautions } from "#app/_server/page-cautions.tsx";
import { ActionForm, type FormField } from "#app/_ui/action-form.client.tsx";
import { fill } from "#app/_ui/words.ts";
import words from "#content/copy/learning.json";
import type { BuildCatalog } from "#engine/configuration";
import { benchMeasures, benchScales } from "#schemas";
import { addPair } from "./actions";

const w = words.measured;
const f = w.addFields;

export function AddPair({ build }: { readonly build: BuildCatalog }) {
  const readings = (["L", "R"] as const).flatMap((side) =>
    benchMeasures.map((measure): FormField => {
      const label = fill(w.addReading, { side: words.sides[side], measure: words.measures[measure].toLowerCase() });
      const name = `${side === "L" ? "left" : "right"}-${measure}`;
      return { kind: "number", name, label, unit: benchScales[measure].unit, optional: true };
    }),
  );
  const options = (rows: readonly { readonly id: string; readonly label: string }[]) =>
    rows.map(({ id, label }) => ({ value: id, label }));
  return (
    <>
      <p className="mb-4 max-w-measure text-pencil">{w.addNote}</p>
      <div className="mb-4">
        <PageCautions page="measured" />
      </div>
      <ActionForm
        action={addPair}
        idPrefix="book-"
        tone="plain"
        fields={[
          { kind: "text", name: "serial", label: f.serial, autoComplete: "off" },
          {
            kind: "select",
            name: "model",
            label: f.model,
            options: options(build.models.map(({ id, name }) => ({ id, label: name }))),
            empty: f.empty,
          },
          { kind: "number", name: "lengthCm", label: f.lengthCm, unit: "cm" },
          { kind: "select", name: "core", label: f.core, options: options(build.blends), empty: f.empty },
          {
            kind: "select",
            name: "reinforcement",
            label: f.reinforcements,
            options: [{ value: "", label: f.none }, ...options(build.reinforcements)],
          },
          { kind: "number", name: "flexRatio", label: f.flexRatio },
          ...readings,
        ]}
        submit={w.addButton}
        busy={w.adding}
        done={w.added}
      />
    </>
  );
}
