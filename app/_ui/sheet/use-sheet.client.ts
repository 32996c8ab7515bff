"use client";
/**
 * The state of one sheet in the browser. Every change shows at once, is assessed with the engine, and is saved field by
 * field: changes wait on this device (and survive a reload) until the server has them. What another device changes shows here
 * as it happens; where both changed the same field, what was typed here stays until somebody decides.
 */
import { useCallback, useDeferredValue, useEffect, useMemo, useRef, useState } from "react";
import { type Assessment, assessSheet, type EngineCatalog } from "#engine/assessment";
import type { PairSpec } from "#engine/configuration";
import type { TypedHeight, TypedMass } from "#engine/units";
import type { DateRange, FieldConflict, QuoteSeen, SheetContact, SheetView } from "#services/views";
import { asChosen, type SheetValues, valuesOf, withPatch } from "./sheet-values";
import { keepLeft, only, overtaken, type Patch, partnersOf, readLeft, without } from "./unsaved";

export type { Patch } from "./unsaved";

export type SaveReply =
  | {
      readonly ok: true;
      readonly sheet: SheetView;
      readonly savedPaths: readonly string[];
      readonly conflicts: readonly FieldConflict[];
    }
  | { readonly ok: false; readonly message: string; readonly path?: string };

/** What the server says about the saved sheet: its price wins, and only it knows dates. */
export type AssessReply =
  | { readonly ok: true; readonly dateRange: DateRange | null; readonly totalCents: number | null }
  | { readonly ok: false; readonly message: string };

/** Server actions of the page that shows the sheet, already bound to it. */
export interface SheetActions {
  readonly save: (patch: Patch, baseVersion: number) => Promise<SaveReply>;
  readonly assess: () => Promise<AssessReply>;
  /** The sheet as it is now: asked when another device changed it, and when the page comes back into sight. */
  readonly reload: () => Promise<SheetView | null>;
  /** Where the sheet's versions come from, as server-sent events; a page without it follows nobody. */
  readonly liveUrl?: string;
}

/** A measure as it stands in its box (null: in no words of its own), and what it was read as; undefined when nobody could. */
interface Said<Typed> {
  readonly text: string | null;
  readonly value: Typed | undefined;
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
  /** `arriving`: scripts have only just come. `undecided`: something on the page was refused, or changed elsewhere too. */
  readonly save: "arriving" | "saved" | "saving" | "waiting" | "undecided";
  /** Fields that were changed here and elsewhere. */
  readonly conflicts: readonly FieldConflict[];
  /** Refused fields by path: what is wrong, in words. */
  readonly errors: Readonly<Record<string, string>>;
  readonly view: SheetView;
  readonly setAnswer: <K extends keyof SheetValues["answers"]>(
    key: K,
    value: SheetValues["answers"][K] | undefined,
  ) => void;
  readonly setTyped: <K extends keyof SheetValues["typed"]>(key: K, value: SheetValues["typed"][K] | undefined) => void;
  /** A measure in its own words. What nobody can read is kept beside the value that was there. */
  readonly sayHeight: (said: Said<TypedHeight>) => void;
  readonly sayMass: (said: Said<TypedMass>) => void;
  readonly setChoices: (
    choices: Partial<{ [K in keyof SheetValues["choices"]]: SheetValues["choices"][K] | undefined }>,
  ) => void;
  readonly setContact: <K extends keyof SheetContact>(key: K, value: SheetContact[K] | undefined) => void;
  /** Any other field by its path: notes, asked.KEY. */
  readonly setField: (path: string, value: unknown) => void;
  /** What was typed here counts, or what the other device says. */
  readonly decide: (path: string, whose: "mine" | "theirs") => void;
  /** Saves at once what is waiting, before a page that reads it; false when something is not saved. */
  readonly flush: () => Promise<boolean>;
  readonly adopt: (view: SheetView) => void;
  /** Reads the sheet, its price and its dates again. */
  readonly refresh: () => Promise<void>;
  /** What this page shows of the pair: a quote is made of that and nothing else. */
  readonly seen: () => QuoteSeen;
}

const saveAfterMs = 500;
const retryAfterMs = 5000;

/** What the server has not taken, by path. */
interface Held {
  readonly waiting: Patch;
  /** Under way. */
  readonly sent: Patch;
  readonly refused: Readonly<Record<string, { readonly value: unknown; readonly message: string }>>;
  readonly contested: readonly FieldConflict[];
  /** The words of contested measures. */
  readonly beside: Patch;
}

const nothing: Held = { waiting: {}, sent: {}, refused: {}, contested: [], beside: {} };

