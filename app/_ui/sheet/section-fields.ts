/**
 * The sheet's sections as forms: what each control says when the page is drawn, and what a control that was sent says about the
 * sheet. A form sends every control of its section, so only those are saved that say something else than they did when the page
 * was drawn. Names are those of the controls.
 */
import type { EngineCatalog } from "#engine/assessment";
import type { GraphicSpec, PairSpec } from "#engine/configuration";
import { shapeAtLength } from "#engine/geometry";
import { readHeight, readMass } from "#engine/units";
import { plain } from "../typed-measures";
import { firstText } from "./graphic-parts";
import type { SheetValues } from "./sheet-values";
import type { Patch } from "./unsaved";

export const sectionKeys = ["you", "ski", "core", "reinforcement", "graphic", "price", "contact"] as const;
export type FormSection = (typeof sectionKeys)[number];

/** By name; several ticks under one name are a list. */
export type Sent = Readonly<Record<string, string | readonly string[]>>;

/** The sheet as it stands. */
export interface SheetNow {
  readonly values: SheetValues;
  readonly spec: PairSpec | null;
  readonly totalCents: number | null;
  readonly catalog: EngineCatalog;
  readonly units: { readonly height: "cm" | "ft-in"; readonly mass: "kg" | "lb" };
}

/** Controls that decide about one field together. */
interface Control {
  readonly names: readonly string[];
  readonly shown: (now: SheetNow) => Sent;
  /** Null when it cannot be read; the words stay in the box. */
  readonly read: (sent: Sent, now: SheetNow) => Patch | null;
}

const one = (sent: Sent, name: string): string => {
  const value = sent[name];
  return (typeof value === "string" ? value : (value?.[0] ?? "")).trim();
};
const many = (sent: Sent, name: string): readonly string[] => {
  const value = sent[name];
  return typeof value === "string" ? [value] : (value ?? []);
};

/** A number as it was typed; undefined when it is none, null when nothing stands there. */
function numberOf(text: string): number | null | undefined {
  if (text === "") return null;
  const value = Number(text.replace(",", "."));
  return Number.isFinite(value) ? value : undefined;
}

const fieldAt = ({ values }: SheetNow, path: string): unknown => {
  const [group = "", key = ""] = path.split(".");
  const groups: Readonly<Record<string, unknown>> = { ...values };
  const members: Readonly<Record<string, unknown>> = { ...(groups[group] as object | undefined) };
  return members[key];
};

/** What stands on the page: the choice, else what would be built. */
const chosen = (now: SheetNow, key: keyof PairSpec): unknown => fieldAt(now, `choices.${key}`) ?? now.spec?.[key];

const written = (value: unknown): string => {
  if (value === undefined || value === null) return "";
  return typeof value === "number" ? plain(value, 2) : String(value);
};

const text = (name: string, path: string): Control => ({
  names: [name],
  shown: (now) => ({ [name]: written(fieldAt(now, path)) }),
  read: (sent) => ({ [path]: one(sent, name) || null }),
});

const number = (name: string, path: string): Control => ({
  names: [name],
  shown: (now) => ({ [name]: written(fieldAt(now, path)) }),
  read: (sent) => {
    const value = numberOf(one(sent, name));
    return value === undefined ? null : { [path]: value };
  },
});

/** A slider and its box; whichever was moved counts. */
const slider = (name: string, path: string, decimals: number, usual: (now: SheetNow) => number): Control => {
  const box = (now: SheetNow) => Number(fieldAt(now, path) ?? usual(now));
  return {
    names: [name, `${name}Slider`],
    shown: (now) => ({ [name]: box(now).toFixed(decimals), [`${name}Slider`]: String(box(now)) }),
    read: (sent, now) => {
      const isMoved = one(sent, name) === box(now).toFixed(decimals);
      const value = numberOf(one(sent, isMoved ? `${name}Slider` : name));
      return value === undefined || value === null ? null : { [path]: value };
    },
  };
};

const ticks = (name: string, path: string, usual: (now: SheetNow) => unknown = () => []): Control => ({
  names: [name],
  shown: (now) => ({ [name]: (fieldAt(now, path) ?? usual(now)) as readonly string[] }),
  read: (sent) => ({ [path]: many(sent, name) }),
});

const tick = (name: string, path: string, on: unknown, off: unknown, usual?: (now: SheetNow) => unknown): Control => ({
  names: [name],
  shown: (now) => ({ [name]: (fieldAt(now, path) ?? usual?.(now)) === on ? "on" : "" }),
  read: (sent) => ({ [path]: one(sent, name) === "" ? off : on }),
});

