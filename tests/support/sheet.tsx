/** A sheet for its own tests: a skier of 182 cm and 82 kg, and a shop that only remembers what it was sent. */
import { type ReactNode, useState } from "react";
import { vi } from "vitest";
import type { QuoteReply } from "#app/_ui/sheet/section-state.ts";
import type { SheetProps } from "#app/_ui/sheet/sheet.client.tsx";
import { Around } from "#app/_ui/sheet/sheet-context.client.ts";
import { type SheetActions, type SheetState, useSheet } from "#app/_ui/sheet/use-sheet.client.ts";
import words from "#content/copy/sheet.json";
import { assessSheet } from "#engine/assessment";
import { heightCm, massKg } from "#engine/units";
import type { DateRange, QuoteSeen, SheetView } from "#services/views";
import { catalog } from "../engine/demo-catalog";
import { partly } from "./builders/views";

export const answers = {
  heightCm: 182,
  massKg: 82,
  ability: "confident",
  temperament: "steady",
  offPistePercent: 40,
} as const;
export const typed = { height: { unit: "cm", cm: 182 }, mass: { unit: "kg", kg: 82 } } as const;
export const choices = { destination: "collect" } as const;
export const dates = partly<DateRange>({ p50: "2026-12-10", p90: "2026-12-17", drivers: [], basis: { runs: 200 } });
/** What the engine says of it. */
export const assessed = assessSheet({ answers, choices }, catalog);

let sheets = 0;

export function viewOf(known: object = {}): SheetView {
  sheets += 1;
  return partly<SheetView>({
    sheetId: `sheet-${sheets}`,
    state: "open",
    version: 4,
    answers,
    typed,
    said: {},
    choices,
    asked: {},
    notes: null,
    fields: {},
    contact: { name: "Robin Alder", phone: "303 555 0101" },
    review: null,
    lease: null,
    quotes: [],
    artworks: [],
    flagAcks: [],
    ...known,
  } as never);
}

export type Patch = Readonly<Record<string, unknown>>;
type Save = SheetProps["actions"]["save"];

/** Takes every field as it comes, as the shop does; a measure as typed carries its SI value. */
export function shopOf(start: SheetView) {
  let view = start;
  const patches: Patch[] = [];
  const take: Save = async (patch) => {
    patches.push(patch);
    const next: Record<string, unknown> & { answers: Record<string, unknown> } = structuredClone(view) as never;
    for (const [path, value] of Object.entries(patch)) {
      const [group = "", key = ""] = path.split(".");
      if (path === "notes") Object.assign(next, { notes: value });
      if (path === "notes") continue;
      const fields = next[group] as Record<string, unknown>;
      if (value === null) delete fields[key];
      else fields[key] = value;
      if (path === "typed.height" && value) next.answers.heightCm = heightCm(value as never);
      if (path === "typed.mass" && value) next.answers.massKg = massKg(value as never);
    }
    view = { ...(next as unknown as SheetView), version: view.version + 1 };
    return { ok: true, sheet: view, savedPaths: Object.keys(patch), conflicts: [] };
  };
  const total = () => assessSheet({ answers: view.answers, choices: view.choices }, catalog).price?.totalCents ?? null;
  type Assess = SheetProps["actions"]["assess"];
  type Reply = { readonly ok: boolean; readonly message?: string };
  return {
    patches,
    save: vi.fn<Save>(take),
    assess: vi.fn<Assess>(async () => ({ ok: true, dateRange: dates, totalCents: total() })),
    reload: vi.fn(async (): Promise<SheetView | null> => view),
    quote: vi.fn(async (_seen: QuoteSeen): Promise<QuoteReply> => ({ ok: true })),
    ask: vi.fn(async (): Promise<Reply> => ({ ok: true })),
  };
}

/** The state of a sheet that nobody assesses anew: what is chosen lies over the spec, and every change is kept in `patches`. */
export function useKeptSheet(start: SheetView, patches: Patch[]): SheetState {
  const [values, setValues] = useState({
    answers: start.answers,
    typed: start.typed,
    said: start.said,
    choices: start.choices,
    contact: start.contact,
    asked: start.asked,
  });
  const [assessment] = useState(() => assessSheet({ answers: start.answers, choices: start.choices }, catalog));
  const change = (group: keyof typeof values, part: object) => {
    for (const [key, value] of Object.entries(part)) patches.push({ [`${group}.${key}`]: value ?? null });
    setValues((before) => ({
      ...before,
      [group]: Object.fromEntries(
        Object.entries({ ...before[group], ...part }).filter(([, value]) => value !== undefined),
      ),
    }));
  };
  const { destination: _destination, ...chosen } = values.choices;
  return {
    ...values,
    assessment,
    spec: assessment.spec && { ...assessment.spec, ...chosen },
    isComputing: false,
    dateRange: null,
    isOutOfDate: false,
    save: "saved",
    conflicts: [],
    errors: {},
    view: start,
    notes: start.notes,
    setAnswer: (key, value) => change("answers", { [key]: value }),
    setTyped: (key, value) => change("typed", { [key]: value }),
    sayHeight: ({ value }) => change("typed", { height: value }),
    sayMass: ({ value }) => change("typed", { mass: value }),
    setField: (path, value) => patches.push({ [path]: value }),
    setChoices: (part) => change("choices", part),
    setContact: (key, value) => change("contact", { [key]: value }),
    ...idle(start),
  };
}

/** Parts of a page that speak to the sheet around them. */
export function AroundSheet({
  start,
  shop,
  children,
}: {
  readonly start: SheetView;
  readonly shop: SheetActions;
  readonly children: ReactNode;
}) {
  const sheet = useSheet(catalog, start, shop);
  return <Around value={{ sheet, catalog, words }}>{children}</Around>;
}

/** What a sheet of its own does not do. */
const idle = ({ version }: SheetView) => ({
  decide: () => {},
  flush: async () => true,
  adopt: () => {},
  refresh: async () => {},
  seen: () => ({ version, spec: null, totalCents: null, dates: null }),
});

/** The state of a sheet that nothing happens to, for what a section shows at its beginning. */
export function stillSheet(start: SheetView, known: Partial<SheetState> = {}): SheetState {
  const { answers, typed, said, choices, contact, asked, notes } = start;
  const assessment = assessSheet({ answers, choices }, catalog);
  return {
    answers,
    typed,
    said,
    choices,
    contact,
    asked,
    notes,
    assessment,
    spec: assessment.spec,
    isComputing: false,
    dateRange: null,
    isOutOfDate: false,
    save: "saved",
    conflicts: [],
    errors: {},
    view: start,
    setAnswer: () => {},
    setTyped: () => {},
    setChoices: () => {},
    setContact: () => {},
    sayHeight: () => {},
    sayMass: () => {},
    setField: () => {},
    ...idle(start),
    ...known,
  };
}
