"use client";
/**
 * Height and mass as a person says them, in one box each: the switch says what a number without a unit means, and any other
 * way of writing is read too. What it was read as stands below, in both systems; what cannot be read stays in the box with a
 * question, and the measure that was there before stays with it. Changing the unit converts what is in the box, once; going
 * back without typing restores the words that were there.
 */
import { useRef, useState } from "react";
import {
  cmFromFeetInches,
  feetInchesFromCm,
  heightCm,
  heightLimitsCm,
  kgFromPounds,
  massLimitsKg,
  poundsFromKg,
  type Reading,
  readHeight,
  readMass,
  type TypedHeight,
  type TypedMass,
} from "#engine/units";
import { controlClass, FieldError, FieldHint, Optional } from "./field";
import { heightText, massText, otherHeight, otherMass, plain } from "./typed-measures";
import { fill } from "./words";

export interface MeasureWords {
  readonly unclear: string;
  readonly outside: string;
  /** While something unclear stands in the box. */
  readonly stays: string;
  readonly unit: string;
  readonly boxes: Readonly<Record<"cm" | "ft-in" | "kg" | "lb", string>>;
}

export interface MeasureLook {
  readonly name: string;
  readonly label: string;
  readonly words: MeasureWords;
  readonly hint?: string;
  readonly error?: string | undefined;
  readonly optional?: boolean;
}

interface Measured<Typed> {
  /** What counts. */
  readonly value: Typed | undefined;
  /** The words in the box; undefined where only the value is known. */
  readonly said?: string | undefined;
  /** @param value undefined when the words could not be read @param text null: the value speaks for itself */
  readonly onSay: (said: { readonly text: string | null; readonly value: Typed | undefined }) => void;
}

/** How a kind of measure is read and written. */
interface Kind<Typed extends { readonly unit: string }> {
  readonly units: readonly { readonly value: Typed["unit"]; readonly label: string }[];
  readonly read: (text: string, box: Typed["unit"]) => Reading<Typed>;
  /** As it stands in the box. */
  readonly write: (value: Typed) => string;
  readonly full: (value: Typed) => string;
  readonly other: (value: Typed) => string;
  readonly into: (value: Typed, unit: Typed["unit"]) => Typed;
  readonly limits: string;
}

const heights: Kind<TypedHeight> = {
  units: [
    { value: "cm", label: "cm" },
    { value: "ft-in", label: "ft in" },
  ],
  read: readHeight,
  write: (height) => (height.unit === "cm" ? plain(height.cm, 2) : heightText(height)),
  full: heightText,
  other: otherHeight,
  into: (height, unit) => {
    if (unit === height.unit) return height;
    if (height.unit === "ft-in") return { unit: "cm", cm: cmFromFeetInches(height.feet, height.inches) };
    return { unit: "ft-in", ...feetInchesFromCm(heightCm(height)) };
  },
  limits: `${heightLimitsCm.min} cm – ${heightLimitsCm.max} cm`,
};

const masses: Kind<TypedMass> = {
  units: [
    { value: "kg", label: "kg" },
    { value: "lb", label: "lb" },
  ],
  read: readMass,
  write: (mass) => plain(mass.unit === "kg" ? mass.kg : mass.lb, 2),
  full: massText,
  other: otherMass,
  into: (mass, unit) => {
    if (unit === mass.unit) return mass;
    return mass.unit === "kg" ? { unit: "lb", lb: poundsFromKg(mass.kg) } : { unit: "kg", kg: kgFromPounds(mass.lb) };
  },
  limits: `${massLimitsKg.min} kg – ${massLimitsKg.max} kg`,
};

type HeightProps = MeasureLook & Measured<TypedHeight> & { readonly preferred?: TypedHeight["unit"] };
type MassProps = MeasureLook & Measured<TypedMass> & { readonly preferred?: TypedMass["unit"] };

export function HeightField({ preferred = "cm", ...rest }: HeightProps) {
  return <MeasureField kind={heights} preferred={preferred} {...rest} />;
}

export function MassField({ preferred = "kg", ...rest }: MassProps) {
  return <MeasureField kind={masses} preferred={preferred} {...rest} />;
}

/** Nobody is asked in the middle of a word. */
const questionAfterMs = 1200;

