"use client";
/**
 * The sheet: You · Ski · Core · Reinforcement · Graphic · Price · Date. The same for the skier and, denser and with every
 * section open, for the shop on the phone. On a first visit it opens section by section; afterwards in any order.
 */
import { type ReactNode, useActionState, useEffect, useRef, useState } from "react";
import type { EngineCatalog, SkiersBand } from "#engine/assessment";
import { cautionsAt, type Hazard, soldFor } from "#engine/floor";
import type { Refusal } from "#engine/units";
import type { QuoteSeen, SheetView } from "#services/views";
import { Button } from "../button";
import { Cautions } from "../cautions";
import { dateRangeText } from "../date-range";
import { moneyText } from "../money";
import { Notice } from "../notice";
import { SheetSection, type SheetSectionProps } from "../section";
import { fill, wordOf } from "../words";
import { CoreSection, ReinforcementSection } from "./build-sections.client";
import { useDrawnPair } from "./drawn-pair.client";
import { fieldName, seenText } from "./field-words";
import { AskPerson, Conflicts, Flags, flagsThatHold, stopsSale } from "./flags.client";
import type { PictureActions } from "./graphic-parts";
import { GraphicSection } from "./graphic-section.client";
import { coreLine, graphicLine, reinforcementLine, skiLine, youLine } from "./labels";
import { AxisPart, PairStrip } from "./pair-preview.client";
import { ContactFields, DateSection, PriceSection } from "./price-section.client";
import { SaveTrouble } from "./save-trouble.client";
import type { FormSection, SheetNow } from "./section-fields";
import { SectionForm } from "./section-form.client";
import { newSection, type QuoteAction, type QuoteReply, type SectionAction } from "./section-state";
import { Around } from "./sheet-context.client";
import { valuesOf } from "./sheet-values";
import { SkiSection } from "./ski-section.client";
import { RaisedPair, StandingColumn } from "./standing-pair.client";
import { SummaryBar } from "./summary-bar.client";
import { type SheetActions, type SheetState, useSheet } from "./use-sheet.client";
import { useTypedBefore } from "./use-typed-before.client";
import type { SheetWords } from "./words";
import { YouSection } from "./you-section.client";

type SectionKey = keyof SheetWords["sections"];
const order: readonly SectionKey[] = ["you", "ski", "core", "reinforcement", "graphic", "price", "date"];

/** Side by side where there is room: who they are and what they ride, and how it is built. */
const columns: readonly (readonly SectionKey[])[] = [
  ["you", "ski"],
  ["core", "reinforcement", "graphic", "price", "date"],
];

export interface Reply {
  readonly ok: boolean;
  readonly message?: string;
}

/** The section of the sheet that is a form of the same name; the date is nobody's to fill in. */
const formOf = (key: SectionKey): FormSection | null => (key === "date" ? null : key);

