"use client";
/** "Same flex, other build": how else the shop can reach this flex, what that changes, and a button that takes it. */
import { useRef, useState } from "react";
import {
  type EngineCatalog,
  lighterBy,
  paretoSet,
  type SameFlexOption,
  type SameFlexOptions,
} from "#engine/assessment";
import type { PairSpec } from "#engine/configuration";
import { Button } from "../button";
import { NumberField } from "../field";
import { moneyChangeText } from "../money";
import { signedText } from "../signed";
import { fill, wordOf } from "../words";
import { coreLine, reinforcementLine } from "./labels";
import { SameFlexChart } from "./same-flex-chart";
import { SameFlexTable } from "./same-flex-table";
import { useSameFlex } from "./use-same-flex.client";
import type { SheetState } from "./use-sheet.client";
import type { SheetWords } from "./words";

interface Props {
  readonly sheet: SheetState;
  readonly spec: PairSpec;
  readonly catalog: EngineCatalog;
  readonly words: SheetWords;
}

/** What is asked for before anybody typed: the saving that customers name most often (shop practice, no source). */
const usualGrams = "150";
const mostGrams = 5000;

export function SameFlex(props: Props) {
  const [isOpen, setOpen] = useState(false);
  return (
    <details className="min-w-0" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary className="chevron inline-flex min-h-11 items-center gap-2 text-tarn underline decoration-1 underline-offset-4">
        {props.words.sameFlex.title}
      </summary>
      <div className="grid grid-cols-1 gap-4 pt-2 pb-3">
        <p className="max-w-measure text-pencil">{props.words.sameFlex.lead}</p>
        <Search {...props} isOpen={isOpen} />
      </div>
    </details>
  );
}

function Search({ sheet, spec, catalog, words, isOpen }: Props & { readonly isOpen: boolean }) {
  const { found, isWorking, progress } = useSameFlex(sheet, spec, catalog, isOpen);
  const [typed, setTyped] = useState(usualGrams);
  const grams = Number(typed.trim().replace(",", "."));
  const isWish = grams >= 1 && grams <= mostGrams;
  const w = words.sameFlex;
  return (
    <>
      <NumberField
        name="lighter-by"
        label={w.lighter}
        unit={w.lighterUnit}
        value={typed}
        error={isWish ? undefined : w.lighterBad}
        onChange={(event) => setTyped(event.target.value)}
      />
      {found && !isWorking && isWish ? (
        <Answer found={found} grams={grams} sheet={sheet} spec={spec} catalog={catalog} words={words} />
      ) : null}
      {isWorking ? <Progress {...progress} words={words} /> : null}
      {found && found.options.length > 0 ? (
        <Found found={found} sheet={sheet} spec={spec} catalog={catalog} words={words} />
      ) : null}
    </>
  );
}

function Progress({ done, all, words }: { readonly done: number; readonly all: number; readonly words: SheetWords }) {
  const text = done === 0 ? words.sameFlex.begin : fill(words.sameFlex.progress, { done, all });
  return (
    <p className="grid max-w-measure gap-1 text-sm text-pencil">
      <span aria-hidden="true" className="measure">
        {text}
      </span>
      <progress aria-label={words.sameFlex.begin} value={done} max={all} className="h-2 w-full accent-tarn" />
    </p>
  );
}

/** "Aspen with ash, carbon stringers". */
function nameOf(build: Pick<SameFlexOption, "core" | "reinforcements">, { spec, catalog, words }: Props): string {
  const then: PairSpec = { ...spec, ...build, tipTailProtectors: false };
  const added = build.reinforcements.length > 0 ? reinforcementLine(then, catalog, words) : words.sameFlex.nothingAdded;
  return `${coreLine(then, catalog)}, ${added.toLowerCase()}`;
}

/** The answer in one line, and its build to take; the line keeps the keyboard when the button has done its work. */
function Answer({ found, grams, ...props }: Props & { readonly found: SameFlexOptions; readonly grams: number }) {
  const line = useRef<HTMLParagraphElement>(null);
  const w = props.words.sameFlex;
  const answer = found.options.length > 0 ? lighterBy(found.options, grams) : null;
  const option = answer?.kind === "found" ? answer.option : answer?.lightest;
  const takeIt = (taken: SameFlexOption) => {
    take(taken, props.sheet);
    line.current?.focus();
  };
  return (
    <div className="grid max-w-measure justify-items-start gap-2">
      <p role="status" ref={line} tabIndex={-1}>
        {option ? (
          <>
            <span className="font-medium">
              {fill(answer?.kind === "found" ? w.found : w.lightest, { grams, build: nameOf(option, props) })}
            </span>{" "}
            {differenceText(option, props.words)}
          </>
        ) : answer ? (
          w.none
        ) : (
          w.nothing
        )}
      </p>
      {option ? (
        <Button size="small" onClick={() => takeIt(option)}>
          {w.take}
          <span className="sr-only">: {nameOf(option, props)}</span>
        </Button>
      ) : null}
    </div>
  );
}

function differenceText({ change }: SameFlexOption, words: SheetWords): string {
  const w = words.sameFlex;
  const { massG, priceCents, twistPercent, leadDays } = change;
  const days = leadDays === 0 ? "" : fill(leadDays > 0 ? w.daysMore : w.daysFewer, { days: Math.abs(leadDays) });
  const price = moneyChangeText(priceCents);
  const text = fill(w.difference, { mass: signedText(massG), price, twist: signedText(twistPercent), days });
  // A sign stays with its figure at the end of a line.
  return text.replaceAll(/[−+]/g, "$&\u2060");
}

function take({ core, reinforcements }: SameFlexOption, sheet: SheetState): void {
  sheet.setChoices({ core, reinforcements });
}

function Found({ found, ...props }: Props & { readonly found: SameFlexOptions }) {
  const { sheet, words } = props;
  const unbeaten = new Set(paretoSet(found.options));
  const rows = found.options
    .filter((each) => unbeaten.has(each) || each.isCurrent)
    .toSorted((a, b) => a.massG - b.massG || a.priceCents - b.priceCents);
  return (
    <>
      <div className="grid grid-cols-1 gap-2">
        <h3 className="max-w-measure font-semibold">{words.sameFlex.caption}</h3>
        <SameFlexTable
          rows={rows}
          words={words}
          nameOf={(each) => nameOf(each, props)}
          onTake={(each) => take(each, sheet)}
        />
      </div>
      <SameFlexChart options={found.options} unbeaten={unbeaten} words={words} />
      <p className="max-w-measure text-sm text-pencil">{countsText(found, words)}</p>
    </>
  );
}

/** How many builds there are, how many were left out and why. */
function countsText({ options, leftOut, limitedBy }: SameFlexOptions, words: SheetWords): string {
  const w = words.sameFlex;
  const limits = limitedBy.map((each) => wordOf(w.limits, each)).join(", ");
  const counted = (text: string, count: number) => (count > 0 ? fill(text, { count, limits }) : "");
  return [
    fill(w.count, { count: options.length }),
    counted(w.notReached, leftOut.flexNotReached),
    counted(w.clashing, leftOut.clashing),
    counted(w.noPrice, leftOut.withoutPrice),
  ]
    .filter(Boolean)
    .join(" ");
}
