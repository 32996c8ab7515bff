"use client";
/**
 * Height and mass as a person says them: cm or ft-in, kg or lb. What was typed is kept for ever beside its unit; the
 * other system is only shown, never written over it. Changing the unit converts exactly what is in the box, once, and
 * going back without typing restores the words that were there.
 */
import { useId, useState } from "react";
import {
  cmFromFeetInches,
  feetInchesFromCm,
  kgFromPounds,
  poundsFromKg,
  type TypedHeight,
  type TypedMass,
} from "#engine/units";
import { controlClass, FieldError, FieldHint, Optional } from "./field";
import { otherHeight, otherMass, plain } from "./typed-measures";

export interface MeasureLook {
  readonly name: string;
  readonly label: string;
  readonly hint?: string;
  readonly error?: string | undefined;
  readonly optional?: boolean;
}

function numberIn(text: string): number | null {
  const value = Number(text.trim().replace(",", "."));
  return text.trim() === "" || !Number.isFinite(value) || value < 0 ? null : value;
}

function UnitSwitch<U extends string>({
  legend,
  units,
  unit,
  onChange,
}: {
  readonly legend: string;
  readonly units: readonly { readonly value: U; readonly label: string }[];
  readonly unit: U;
  readonly onChange: (unit: U) => void;
}) {
  const group = useId();
  return (
    <fieldset className="flex flex-none">
      <legend className="sr-only">{legend}</legend>
      {units.map(({ value, label }) => (
        <label
          key={value}
          className="-ml-px flex min-h-11 items-center border border-control bg-sheet px-3 text-sm first-of-type:ml-0 has-checked:z-1 has-checked:border-tarn has-checked:bg-tarn has-checked:text-on-fill has-focus-visible:outline-2 has-focus-visible:outline-offset-2 has-focus-visible:outline-tarn"
        >
          <input
            type="radio"
            name={group}
            value={value}
            checked={unit === value}
            onChange={() => onChange(value)}
            className="sr-only"
          />
          {label}
        </label>
      ))}
    </fieldset>
  );
}

interface HeightBoxes {
  readonly cm: string;
  readonly feet: string;
  readonly inches: string;
}

function heightBoxes(value: TypedHeight | undefined): HeightBoxes {
  if (!value) return { cm: "", feet: "", inches: "" };
  if (value.unit === "cm") return { cm: plain(value.cm, 2), feet: "", inches: "" };
  return { cm: "", feet: String(value.feet), inches: plain(value.inches, 2) };
}

function massBox(value: TypedMass | undefined): string {
  return value ? plain(value.unit === "kg" ? value.kg : value.lb, 2) : "";
}

function isOther(value: object | undefined, given: object | undefined): boolean {
  return JSON.stringify(value) !== JSON.stringify(given);
}

