"use client";
import type { EngineCatalog } from "#engine/assessment";
import { CheckGroup, RadioGroup } from "../choice-group";
import { CheckboxField, SelectField } from "../field";
import { HeightField, MassField } from "../measure-fields.client";
import { More } from "../section";
import { SliderField } from "../slider-field.client";
import { fill } from "../words";
import { Beside } from "./beside.client";
import { DraftNumber } from "./draft-number.client";
import type { SheetState } from "./use-sheet.client";
import type { SheetWords } from "./words";

interface Props {
  readonly sheet: SheetState;
  readonly catalog: EngineCatalog;
  readonly words: SheetWords;
  readonly dense?: boolean | undefined;
  readonly preferImperial?: boolean | undefined;
}

const choicesOf = (labels: Readonly<Record<string, string>>) =>
  Object.entries(labels).map(([value, label]) => ({ value, label }));

export function YouSection({ sheet, catalog, words, dense, preferImperial }: Props) {
  const { answers, typed, said, errors } = sheet;
  const w = words.you;
  const usualPercent = catalog.fit.offPisteUnansweredPercent;
  const abilities = Object.entries(w.abilities).map(([value, text]) => ({ value, ...text }));
  return (
    <>
      {dense ? null : <p className="max-w-measure text-pencil">{w.lead}</p>}
      <div className="flex flex-wrap gap-x-10 gap-y-4">
        <Beside paths={["typed.height", "said.height", "answers.heightCm"]}>
          <HeightField
            name="height"
            label={w.height}
            words={w.measures}
            value={typed.height}
            said={said.height}
            preferred={preferImperial ? "ft-in" : "cm"}
            error={errors["typed.height"] ?? errors["said.height"]}
            onSay={sheet.sayHeight}
          />
        </Beside>
        <Beside paths={["typed.mass", "said.mass", "answers.massKg"]}>
          <MassField
            name="mass"
            label={w.mass}
            hint={w.massHint}
            words={w.measures}
            value={typed.mass}
            said={said.mass}
            preferred={preferImperial ? "lb" : "kg"}
            error={errors["typed.mass"] ?? errors["said.mass"]}
            onSay={sheet.sayMass}
          />
        </Beside>
      </div>
      <Beside paths={["answers.ability"]}>
        <RadioGroup
          name="ability"
          label={w.ability}
          hint={w.abilityNote}
          choices={abilities}
          value={answers.ability}
          onChange={(value) => sheet.setAnswer("ability", value as NonNullable<typeof answers.ability>)}
        />
      </Beside>
      <Beside paths={["answers.offPistePercent"]}>
        <SliderField
          name="offPiste"
          label={w.offPiste}
          min={0}
          max={100}
          step={5}
          unit="%"
          ends={[w.offPisteEnds[0] ?? "", w.offPisteEnds[1] ?? ""]}
          value={answers.offPistePercent ?? usualPercent}
          meaning={
            answers.offPistePercent === undefined ? fill(w.offPisteUnanswered, { percent: usualPercent }) : undefined
          }
          onChange={(value) => sheet.setAnswer("offPistePercent", value)}
        />
      </Beside>
      <Beside paths={["answers.temperament"]}>
        <RadioGroup
          name="temperament"
          label={w.temperament}
          layout="chips"
          choices={choicesOf(w.temperaments)}
          value={answers.temperament}
          onChange={(value) => sheet.setAnswer("temperament", value as NonNullable<typeof answers.temperament>)}
        />
      </Beside>
      <Beside paths={["answers.homeSnow"]}>
        <RadioGroup
          name="homeSnow"
          label={w.homeSnow}
          layout="chips"
          choices={choicesOf(w.homeSnows)}
          value={answers.homeSnow}
          onChange={(value) => sheet.setAnswer("homeSnow", value as NonNullable<typeof answers.homeSnow>)}
        />
      </Beside>
      <Beside paths={["answers.turnSize"]}>
        <RadioGroup
          name="turnSize"
          label={w.turnSize}
          layout="chips"
          choices={choicesOf(w.turnSizes)}
          value={answers.turnSize}
          onChange={(value) => sheet.setAnswer("turnSize", value as NonNullable<typeof answers.turnSize>)}
        />
      </Beside>
      <Beside paths={["answers.priorities"]}>
        <CheckGroup
          name="priorities"
          label={w.priorities}
          layout="chips"
          choices={choicesOf(w.priorityList)}
          values={answers.priorities ?? []}
          onChange={(values) => sheet.setAnswer("priorities", values as NonNullable<typeof answers.priorities>)}
        />
      </Beside>
      <More summary={w.more} open={dense ?? false}>
        <MoreQuestions sheet={sheet} catalog={catalog} words={words} />
      </More>
    </>
  );
}

