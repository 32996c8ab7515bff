"use client";
import { ModelSilhouette } from "#app/_visuals/model-silhouette.tsx";
import type { EngineCatalog, SkiersBand } from "#engine/assessment";
import type { BuildCatalog, Model } from "#engine/configuration";
import type { FitChoice } from "#engine/fit";
import { measure, shapeAtLength } from "#engine/geometry";
import { modelLook } from "#engine/scene";
import { roundForPeople, textForPeople } from "#engine/units";
import { Button } from "../button";
import { type Choice, RadioGroup } from "../choice-group";
import { Reasons } from "../reasons";
import { More } from "../section";
import { SliderField } from "../slider-field.client";
import { fill } from "../words";
import { BendUnderYou } from "./bend-on-snow.client";
import { Beside } from "./beside.client";
import { DraftNumber } from "./draft-number.client";
import { bendMm, choiceFor, flexText, reasonsAbout } from "./labels";
import type { SheetState } from "./use-sheet.client";
import { WhyThisStiff } from "./why-this-stiff.client";
import type { SheetWords } from "./words";

interface Props {
  readonly sheet: SheetState;
  readonly catalog: EngineCatalog;
  readonly words: SheetWords;
  readonly band?: SkiersBand | null | undefined;
}

export function SkiSection({ sheet, catalog, words, band }: Props) {
  const { assessment } = sheet;
  const { spec } = sheet;
  const recommended = assessment.recommendation?.choices ?? [];
  const active = catalog.build.models.filter((model) => model.state === "active");
  const shown = recommended.flatMap((choice) => active.filter((model) => model.id === choice.model));
  const others = active.filter((model) => !shown.includes(model));
  const model = catalog.build.models.find((each) => each.id === spec?.model);
  const isOther = others.some((each) => each.id === spec?.model);
  const choose = (id: string) => sheet.setChoices({ model: id, lengthCm: undefined, flexRatio: undefined });
  return (
    <>
      <Beside paths={["choices.model"]}>
        {shown.length > 0 ? (
          <RadioGroup
            name="model"
            label={words.ski.recommended}
            choices={shown.map((each, i) => modelChoice(catalog.build, each, recommended[i], i === 0))}
            value={spec?.model}
            onChange={choose}
          />
        ) : null}
      </Beside>
      <WhyThis choice={choiceFor(assessment, spec?.model)} words={words} />
      <More summary={words.ski.all} open={shown.length === 0 || isOther}>
        <RadioGroup
          name="otherModel"
          label={words.ski.all}
          hint={words.ski.allHint}
          choices={others.map((each) => modelChoice(catalog.build, each, undefined, false))}
          value={spec?.model}
          onChange={choose}
        />
      </More>
      {spec && model ? <Sizes sheet={sheet} catalog={catalog} words={words} model={model} band={band} /> : null}
    </>
  );
}

function modelChoice(build: BuildCatalog, model: Model, choice: FitChoice | undefined, isFirst: boolean): Choice {
  const lengthCm = choice?.lengthCm ?? model.shape.refLengthCm;
  const shape = shapeAtLength(model.shape, lengthCm);
  const look = modelLook(model, build, lengthCm);
  const { shoulderWidthMm, waistWidthMm, heelWidthMm } = shape;
  return {
    value: model.id,
    label: choice ? `${model.name}, ${lengthCm} cm` : model.name,
    recommended: isFirst,
    aside: `R ${textForPeople(measure(shape).sidecutRadiusM, 1)} m`,
    detail: (
      <>
        <span className="block max-w-md py-1">
          {look ? <ModelSilhouette look={look} scaleLengthMm={1980} /> : null}
        </span>
        <span className="measure">
          {roundForPeople(shoulderWidthMm)}-{roundForPeople(waistWidthMm)}-{roundForPeople(heelWidthMm)} mm
        </span>{" "}
        · {model.use}. {model.summary}
      </>
    ),
  };
}

function WhyThis({ choice, words }: { readonly choice: FitChoice | undefined; readonly words: SheetWords }) {
  if (!choice) return null;
  const titles = words.ski.reasonTitles;
  return (
    <More summary={words.ski.why}>
      <div className="grid gap-5">
        <Reasons
          title={titles.length}
          reasons={reasonsAbout("length", choice.reasons, words)}
          result={`${textForPeople(choice.wantedLengthCm, 1)} cm, on offer ${choice.lengthCm} cm`}
        />
        <Reasons
          title={titles.flexRatio}
          reasons={reasonsAbout("flexRatio", choice.reasons, words)}
          result={`k ${textForPeople(choice.flexRatio, 2)}`}
        />
        <Reasons title={titles.waist} reasons={reasonsAbout("waist", choice.reasons, words)} />
        <Reasons
          title={titles.rank}
          reasons={reasonsAbout("rank", choice.reasons, words)}
          result={textForPeople(choice.score, 2)}
        />
      </div>
    </More>
  );
}