export interface SheetProps {
  readonly catalog: EngineCatalog;
  readonly initial: SheetView;
  readonly words: SheetWords;
  /** Refusals in words, `{parameter}` filled: content/copy/refusals.json. */
  readonly refusalWords: Readonly<Record<string, string>>;
  readonly actions: SheetActions & {
    /** Freezes the sheet as it was seen; goes to the quote when it worked. */
    readonly quote: (seen: QuoteSeen) => Promise<QuoteReply>;
    /** The same two without scripts. */
    readonly post?: SectionAction;
    readonly postQuote?: QuoteAction;
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
  /** Above the sheet, within it: what is asked next. */
  readonly before?: ReactNode | undefined;
  /** Why it is read and not changed, by its state; a page that says so elsewhere has none. */
  readonly closed?: Readonly<Record<Exclude<SheetView["state"], "open">, string>>;
  /** The sheet is somebody else's to change just now. */
  readonly isReadOnly?: (view: SheetView) => boolean;
  /** Beside or under the sheet in the shop: call-back, notes, take over. */
  readonly children?: ReactNode | undefined;
}

export function Sheet(props: SheetProps) {
  const { catalog, initial, words, actions, dense, pictures } = props;
  const [posted, post] = useActionState(actions.post ?? keepSection, newSection);
  const sheet = useSheet(catalog, initial, actions, posted.refused);
  const place = useRef<HTMLDivElement>(null);
  useTypedBefore(place);
  const firstVisit = initial.version <= 1 || Object.keys(initial.answers).length === 0;
  const [open, setOpen] = useState<ReadonlySet<SectionKey>>(
    () =>
      new Set<SectionKey>(
        dense ? order : posted.section ? order.filter((key) => key === posted.section) : firstVisit ? ["you"] : [],
      ),
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
  const dateRange = sheet.dateRange ?? posted.dateRange;
  const around = { sheet, catalog, words };
  const now: SheetNow = {
    // What is refused stands on the page and not in the sheet.
    values: valuesOf(sheet.view),
    spec,
    totalCents: assessment.price?.totalCents ?? null,
    catalog,
    units: {
      height: sheet.typed.height?.unit ?? (props.preferImperial ? "ft-in" : "cm"),
      mass: sheet.typed.mass?.unit ?? (props.preferImperial ? "lb" : "kg"),
    },
  };
  const form = { now, sheet, words, posted, post: actions.post && post };
  const inSections = sheet.conflicts.filter(({ path }) => /^(answers|typed|said|choices)\./.test(path));
  const contested = new Set(inSections.map(({ path }) => sectionOf(path)));
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
    date: dateRange ? dateRangeText(dateRange.p50, dateRange.p90, true) : words.date.pending,
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
    date: <DateSection dateRange={dateRange} words={words} />,
  };

  const part = (key: SectionKey) => {
    const next = order[order.indexOf(key) + 1];
    return (
      <SheetSection
        key={key}
        id={key}
        title={words.sections[key]}
        answer={lines[key]}
        state={states[key]}
        open={open.has(key) || contested.has(key)}
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
        {formOf(key) === null ? (
          bodies[key]
        ) : (
          <SectionForm {...form} section={formOf(key) ?? "you"} title={words.sections[key]}>
            {bodies[key]}
          </SectionForm>
        )}
        {next && !dense ? (
          <p>
            <Button onClick={() => goTo(next, key)}>{fill(words.next, { section: words.sections[next] })}</Button>
          </p>
        ) : null}
      </SheetSection>
    );
  };

  return (
    <Around value={around}>
      <div ref={place} className={dense ? wide : undefined}>
        {props.before}
        <fieldset disabled={props.isReadOnly?.(sheet.view) ?? false} className="min-w-0">
          <div className={dense ? undefined : `${wide} grid gap-x-12 lg:grid-cols-[minmax(0,1fr)_22rem]`}>
            {dense ? <PairStrip {...standing} /> : null}
            <div className="min-w-0">
              {props.heading}
              <div className="my-6 grid gap-3">
                <Flags sheet={sheet} words={words} staff={dense} />
                {props.closed && sheet.view.state !== "open" ? (
                  <Notice tone="info" live="polite" title={props.closed[sheet.view.state]} />
                ) : null}
                <SaveTrouble sheet={sheet} words={words} />
              </div>
              {/* A sheet that was quoted or closed is read, not changed. */}
              <fieldset
                disabled={sheet.view.state !== "open"}
                data-dense={dense ? "" : undefined}
                className={dense ? "grid min-w-0 items-start gap-x-10 xl:grid-cols-2" : "min-w-0"}
              >
                {(dense ? columns : [order]).map((keys) => (
                  <div key={keys.join(" ")} className="min-w-0">
                    {keys.map(part)}
                  </div>
                ))}
              </fieldset>
            </div>
            {dense ? null : <StandingColumn {...standing} />}
          </div>
          <div className={dense ? undefined : wide}>
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
                <Finish {...props} sheet={sheet} form={form} refusalText={refusalText} stopped={stopped} />
              )}
              {props.children}
            </div>
          </div>
        </fieldset>
      </div>
      {dense ? null : <RaisedPair {...standing} open={raised} onClose={() => setRaised("no")} />}
      <SummaryBar
        sheet={sheet}
        words={words}
        dateRange={dateRange}
        pair={pair}
        pictureBase={pictures.pictureBase}
        onRaise={dense ? undefined : () => setRaised("asked")}
      />
    </Around>
  );
}

/** The page's own width. */
const wide = "mx-auto w-full max-w-page px-4 sm:px-6";

/** Boxes that are typed in. */
const typing = ":not([type=radio], [type=checkbox], [type=range])";

