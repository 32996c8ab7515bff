"use client";
/**
 * What adding or leaving out one reinforcement would do to the pair as it stands: the whole sheet is assessed with the
 * option turned over, one option at a time, in the pauses between the skier's own changes.
 */
import { useEffect, useState } from "react";
import { readingAt } from "#app/_visuals/axis-data.ts";
import { type Assessment, assessSheet, type EngineCatalog, type SheetInput } from "#engine/assessment";
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

/** The effect of one option on the pair as it stands; null where there is no ski to compare. */
export function optionEffect(
  id: string,
  chosen: readonly string[],
  input: SheetInput,
  catalog: EngineCatalog,
): OptionEffect | null {
  const others = chosen.filter((other) => other !== id);
  const assess = (reinforcements: readonly string[]) =>
    atFoot(assessSheet({ ...input, choices: { ...input.choices, reinforcements } }, catalog), catalog);
  const [without, withIt] = [assess(others), assess([...others, id])];
  if (without === null || withIt === null) return null;
  return { massG: withIt.massG - without.massG, twistPercent: (withIt.twist / without.twist - 1) * 100 };
}

export function useOptionEffects(
  catalog: EngineCatalog,
  input: SheetInput,
  chosen: readonly string[],
  options: readonly string[],
): Readonly<Record<string, OptionEffect>> {
  const [effects, setEffects] = useState<Readonly<Record<string, OptionEffect>>>({});
  const wanted = JSON.stringify([input, chosen, options]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: `wanted` holds every input by value
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout>;
    const found: Record<string, OptionEffect> = {};
    const look = (i: number) => {
      const id = options[i];
      if (id === undefined) {
        setEffects(found);
        return;
      }
      const effect = optionEffect(id, chosen, input, catalog);
      if (effect !== null) found[id] = effect;
      timer = setTimeout(() => look(i + 1), 0);
    };
    timer = setTimeout(() => look(0), settleMs);
    return () => clearTimeout(timer);
  }, [catalog, wanted]);
  return effects;
}