const measure = (key: "height" | "mass"): Control => ({
  names: [key, `${key}Unit`],
  shown: (now) => ({ [key]: written(now.values.said[key]), [`${key}Unit`]: now.units[key] }),
  read: (sent) => {
    const said = one(sent, key);
    if (said === "") return { [`typed.${key}`]: null, [`said.${key}`]: null };
    const unit = one(sent, `${key}Unit`);
    const reading =
      key === "height" ? readHeight(said, unit === "ft-in" ? unit : "cm") : readMass(said, unit === "lb" ? unit : "kg");
    const read = reading.kind === "read" ? { [`typed.${key}`]: reading.value } : {};
    return { ...read, [`said.${key}`]: said };
  },
});

/** Members of one field, each in a control of its own; `empty` of them leaves nothing. */
function members(
  path: string,
  controls: Readonly<Record<string, { readonly key: string; readonly kind: "number" | "text" }>>,
  beside: (now: SheetNow) => object = () => ({}),
): Control {
  const current = (now: SheetNow) => ({ ...beside(now), ...(fieldAt(now, path) as object | undefined) });
  const names = Object.keys(controls);
  return {
    names,
    shown: (now) => {
      const group: Record<string, unknown> = { ...current(now) };
      return Object.fromEntries(names.map((name) => [name, written(group[controls[name]?.key ?? ""])]));
    },
    read: (sent, now) => {
      const next: Record<string, unknown> = { ...current(now) };
      for (const [name, { key, kind }] of Object.entries(controls)) {
        const value = kind === "number" ? numberOf(one(sent, name)) : one(sent, name) || null;
        if (value === undefined) return null;
        if (value === null) delete next[key];
        else next[key] = value;
      }
      return { [path]: Object.keys(next).length === 0 ? null : next };
    },
  };
}

const graphicOf = (now: SheetNow) => chosen(now, "graphic") as GraphicSpec | undefined;

const graphic: Control = {
  names: ["graphicKind", "house", "layout", "lettering"],
  shown: (now) => {
    const { kind, house, layout, text: letters } = graphicOf(now) ?? {};
    return {
      graphicKind: written(kind),
      house: written(house),
      layout: written(layout),
      lettering: written(letters?.text),
    };
  },
  read: (sent, now) => {
    const before = graphicOf(now);
    const model = now.catalog.build.models.find(({ id }) => id === now.spec?.model);
    if (before === undefined || model === undefined || now.spec === null) return null;
    const { text: oldText, house: oldHouse, ...rest } = before;
    const kind = one(sent, "graphicKind") === "own" ? "own" : "house";
    const house = one(sent, "house") || oldHouse || now.catalog.build.houseGraphics[0]?.id;
    const letters = one(sent, "lettering");
    const place = oldText ?? firstText(shapeAtLength(model.shape, now.spec.lengthCm));
    return {
      "choices.graphic": {
        ...rest,
        kind,
        ...(house === undefined || kind === "own" ? {} : { house }),
        layout: one(sent, "layout") || before.layout,
        ...(letters === "" ? {} : { text: { ...place, text: letters } }),
      },
    };
  },
};

const baseOf = (now: SheetNow) => chosen(now, "base") as PairSpec["base"] | undefined;

const base: Control = {
  names: ["baseLeft", "baseRight", "inlay", "inlayText"],
  shown: (now) => {
    const { left, right, inlay, inlayText } = baseOf(now) ?? {};
    return { baseLeft: written(left), baseRight: written(right), inlay: written(inlay), inlayText: written(inlayText) };
  },
  read: (sent, now) => {
    const before = baseOf(now);
    if (before === undefined) return null;
    const letters = one(sent, "inlayText");
    return {
      "choices.base": {
        left: one(sent, "baseLeft") || before.left,
        right: one(sent, "baseRight") || before.right,
        inlay: one(sent, "inlay") || before.inlay,
        ...(letters === "" ? {} : { inlayText: letters }),
      },
    };
  },
};

/** One group of radios stands under two names: what is recommended, and all others. */
const model: Control = {
  names: ["model", "otherModel"],
  shown: (now) => ({ model: written(now.spec?.model), otherModel: written(now.spec?.model) }),
  read: (sent, now) => {
    const isOther = (name: string) => one(sent, name) !== "" && one(sent, name) !== now.spec?.model;
    const name = isOther("otherModel") ? "otherModel" : "model";
    // Length and flex go with the model.
    return isOther(name)
      ? { "choices.model": one(sent, name), "choices.lengthCm": null, "choices.flexRatio": null }
      : {};
  },
};

const core: Control = {
  names: ["core"],
  shown: (now) => ({ core: written(chosen(now, "core")) }),
  // A core of one's own is laid with scripts alone: its button says no wood.
  read: (sent) => (one(sent, "core") === "own" ? {} : { "choices.core": one(sent, "core") || null }),
};

