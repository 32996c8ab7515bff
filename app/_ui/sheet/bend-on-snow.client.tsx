"use client";
/**
 * The ski bends under you: the engine's solution of this ski under this skier on snow, beside most skiers', to be tried with
 * another weight, flex, edge angle and snow. Nothing here changes the sheet. The server draws it as it stands.
 */
import { type ReactNode, useDeferredValue, useId, useMemo, useState } from "react";
import { HEIGHTS_TIMES, SkiOnSnowDrawing, SnowPressure } from "#app/_visuals/ski-on-snow.tsx";
import {
  type BendInput,
  type BendOnSnow,
  bendOnSnow,
  type EngineCatalog,
  flexSteps,
  snowFirst,
} from "#engine/assessment";
import type { PairSpec } from "#engine/configuration";
import { STANDARD_GRAVITY } from "#engine/fit";
import type { SkiOnSnow } from "#engine/snow";
import { poundsFromKg, roundForPeople, textForPeople } from "#engine/units";
import { Button } from "../button";
import { RadioGroup } from "../choice-group";
import { Table } from "../table";
import { fill } from "../words";
import type { SheetState } from "./use-sheet.client";
import type { SheetWords } from "./words";

interface Props {
  readonly sheet: SheetState;
  readonly spec: PairSpec;
  readonly catalog: EngineCatalog;
  readonly words: SheetWords;
}

/** What was tried; what is absent is the sheet's own. */
interface Tried {
  readonly massKg?: number;
  /** Number of a flex class. */
  readonly flex?: number;
  readonly edgeDeg?: number;
  readonly snow?: string;
}

/** Nearer to the boot's middle than this is at it. */
const AT_BOOT_MM = 5;
const EDGE_DEG = 40;
const MOST_EDGE_DEG = 60;
/** To either side of the skier's own weight. */
const MASS_SPAN_KG = 30;
const LEAST_MASS_KG = 30;

export function BendUnderYou(props: Props) {
  const { sheet, catalog } = props;
  const { massKg } = sheet.answers;
  const snow = snowFirst(sheet.answers, catalog);
  if (massKg === undefined || !snow) return null;
  return <Bend {...props} ownKg={massKg} usualSnow={snow.id} />;
}

