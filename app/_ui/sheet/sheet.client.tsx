"use client";
/**
 * The sheet: You · Ski · Core · Reinforcement · Graphic · Price · Date. The same for the skier and, denser and with every
 * section open, for the shop on the phone. On a first visit it opens section by section; afterwards in any order.
 */
import { type ReactNode, useEffect, useRef, useState } from "react";
import type { EngineCatalog, SkiersBand } from "#engine/assessment";
import { cautionsAt, type Hazard, soldFor } from "#engine/floor";
import type { Refusal } from "#engine/units";
import type { SheetView } from "#services/views";
import { Button } from "../button";
import { Cautions } from "../cautions";
import { dateRangeText } from "../date-range";
import { moneyText } from "../money";
import { Notice } from "../notice";
import { SheetSection, type SheetSectionProps } from "../section";
import { fill, wordOf } from "../words";
import { CoreSection, ReinforcementSection } from "./build-sections.client";
import { useDrawnPair } from "./drawn-pair.client";
import { AskPerson, Conflicts, Flags, flagsThatHold, stopsSale } from "./flags.client";
import type { PictureActions } from "./graphic-parts";
import { GraphicSection } from "./graphic-section.client";
import { coreLine, graphicLine, reinforcementLine, skiLine, youLine } from "./labels";
import { AxisPart, PairStrip } from "./pair-preview.client";
import { ContactFields, DateSection, PriceSection } from "./price-section.client";
import { SkiSection } from "./ski-section.client";
import { RaisedPair, StandingColumn } from "./standing-pair.client";
import { SummaryBar } from "./summary-bar.client";
import { type SheetActions, type SheetState, useSheet } from "./use-sheet.client";
import type { SheetWords } from "./words";
import { YouSection } from "./you-section.client";

type SectionKey = keyof SheetWords["sections"];
const order: readonly SectionKey[] = ["you", "ski", "core", "reinforcement", "graphic", "price", "date"];

export interface Reply {
  readonly ok: boolean;
  readonly message?: string;
}

export interface SheetProps {
  readonly catalog: EngineCatalog;
  readonly initial: SheetView;
  readonly words: SheetWords;
  /** Refusals in words, `{parameter}` filled: content/copy/refusals.json. */
  readonly refusalWords: Readonly<Record<string, string>>;
  readonly actions: SheetActions & {
    /** Freezes the sheet; goes to the quote when it worked. */
    readonly quote: () => Promise<Reply>;
    readonly ask: (note: string) => Promise<Reply>;
  };
  readonly pictures: PictureActions;
  /** How far most sold skis bend under their skiers; null while too few orders say so. */
  readonly band?: SkiersBand | null;
  /** What can hurt, and the rules that come before it. */
  readonly cautions: { readonly hazards: readonly Hazard[]; readonly localRules: string };
  /** Units that this person used last. */
  readonly preferImperial?: boolean;
  /** The shop's layout: all sections open, rows closer, scripts shown. */
  readonly dense?: boolean;
  /** The page that lays this pair over others. */
  readonly compareHref?: string;
  /** Above the sections, beside the standing pair. */
  readonly heading?: ReactNode;
  /** Beside or under the sheet in the shop: call-back, notes, take over. */
  readonly children?: ReactNode | undefined;
}

