"use client";
/**
 * A form described as data, sent to a server action made with formAction. Works without JavaScript: the page comes back
 * with everything typed and with words beside the fields that were refused.
 *
 *   <ActionForm action={accept} submit="Accept" fields={[{ kind: "text", name: "name", label: "Your name" }]} />
 */
import { type ReactNode, useActionState, useEffect, useLayoutEffect, useRef } from "react";
import { CheckGroup, type Choice, RadioGroup } from "./choice-group";
import { ErrorSummary } from "./error-summary";
import { CheckboxField, NumberField, SelectField, type SelectOption, TextAreaField, TextField } from "./field";
import { Notice } from "./notice";
import { SubmitButton } from "./submit-button.client";
import { arrived } from "./typed";

/** What an action answers: see formAction of app/_server, whose state this is. */
export interface FormState {
  readonly status: "new" | "refused" | "failed" | "done";
  readonly values: Readonly<Record<string, string>>;
  readonly refusals: Readonly<Record<string, string>>;
}

interface Common {
  readonly name: string;
  readonly label: ReactNode;
  readonly hint?: ReactNode;
  readonly optional?: boolean;
  readonly value?: string;
}

export type FormField =
  | { readonly kind: "hidden"; readonly name: string; readonly value: string }
  | (Common & {
      readonly kind: "text" | "email" | "tel" | "password" | "date" | "datetime-local";
      readonly autoComplete?: string;
      /** Only figures: a keypad comes up. */
      readonly isFigures?: boolean;
      /** The page is about this field: the cursor stands in it from the start. */
      readonly isFirst?: boolean;
    })
  | (Common & { readonly kind: "number"; readonly unit?: string })
  | (Common & { readonly kind: "textarea"; readonly rows?: number })
  | (Common & { readonly kind: "checkbox" })
  /** Some of several under one name; `value` is the ticked ones with commas between them. */
  | (Common & { readonly kind: "checks"; readonly choices: readonly Choice[] })
  | (Common & { readonly kind: "radio"; readonly choices: readonly Choice[] })
  | (Common & { readonly kind: "select"; readonly options: readonly SelectOption[]; readonly empty?: string })
  /** A second button, of a question to answer before the form is sent; its name is sent with it. Enter presses the main one. */
  | {
      readonly kind: "ask";
      readonly name: string;
      readonly label: string;
      readonly busy: string;
      readonly answer?: ReactNode;
    };

export interface ActionFormProps {
  readonly action: (previous: FormState, form: FormData) => Promise<FormState>;
  readonly fields: readonly FormField[];
  readonly submit: string;
  readonly busy?: string;
  readonly tone?: "primary" | "plain" | "danger";
  readonly size?: "normal" | "small" | "floor";
  /** Shown once the action has succeeded and the page stays. */
  readonly done?: string;
  /** Between the fields and the button: terms, a notice. */
  readonly children?: ReactNode;
  /** Tells fields of two forms on one page apart. */
  readonly idPrefix?: string;
  /** What the page came back with after a redirect: typed values, refusals. A form that starts anew needs a new key. */
  readonly start?: FormState | undefined;
}

const empty: FormState = { status: "new", values: {}, refusals: {} };

export function ActionForm(props: ActionFormProps) {
  const { action, fields, submit, busy, tone = "primary", size = "normal", done, children, idPrefix = "" } = props;
  const [state, send] = useActionState(action, props.start ?? empty);
  const ask = fields.find(({ kind }) => kind === "ask")?.name;
  const form = useRef<HTMLFormElement>(null);
  useEffect(() => followAnswer(state, form.current), [state]);
  useLayoutEffect(() => {
    const own = form.current;
    return () => {
      if (own !== null) leaveFocus(own);
    };
  }, []);
  const messages = Object.entries(state.refusals).map(([path, message]) => {
    const name = refusedField(fields, path);
    return name === undefined ? { message } : { name, field: `${idPrefix}${name}`, message };
  });
  return (
    <form ref={form} action={send} className="grid max-w-measure gap-4">
      {/* Enter in a field presses a form's first button. */}
      {ask === undefined ? null : <button type="submit" tabIndex={-1} aria-hidden="true" className="sr-only" />}
      <ErrorSummary messages={messages} />
      {state.status === "done" && done ? <Notice tone="moss" title={done} live="polite" /> : null}
      {/* A new answer remounts the fields, so that what was typed stands in them again. */}
      <div key={JSON.stringify(state.values)} className="grid gap-4">
        {fields.map((field) => (
          <OneField
            key={field.name}
            field={field}
            id={`${idPrefix}${field.name}`}
            kept={state.status === "done" ? undefined : state.values[field.name]}
            isSent={state.status === "refused" || state.status === "failed"}
            error={messages.find(({ name }) => name === field.name)?.message}
          />
        ))}
      </div>
      {children}
      <p>
        <SubmitButton tone={tone} size={size} unless={ask} {...(busy ? { busy } : {})}>
          {submit}
        </SubmitButton>
      </p>
    </form>
  );
}