/** All that was typed here and is not the server's yet. */
function mineOf({ waiting, sent, refused, contested, beside }: Held): Patch {
  const bad = Object.entries(refused).map(([path, { value }]) => [path, value] as const);
  const ours = contested.map(({ path, yours }) => [path, yours] as const);
  return { ...Object.fromEntries(bad), ...beside, ...Object.fromEntries(ours), ...sent, ...waiting };
}

/** Moves what another device was quicker with out of what waits. */
function contest(held: Held, found: readonly FieldConflict[], from: Patch): Held {
  if (found.length === 0) return held;
  const paths = found.map(({ path }) => path);
  const partners = paths.flatMap(partnersOf);
  const typedSince = (each: FieldConflict): FieldConflict =>
    each.path in held.waiting ? { ...each, yours: held.waiting[each.path] } : each;
  return {
    ...held,
    waiting: without(held.waiting, partners),
    contested: [...held.contested.filter(({ path }) => !paths.includes(path)), ...found.map(typedSince)],
    beside: { ...held.beside, ...without(only({ ...from, ...held.waiting }, partners), paths) },
  };
}

/** The version that what is held was typed over: what is not decided yet is asked about again after a reload. */
function typedOver({ contested }: Held, { version, fields }: SheetView): number {
  return Math.min(version, ...contested.map(({ path }) => (fields[path]?.version ?? version) - 1));
}

/** Where the server has just these words, they stand here as they were typed: a space is how the next word begins. */
function echoOf(spoken: Readonly<Record<string, string>>, { fields }: SheetView): Patch {
  return Object.fromEntries(
    Object.entries(spoken).filter(([path, text]) => text !== text.trim() && fields[path]?.value === text.trim()),
  );
}

/** The next sheet begins in the units that were used last. */
function rememberUnits(unit: "cm" | "ft-in" | "kg" | "lb"): void {
  const system = unit === "ft-in" || unit === "lb" ? "imperial" : "metric";
  // biome-ignore lint/suspicious/noDocumentCookie: the Cookie Store API is missing from browsers that people still use
  document.cookie = `units=${system}; path=/; max-age=31536000; samesite=lax`;
}

