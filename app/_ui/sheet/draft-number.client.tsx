"use client";
import { useState } from "react";
import { type FieldLook, NumberField } from "../field";
import { plain } from "../typed-measures";
import { usePosted } from "./section-form.client";

/** A number box that keeps what is typed, passes on only numbers, and passes on "nothing" when emptied. */
export function DraftNumber({
  value,
  onChange,
  unit,
  decimals = 2,
  ...look
}: FieldLook & {
  readonly value: number | undefined;
  readonly unit: string;
  readonly decimals?: number;
  readonly onChange: (value: number | undefined) => void;
}) {
  const posted = usePosted(look.name);
  const [draft, setDraft] = useState<string | null>(posted?.typed ?? null);
  const shown = draft ?? (value === undefined ? "" : plain(value, decimals));
  const isWrong = draft !== null && draft.trim() !== "" && !Number.isFinite(Number(draft.replace(",", ".")));
  return (
    <NumberField
      {...look}
      unit={unit}
      value={shown}
      error={isWrong ? `“${draft}” is not a number. It is kept here until you change it.` : look.error}
      onChange={(event) => {
        const text = event.target.value;
        setDraft(text);
        if (text.trim() === "") onChange(undefined);
        else if (Number.isFinite(Number(text.replace(",", ".")))) onChange(Number(text.replace(",", ".")));
      }}
      onBlur={() => {
        if (!isWrong) setDraft(null);
      }}
    />
  );
}