/** Where the pair does not stand beside the sheet it is raised over it: once when it arrives, then when asked for. */
function useRaised(isThere: boolean, never: boolean) {
  const [raised, setRaised] = useState<"no" | "asked" | "arrived">("no");
  const wasThere = useRef(isThere);
  useEffect(() => {
    const arrives = isThere && !wasThere.current;
    wasThere.current ||= isThere;
    if (!arrives || never || !matchMedia("(width < 64rem)").matches) return;
    const field = document.activeElement;
    // Nobody is taken away from a box they are typing in.
    if (field instanceof HTMLInputElement && field.matches(typing)) {
      field.addEventListener("blur", () => setRaised("arrived"), { once: true });
    } else setRaised("arrived");
  }, [isThere, never]);
  return [raised, setRaised] as const;
}

/** The section in which something about this path of the choices is decided. */
function sectionOf(path: string | undefined): SectionKey {
  if (/^(answers|typed|said)\./.test(path ?? "")) return "you";
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
    destination: "price",
    discounts: "price",
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

/** Why there is no quote; where the sheet had moved on, what was seen and what is there now. */
function NotMade({ reply, catalog, words }: { readonly reply: QuoteReply } & Pick<SheetProps, "catalog" | "words">) {
  const { differences = [], message } = reply;
  if (differences.length === 0) return <Notice tone="iron" title={message ?? words.save.waiting} live="assertive" />;
  const text = (path: string, value: unknown) => seenText(path, value, { catalog, words });
  return (
    <Notice tone="amber" title={words.price.moved} live="assertive">
      <ul className="list-disc pl-5">
        {differences.map(({ path, seen, now }) => (
          <li key={path}>
            {fill(words.price.movedLine, {
              field: fieldName(path, words),
              seen: text(path, seen),
              now: text(path, now),
            })}
          </li>
        ))}
      </ul>
      <p>{words.price.movedHint}</p>
    </Notice>
  );
}

/** Pages that have no forms of their own. */
const keepSection: SectionAction = async (previous) => previous;
const keepQuote: QuoteAction = async (previous) => previous ?? { ok: false };

/** Contact and the one button; what is missing is said beside it, never behind it. */
function Finish({
  sheet,
  words,
  actions,
  refusalText,
  catalog,
  dense,
  stopped,
  form,
}: SheetProps & {
  readonly sheet: SheetState;
  readonly form: Omit<Parameters<typeof SectionForm>[0], "section" | "title" | "children">;
  readonly refusalText: (refusal: Refusal) => string;
  readonly stopped: boolean;
}) {
  const [answered, post] = useActionState(actions.postQuote ?? keepQuote, null);
  const [reply, setReply] = useState<QuoteReply | null>(null);
  const [busy, setBusy] = useState(false);
  const [asking, setAsking] = useState(false);
  const quote = async () => {
    const seen = sheet.seen();
    setBusy(true);
    setReply(null);
    const saved = await sheet.flush();
    const made: QuoteReply = saved
      ? await actions.quote(seen).catch(() => ({ ok: false, message: words.save.waiting }))
      : { ok: false };
    setBusy(false);
    setReply(made);
    if (made.differences?.length) await sheet.refresh();
  };
  const told = reply ?? answered;
  const blocked = sheet.assessment.saleBlockedBy;
  const ready = sheet.assessment.price !== null && (blocked.length === 0 || dense);
  return (
    <div className="grid gap-6">
      <SectionForm {...form} section="contact" title={words.price.contact}>
        <ContactFields sheet={sheet} words={words} />
      </SectionForm>
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
        <form
          action={actions.postQuote && post}
          className="grid gap-2"
          onSubmit={(event) => {
            event.preventDefault();
            if (!busy) void quote();
          }}
        >
          <input type="hidden" name="seen" value={JSON.stringify(sheet.seen())} />
          <p className="flex flex-wrap gap-4">
            <Button type="submit" tone="primary" aria-disabled={busy}>
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
        </form>
      ) : null}
      {told && !told.ok ? (
        <NotMade
          reply={{ message: sheet.save === "undecided" ? words.save.notMade : words.save.waiting, ...told }}
          catalog={catalog}
          words={words}
        />
      ) : null}
      {asking ? <AskPerson sheet={sheet} words={words} ask={actions.ask} title={words.price.ask} /> : null}
    </div>
  );
}