function Sizes({ sheet, catalog, words, model, band }: Props & { readonly model: Model }) {
  const { assessment, choices, answers, errors } = sheet;
  const { spec } = sheet;
  if (!spec) return null;
  const fit = choiceFor(assessment, model.id);
  const near = choices.flexRatio === undefined ? fit?.nearClass : undefined;
  const mount = choices.mount ?? spec.mount;
  const setMount = (part: Partial<{ [K in keyof typeof mount]: (typeof mount)[K] | undefined }>) =>
    sheet.setChoices({
      mount: {
        offsetMm: 0,
        ...Object.fromEntries(Object.entries({ ...mount, ...part }).filter(([, value]) => value !== undefined)),
      },
    });
  return (
    <>
      <Beside paths={["choices.lengthCm"]}>
        <RadioGroup
          name="length"
          label={words.ski.length}
          layout="chips"
          {...(fit ? { hint: lengthHint(fit, words) } : {})}
          choices={model.lengths.map(({ lengthCm }) => ({
            value: String(lengthCm),
            label: (
              <>
                <span className="measure">{lengthCm}</span> cm
                {lengthCm === fit?.lengthCm ? <span className="text-larch"> ◂ recommended</span> : null}
                {lengthCm === fit?.neighbourLengthCm ? <span className="text-pencil"> or this</span> : null}
              </>
            ),
          }))}
          value={String(spec.lengthCm)}
          onChange={(value) => sheet.setChoices({ lengthCm: Number(value) })}
        />
      </Beside>
      <div className="grid gap-2">
        <Beside paths={["choices.flexRatio"]}>
          <SliderField
            name="flexRatio"
            label={words.ski.flex}
            hint={words.ski.flexHint}
            min={lowestRatio(catalog)}
            max={highestRatio(catalog)}
            step={0.01}
            decimals={2}
            unit={words.ski.flexUnit}
            ends={["softer", "stiffer"]}
            value={spec.flexRatio}
            meaning={[
              flexText(spec.flexRatio, catalog, near),
              assessment.flex
                ? fill(words.ski.bends, {
                    mm: bendMm(assessment.flex.springCentreNPerMm, assessment.spread?.springCentre),
                  }).toLowerCase()
                : "",
            ]
              .filter(Boolean)
              .join("; ")}
            onChange={(value) => sheet.setChoices({ flexRatio: value })}
          />
        </Beside>
        {choices.flexRatio !== undefined && fit ? (
          <p>
            <Button tone="quiet" size="small" onClick={() => sheet.setChoices({ flexRatio: undefined })}>
              {fill(words.ski.flexReset, { ratio: textForPeople(fit.flexRatio, 2) })}
            </Button>
          </p>
        ) : null}
      </div>
      <BendUnderYou sheet={sheet} spec={spec} catalog={catalog} words={words} />
      <WhyThisStiff sheet={sheet} spec={spec} catalog={catalog} words={words} band={band} />
      <More summary={words.ski.mount}>
        <Beside paths={["choices.mount"]}>
          <div className="grid gap-4">
            <DraftNumber
              name="bootSole"
              label={words.ski.bootSole}
              hint={words.ski.bootSoleHint}
              unit="mm"
              value={mount.bootSoleMm ?? answers.bootSoleMm}
              error={errors["choices.mount"]}
              onChange={(value) => setMount({ bootSoleMm: value })}
            />
            <DraftNumber
              name="bindingTrack"
              label={words.ski.bindingTrack}
              optional
              unit="mm"
              value={mount.bindingTrackMm ?? answers.bindingTrackMm}
              onChange={(value) => setMount({ bindingTrackMm: value })}
            />
            <DraftNumber
              name="mountOffset"
              label={words.ski.mountOffset}
              hint={words.ski.mountOffsetHint}
              unit="mm"
              value={mount.offsetMm}
              onChange={(value) => setMount({ offsetMm: value ?? 0 })}
            />
            <p className="max-w-measure text-sm text-pencil">{words.ski.technician}</p>
          </div>
        </Beside>
      </More>
    </>
  );
}

function lengthHint(fit: FitChoice, words: SheetWords): string {
  const wanted = fill(words.ski.wanted, { wanted: textForPeople(fit.wantedLengthCm, 1) });
  return fit.neighbourLengthCm === undefined ? `${wanted}.` : `${wanted}: ${words.ski.lengthNote}.`;
}

const lowestRatio = (catalog: EngineCatalog) => Math.min(...catalog.build.flexClasses.map((each) => each.from));
const highestRatio = (catalog: EngineCatalog) =>
  Math.max(...catalog.build.flexClasses.map((each) => each.below)) - 0.01;
