"use client";
/** Lettering on the top and a clear window that shows the wood. */
import { useState } from "react";
import type { GraphicSpec } from "#engine/configuration";
import { CheckboxField, TextField } from "../field";
import { SliderField } from "../slider-field.client";
import { firstText, type GraphicPartProps } from "./graphic-parts";

export function Lettering({ words, spec, shape, set, sheet }: GraphicPartProps) {
  const text = spec.graphic.text;
  const kept = text?.text ?? "";
  const [draft, setDraft] = useState(kept);
  const [given, setGiven] = useState(kept);
  if (kept !== given) {
    // Changed on another device.
    setGiven(kept);
    if (kept.trim() !== draft.trim()) setDraft(kept);
  }
  const w = words.graphic;
  return (
    <div className="grid gap-4">
      <TextField
        name="lettering"
        label={w.text}
        optional
        hint={w.textHint}
        maxLength={60}
        value={draft}
        error={sheet.errors["choices.graphic"]}
        onChange={(event) => {
          const next = event.target.value;
          setDraft(next);
          if (next.trim() === "") sheet.setChoices({ graphic: withoutText(spec.graphic) });
          else set({ text: { ...firstText(shape), ...text, text: next } });
        }}
      />
      {text ? (
        <>
          <SliderField
            name="textAt"
            label={w.textAt}
            min={0}
            max={Math.round(shape.lengthMm)}
            step={5}
            unit="mm"
            value={Math.min(text.xMm, shape.lengthMm)}
            onChange={(xMm) => set({ text: { ...text, xMm } })}
          />
          <SliderField
            name="textCap"
            label={w.textCap}
            min={8}
            max={60}
            step={1}
            unit="mm"
            value={text.capHeightMm}
            onChange={(capHeightMm) => set({ text: { ...text, capHeightMm } })}
          />
        </>
      ) : null}
    </div>
  );
}

function withoutText(graphic: GraphicSpec): GraphicSpec {
  const { text: _text, ...rest } = graphic;
  return rest;
}

export function ClearWindow({ words, spec, shape, set, catalog }: GraphicPartProps) {
  const rules = catalog.build.rules.print;
  const first = spec.graphic.windows[0];
  const half = Math.floor(shape.waistWidthMm / 2 - rules.windowFromEdgeMm);
  const fresh = {
    fromXMm: Math.round(shape.tipLengthMm + 120),
    toXMm: Math.round(shape.tipLengthMm + 420),
    halfWidthMm: Math.min(22, half),
  };
  const change = (part: Partial<typeof fresh>) => set({ windows: [{ ...fresh, ...first, ...part }] });
  return (
    <div className="grid gap-4">
      <CheckboxField
        name="window"
        label={words.graphic.window}
        checked={first !== undefined}
        onChange={(event) => set({ windows: event.target.checked ? [fresh] : [] })}
      />
      {first ? (
        <>
          <SliderField
            name="windowFrom"
            label={words.graphic.windowFrom}
            min={0}
            max={Math.round(shape.lengthMm)}
            step={5}
            unit="mm"
            value={first.fromXMm}
            onChange={(fromXMm) => change({ fromXMm, toXMm: Math.max(first.toXMm, fromXMm + rules.windowLeastMm) })}
          />
          <SliderField
            name="windowTo"
            label={words.graphic.windowTo}
            min={0}
            max={Math.round(shape.lengthMm)}
            step={5}
            unit="mm"
            value={first.toXMm}
            onChange={(toXMm) => change({ toXMm, fromXMm: Math.min(first.fromXMm, toXMm - rules.windowLeastMm) })}
          />
          <SliderField
            name="windowHalf"
            label={words.graphic.windowHalf}
            min={Math.ceil(rules.windowLeastMm / 2)}
            max={Math.max(half, Math.ceil(rules.windowLeastMm / 2))}
            step={1}
            unit="mm"
            value={first.halfWidthMm}
            onChange={(halfWidthMm) => change({ halfWidthMm })}
          />
        </>
      ) : null}
    </div>
  );
}