/** @param refused what a form without scripts came back with: it stands on the page as it was typed */
export function useSheet(
  catalog: EngineCatalog,
  initial: SheetView,
  actions: SheetActions,
  refused: Held["refused"] = nothing.refused,
): SheetState {
  const storeKey = `sheet:${initial.sheetId}`;
  const [atFirst] = useState<Held>(() => ({ ...nothing, refused }));
  const [view, setView] = useState(initial);
  const [values, setValues] = useState<SheetValues>(() => withPatch(valuesOf(initial), mineOf(atFirst)));
  const [progress, setProgress] = useState<"arriving" | "still" | "saving" | "waiting">("arriving");
  const [held, setHeld] = useState<Held>(atFirst);
  const [trouble, setTrouble] = useState<string | null>(null);
  const [server, setServer] = useState<{
    readonly version: number;
    readonly totalCents: number | null;
    readonly dateRange: DateRange | null;
  } | null>(null);
  const now = useRef<Held>(atFirst);
  const latest = useRef(initial);
  const flight = useRef<Promise<unknown> | null>(null);
  const timer = useRef<ReturnType<typeof setTimeout> | null>(null);

  /** One thing at a time is asked of the server, so that whose change came first is known. */
  const alone = useCallback(async <T>(task: () => Promise<T>): Promise<T> => {
    while (flight.current) await flight.current;
    const running = task();
    flight.current = running
      .catch(() => {})
      .finally(() => {
        flight.current = null;
      });
    return running;
  }, []);

  /** Words as they were typed here, spaces at their ends and all: the server keeps them without. */
  const spoken = useRef<Readonly<Record<string, string>>>({});

  /** Shows what is held over what the server said, and keeps it on the device. */
  const hold = useCallback(
    (next: Held) => {
      now.current = next;
      const mine = mineOf(next);
      keepLeft(storeKey, { version: typedOver(next, latest.current), fields: mine });
      setHeld(next);
      setValues(withPatch(valuesOf(latest.current), { ...echoOf(spoken.current, latest.current), ...mine }));
    },
    [storeKey],
  );

  const adopt = useCallback(
    (next: SheetView, mine: readonly string[] = []) => {
      const { version } = latest.current;
      if (next.version < version) return;
      const found = overtaken(now.current.waiting, version, next.fields, mine);
      latest.current = next;
      setView(next);
      hold(contest(now.current, found, {}));
    },
    [hold],
  );

  const send = useCallback(async (): Promise<boolean> => {
    const patch = now.current.waiting;
    if (Object.keys(patch).length === 0) return true;
    hold({ ...now.current, waiting: {}, sent: patch });
    setProgress("saving");
    let reply: SaveReply;
    try {
      reply = await actions.save(patch, latest.current.version);
    } catch {
      hold({ ...now.current, waiting: { ...patch, ...now.current.waiting }, sent: {} });
      setProgress("waiting");
      return false;
    }
    if (!reply.ok) {
      const { message } = reply;
      // The server names what is wrong inside the field: typed.height.cm is about typed.height.
      const path = Object.keys(patch).find((key) => reply.path === key || reply.path?.startsWith(`${key}.`));
      const paths = path === undefined ? Object.keys(patch) : [path];
      const refused = Object.fromEntries(
        paths.filter((each) => !(each in now.current.waiting)).map((each) => [each, { value: patch[each], message }]),
      );
      // One field was refused: the others are sent again without it, and it stays on the page as typed.
      const rest = without(patch, paths);
      const waiting = { ...rest, ...now.current.waiting };
      hold({ ...now.current, waiting, sent: {}, refused: { ...now.current.refused, ...refused } });
      if (path === undefined) setTrouble(message);
      if (path !== undefined && Object.keys(rest).length > 0) return send();
      setProgress(Object.keys(waiting).length === 0 ? "still" : "saving");
      return false;
    }
    setTrouble(null);
    now.current = contest({ ...now.current, sent: {} }, reply.conflicts, patch);
    adopt(reply.sheet, reply.savedPaths);
    setProgress(Object.keys(now.current.waiting).length === 0 ? "still" : "saving");
    return true;
  }, [actions, adopt, hold]);

  const flush = useCallback(async (): Promise<boolean> => {
    if (timer.current) clearTimeout(timer.current);
    const sent = await alone(send);
    const { refused, contested } = now.current;
    return sent && Object.keys(refused).length === 0 && contested.length === 0;
  }, [alone, send]);

  const schedule = useCallback(
    (delayMs: number) => {
      if (timer.current) clearTimeout(timer.current);
      timer.current = setTimeout(async () => {
        const sent = await alone(send);
        if (Object.keys(now.current.waiting).length > 0) schedule(sent ? saveAfterMs : retryAfterMs);
      }, delayMs);
    },
    [alone, send],
  );

  const change = useCallback(
    (patch: Patch) => {
      const texts = Object.entries(patch).filter((each): each is [string, string] => typeof each[1] === "string");
      spoken.current = { ...spoken.current, ...Object.fromEntries(texts) };
      const { waiting, refused, contested, beside, ...rest } = now.current;
      const open = contested.flatMap(({ path }) => partnersOf(path));
      const free = without(patch, open);
      hold({
        ...rest,
        waiting: { ...waiting, ...free },
        refused: Object.fromEntries(Object.entries(refused).filter(([path]) => !(path in patch))),
        // What is typed on while somebody has to decide stays part of the question.
        contested: contested.map((each) => (each.path in patch ? { ...each, yours: patch[each.path] } : each)),
        beside: {
          ...beside,
          ...without(
            only(patch, open),
            contested.map(({ path }) => path),
          ),
        },
      });
      if (Object.keys(free).length === 0) return;
      setProgress("saving");
      schedule(saveAfterMs);
    },
    [hold, schedule],
  );

  const decide = useCallback(
    (path: string, whose: "mine" | "theirs") => {
      const { contested, beside, ...rest } = now.current;
      const partners = partnersOf(path);
      const mine = only(mineOf(now.current), partners);
      hold({ ...rest, contested: contested.filter((each) => each.path !== path), beside: without(beside, partners) });
      if (whose === "mine") change(mine);
    },
    [change, hold],
  );

  // What a reload or a lost connection left behind is put back and sent; what changed elsewhere meanwhile is asked about.
  useEffect(() => {
    setProgress("still");
    if (latest.current.state !== "open") return;
    const left = readLeft(storeKey, latest.current.version);
    const { fields } = latest.current;
    const found = overtaken(left.fields, left.version, fields);
    const isThere = (path: string) => (fields[path]?.version ?? 0) > left.version;
    const lost = without(
      left.fields,
      Object.keys(left.fields).filter(
        (path) => isThere(path) || found.some((each) => partnersOf(each.path).includes(path)),
      ),
    );
    hold(contest(now.current, found, left.fields));
    if (Object.keys(lost).length > 0) change({ ...lost, ...now.current.waiting });
    const online = () => schedule(0);
    window.addEventListener("online", online);
    return () => window.removeEventListener("online", online);
  }, [change, hold, schedule, storeKey]);

  // A form of the page changed it: the page came again with the newer one.
  useEffect(() => {
    if (initial.version > latest.current.version) adopt(initial);
  }, [adopt, initial]);

  const follow = useCallback(
    () =>
      alone(async () => {
        const read = await actions.reload().catch(() => null);
        if (read && read.version > latest.current.version) adopt(read);
      }),
    [actions, adopt, alone],
  );
  useFollowing(actions.liveUrl, latest, follow);

  const readDates = useCallback(
    async (version: number, isStale: () => boolean) => {
      const reply = await actions.assess().catch(() => null);
      if (isStale() || !reply?.ok) return;
      setServer({ version, totalCents: reply.totalCents, dateRange: reply.dateRange });
    },
    [actions],
  );
  // The date follows what is saved, a moment after the last change.
  useEffect(() => {
    let isStale = false;
    const later = setTimeout(() => void readDates(view.version, () => isStale), 700);
    return () => {
      isStale = true;
      clearTimeout(later);
    };
  }, [readDates, view.version]);

  const refresh = useCallback(async () => {
    await follow();
    await readDates(latest.current.version, () => false);
  }, [follow, readDates]);

  const input = useMemo(() => ({ answers: values.answers, choices: values.choices }), [values.answers, values.choices]);
  const settled = useDeferredValue(input);
  const assessment = useMemo(() => assessSheet(settled, catalog), [catalog, settled]);
  const isDecided = held.contested.length === 0 && Object.keys(held.refused).length === 0;
  const save = progress === "still" ? (isDecided ? "saved" : "undecided") : progress;
  const isNewest = server?.version === view.version;
  const totalCents = assessment.price?.totalCents ?? null;

  return {
    ...values,
    assessment,
    spec: asChosen(assessment.spec, values.choices),
    isComputing: settled !== input,
    dateRange: server?.dateRange ?? null,
    isOutOfDate: save === "saved" && settled === input && isNewest && server.totalCents !== totalCents,
    save,
    conflicts: held.contested,
    errors: {
      ...Object.fromEntries(Object.entries(held.refused).map(([path, { message }]) => [path, message])),
      ...(trouble === null ? {} : { sheet: trouble }),
    },
    view,
    setAnswer: (key, value) => change({ [`answers.${key}`]: value ?? null }),
    setTyped: (key, value) => {
      if (value) rememberUnits(value.unit);
      change({ [`typed.${key}`]: value ?? null, [`said.${key}`]: null });
    },
    sayHeight: (said) => change(saidPatch("height", said)),
    sayMass: (said) => change(saidPatch("mass", said)),
    setChoices: (choices) =>
      change(Object.fromEntries(Object.entries(choices).map(([key, value]) => [`choices.${key}`, value ?? null]))),
    setContact: (key, value) => change({ [`contact.${key}`]: value ?? null }),
    setField: (path, value) => change({ [path]: value }),
    decide,
    flush,
    adopt,
    refresh,
    seen: () => ({
      version: latest.current.version,
      spec: assessment.spec,
      totalCents,
      dates: isNewest && server.dateRange ? { p50: server.dateRange.p50, p90: server.dateRange.p90 } : null,
    }),
  };
}

