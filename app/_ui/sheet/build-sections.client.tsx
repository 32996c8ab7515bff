"use client";
/** Core and reinforcement: what stands between the skins, and what is added to them. */
import { useState } from "react";
import type { EngineCatalog } from "#engine/assessment";
import { type Model, ownCoreOf, type PairSpec } from "#engine/configuration";
import { pairLook } from "#engine/scene";
import { CheckGroup, RadioGroup } from "../choice-group";
import { CheckboxField } from "../field";
import { moneyChangeText } from "../money";
import { signedText } from "../signed";
import { fill } from "../words";
import { Beside } from "./beside.client";
import { choiceFeelText } from "./choice-feel";
import { CoreBench } from "./core-bench.client";
import { CoreStory } from "./core-story.client";
import { CoreFigures, OwnCoreFields, woodsOf } from "./own-core.client";
import { SameFlex } from "./same-flex.client";
import { type Option, type OptionEffect, reinforcementOption, useOptionEffects } from "./use-option-effects.client";
import type { SheetState } from "./use-sheet.client";
import type { SheetWords } from "./words";

interface Props {
  readonly sheet: SheetState;
  readonly catalog: EngineCatalog;
  readonly words: SheetWords;
}

function priceOf(catalog: EngineCatalog, code: string | undefined): string {
  const option = code === undefined ? undefined : catalog.priceBook.optionCents[code];
  return option ? moneyChangeText(option.cents) : "";
}

/** The value of the radio that opens the four woods; no core is called so. */
const OWN = "own";

export function CoreSection({ sheet, catalog, words }: Props) {
  const [wantsOwn, setWantsOwn] = useState(false);
  const spec = sheet.spec;
  const model = catalog.build.models.find((each) => each.id === spec?.model);
  if (!spec || !model) return <p className="text-pencil">{words.ski.empty}</p>;
  const wood = (id: string) => catalog.build.materials.woods.find((each) => each.id === id)?.label ?? id;
  const { ownCore } = catalog.build;
  const blends = catalog.build.blends.filter((blend) => blend.forUses.includes(model.use) || blend.id === spec.core);
  const look = pairLook(spec, catalog.build);
  const woods = woodsOf(spec, catalog);
  const isOwn = wantsOwn || ownCoreOf(spec.core) !== null;
  const choose = (core: string) => {
    setWantsOwn(core === OWN);
    if (core !== OWN) sheet.setChoices({ core });
  };
  return (
    <>
      <p className="max-w-measure text-pencil">{words.core.lead}</p>
      <Beside paths={["choices.core"]}>
        <RadioGroup
          name="core"
          label={words.core.label}
          choices={[
            ...blends.map((blend) => ({
              value: blend.id,
              label: blend.label,
              aside: priceOf(catalog, blend.priceCode),
              recommended: blend.id === model.core.blend,
              detail: (
                <>
                  {blend.summary}{" "}
                  {fill(words.core.strips, {
                    strips: [blend.strips.C, blend.strips.I, blend.strips.M, blend.strips.O].map(wood).join(", "),
                  })}
                  {blend.isWindowGrade ? `; ${words.core.window}` : ""}.
                </>
              ),
            })),
            ...(ownCore
              ? [
                  {
                    value: OWN,
                    label: words.core.own.label,
                    aside: priceOf(catalog, ownCore.priceCode),
                    detail: words.core.own.detail,
                  },
                ]
              : []),
          ]}
          value={isOwn ? OWN : spec.core}
          onChange={choose}
        />
      </Beside>
      {look ? (
        <CoreBench
          sheet={sheet}
          look={look}
          catalog={catalog}
          words={words}
          own={isOwn && ownCore && woods ? { core: woods, rules: ownCore } : undefined}
        />
      ) : null}
      {isOwn && ownCore ? (
        <OwnCoreFields sheet={sheet} spec={spec} rules={ownCore} catalog={catalog} words={words} />
      ) : null}
      <CoreFigures spec={spec} catalog={catalog} words={words} />
      <CoreStory spec={spec} catalog={catalog} words={words} />
    </>
  );
}

export function ReinforcementSection(props: Props) {
  const { sheet, catalog, words } = props;
  const model = catalog.build.models.find((each) => each.id === sheet.spec?.model);
  if (!sheet.spec || !model) return <p className="text-pencil">{words.ski.empty}</p>;
  return <Reinforcements {...props} spec={sheet.spec} model={model} />;
}