function Bend(props: Props & { readonly ownKg: number; readonly usualSnow: string }) {
  const { sheet, spec, catalog, words, ownKg, usualSnow } = props;
  const w = words.ski.snow;
  const [tried, setTried] = useState<Tried>({});
  const titleId = useId();
  const steps = flexSteps(spec.flexRatio, catalog);
  const step = steps.find((each) => each.number === tried.flex);
  const { edgeDeg = EDGE_DEG, snow = usualSnow, massKg = ownKg } = tried;
  const flexRatio = step?.flexRatio ?? spec.flexRatio;
  // The sheet's spec is a new object with every change anywhere; what is solved anew is told apart by what it says.
  const asked = JSON.stringify({ answers: { packKg: sheet.answers.packKg }, spec, massKg, flexRatio, edgeDeg, snow });
  const input = useMemo((): BendInput => JSON.parse(asked), [asked]);
  const settled = useDeferredValue(input);
  const bend = useMemo(() => bendOnSnow(settled, catalog), [settled, catalog]);
  if (!bend) return null;
  const isImperial = sheet.typed.mass?.unit === "lb";
  const change = (part: Tried) => setTried((before) => ({ ...before, ...part }));
  const sentence = wordsOf(bend, settled, words);
  return (
    <section aria-labelledby={titleId} className="grid grid-cols-1 gap-4">
      <h3 id={titleId} className="text-lg">
        {w.title}
      </h3>
      <p className="max-w-measure">{sentence}</p>
      <div className="grid grid-cols-1 gap-y-4">
        <figure className="grid grid-cols-1 gap-1 max-w-3xl">
          <SkiOnSnowDrawing bend={bend} description={`${w.drawing}: ${sentence}`} />
          <SnowPressure bend={bend} unit={w.pressureUnit} />
          <figcaption className="flex flex-wrap gap-x-5 text-sm text-pencil">
            <Key dashed={false}>{w.own}</Key>
            <Key dashed>{fill(w.most, { mass: massOf(bend.mostKg, isImperial) })}</Key>
            <span className="basis-full">{fill(w.caption, { times: HEIGHTS_TIMES })}</span>
          </figcaption>
        </figure>
        <div className="grid max-w-3xl grid-cols-1 gap-x-8 gap-y-3 sm:grid-cols-3">
          <Slider
            label={w.edge}
            min={0}
            max={MOST_EDGE_DEG}
            value={edgeDeg}
            shown={`${edgeDeg}°`}
            told={`${edgeDeg}°, ${turnText(bend.own, words)}`}
            onChange={(next) => change({ edgeDeg: next })}
          />
          <Slider
            label={w.mass}
            min={Math.max(LEAST_MASS_KG, Math.round(ownKg) - MASS_SPAN_KG)}
            max={Math.round(ownKg) + MASS_SPAN_KG}
            value={Math.round(massKg)}
            shown={massText(massKg, ownKg, isImperial, words)}
            onChange={(next) => change({ massKg: next === Math.round(ownKg) ? ownKg : next })}
          />
          <Slider
            label={w.flex}
            min={steps[0]?.number ?? 1}
            max={steps.at(-1)?.number ?? 1}
            value={step?.number ?? ownStep(steps, spec.flexRatio)}
            shown={flexShown(bend, spec, steps, step?.number, words)}
            onChange={(next) => change({ flex: next })}
          />
        </div>
        <div className="grid max-w-3xl gap-3">
          <RadioGroup
            name="bendSnow"
            label={w.snow}
            layout="chips"
            choices={(catalog.snow ?? []).map(({ id, label }) => ({ value: id, label }))}
            value={snow}
            onChange={(next) => change({ snow: next })}
          />
          {Object.keys(tried).length > 0 ? (
            <p>
              <Button tone="quiet" size="small" onClick={() => setTried({})}>
                {w.reset}
              </Button>
            </p>
          ) : null}
        </div>
        <div className="max-w-3xl">
          <Numbers bend={bend} words={words} />
        </div>
      </div>
      <p className="max-w-measure text-sm text-pencil">
        {fill(w.note, {
          load: textForPeople(bend.own.loadN / STANDARD_GRAVITY, 0),
          times: textForPeople(times(settled), 2),
        })}{" "}
        <a href="/method#snow">{w.method}</a>
      </p>
    </section>
  );
}

/** What the lean multiplies the weight by. */
const times = ({ edgeDeg }: BendInput) => 1 / Math.cos((edgeDeg * Math.PI) / 180);

/** First how it feels beside most skiers', then what its edge does: the rules are the engine's. */
function wordsOf(bend: BendOnSnow, { edgeDeg }: BendInput, words: SheetWords): string {
  const w = words.ski.snow;
  const turn = fill(w.turns[bend.turn], { edge: edgeDeg, radius: turnText(bend.own, words) });
  const peak = fill(w.peaks[bend.peak], { mm: roundForPeople(Math.abs(bend.own.peakAtMm - bend.mountMm)) });
  return `${w.feels[bend.feel]} ${turn} ${peak}`;
}

function turnText({ turnRadiusM }: SkiOnSnow, words: SheetWords): string {
  return Number.isFinite(turnRadiusM)
    ? fill(words.ski.snow.radius, { radius: textForPeople(turnRadiusM, 1) })
    : words.ski.snow.noTurn;
}

const ownStep = (steps: ReturnType<typeof flexSteps>, flexRatio: number) =>
  steps.find((each) => each.flexRatio === flexRatio)?.number ?? (flexRatio < 1 ? steps[0] : steps.at(-1))?.number ?? 1;

/** "class 4, firm", with the sheet's own said, and what is shown instead where the shop does not build it. */
function flexShown(
  bend: BendOnSnow,
  spec: PairSpec,
  steps: ReturnType<typeof flexSteps>,
  chosen: number | undefined,
  words: SheetWords,
): string {
  const w = words.ski.snow;
  const number = chosen ?? ownStep(steps, spec.flexRatio);
  const step = steps.find((each) => each.number === number);
  const name = fill(w.flexClass, { number, label: step?.label.toLowerCase() ?? "" });
  if (!bend.isBuilt) return `${name}: ${fill(w.notBuilt, { ratio: textForPeople(bend.flexRatio, 2) })}`;
  return chosen === undefined || step?.flexRatio === spec.flexRatio ? `${name}, ${w.asSheet}` : name;
}