function saidPatch(key: "height" | "mass", { text, value }: Said<TypedHeight | TypedMass>): Patch {
  if (value) rememberUnits(value.unit);
  const said = text === null || text.trim() === "" ? null : text;
  if (said === null) return { [`typed.${key}`]: value ?? null, [`said.${key}`]: null };
  return value === undefined ? { [`said.${key}`]: said } : { [`typed.${key}`]: value, [`said.${key}`]: said };
}

/** A line that broke is taken up again after this long. */
const againMs = 3000;

/** Reads the sheet again when another device has changed it, while this page is in sight. */
function useFollowing(
  liveUrl: string | undefined,
  latest: { readonly current: SheetView },
  follow: () => Promise<void>,
): void {
  useEffect(() => {
    let source: EventSource | null = null;
    let again: ReturnType<typeof setTimeout> | undefined;
    const leave = () => {
      clearTimeout(again);
      source?.close();
      source = null;
    };
    const listen = () => {
      if (liveUrl === undefined || source !== null || document.visibilityState !== "visible") return;
      const opened = new EventSource(liveUrl);
      source = opened;
      opened.addEventListener("version", (event) => {
        if (Number((event as MessageEvent<string>).data) > latest.current.version) void follow();
      });
      opened.addEventListener("error", () => {
        if (opened.readyState !== EventSource.CLOSED || source !== opened) return;
        leave();
        again = setTimeout(listen, againMs);
      });
    };
    const seen = () => {
      if (document.visibilityState !== "visible") return leave();
      void follow();
      listen();
    };
    listen();
    document.addEventListener("visibilitychange", seen);
    return () => {
      document.removeEventListener("visibilitychange", seen);
      leave();
    };
  }, [follow, latest, liveUrl]);
}
