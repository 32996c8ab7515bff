"use client";
/**
 * What adding or leaving out one option would do to the pair as it stands: the whole sheet is assessed with and without it,
 * one option at a time, in the pauses between the skier's own changes.
 */
import { useEffect, useState } from "react";
import { readingAt } from "#app/_visuals/axis-data.ts";
import {
  type Assessment,
  assessSheet,
  type EngineCatalog,
  type SheetChoices,
  type SheetInput,
} from "#engine/assessment";
import { shapeAtLength } from "#engine/geometry";

export interface OptionEffect {
  /** Both skis together, against the pair without the option. */
  readonly massG: number;
  /** Stiffness in twist at the mount line, with the option over without it, less one, in per cent. */
  readonly twistPercent: number;
}

const settleMs = 400;

function atFoot(assessment: Assessment, catalog: EngineCatalog) {
  const { spec, flex, finishedFlex } = assessment;
  const model = catalog.build.models.find((each) => each.id === spec?.model);
  if (!spec || !flex || !finishedFlex || !model) return null;
  const shape = shapeAtLength(model.shape, spec.lengthCm);
  const twist = readingAt(shape, flex, shape.mountFromTipMm)?.torsionalStiffnessNmm2;
  return twist ? { massG: finishedFlex.massKg * 2000, twist } : null;
}

/** One option: what the sheet chooses without it and with it; a choice that is undefined is the shop's own. */
export interface Option {
  readonly id: string;
  readonly without: Choices;
  readonly withIt: Choices;
}

type Choices = { readonly [K in keyof SheetChoices]?: SheetChoices[K] | undefined };

/** A reinforcement beside the others that are chosen. */
export function reinforcementOption(id: string, chosen: readonly string[]): Option {
  const others = chosen.filter((other) => other !== id);
  return { id, without: { reinforcements: others }, withIt: { reinforcements: [...others, id] } };
}

/** The effect of one option on the pair as it stands; null where there is no ski to compare. */
export function optionEffect(option: Option, input: SheetInput, catalog: EngineCatalog): OptionEffect | null {
  const assess = (choices: Choices) => {
    const all = Object.entries({ ...input.choices, ...choices }).filter(([, value]) => value !== undefined);
    return atFoot(assessSheet({ ...input, choices: Object.fromEntries(all) }, catalog), catalog);
  };
  const [without, withIt] = [assess(option.without), assess(option.withIt)];
  if (without === null || withIt === null) return null;
  return { massG: withIt.massG - without.massG, twistPercent: (withIt.twist / without.twist - 1) * 100 };
}

export function useOptionEffects(
  catalog: EngineCatalog,
  input: SheetInput,
  options: readonly Option[],
): Readonly<Record<string, OptionEffect>> {
  const [effects, setEffects] = useState<Readonly<Record<string, OptionEffect>>>({});
  const wanted = JSON.stringify([input, options]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: `wanted` holds every input by value
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout>;
    const found: Record<string, OptionEffect> = {};
    const look = (i: number) => {
      const option = options[i];
      if (option === undefined) {
        setEffects(found);
        return;
      }
      const effect = optionEffect(option, input, catalog);
      if (effect !== null) found[option.id] = effect;
      timer = setTimeout(() => look(i + 1), 0);
    };
    timer = setTimeout(() => look(0), settleMs);
    return () => clearTimeout(timer);
  }, [catalog, wanted]);
  return effects;
}