function MoreQuestions({ sheet, catalog, words }: Props) {
  const { answers, errors } = sheet;
  const w = words.you;
  const current = answers.currentSki ?? {};
  const setCurrent = (part: Partial<{ [K in keyof typeof current]: (typeof current)[K] | undefined }>) => {
    const next = Object.fromEntries(Object.entries({ ...current, ...part }).filter(([, value]) => value !== undefined));
    sheet.setAnswer("currentSki", Object.keys(next).length > 0 ? next : undefined);
  };
  return (
    <div className="grid gap-6 in-data-dense:sm:grid-cols-2">
      <Beside paths={["answers.terrain"]}>
        <CheckGroup
          name="terrain"
          label={w.terrain}
          layout="chips"
          choices={choicesOf(w.terrainList)}
          values={answers.terrain ?? []}
          onChange={(values) => sheet.setAnswer("terrain", values as NonNullable<typeof answers.terrain>)}
        />
      </Beside>
      <Beside paths={["answers.touringPercent"]}>
        <DraftNumber
          name="touringPercent"
          label={w.touring}
          unit="%"
          value={answers.touringPercent}
          error={errors["answers.touringPercent"]}
          onChange={(value) => sheet.setAnswer("touringPercent", value)}
        />
      </Beside>
      <Beside paths={["answers.packKg"]}>
        <DraftNumber
          name="packKg"
          label={w.pack}
          hint={w.packHint}
          unit="kg"
          value={answers.packKg}
          error={errors["answers.packKg"]}
          onChange={(value) => sheet.setAnswer("packKg", value)}
        />
      </Beside>
      <Beside paths={["answers.daysTotal"]}>
        <DraftNumber
          name="daysTotal"
          label={w.days}
          hint={w.daysHint}
          unit="days"
          value={answers.daysTotal}
          error={errors["answers.daysTotal"]}
          onChange={(value) => sheet.setAnswer("daysTotal", value)}
        />
      </Beside>
      <Beside paths={["answers.ageYears"]}>
        <DraftNumber
          name="ageYears"
          label={w.age}
          hint={w.ageHint}
          unit="years"
          value={answers.ageYears}
          error={errors["answers.ageYears"]}
          onChange={(value) => sheet.setAnswer("ageYears", value)}
        />
      </Beside>
      <Beside paths={["answers.currentSki"]}>
        <fieldset className="grid gap-4 border-l-2 border-rule pl-4">
          <legend className="mb-2 font-medium">{w.currentSki}</legend>
          <DraftNumber
            name="currentLength"
            label={w.currentLength}
            unit="cm"
            value={current.lengthCm}
            error={errors["answers.currentSki"]}
            onChange={(value) => setCurrent({ lengthCm: value })}
          />
          <DraftNumber
            name="currentWaist"
            label={w.currentWaist}
            hint={w.currentWaistHint}
            unit="mm"
            value={current.waistMm}
            error={errors["answers.currentSki"]}
            onChange={(value) => setCurrent({ waistMm: value })}
          />
          <SelectField
            name="currentLengthVerdict"
            label={w.currentLengthVerdict}
            empty="not said"
            options={choicesOf(w.lengthVerdicts)}
            value={current.length ?? ""}
            onChange={(event) => setCurrent({ length: (event.target.value || undefined) as typeof current.length })}
          />
          <SelectField
            name="currentFlexVerdict"
            label={w.currentFlexVerdict}
            empty="not said"
            options={choicesOf(w.flexVerdicts)}
            value={current.flex ?? ""}
            onChange={(event) => setCurrent({ flex: (event.target.value || undefined) as typeof current.flex })}
          />
          <SelectField
            name="currentFlexClass"
            label={w.currentFlexClass}
            hint={w.currentFlexClassHint}
            empty="not said"
            options={catalog.build.flexClasses.map(({ number, label }) => ({
              value: String(number),
              label: `${number}, ${label.toLowerCase()}`,
            }))}
            value={String(current.flexClass ?? "")}
            onChange={(event) =>
              setCurrent({ flexClass: (Number(event.target.value) || undefined) as typeof current.flexClass })
            }
          />
          <SelectField
            name="newPairFor"
            label={w.newPairFor}
            empty="not said"
            options={choicesOf(w.newPairFors)}
            value={current.newPairFor ?? ""}
            onChange={(event) =>
              setCurrent({ newPairFor: (event.target.value || undefined) as typeof current.newPairFor })
            }
          />
        </fieldset>
      </Beside>
      <div>
        <Beside paths={["answers.buyerIsSkier"]}>
          <CheckboxField
            name="buyer"
            label={w.buyer}
            checked={answers.buyerIsSkier === false}
            onChange={(event) => sheet.setAnswer("buyerIsSkier", event.target.checked ? false : undefined)}
          />
        </Beside>
        <Beside paths={["answers.stillGrowing"]}>
          <CheckboxField
            name="growing"
            label={w.growing}
            checked={answers.stillGrowing === true}
            onChange={(event) => sheet.setAnswer("stillGrowing", event.target.checked ? true : undefined)}
          />
        </Beside>
        <Beside paths={["answers.healthAdviceGiven"]}>
          <CheckboxField
            name="health"
            label={w.health}
            hint={w.healthNote}
            checked={answers.healthAdviceGiven === true}
            onChange={(event) => sheet.setAnswer("healthAdviceGiven", event.target.checked ? true : undefined)}
          />
        </Beside>
      </div>
    </div>
  );
}
