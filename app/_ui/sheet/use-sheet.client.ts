"use client";
/**
 * The state of one sheet in the browser. Every change shows at once, is assessed with the engine, and is saved field by
 * field: changes wait on this device (and survive a reload) until the server has them. The server's version of a field
 * that nobody touches here wins.
 */
import { useCallback, useDeferredValue, useEffect, useMemo, useRef, useState } from "react";
import {
  type Assessment,
  assessSheet,
  type EngineCatalog,
  type PartialAnswers,
  type SheetChoices,
} from "#engine/assessment";
import type { PairSpec } from "#engine/configuration";
import type { TypedMeasures } from "#engine/fit";
import { heightCm, massKg, type TypedHeight, type TypedMass } from "#engine/units";
import type { DateRange, FieldConflict, SheetContact, SheetView } from "#services/views";

export type Patch = Readonly<Record<string, unknown>>;

export type SaveReply =
  | { readonly ok: true; readonly sheet: SheetView; readonly conflicts: readonly FieldConflict[] }
  | { readonly ok: false; readonly message: string; readonly path?: string };

/** What the server says about the saved sheet: its price wins, and only it knows dates. */
export type AssessReply =
  | { readonly ok: true; readonly dateRange: DateRange | null; readonly totalCents: number | null }
  | { readonly ok: false; readonly message: string };

/** Server actions of the page that shows the sheet, already bound to it. */
export interface SheetActions {
  readonly save: (patch: Patch, baseVersion: number) => Promise<SaveReply>;
  readonly assess: () => Promise<AssessReply>;
  /** The sheet as it is now: asked when the page comes back into sight, so that a second tab is not overtaken. */
  readonly reload: () => Promise<SheetView | null>;
}

interface SheetValues {
  readonly answers: PartialAnswers;
  readonly typed: TypedMeasures;
  readonly choices: SheetChoices;
  readonly contact: SheetContact;
}

export interface SheetState extends SheetValues {
  readonly assessment: Assessment;
  /** What is ordered as chosen this very moment; the assessment follows within a frame or two. */
  readonly spec: PairSpec | null;
  /** The assessment shown is still that of the values before. */
  readonly isComputing: boolean;
  readonly dateRange: DateRange | null;
  /** The server, on today's catalogue, comes to another total than this page: the page is out of date. */
  readonly isOutOfDate: boolean;
  readonly save: "saved" | "saving" | "waiting";
  readonly conflicts: readonly FieldConflict[];
  /** Refused fields by path: what is wrong, in words. */
  readonly errors: Readonly<Record<string, string>>;
  readonly view: SheetView;
  readonly setAnswer: <K extends keyof PartialAnswers>(key: K, value: PartialAnswers[K] | undefined) => void;
  readonly setTyped: <K extends keyof TypedMeasures>(key: K, value: TypedMeasures[K] | undefined) => void;
  readonly setChoices: (choices: Partial<{ [K in keyof SheetChoices]: SheetChoices[K] | undefined }>) => void;
  readonly setContact: <K extends keyof SheetContact>(key: K, value: SheetContact[K] | undefined) => void;
  /** Saves at once what is waiting, before a page that reads it. */
  readonly flush: () => Promise<boolean>;
  readonly adopt: (view: SheetView) => void;
}

const saveAfterMs = 500;
const retryAfterMs = 5000;

function valuesOf(view: SheetView): SheetValues {
  return { answers: view.answers, typed: view.typed, choices: view.choices, contact: view.contact };
}

