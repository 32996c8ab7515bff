"use client";
/**
 * A slider with a number box beside it: the box is exact, the slider is quick, both show the unit. What is typed in the
 * box stays as typed; a value outside the range is named in words and not passed on.
 */
import { useState } from "react";
import { cx } from "./cx";
import { controlClass, FieldError, FieldHint, type FieldLook, Optional } from "./field";

export interface SliderFieldProps extends FieldLook {
  readonly min: number;
  readonly max: number;
  readonly step: number;
  readonly unit: string;
  readonly value: number;
  readonly onChange: (value: number) => void;
  /** What the value means now, read out with it: "class 3, near 4". */
  readonly meaning?: string | undefined;
  readonly decimals?: number;
  /** Words under the two ends. */
  readonly ends?: readonly [string, string];
}

export function SliderField(props: SliderFieldProps) {
  const { name, label, min, max, step, unit, value, onChange, meaning, decimals = 0, ends } = props;
  const id = props.id ?? name;
  const [draft, setDraft] = useState<string | null>(null);
  const typed = draft === null ? value : Number(draft.replace(",", "."));
  const outside = draft !== null && (!Number.isFinite(typed) || draft.trim() === "" || typed < min || typed > max);
  const error = outside ? `Between ${min.toFixed(decimals)} and ${max.toFixed(decimals)} ${unit}.` : props.error;
  const shown = value.toFixed(decimals);
  const described = cx(props.hint ? `${id}-hint` : null, error ? `${id}-error` : null) || undefined;

  const type = (text: string) => {
    const next = Number(text.replace(",", "."));
    setDraft(text);
    if (text.trim() !== "" && Number.isFinite(next) && next >= min && next <= max) onChange(next);
  };

  return (
    <div className="max-w-measure">
      <label htmlFor={id} className="mb-1 block font-medium">
        {label}
        <Optional when={props.optional} />
      </label>
      <div className="flex flex-wrap items-center gap-x-3">
        <input
          id={id}
          type="range"
          name={`${name}Slider`}
          min={min}
          max={max}
          step={step}
          value={value}
          onChange={(event) => {
            setDraft(null);
            onChange(Number(event.target.value));
          }}
          aria-valuetext={`${shown} ${unit}${meaning ? `, ${meaning}` : ""}`}
          aria-describedby={described}
          className="h-11 min-w-40 flex-1"
        />
        <span className="flex items-center gap-2">
          <input
            type="text"
            inputMode="decimal"
            name={name}
            value={draft ?? shown}
            onChange={(event) => type(event.target.value)}
            onBlur={() => {
              if (!outside) setDraft(null);
            }}
            aria-label={`${typeof label === "string" ? label : name}, in ${unit}`}
            aria-describedby={described}
            aria-invalid={error ? true : undefined}
            className={cx(controlClass, "measure w-20 flex-none")}
          />
          <span className="flex-none text-pencil">{unit}</span>
        </span>
      </div>
      {ends ? (
        <p className="flex justify-between gap-4 text-xs text-pencil" aria-hidden="true">
          <span>{ends[0]}</span>
          <span>{ends[1]}</span>
        </p>
      ) : null}
      {meaning ? <p className="mt-1 text-sm">{meaning}</p> : null}
      <FieldHint id={id} hint={props.hint} />
      <FieldError id={id} error={error} />
    </div>
  );
}