export function Sheet(props: SheetProps) {
  const { catalog, initial, words, actions, dense, pictures } = props;
  const sheet = useSheet(catalog, initial, actions);
  const firstVisit = initial.version <= 1 || Object.keys(initial.answers).length === 0;
  const [open, setOpen] = useState<ReadonlySet<SectionKey>>(
    () => new Set<SectionKey>(dense ? order : firstVisit ? ["you"] : []),
  );
  const toggle = (key: SectionKey, isOpen: boolean) =>
    setOpen((before) => {
      if (before.has(key) === isOpen) return before;
      const next = new Set(before);
      if (isOpen) next.add(key);
      else next.delete(key);
      return next;
    });
  const goTo = (key: SectionKey, from: SectionKey) => {
    toggle(from, false);
    toggle(key, true);
    requestAnimationFrame(() => document.querySelector<HTMLElement>(`#${key} > summary`)?.focus());
  };
  const { assessment } = sheet;
  const { spec } = sheet;
  const pair = useDrawnPair(sheet, catalog, words);
  const [raised, setRaised] = useRaised(pair !== null, dense === true);
  const refusalText = (refusal: Refusal) =>
    fill(props.refusalWords[refusal.code] ?? props.refusalWords.unknown ?? "{code}", {
      ...refusal,
      path: wordOf(words.paths, refusal.path ?? ""),
    });
  const stopped = stopsSale(sheet);
  const lines: Readonly<Record<SectionKey, ReactNode>> = {
    you: youLine(sheet.answers, sheet.typed, words),
    ski: skiLine(spec, catalog, words),
    core: coreLine(spec, catalog),
    reinforcement: reinforcementLine(spec, catalog, words),
    graphic: graphicLine(spec, catalog, words),
    price: assessment.price ? moneyText(assessment.price.totalCents) : words.price.pending,
    date: sheet.dateRange ? dateRangeText(sheet.dateRange.p50, sheet.dateRange.p90, true) : words.date.pending,
  };
  const standing = { sheet, catalog, words, pictureBase: pictures.pictureBase, pair };
  const states = sectionStates(sheet);
  const bodies: Readonly<Record<SectionKey, ReactNode>> = {
    you: (
      <YouSection sheet={sheet} catalog={catalog} words={words} dense={dense} preferImperial={props.preferImperial} />
    ),
    ski: <SkiSection sheet={sheet} catalog={catalog} words={words} band={props.band} />,
    core: <CoreSection sheet={sheet} catalog={catalog} words={words} />,
    reinforcement: <ReinforcementSection sheet={sheet} catalog={catalog} words={words} />,
    graphic: <GraphicSection sheet={sheet} catalog={catalog} words={words} pictures={pictures} />,
    price: <PriceSection sheet={sheet} catalog={catalog} words={words} />,
    date: <DateSection sheet={sheet} words={words} />,
  };

  return (
    <>
      <div
        className={
          dense
            ? "mx-auto w-full max-w-page px-4 sm:px-6"
            : "mx-auto grid w-full max-w-page gap-x-12 px-4 sm:px-6 lg:grid-cols-[minmax(0,1fr)_22rem]"
        }
      >
        {dense ? <PairStrip {...standing} /> : null}
        <div className="min-w-0">
          {props.heading}
          <div className="my-6 grid gap-3">
            <Flags sheet={sheet} words={words} staff={dense} />
            <SaveTrouble sheet={sheet} words={words} />
          </div>
          {/* A sheet that was quoted or closed is read, not changed. */}
          <fieldset disabled={sheet.view.state !== "open"} className="min-w-0">
            {order.map((key, i) => {
              const next = order[i + 1];
              return (
                <SheetSection
                  key={key}
                  id={key}
                  title={words.sections[key]}
                  answer={lines[key]}
                  state={states[key]}
                  open={open.has(key)}
                  onToggle={(isOpen) => toggle(key, isOpen)}
                >
                  <Conflicts
                    conflicts={assessment.conflicts.filter((each) => sectionOf(each.path) === key)}
                    sheet={sheet}
                    words={words}
                    text={refusalText}
                    tone="iron"
                  />
                  <Conflicts
                    conflicts={assessment.warnings.filter((each) => sectionOf(each.path) === key)}
                    sheet={sheet}
                    words={words}
                    text={refusalText}
                    tone="amber"
                  />
                  {bodies[key]}
                  {next && !dense ? (
                    <p>
                      <Button onClick={() => goTo(next, key)}>
                        {fill(words.next, { section: words.sections[next] })}
                      </Button>
                    </p>
                  ) : null}
                </SheetSection>
              );
            })}
          </fieldset>
        </div>
        {dense ? null : <StandingColumn {...standing} />}
      </div>
      <div className="mx-auto w-full max-w-page px-4 sm:px-6">
        <AxisPart {...standing} compareHref={props.compareHref} dense={dense} />
        <div className="grid gap-8 py-8">
          <Cautions
            cautions={cautionsAt(props.cautions.hazards, { page: "sheet" }, [
              soldFor(spec, catalog.build.models, sheet.answers),
            ])}
            localRules={props.cautions.localRules}
          />
          {sheet.view.state !== "open" ? null : stopped && !dense ? (
            <AskPerson sheet={sheet} words={words} ask={actions.ask} title={words.flags.callTitle} />
          ) : (
            <Finish {...props} sheet={sheet} refusalText={refusalText} stopped={stopped} />
          )}
          {props.children}
        </div>
      </div>
      {dense ? null : <RaisedPair {...standing} open={raised} onClose={() => setRaised("no")} />}
      <SummaryBar
        sheet={sheet}
        words={words}
        pair={pair}
        pictureBase={pictures.pictureBase}
        onRaise={dense ? undefined : () => setRaised("asked")}
      />
    </>
  );
}

/** Where the pair does not stand beside the sheet it is raised over it: once when it arrives, then when asked for. */
function useRaised(isThere: boolean, never: boolean) {
  const [raised, setRaised] = useState<"no" | "asked" | "arrived">("no");
  const wasThere = useRef(isThere);
  useEffect(() => {
    const arrives = isThere && !wasThere.current;
    wasThere.current ||= isThere;
    if (arrives && !never && matchMedia("(width < 64rem)").matches) setRaised("arrived");
  }, [isThere, never]);
  return [raised, setRaised] as const;
}