/** Puts waiting changes over a server's values. */
function withPatch(values: SheetValues, patch: Patch): SheetValues {
  const next: Record<string, Record<string, unknown>> = {
    answers: { ...values.answers },
    typed: { ...values.typed },
    choices: { ...values.choices },
    contact: { ...values.contact },
  };
  for (const [path, value] of Object.entries(patch)) {
    const [group = "", key = ""] = path.split(".");
    const target = next[group];
    if (!target) continue;
    if (value === null || value === undefined) delete target[key];
    else target[key] = value;
    // A measure as typed carries its SI value with it, as the server does on saving.
    if (path === "typed.height") setOrDelete(next.answers, "heightCm", value && heightCm(value as TypedHeight));
    if (path === "typed.mass") setOrDelete(next.answers, "massKg", value && massKg(value as TypedMass));
  }
  return next as unknown as SheetValues;
}

/** The assessed spec with the choices made since laid over it, so that a control answers at once. */
function asChosen(spec: PairSpec | null, choices: SheetChoices): PairSpec | null {
  if (!spec) return null;
  const { destination: _destination, discounts: _discounts, ...chosen } = choices;
  return { ...spec, ...chosen };
}

/** The next sheet begins in the units that were used last. */
function rememberUnits(unit: "cm" | "ft-in" | "kg" | "lb"): void {
  const system = unit === "ft-in" || unit === "lb" ? "imperial" : "metric";
  // biome-ignore lint/suspicious/noDocumentCookie: the Cookie Store API is missing from browsers that people still use
  document.cookie = `units=${system}; path=/; max-age=31536000; samesite=lax`;
}

function setOrDelete(target: Record<string, unknown> | undefined, key: string, value: unknown): void {
  if (!target) return;
  if (value === null || value === undefined) delete target[key];
  else target[key] = value;
}

function readWaiting(storeKey: string): Patch {
  try {
    return JSON.parse(localStorage.getItem(storeKey) ?? "{}") as Patch;
  } catch {
    return {};
  }
}

function writeWaiting(storeKey: string, patch: Patch): void {
  try {
    if (Object.keys(patch).length === 0) localStorage.removeItem(storeKey);
    else localStorage.setItem(storeKey, JSON.stringify(patch));
  } catch {
    // A browser without storage still saves to the server.
  }
}

