/**
 * The frame of every form field: label, hint, the control, its error. The error is tied to the control by
 * aria-describedby, says what is wrong and what to do, and never clears what was typed.
 *
 * Fields work without a hook: uncontrolled in a server component's form (`defaultValue`), controlled in a client leaf
 * (`value`, `onChange`). `id` defaults to the name.
 */
import type { ComponentProps, ReactNode } from "react";
import { cx } from "./cx";

export interface FieldLook {
  readonly name: string;
  readonly label: ReactNode;
  readonly id?: string;
  readonly hint?: ReactNode;
  readonly error?: string | undefined;
  /** Says "optional" beside the label; a required field says nothing. */
  readonly optional?: boolean;
  /** Denser rows for the shop's screens. */
  readonly dense?: boolean;
}

/** A control's look; its width is the caller's. */
export const controlClass =
  "block min-h-11 rounded border border-control bg-sheet px-3 py-2 text-ink aria-invalid:border-iron aria-invalid:border-2 disabled:opacity-60";

/** The ids of the hint and the error that exist, for aria-describedby. */
export function describedBy(id: string, look: Pick<FieldLook, "hint" | "error">): string | undefined {
  return cx(look.hint ? `${id}-hint` : null, look.error ? `${id}-error` : null) || undefined;
}

export function FieldError({ id, error }: { readonly id: string; readonly error?: string | undefined }) {
  if (!error) return null;
  return (
    <p id={`${id}-error`} className="mt-1 flex gap-2 text-sm text-iron">
      <span aria-hidden="true" className="font-bold">
        ✕
      </span>
      <span>
        <span className="sr-only">Error: </span>
        {error}
      </span>
    </p>
  );
}

export function FieldHint({ id, hint }: { readonly id: string; readonly hint?: ReactNode }) {
  if (!hint) return null;
  return (
    <p id={`${id}-hint`} className="mt-1 text-sm text-pencil">
      {hint}
    </p>
  );
}

export function Optional({ when }: { readonly when?: boolean | undefined }) {
  return when ? <span className="ml-2 text-sm font-normal text-pencil">optional</span> : null;
}

/** Label above, control, hint and error below. */
export function Field({
  id,
  look,
  children,
}: {
  readonly id: string;
  readonly look: FieldLook;
  readonly children: ReactNode;
}) {
  return (
    <div className={look.dense ? "" : "max-w-measure"}>
      <label htmlFor={id} className="mb-1 block font-medium">
        {look.label}
        <Optional when={look.optional} />
      </label>
      {children}
      <FieldHint id={id} hint={look.hint} />
      <FieldError id={id} error={look.error} />
    </div>
  );
}

function split<P extends FieldLook>({ label, id, hint, error, optional, dense, ...control }: P) {
  const look = { name: control.name, label, hint, error, optional, dense } as FieldLook;
  const ownId = id ?? control.name;
  const aria = { id: ownId, "aria-describedby": describedBy(ownId, look), "aria-invalid": error ? true : undefined };
  return { look, ownId, control, aria };
}

type Control<K extends "input" | "select" | "textarea"> = FieldLook & Omit<ComponentProps<K>, keyof FieldLook>;

export function TextField(props: Control<"input">) {
  const { look, ownId, control, aria } = split(props);
  const { className, ...rest } = control;
  return (
    <Field id={ownId} look={look}>
      <input type="text" {...rest} {...aria} className={cx(controlClass, "w-full", className)} />
    </Field>
  );
}

/** A number with its unit shown beside it. Text type with a decimal keypad: a wheel or a stray key never changes it. */
export function NumberField({ unit, ...props }: Control<"input"> & { readonly unit?: string }) {
  const { look, ownId, control, aria } = split(props as Control<"input">);
  const { className, ...rest } = control;
  return (
    <Field id={ownId} look={look}>
      <span className="flex items-center gap-2">
        <input
          type="text"
          inputMode="decimal"
          autoComplete="off"
          {...rest}
          {...aria}
          className={cx(controlClass, "measure w-28", className)}
        />
        {unit ? <span className="text-pencil">{unit}</span> : null}
      </span>
    </Field>
  );
}

export function TextAreaField(props: Control<"textarea">) {
  const { look, ownId, control, aria } = split(props);
  const { className, ...rest } = control;
  return (
    <Field id={ownId} look={look}>
      <textarea rows={3} {...rest} {...aria} className={cx(controlClass, "w-full", className)} />
    </Field>
  );
}

export interface SelectOption {
  readonly value: string;
  readonly label: string;
  readonly disabled?: boolean;
}

export function SelectField({
  options,
  empty,
  ...props
}: Control<"select"> & {
  readonly options: readonly SelectOption[];
  /** Label of the "nothing chosen" entry; leave out when one must be chosen. */
  readonly empty?: string;
}) {
  const { look, ownId, control, aria } = split(props as Control<"select">);
  const { className, ...rest } = control;
  return (
    <Field id={ownId} look={look}>
      <select {...rest} {...aria} className={cx(controlClass, "w-full pr-8", className)}>
        {empty === undefined ? null : <option value="">{empty}</option>}
        {options.map((option) => (
          <option key={option.value} value={option.value} disabled={option.disabled}>
            {option.label}
          </option>
        ))}
      </select>
    </Field>
  );
}

export function CheckboxField({
  label,
  id,
  hint,
  error,
  optional: _optional,
  dense: _dense,
  className,
  ...rest
}: Control<"input">) {
  const ownId = id ?? rest.name;
  return (
    <div className={cx("max-w-measure", className)}>
      <label htmlFor={ownId} className="flex min-h-11 items-start gap-3 py-2">
        <input
          type="checkbox"
          {...rest}
          id={ownId}
          aria-describedby={describedBy(ownId, { hint, error })}
          aria-invalid={error ? true : undefined}
          className="mt-0.5"
        />
        <span>{label}</span>
      </label>
      <FieldHint id={ownId} hint={hint} />
      <FieldError id={ownId} error={error} />
    </div>
  );
}