const plate: Control = {
  names: ["plate"],
  shown: (now) => ({ plate: written(chosen(now, "plate")) || "own" }),
  read: (sent) => ({ "choices.plate": one(sent, "plate") === "own" ? null : one(sent, "plate") || null }),
};

const length: Control = {
  names: ["length"],
  shown: (now) => ({ length: written(chosen(now, "lengthCm")) }),
  read: (sent) => {
    const value = numberOf(one(sent, "length"));
    return value === undefined ? null : { "choices.lengthCm": value };
  },
};

const controls: Readonly<Record<FormSection, readonly Control[]>> = {
  you: [
    measure("height"),
    measure("mass"),
    text("ability", "answers.ability"),
    slider("offPiste", "answers.offPistePercent", 0, ({ catalog }) => catalog.fit.offPisteUnansweredPercent),
    text("temperament", "answers.temperament"),
    text("homeSnow", "answers.homeSnow"),
    text("turnSize", "answers.turnSize"),
    ticks("priorities", "answers.priorities"),
    ticks("terrain", "answers.terrain"),
    number("touringPercent", "answers.touringPercent"),
    number("packKg", "answers.packKg"),
    number("daysTotal", "answers.daysTotal"),
    number("ageYears", "answers.ageYears"),
    members("answers.currentSki", {
      currentLength: { key: "lengthCm", kind: "number" },
      currentWaist: { key: "waistMm", kind: "number" },
      currentLengthVerdict: { key: "length", kind: "text" },
      currentFlexVerdict: { key: "flex", kind: "text" },
      currentFlexClass: { key: "flexClass", kind: "number" },
      newPairFor: { key: "newPairFor", kind: "text" },
    }),
    tick("buyer", "answers.buyerIsSkier", false, null),
    tick("growing", "answers.stillGrowing", true, null),
    tick("health", "answers.healthAdviceGiven", true, null),
  ],
  ski: [
    model,
    length,
    slider("flexRatio", "choices.flexRatio", 2, ({ spec }) => spec?.flexRatio ?? 1),
    members(
      "choices.mount",
      {
        bootSole: { key: "bootSoleMm", kind: "number" },
        bindingTrack: { key: "bindingTrackMm", kind: "number" },
        mountOffset: { key: "offsetMm", kind: "number" },
      },
      ({ spec }) => spec?.mount ?? { offsetMm: 0 },
    ),
  ],
  core: [core],
  reinforcement: [
    ticks("reinforcements", "choices.reinforcements", ({ spec }) => spec?.reinforcements ?? []),
    tick("lightening", "choices.lightening", true, null),
    plate,
    tick("protectors", "choices.tipTailProtectors", true, false, ({ spec }) => spec?.tipTailProtectors),
  ],
  graphic: [graphic, base],
  price: [text("destination", "choices.destination")],
  contact: [text("name", "contact.name"), text("email", "contact.email"), text("phone", "contact.phone")],
};

/** What the controls of a section say now, by name. */
export function shownFields(section: FormSection, now: SheetNow): Sent {
  return Object.assign({}, ...controls[section].map((each) => each.shown(now)));
}

const isLike = (a: Sent[string] | undefined, b: Sent[string] | undefined): boolean => {
  const list = (value: Sent[string] | undefined) =>
    (typeof value === "string" ? [value] : (value ?? [])).filter(Boolean);
  return JSON.stringify(list(a)) === JSON.stringify(list(b));
};

export interface SectionChanges {
  /** By the name of the control that it came from. */
  readonly patches: Readonly<Record<string, Patch>>;
  /** Controls whose words are no value. */
  readonly unread: readonly string[];
  /** Controls that another device changed since the page was drawn. */
  readonly overtaken: readonly string[];
}

/** @param was what the controls said when the page was drawn */
export function changesOf(section: FormSection, sent: Sent, was: Sent, now: SheetNow): SectionChanges {
  const patches: Record<string, Patch> = {};
  const unread: string[] = [];
  const overtaken: string[] = [];
  for (const control of controls[section]) {
    const changed = control.names.filter((name) => !isLike(sent[name], was[name]));
    const name = changed[0]?.replace(/Slider$/, "");
    if (name === undefined) continue;
    const standing = control.shown(now);
    const isOvertaken = changed.some(
      (each) => !isLike(standing[each], was[each]) && !isLike(standing[each], sent[each]),
    );
    // Members that were not touched are as they stand now, whatever the page said.
    const patch = control.read(
      { ...standing, ...Object.fromEntries(changed.map((each) => [each, sent[each] ?? ""])) },
      now,
    );
    if (isOvertaken) overtaken.push(name);
    else if (patch === null) unread.push(name);
    else patches[name] = patch;
  }
  return { patches, unread, overtaken };
}
