/** Filters of a list: a plain form that puts them into the address, so that a list can be sent and found again. */
import { Button } from "#app/_ui/button.tsx";
import { controlClass } from "#app/_ui/field.tsx";

export type Filter =
  | {
      readonly kind: "select";
      readonly name: string;
      readonly label: string;
      /** Label of "no filter". */
      readonly empty: string;
      readonly options: Readonly<Record<string, string>>;
      readonly value: string | undefined;
    }
  | {
      readonly kind: "text" | "tick";
      readonly name: string;
      readonly label: string;
      readonly value: string | undefined;
    };

export function FilterForm({
  fields,
  submit,
  problem,
}: {
  readonly fields: readonly Filter[];
  readonly submit: string;
  readonly problem?: string | undefined;
}) {
  return (
    <form className="no-print mb-4 flex flex-wrap items-end gap-x-4 gap-y-2">
      {fields.map((field) => (
        <FilterField key={field.name} field={field} />
      ))}
      <Button type="submit">{submit}</Button>
      {problem ? (
        <p role="alert" className="basis-full text-iron">
          {problem}
        </p>
      ) : null}
    </form>
  );
}

function FilterField({ field }: { readonly field: Filter }) {
  const id = `filter-${field.name}`;
  if (field.kind === "tick") {
    return (
      <label htmlFor={id} className="flex min-h-11 items-center gap-2">
        <input id={id} type="checkbox" name={field.name} value="true" defaultChecked={field.value === "true"} />
        {field.label}
      </label>
    );
  }
  return (
    <div>
      <label htmlFor={id} className="block text-sm text-pencil">
        {field.label}
      </label>
      {field.kind === "select" ? (
        <select id={id} name={field.name} defaultValue={field.value ?? ""} className={`${controlClass} pr-8`}>
          <option value="">{field.empty}</option>
          {Object.entries(field.options).map(([value, label]) => (
            <option key={value} value={value}>
              {label}
            </option>
          ))}
        </select>
      ) : (
        <input id={id} name={field.name} defaultValue={field.value ?? ""} className={`${controlClass} w-60`} />
      )}
    </div>
  );
}