function massText(massKg: number, ownKg: number, isImperial: boolean, words: SheetWords): string {
  const w = words.ski.snow;
  const mass = massOf(massKg, isImperial);
  const more = massKg - ownKg;
  if (Math.round(more) === 0) return `${mass}, ${w.asSheet}`;
  return `${mass}, ${fill(more > 0 ? w.heavier : w.lighter, { mass: massOf(Math.abs(more), isImperial) })}`;
}

const massOf = (kg: number, isImperial: boolean) =>
  isImperial ? `${roundForPeople(poundsFromKg(kg))} lb` : `${roundForPeople(kg)} kg`;

interface SliderProps {
  readonly label: string;
  readonly min: number;
  readonly max: number;
  readonly value: number;
  readonly shown: string;
  /** Read out instead of what is shown. */
  readonly told?: string;
  readonly onChange: (value: number) => void;
}

/** Its value is tried, not kept: it has no name, so that no form sends it. */
function Slider({ label, min, max, value, shown, told = shown, onChange }: SliderProps) {
  const id = useId();
  return (
    <div>
      <label htmlFor={id} className="block font-medium">
        {label}
      </label>
      <input
        id={id}
        type="range"
        min={min}
        max={max}
        step={1}
        value={value}
        aria-valuetext={told}
        onChange={(event) => onChange(Number(event.target.value))}
        className="h-11 w-full"
      />
      {/* Two lines are kept where they may be needed, so that nothing moves under the finger. */}
      <output htmlFor={id} className="block text-sm sm:min-h-12">
        {shown}
      </output>
    </div>
  );
}

function Key({ dashed, children }: { readonly dashed: boolean; readonly children: ReactNode }) {
  return (
    <span className="inline-flex items-center gap-2">
      <svg viewBox="0 0 28 4" className="h-1 w-7 flex-none" aria-hidden="true">
        <path
          d="M0 2H28"
          stroke={dashed ? "var(--pencil)" : "var(--ink)"}
          strokeWidth={dashed ? 1.5 : 2.5}
          strokeDasharray={dashed ? "5 4" : undefined}
        />
      </svg>
      {children}
    </span>
  );
}

interface Row {
  readonly key: keyof SheetWords["ski"]["snow"]["rows"];
  readonly of: (ski: SkiOnSnow) => string;
}

function Numbers({ bend, words }: { readonly bend: BendOnSnow; readonly words: SheetWords }) {
  const w = words.ski.snow;
  const place = ({ peakAtMm }: SkiOnSnow) => {
    const away = roundForPeople(bend.mountMm - peakAtMm);
    return Math.abs(away) < AT_BOOT_MM ? w.atBoot : fill(away > 0 ? w.aheadOf : w.behindOf, { mm: Math.abs(away) });
  };
  const rows: readonly Row[] = [
    { key: "turn", of: (ski) => turnText(ski, words) },
    { key: "contact", of: (ski) => `${roundForPeople(ski.contactMm / 10)} cm` },
    { key: "ends", of: (ski) => `${roundForPeople(100 * ski.endsShare)} %` },
    { key: "peak", of: (ski) => `${textForPeople(10 * ski.peakNPerMm, 1)} ${w.pressureUnit}` },
    { key: "place", of: place },
    { key: "sink", of: (ski) => `${textForPeople(ski.sinkMm, 1)} mm` },
    { key: "tip", of: (ski) => `${roundForPeople(ski.tipGapMm)} mm` },
  ];
  return (
    <Table<Row>
      caption={w.table}
      dense
      rows={rows}
      rowKey={(row) => row.key}
      columns={[
        { key: "what", head: w.columns.what, cell: (row) => w.rows[row.key] },
        { key: "own", head: w.columns.own, numeric: true, cell: (row) => row.of(bend.own) },
        { key: "most", head: w.columns.most, numeric: true, cell: (row) => row.of(bend.most) },
      ]}
    />
  );
}