function Reinforcements({
  sheet,
  catalog,
  words,
  spec,
  model,
}: Props & { readonly spec: PairSpec; readonly model: Model }) {
  const options = catalog.build.reinforcements.filter(
    (each) =>
      spec.reinforcements.includes(each.id) ||
      (each.forUses.includes(model.use) && !(model.hasMetal && each.placement.kind === "metal-pair")),
  );
  const effects = useOptionEffects(catalog, { answers: sheet.answers, choices: sheet.choices }, [
    ...options.map((each) => reinforcementOption(each.id, spec.reinforcements)),
    POCKETS,
    ...plateOptions(catalog),
  ]);
  return (
    <>
      <p className="max-w-measure text-pencil">{words.reinforcement.lead}</p>
      <Beside paths={["choices.reinforcements"]}>
        <CheckGroup
          name="reinforcements"
          label={words.reinforcement.label}
          choices={options.map((each) => ({
            value: each.id,
            label: each.label,
            aside: priceOf(catalog, each.priceCode),
            detail: (
              <>
                {each.effect}
                <span className="block min-h-6">{choiceFeelText(effects[each.id], words)}</span>
                <span className="measure block min-h-6 text-xs text-pencil">{effectText(effects[each.id], words)}</span>
              </>
            ),
          }))}
          values={spec.reinforcements}
          onChange={(reinforcements) => sheet.setChoices({ reinforcements })}
        />
      </Beside>
      <Pockets {...{ sheet, spec, model, catalog, words, effects }} />
      <Plates {...{ sheet, spec, model, catalog, words, effects }} />
      <Beside paths={["choices.tipTailProtectors"]}>
        <CheckboxField
          name="protectors"
          label={`${words.reinforcement.protectors}, ${priceOf(catalog, "tip-tail-protectors")}`}
          checked={spec.tipTailProtectors}
          onChange={(event) => sheet.setChoices({ tipTailProtectors: event.target.checked })}
        />
      </Beside>
      <SameFlex sheet={sheet} spec={spec} catalog={catalog} words={words} />
    </>
  );
}

type Effects = Readonly<Record<string, OptionEffect>>;
type OptionProps = Props & { readonly spec: PairSpec; readonly model: Model; readonly effects: Effects };

const POCKETS: Option = { id: "lightening", without: { lightening: undefined }, withIt: { lightening: true } };

const plateOptions = ({ build }: EngineCatalog): readonly Option[] =>
  (build.rules.plate.choices ?? []).map(({ id }) => ({ id, without: { plate: undefined }, withIt: { plate: id } }));

/** Pockets in the core, where the shop mills them for this use. */
function Pockets({ sheet, spec, model, catalog, words, effects }: OptionProps) {
  const { lightening } = catalog.build.rules;
  if (!lightening || !(lightening.forUses.includes(model.use) || spec.lightening)) return null;
  return (
    <Beside paths={["choices.lightening"]}>
      <CheckboxField
        name="lightening"
        label={`${lightening.label}, ${priceOf(catalog, lightening.priceCode)}`}
        hint={
          <>
            {lightening.effect}
            <span className="measure block min-h-6">{massText(effects[POCKETS.id], words)}</span>
          </>
        }
        checked={spec.lightening ?? false}
        onChange={(event) => sheet.setChoices({ lightening: event.target.checked || undefined })}
      />
    </Beside>
  );
}

/** The value of the radio for the shop's own plate; no plate is called so. */
const OWN_PLATE = "own";

/** Which plate lies in the pocket; nothing where the shop has one for this use. */
function Plates({ sheet, spec, model, catalog, words, effects }: OptionProps) {
  const { plate } = catalog.build.rules;
  const offered = (plate.choices ?? []).filter((each) => each.forUses.includes(model.use) || each.id === spec.plate);
  if (offered.length === 0) return null;
  const own = plate.byUse?.[model.use] ?? plate;
  const material = catalog.build.materials.sheets.find((each) => each.id === own.material)?.label ?? own.material;
  return (
    <Beside paths={["choices.plate"]}>
      <RadioGroup
        name="plate"
        label={words.reinforcement.plate}
        hint={words.reinforcement.plateLead}
        choices={[
          { value: OWN_PLATE, label: fill(words.reinforcement.plateOwn, { material: material.toLowerCase() }) },
          ...offered.map((each) => ({
            value: each.id,
            label: each.label,
            aside: priceOf(catalog, each.priceCode),
            detail: (
              <>
                {each.effect}
                <span className="measure block min-h-6">{massText(effects[each.id], words)}</span>
              </>
            ),
          })),
        ]}
        value={spec.plate ?? OWN_PLATE}
        onChange={(value) => sheet.setChoices({ plate: value === OWN_PLATE ? undefined : value })}
      />
    </Beside>
  );
}

function effectText(effect: OptionEffect | undefined, words: SheetWords): string {
  if (!effect) return "";
  return fill(words.reinforcement.effects, { mass: signedText(effect.massG), twist: signedText(effect.twistPercent) });
}

/** What does nothing to the twist under the foot is told by its mass alone. */
function massText(effect: OptionEffect | undefined, words: SheetWords): string {
  return effect ? fill(words.reinforcement.massEffect, { mass: signedText(effect.massG) }) : "";
}