function MeasureField<Typed extends { readonly unit: "cm" | "ft-in" | "kg" | "lb" }>({
  kind,
  preferred,
  value,
  said,
  onSay,
  words,
  ...look
}: MeasureLook & Measured<Typed> & { readonly kind: Kind<Typed>; readonly preferred: Typed["unit"] }) {
  const outside = said ?? (value ? kind.write(value) : "");
  const [unit, setUnit] = useState<Typed["unit"]>(value?.unit ?? preferred);
  const [text, setText] = useState(outside);
  const keyOf = (words: string, counts: Typed | undefined) => `${words.trim()} ${counts ? kind.full(counts) : ""}`;
  const [given, setGiven] = useState(keyOf(outside, value));
  const [isTyping, setIsTyping] = useState(false);
  const before = useRef<{ readonly unit: Typed["unit"]; readonly text: string; readonly value: Typed } | null>(null);
  const key = keyOf(outside, value);
  if (key !== given) {
    // Changed from outside (another device, a one-tap correction): show that, in its unit.
    setGiven(key);
    if (outside.trim() !== text.trim()) setText(outside);
    setUnit(value?.unit ?? unit);
  }
  const say = (words: string | null, counts: Typed | undefined) => {
    const isEmpty = words !== null && words.trim() === "";
    const stays = isEmpty ? undefined : (counts ?? value);
    setGiven(keyOf(words ?? (stays ? kind.write(stays) : ""), stays));
    onSay({ text: words, value: counts });
  };
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined);

  const type = (next: string) => {
    before.current = null;
    setText(next);
    setIsTyping(true);
    clearTimeout(timer.current);
    timer.current = setTimeout(() => setIsTyping(false), questionAfterMs);
    const reading = kind.read(next, unit);
    say(next, reading.kind === "read" ? reading.value : undefined);
  };

  const switchTo = (next: Typed["unit"]) => {
    setUnit(next);
    const { current } = before;
    const reading = kind.read(text, unit);
    if (current?.unit === next) {
      before.current = null;
      setText(current.text);
      say(current.text, current.value);
    } else if (reading.kind === "read" && reading.value.unit !== next) {
      // What counts is converted, not what its words were rounded to.
      const from = value && kind.write(value) === kind.write(reading.value) ? value : reading.value;
      before.current = { unit, text, value: from };
      const into = kind.into(from, next);
      setText(kind.write(into));
      say(null, into);
    } else if (reading.kind === "unclear" || reading.kind === "outside") {
      const again = kind.read(text, next);
      if (again.kind === "read") say(text, again.value);
    }
  };

  const id = look.name;
  const reading = kind.read(text, unit);
  const isAsked = (reading.kind === "unclear" || reading.kind === "outside") && !isTyping;
  const question = isAsked
    ? [
        fill(words[reading.kind], { said: text.trim(), limits: kind.limits }),
        value ? fill(words.stays, { value: kind.full(value) }) : "",
      ]
        .filter(Boolean)
        .join(" ")
    : undefined;
  const error = question ?? look.error;
  return (
    <div>
      <label htmlFor={id} className="mb-1 block font-medium">
        {look.label}
        <Optional when={look.optional} />
      </label>
      <div className="flex flex-wrap items-center gap-3">
        <input
          id={id}
          name={id}
          type="text"
          inputMode={unit === "ft-in" ? "text" : "decimal"}
          autoComplete="off"
          maxLength={60}
          value={text}
          onChange={(event) => type(event.target.value)}
          onBlur={() => setIsTyping(false)}
          aria-label={`${look.label}, ${words.boxes[unit]}`}
          aria-describedby={[error ? `${id}-error` : "", `${id}-other`].filter(Boolean).join(" ")}
          aria-invalid={error ? true : undefined}
          className={`${controlClass} measure w-36`}
        />
        <UnitSwitch
          legend={fill(words.unit, { measure: look.label.toLowerCase() })}
          name={`${id}Unit`}
          units={kind.units}
          unit={unit}
          onChange={switchTo}
        />
      </div>
      <p id={`${id}-other`} className="measure mt-1 min-h-6 text-pencil">
        {reading.kind === "read" ? `${kind.full(reading.value)} = ${kind.other(reading.value)}` : ""}
      </p>
      <FieldHint id={id} hint={look.hint} />
      <FieldError id={id} error={error} />
    </div>
  );
}

function UnitSwitch<U extends string>({
  legend,
  name,
  units,
  unit,
  onChange,
}: {
  readonly legend: string;
  readonly name: string;
  readonly units: readonly { readonly value: U; readonly label: string }[];
  readonly unit: U;
  readonly onChange: (unit: U) => void;
}) {
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
            name={name}
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
