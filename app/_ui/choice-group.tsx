/**
 * One of several (radio) or some of several (checkbox) as native inputs in a fieldset: arrow keys, screen readers and
 * forms without JavaScript work by themselves. The chosen one carries a mark and a border, not only a colour.
 */
import type { ReactNode } from "react";
import { cx } from "./cx";
import { describedBy, FieldError, FieldHint, type FieldLook, Optional } from "./field";

export interface Choice {
  readonly value: string;
  readonly label: ReactNode;
  /** What it means, in the skier's words. */
  readonly detail?: ReactNode;
  /** At the end of the first line: a price, a length. */
  readonly aside?: ReactNode;
  readonly disabled?: boolean;
  readonly recommended?: boolean;
}

interface Shared extends FieldLook {
  /** Its first choice carries it too, so that a summary of errors can lead there. */
  readonly id?: string;
  readonly choices: readonly Choice[];
  /** Rows: one under the other with details. Chips: short labels side by side. */
  readonly layout?: "rows" | "chips";
}

export interface RadioGroupProps extends Shared {
  readonly value?: string | undefined;
  readonly defaultValue?: string | undefined;
  readonly onChange?: ((value: string) => void) | undefined;
}

export interface CheckGroupProps extends Shared {
  readonly values?: readonly string[] | undefined;
  readonly defaultValues?: readonly string[] | undefined;
  readonly onChange?: ((values: readonly string[]) => void) | undefined;
}

function ChoiceLabel({ choice, chips }: { readonly choice: Choice; readonly chips: boolean }) {
  if (chips) return <span>{choice.label}</span>;
  return (
    <span className="min-w-0 flex-1">
      <span className="flex flex-wrap items-baseline justify-between gap-x-4">
        <span className="font-medium">
          {choice.label}
          {choice.recommended ? <RecommendedMark /> : null}
        </span>
        {choice.aside ? <span className="measure text-pencil">{choice.aside}</span> : null}
      </span>
      {choice.detail ? <span className="block text-sm text-pencil">{choice.detail}</span> : null}
    </span>
  );
}

export function RecommendedMark() {
  return (
    <span className="ml-2 border border-larch px-1.5 py-px text-xs font-medium text-larch whitespace-nowrap">
      <span aria-hidden="true">◂ </span>recommended
    </span>
  );
}

function Frame({
  look,
  id,
  layout,
  children,
}: {
  readonly look: FieldLook;
  readonly id: string;
  readonly layout: "rows" | "chips";
  readonly children: ReactNode;
}) {
  return (
    <fieldset aria-describedby={describedBy(id, look)} className="max-w-measure min-w-0">
      <legend className="mb-1 font-medium">
        {look.label}
        <Optional when={look.optional} />
      </legend>
      <FieldHint id={id} hint={look.hint} />
      <div
        className={cx(
          "mt-2",
          layout === "chips"
            ? "flex flex-wrap gap-2"
            : "grid grid-cols-1 items-start gap-2 in-data-dense:sm:grid-cols-2",
        )}
      >
        {children}
      </div>
      <FieldError id={id} error={look.error} />
    </fieldset>
  );
}

const optionClass =
  "flex min-h-11 items-start gap-3 rounded border border-control bg-sheet px-3 py-2 hover:border-ink has-checked:border-tarn has-checked:outline has-checked:outline-1 has-checked:outline-tarn has-disabled:opacity-55 has-disabled:border-dashed has-focus-visible:outline-2 has-focus-visible:outline-offset-2 has-focus-visible:outline-tarn";

export function RadioGroup({ value, defaultValue, onChange, choices, layout = "rows", ...look }: RadioGroupProps) {
  const id = look.id ?? look.name;
  return (
    <Frame look={look} id={id} layout={layout}>
      {choices.map((choice, index) => (
        <label key={choice.value} className={optionClass}>
          <input
            id={index === 0 ? look.id : undefined}
            type="radio"
            name={look.name}
            value={choice.value}
            disabled={choice.disabled}
            className="mt-0.5"
            {...(onChange
              ? { checked: value === choice.value, onChange: () => onChange(choice.value) }
              : { defaultChecked: (defaultValue ?? value) === choice.value })}
          />
          <ChoiceLabel choice={choice} chips={layout === "chips"} />
        </label>
      ))}
    </Frame>
  );
}

export function CheckGroup({ values, defaultValues, onChange, choices, layout = "rows", ...look }: CheckGroupProps) {
  const id = look.id ?? look.name;
  const chosen = values ?? [];
  const toggle = (value: string) =>
    chosen.includes(value) ? chosen.filter((other) => other !== value) : [...chosen, value];
  return (
    <Frame look={look} id={id} layout={layout}>
      {choices.map((choice, index) => (
        <label key={choice.value} className={optionClass}>
          <input
            id={index === 0 ? look.id : undefined}
            type="checkbox"
            name={look.name}
            value={choice.value}
            disabled={choice.disabled}
            className="mt-0.5"
            {...(onChange
              ? { checked: chosen.includes(choice.value), onChange: () => onChange(toggle(choice.value)) }
              : { defaultChecked: (defaultValues ?? chosen).includes(choice.value) })}
          />
          <ChoiceLabel choice={choice} chips={layout === "chips"} />
        </label>
      ))}
    </Frame>
  );
}