/** The section in which something about this path of the choices is decided. */
function sectionOf(path: string | undefined): SectionKey {
  const field = (path ?? "").replace(/^choices\./, "").split(".")[0] ?? "";
  const places: Readonly<Record<string, SectionKey>> = {
    model: "ski",
    lengthCm: "ski",
    flexRatio: "ski",
    mount: "ski",
    core: "core",
    reinforcements: "reinforcement",
    graphic: "graphic",
    base: "graphic",
  };
  return places[field] ?? "ski";
}

function sectionStates(sheet: SheetState): Readonly<Record<SectionKey, NonNullable<SheetSectionProps["state"]>>> {
  const { assessment, choices } = sheet;
  const blocked = flagsThatHold(sheet).some((flag) => flag.blocks === "sale");
  const clashing = new Set(assessment.conflicts.map((each) => sectionOf(each.path)));
  const chosen = (key: SectionKey, is: boolean) => (clashing.has(key) ? "attention" : is ? "done" : "todo");
  return {
    you: blocked ? "attention" : chosen("you", assessment.recommendation !== null),
    ski: chosen("ski", assessment.spec !== null),
    core: chosen("core", choices.core !== undefined),
    reinforcement: chosen("reinforcement", choices.reinforcements !== undefined),
    graphic: chosen("graphic", choices.graphic !== undefined),
    price: chosen("price", assessment.price !== null),
    date: chosen("date", sheet.dateRange !== null),
  };
}

function SaveTrouble({ sheet, words }: { readonly sheet: SheetState; readonly words: SheetWords }) {
  return (
    <>
      {sheet.save === "waiting" ? <Notice tone="amber" title={words.save.waiting} live="polite" /> : null}
      {sheet.isOutOfDate ? (
        <Notice tone="amber" title={words.save.outOfDate} live="polite">
          <p>
            <Button size="small" onClick={() => location.reload()}>
              {words.save.reload}
            </Button>
          </p>
        </Notice>
      ) : null}
      {sheet.errors.sheet ? <Notice tone="iron" title={sheet.errors.sheet} live="polite" /> : null}
      {sheet.conflicts.map((conflict) => (
        <Notice
          key={conflict.path}
          tone="amber"
          live="polite"
          title={fill(words.save.conflict, {
            by: conflict.by,
            yours: JSON.stringify(conflict.yours),
            theirs: JSON.stringify(conflict.theirs),
          })}
        />
      ))}
    </>
  );
}

/** Contact and the one button; what is missing is said beside it, never behind it. */
function Finish({
  sheet,
  words,
  actions,
  refusalText,
  catalog,
  dense,
  stopped,
}: SheetProps & {
  readonly sheet: SheetState;
  readonly refusalText: (refusal: Refusal) => string;
  readonly stopped: boolean;
}) {
  const [problem, setProblem] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);
  const [asking, setAsking] = useState(false);
  const quote = async () => {
    setBusy(true);
    setProblem(null);
    const saved = await sheet.flush();
    const reply = saved ? await actions.quote().catch(() => ({ ok: false, message: words.save.waiting })) : null;
    setBusy(false);
    if (!reply?.ok) setProblem(reply?.message ?? words.save.waiting);
  };
  const blocked = sheet.assessment.saleBlockedBy;
  const ready = sheet.assessment.price !== null && (blocked.length === 0 || dense);
  return (
    <div className="grid gap-6">
      <ContactFields sheet={sheet} words={words} />
      {blocked.length > 0 && !stopped ? (
        <Notice tone="amber" title={words.price.needs}>
          <ul className="list-disc pl-5">
            {blocked.map((refusal) => (
              <li key={`${refusal.code} ${refusal.path ?? ""}`}>{refusalText(refusal)}</li>
            ))}
          </ul>
        </Notice>
      ) : null}
      {ready ? (
        <div className="grid gap-2">
          <p className="flex flex-wrap gap-4">
            <Button tone="primary" aria-disabled={busy} onClick={quote}>
              {words.price.quote}
            </Button>
            {dense ? null : (
              <Button tone="quiet" onClick={() => setAsking(true)}>
                {words.price.ask}
              </Button>
            )}
          </p>
          <p className="text-sm text-pencil">
            {fill(words.price.quoteNote, { days: catalog.priceBook.quoteValidDays })}
          </p>
        </div>
      ) : null}
      {problem ? <Notice tone="iron" title={problem} live="assertive" /> : null}
      {asking ? <AskPerson sheet={sheet} words={words} ask={actions.ask} title={words.price.ask} /> : null}
    </div>
  );
}