export function useSheet(catalog: EngineCatalog, initial: SheetView, actions: SheetActions): SheetState {
  const storeKey = `sheet:${initial.sheetId}`;
  const [view, setView] = useState(initial);
  const [values, setValues] = useState<SheetValues>(() => valuesOf(initial));
  const [save, setSave] = useState<SheetState["save"]>("saved");
  const [conflicts, setConflicts] = useState<readonly FieldConflict[]>([]);
  const [errors, setErrors] = useState<Readonly<Record<string, string>>>({});
  const [dateRange, setDateRange] = useState<DateRange | null>(null);
  const [server, setServer] = useState<{ readonly version: number; readonly totalCents: number | null } | null>(null);
  const waiting = useRef<Patch>({});
  const version = useRef(initial.version);
  const flight = useRef<Promise<boolean> | null>(null);
  const timer = useRef<ReturnType<typeof setTimeout> | null>(null);

  const adopt = useCallback((next: SheetView) => {
    version.current = Math.max(version.current, next.version);
    setView(next);
    setValues(withPatch(valuesOf(next), waiting.current));
  }, []);

  const send = useCallback(async (): Promise<boolean> => {
    const patch = waiting.current;
    if (Object.keys(patch).length === 0) return true;
    waiting.current = {};
    setSave("saving");
    let reply: SaveReply;
    try {
      reply = await actions.save(patch, version.current);
    } catch {
      waiting.current = { ...patch, ...waiting.current };
      setSave("waiting");
      return false;
    }
    if (!reply.ok) {
      const { message } = reply;
      // The server names what is wrong inside the field: typed.height.cm is about typed.height.
      const path = Object.keys(patch).find((key) => reply.path === key || reply.path?.startsWith(`${key}.`));
      if (path !== undefined && Object.keys(patch).length > 1) {
        // One field was refused: the others are sent again without it, and it stays on the page as typed.
        const { [path]: _refused, ...rest } = patch;
        waiting.current = { ...rest, ...waiting.current };
        setErrors((before) => ({ ...before, [path]: message }));
        return send();
      }
      setErrors((before) => ({ ...before, [path ?? "sheet"]: message }));
      setSave("saved");
      return false;
    }
    writeWaiting(storeKey, waiting.current);
    setConflicts(reply.conflicts);
    setErrors((before) =>
      Object.fromEntries(Object.entries(before).filter(([path]) => !(path in patch) && path !== "sheet")),
    );
    adopt(reply.sheet);
    setSave(Object.keys(waiting.current).length === 0 ? "saved" : "saving");
    return true;
  }, [actions, adopt, storeKey]);

  const flush = useCallback(async (): Promise<boolean> => {
    if (timer.current) clearTimeout(timer.current);
    while (flight.current) await flight.current;
    const running = send().finally(() => {
      flight.current = null;
    });
    flight.current = running;
    return running;
  }, [send]);

  const schedule = useCallback(
    (delayMs: number) => {
      if (timer.current) clearTimeout(timer.current);
      timer.current = setTimeout(async () => {
        const sent = await flush();
        if (!sent && Object.keys(waiting.current).length > 0) schedule(retryAfterMs);
        else if (Object.keys(waiting.current).length > 0) schedule(saveAfterMs);
      }, delayMs);
    },
    [flush],
  );

  const change = useCallback(
    (patch: Patch) => {
      waiting.current = { ...waiting.current, ...patch };
      writeWaiting(storeKey, waiting.current);
      setValues((before) => withPatch(before, patch));
      setSave("saving");
      schedule(saveAfterMs);
    },
    [schedule, storeKey],
  );

  // What a reload or a lost connection left behind is put back and sent.
  useEffect(() => {
    const left = readWaiting(storeKey);
    if (Object.keys(left).length > 0) change(left);
    const online = () => schedule(0);
    window.addEventListener("online", online);
    return () => window.removeEventListener("online", online);
  }, [change, schedule, storeKey]);

  useEffect(() => {
    const back = async () => {
      if (document.visibilityState !== "visible" || Object.keys(waiting.current).length > 0) return;
      const now = await actions.reload().catch(() => null);
      if (now && now.version > version.current) adopt(now);
    };
    document.addEventListener("visibilitychange", back);
    return () => document.removeEventListener("visibilitychange", back);
  }, [actions, adopt]);

  // The date follows what is saved, a moment after the last change.
  useEffect(() => {
    let isStale = false;
    const later = setTimeout(async () => {
      const reply = await actions.assess().catch(() => null);
      if (isStale || !reply?.ok) return;
      setDateRange(reply.dateRange);
      setServer({ version: view.version, totalCents: reply.totalCents });
    }, 700);
    return () => {
      isStale = true;
      clearTimeout(later);
    };
  }, [actions, view.version]);

  const input = useMemo(() => ({ answers: values.answers, choices: values.choices }), [values.answers, values.choices]);
  const settled = useDeferredValue(input);
  const assessment = useMemo(() => assessSheet(settled, catalog), [catalog, settled]);

  return {
    ...values,
    assessment,
    spec: asChosen(assessment.spec, values.choices),
    isComputing: settled !== input,
    dateRange,
    isOutOfDate:
      save === "saved" &&
      settled === input &&
      server?.version === view.version &&
      server.totalCents !== (assessment.price?.totalCents ?? null),
    save,
    conflicts,
    errors,
    view,
    setAnswer: (key, value) => change({ [`answers.${key}`]: value ?? null }),
    setTyped: (key, value) => {
      if (value) rememberUnits(value.unit);
      change({ [`typed.${key}`]: value ?? null });
    },
    setChoices: (choices) =>
      change(Object.fromEntries(Object.entries(choices).map(([key, value]) => [`choices.${key}`, value ?? null]))),
    setContact: (key, value) => change({ [`contact.${key}`]: value ?? null }),
    flush,
    adopt,
  };
}