export function HeightField({
  value,
  preferred = "cm",
  onChange,
  ...look
}: MeasureLook & {
  readonly value: TypedHeight | undefined;
  readonly preferred?: "cm" | "ft-in";
  readonly onChange: (value: TypedHeight | undefined) => void;
}) {
  const [unit, setUnit] = useState<"cm" | "ft-in">(value?.unit ?? preferred);
  const [boxes, setBoxes] = useState(heightBoxes(value));
  const [given, setGiven] = useState(value);
  if (isOther(value, given)) {
    // Changed from outside (another tab, a one-tap correction): show that.
    setGiven(value);
    setUnit(value?.unit ?? unit);
    setBoxes(heightBoxes(value));
  }
  const give = (next: TypedHeight | undefined) => {
    setGiven(next);
    onChange(next);
  };
  const id = look.name;
  const described = [look.error ? `${id}-error` : "", `${id}-other`].filter(Boolean).join(" ");

  const type = (next: HeightBoxes) => {
    setBoxes(next);
    if (unit === "cm") {
      const cm = numberIn(next.cm);
      give(cm === null ? undefined : { unit: "cm", cm });
      return;
    }
    const feet = numberIn(next.feet);
    const inches = next.inches.trim() === "" ? 0 : numberIn(next.inches);
    give(feet === null || inches === null ? undefined : { unit: "ft-in", feet, inches });
  };

  const switchTo = (next: "cm" | "ft-in") => {
    setUnit(next);
    if (!value || next === value.unit) return;
    if (next === "cm") {
      const cm = value.unit === "ft-in" ? cmFromFeetInches(value.feet, value.inches) : value.cm;
      setBoxes({ ...boxes, cm: plain(cm, 2) });
      give({ unit: "cm", cm });
    } else if (value.unit === "cm") {
      const { feet, inches } = feetInchesFromCm(value.cm);
      setBoxes({ ...boxes, feet: String(feet), inches: plain(inches, 2) });
      give({ unit: "ft-in", feet, inches });
    }
  };

  const box = (key: keyof HeightBoxes, label: string, short: string) => (
    <span className="flex items-center gap-2">
      <input
        id={key === "inches" ? `${id}-inches` : id}
        name={`${id}-${key}`}
        type="text"
        inputMode="decimal"
        autoComplete="off"
        value={boxes[key]}
        onChange={(event) => type({ ...boxes, [key]: event.target.value })}
        aria-label={label}
        aria-describedby={described}
        aria-invalid={look.error ? true : undefined}
        className={`${controlClass} measure w-20`}
      />
      <span className="text-pencil">{short}</span>
    </span>
  );

  return (
    <div>
      <label htmlFor={id} className="mb-1 block font-medium">
        {look.label}
        <Optional when={look.optional} />
      </label>
      <div className="flex flex-wrap items-center gap-3">
        {unit === "cm" ? (
          box("cm", `${look.label}, centimetres`, "cm")
        ) : (
          <>
            {box("feet", `${look.label}, feet`, "ft")}
            {box("inches", `${look.label}, inches`, "in")}
          </>
        )}
        <UnitSwitch
          legend={`Unit of ${look.label.toLowerCase()}`}
          units={[
            { value: "cm", label: "cm" },
            { value: "ft-in", label: "ft in" },
          ]}
          unit={unit}
          onChange={switchTo}
        />
      </div>
      <p id={`${id}-other`} className="measure mt-1 min-h-6 text-pencil">
        {value ? `= ${otherHeight(value)}` : ""}
      </p>
      <FieldHint id={id} hint={look.hint} />
      <FieldError id={id} error={look.error} />
    </div>
  );
}

export function MassField({
  value,
  preferred = "kg",
  onChange,
  ...look
}: MeasureLook & {
  readonly value: TypedMass | undefined;
  readonly preferred?: "kg" | "lb";
  readonly onChange: (value: TypedMass | undefined) => void;
}) {
  const [unit, setUnit] = useState<"kg" | "lb">(value?.unit ?? preferred);
  const [text, setText] = useState(massBox(value));
  const id = look.name;
  const [given, setGiven] = useState(value);
  if (isOther(value, given)) {
    setGiven(value);
    setUnit(value?.unit ?? unit);
    setText(massBox(value));
  }
  const pass = (next: TypedMass | undefined) => {
    setGiven(next);
    onChange(next);
  };

  const give = (typed: string, inUnit: "kg" | "lb") => {
    const number = numberIn(typed);
    if (number === null) pass(undefined);
    else pass(inUnit === "kg" ? { unit: "kg", kg: number } : { unit: "lb", lb: number });
  };

  const switchTo = (next: "kg" | "lb") => {
    setUnit(next);
    if (!value || value.unit === next) return;
    const number = value.unit === "kg" ? poundsFromKg(value.kg) : kgFromPounds(value.lb);
    setText(plain(number, 2));
    pass(next === "kg" ? { unit: "kg", kg: number } : { unit: "lb", lb: number });
  };

  return (
    <div>
      <label htmlFor={id} className="mb-1 block font-medium">
        {look.label}
        <Optional when={look.optional} />
      </label>
      <div className="flex flex-wrap items-center gap-3">
        <span className="flex items-center gap-2">
          <input
            id={id}
            name={id}
            type="text"
            inputMode="decimal"
            autoComplete="off"
            value={text}
            onChange={(event) => {
              setText(event.target.value);
              give(event.target.value, unit);
            }}
            aria-describedby={[look.error ? `${id}-error` : "", `${id}-other`].filter(Boolean).join(" ")}
            aria-invalid={look.error ? true : undefined}
            className={`${controlClass} measure w-24`}
          />
          <span className="text-pencil">{unit}</span>
        </span>
        <UnitSwitch
          legend={`Unit of ${look.label.toLowerCase()}`}
          units={[
            { value: "kg", label: "kg" },
            { value: "lb", label: "lb" },
          ]}
          unit={unit}
          onChange={switchTo}
        />
      </div>
      <p id={`${id}-other`} className="measure mt-1 min-h-6 text-pencil">
        {value ? `= ${otherMass(value)}` : ""}
      </p>
      <FieldHint id={id} hint={look.hint} />
      <FieldError id={id} error={look.error} />
    </div>
  );
}
