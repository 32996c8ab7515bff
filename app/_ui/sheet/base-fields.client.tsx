"use client";
import { useState } from "react";
import { SkiPair } from "#app/_visuals/ski-drawing.tsx";
import type { PairSpec } from "#engine/configuration";
import { pairLook } from "#engine/scene";
import { RadioGroup } from "../choice-group";
import { SelectField, TextField } from "../field";
import { type GraphicPartProps, optionPrice } from "./graphic-parts";

/** Base colours and what is cut into them. */
export function BaseFields({ words, spec, catalog, sheet }: GraphicPartProps) {
  const look = pairLook(spec, catalog.build);
  const w = words.graphic;
  const colours = catalog.build.baseColours.map((each) => ({ value: each.id, label: each.label }));
  const set = (part: Partial<PairSpec["base"]>) => sheet.setChoices({ base: { ...spec.base, ...part } });
  // What is no longer sold is shown only where it was chosen, to be given up.
  const offered = (["none", "counterchange", "complex"] as const).filter(
    (value) => value !== "complex" || spec.base.inlay === value || catalog.build.rules.baseLetters === undefined,
  );
  const inlayPrice = {
    none: "",
    counterchange: optionPrice(catalog, "inlay-counterchange"),
    complex: optionPrice(catalog, "inlay-complex"),
  };
  return (
    <fieldset className="grid gap-4 border-l-2 border-rule pl-4">
      <legend className="mb-2 font-medium">{w.base}</legend>
      {look ? (
        <SkiPair
          look={look}
          orientation="lying"
          view="below"
          className="w-full max-w-measure"
          description={words.baseView}
        />
      ) : null}
      <div className="grid max-w-measure gap-4 sm:grid-cols-2">
        <SelectField
          name="baseLeft"
          label={w.baseLeft}
          options={colours}
          value={spec.base.left}
          onChange={(event) => set({ left: event.target.value })}
        />
        <SelectField
          name="baseRight"
          label={w.baseRight}
          options={colours}
          value={spec.base.right}
          onChange={(event) => set({ right: event.target.value })}
        />
      </div>
      <RadioGroup
        name="inlay"
        label={w.inlay}
        choices={offered.map((value) => ({
          value,
          label: w.inlays[value],
          aside: inlayPrice[value],
        }))}
        value={spec.base.inlay}
        onChange={(inlay) => set({ inlay: inlay as PairSpec["base"]["inlay"] })}
      />
      {spec.base.inlay === "none" ? null : (
        <Letters
          label={w.inlayText}
          kept={spec.base.inlayText ?? ""}
          error={sheet.errors["choices.base"]}
          onChange={(letters) => {
            const { inlayText: _old, ...rest } = spec.base;
            sheet.setChoices({ base: letters === "" ? rest : { ...rest, inlayText: letters } });
          }}
        />
      )}
    </fieldset>
  );
}

/** Letters as they are typed, spaces and all; what counts has none around it. */
function Letters({
  label,
  kept,
  error,
  onChange,
}: {
  readonly label: string;
  readonly kept: string;
  readonly error: string | undefined;
  readonly onChange: (letters: string) => void;
}) {
  const [draft, setDraft] = useState(kept);
  const [given, setGiven] = useState(kept);
  if (kept !== given) {
    setGiven(kept);
    if (kept !== draft.trim()) setDraft(kept);
  }
  return (
    <TextField
      name="inlayText"
      label={label}
      maxLength={24}
      value={draft}
      error={error}
      onChange={(event) => {
        setDraft(event.target.value);
        onChange(event.target.value.trim());
      }}
    />
  );
}