/** The field that a refusal is about: its own name, or the head of a dotted path. None is the form as a whole. */
function refusedField(fields: readonly FormField[], path: string): string | undefined {
  const [head] = path.split(".");
  const shown = fields.filter(({ kind }) => kind !== "hidden");
  return (shown.find(({ name }) => name === path) ?? shown.find(({ name }) => name === head))?.name;
}

/** What was refused gets the focus, or what a second button asked for; after a success it stays in the form, whose fields are new ones. */
function followAnswer({ status }: FormState, form: HTMLFormElement | null): void {
  if (status === "done") document.dispatchEvent(new Event(arrived));
  if (status === "refused" || status === "failed")
    form?.querySelector<HTMLElement>("[role=alert], [role=status]")?.focus();
  else if (status === "done" && document.activeElement === document.body)
    form?.querySelector<HTMLElement>("[type=submit]:not([aria-hidden])")?.focus();
}

/** A form that was answered by its own disappearance leaves the focus to the title it stood under, else to the page's. */
function leaveFocus(form: HTMLFormElement): void {
  if (!form.contains(document.activeElement)) return;
  const above = form.closest("section")?.querySelector<HTMLElement>("h2");
  requestAnimationFrame(() => {
    if (document.activeElement !== document.body) return;
    const title = above?.isConnected ? above : document.querySelector<HTMLElement>("main h1");
    title?.setAttribute("tabindex", "-1");
    title?.focus();
  });
}

function OneField({
  field,
  id,
  kept,
  isSent,
  error,
}: {
  readonly field: FormField;
  readonly id: string;
  readonly kept: string | undefined;
  readonly isSent: boolean;
  readonly error: string | undefined;
}) {
  if (field.kind === "hidden") return <input type="hidden" name={field.name} value={field.value} />;
  if (field.kind === "ask") {
    return (
      <div className="grid justify-items-start gap-2">
        <SubmitButton tone="plain" name={field.name} value="yes" busy={field.busy}>
          {field.label}
        </SubmitButton>
        {field.answer}
      </div>
    );
  }
  const { name, label } = field;
  const value = kept ?? field.value ?? "";
  const look = {
    id,
    name,
    label,
    error,
    ...(field.hint === undefined ? {} : { hint: field.hint }),
    ...(field.optional === undefined ? {} : { optional: field.optional }),
  };
  switch (field.kind) {
    case "textarea":
      return <TextAreaField {...look} {...(field.rows ? { rows: field.rows } : {})} defaultValue={value} />;
    case "checkbox":
      return <CheckboxField {...look} value="on" defaultChecked={isSent ? kept !== undefined : field.value === "on"} />;
    case "checks": {
      const ticked = (isSent ? (kept ?? "") : value).split(",");
      return <CheckGroup {...look} choices={field.choices} defaultValues={ticked} />;
    }
    case "radio":
      return <RadioGroup {...look} choices={field.choices} defaultValue={value} />;
    case "select":
      return (
        <SelectField
          {...look}
          options={field.options}
          defaultValue={value}
          {...(field.empty === undefined ? {} : { empty: field.empty })}
        />
      );
    case "number":
      return <NumberField {...look} defaultValue={value} {...(field.unit ? { unit: field.unit } : {})} />;
    default:
      return (
        <TextField
          {...look}
          type={field.kind}
          defaultValue={field.kind === "password" ? "" : value}
          {...(field.autoComplete ? { autoComplete: field.autoComplete } : {})}
          {...(field.isFigures ? { inputMode: "numeric" } : {})}
          {...(field.isFirst ? { autoFocus: true } : {})}
        />
      );
  }
}
