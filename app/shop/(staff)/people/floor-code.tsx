/** A person's short code for the floor: set, replaced, taken away; by an owner or by themselves. */
import { ActionForm } from "#app/_ui/action-form.client.tsx";
import words from "#content/copy/people.json";
import { setCode, takeCode } from "./actions";

const w = words.person;

export function FloorCode({ staffId, hasFloorCode }: { readonly staffId: string; readonly hasFloorCode: boolean }) {
  return (
    <div className="grid gap-4">
      <p className="max-w-measure text-pencil">
        {w.codeNote} {hasFloorCode ? w.codeHas : null}
      </p>
      <ActionForm
        action={setCode}
        idPrefix="code-"
        tone="plain"
        fields={[
          { kind: "hidden", name: "staffId", value: staffId },
          { kind: "password", name: "passcode", label: w.codeField, autoComplete: "off", isFigures: true },
        ]}
        submit={w.codeButton}
        done={w.codeDone}
      />
      {hasFloorCode ? (
        <ActionForm
          action={takeCode}
          idPrefix="take-code-"
          tone="plain"
          size="small"
          fields={[{ kind: "hidden", name: "staffId", value: staffId }]}
          submit={w.codeTake}
          done={w.codeTaken}
        />
      ) : null}
    </div>
  );
}
