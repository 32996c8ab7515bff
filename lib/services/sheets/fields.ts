/**
 * The fields a sheet may have, by path, each with the schema of its value. The limits are those beyond which a value is a
 * slip of the hand; what is merely unusual is the fit's business and becomes a flag there.
 */
import { z } from "zod";
import { accept, type Outcome, refuse } from "../../engine/units";

const amount = (min: number, max: number) => z.number().min(min).max(max);
const text = (max: number) => z.string().trim().min(1).max(max);
const id = text(60);

const typedHeight = z.discriminatedUnion("unit", [
  z.strictObject({ unit: z.literal("cm"), cm: amount(90, 240) }),
  z.strictObject({ unit: z.literal("ft-in"), feet: z.number().int().min(3).max(7), inches: amount(0, 11.999) }),
]);
const typedMass = z.discriminatedUnion("unit", [
  z.strictObject({ unit: z.literal("kg"), kg: amount(20, 250) }),
  z.strictObject({ unit: z.literal("lb"), lb: amount(44, 551) }),
]);

const currentSki = z.strictObject({
  lengthCm: amount(70, 230).optional(),
  waistMm: amount(50, 160).optional(),
  length: z.enum(["too short", "right", "too long"]).optional(),
  flex: z.enum(["too soft", "right", "too stiff"]).optional(),
});

const artwork = z.strictObject({
  id: text(60),
  widthPx: z.number().int().min(1),
  heightPx: z.number().int().min(1),
  sha256: z.string().regex(/^[0-9a-f]{64}$/),
});

const graphic = z.strictObject({
  kind: z.enum(["house", "own"]),
  house: id.optional(),
  artwork: artwork.optional(),
  placement: z
    .strictObject({
      centreXMm: amount(-3000, 5000),
      centreYMm: amount(-2000, 2000),
      mmPerPixel: amount(0.001, 100),
      angleDeg: amount(-360, 360),
    })
    .optional(),
  layout: z.enum(["same", "mirrored", "continuing", "alternate", "independent"]),
  text: z.strictObject({ text: text(60), xMm: amount(0, 2500), capHeightMm: amount(3, 120) }).optional(),
  windows: z
    .array(z.strictObject({ fromXMm: amount(0, 2500), toXMm: amount(0, 2500), halfWidthMm: amount(1, 100) }))
    .max(6),
});

const answers = {
  heightCm: amount(90, 240),
  massKg: amount(20, 250),
  packKg: amount(0, 40),
  ability: z.enum(["learning", "improving", "confident", "expert"]),
  temperament: z.enum(["calm", "steady", "fast"]),
  offPistePercent: amount(0, 100),
  ageYears: amount(3, 110),
  daysTotal: amount(0, 20_000),
  touringPercent: amount(0, 100),
  homeSnow: z.enum(["icy", "firm", "mixed", "soft", "deep"]),
  turnSize: z.enum(["short", "medium", "long"]),
  priorities: z.array(z.enum(["quiet", "lively", "light", "planted", "forgiving", "precise"])).max(6),
  terrain: z.array(z.enum(["bumps", "trees", "park", "switch"])).max(4),
  currentSki,
  bootSoleMm: amount(180, 420),
  bindingTrackMm: amount(100, 600),
  mountOffsetMm: amount(-150, 150),
  healthAdviceGiven: z.boolean(),
  buyerIsSkier: z.boolean(),
  asksReleaseSetting: z.boolean(),
  unusualUse: z.enum(["monoski", "adaptive", "ski-jump"]),
};

const choices = {
  model: id,
  lengthCm: amount(80, 230),
  core: id,
  reinforcements: z.array(id).max(12),
  flexRatio: amount(0.3, 3),
  graphic,
  base: z.strictObject({
    left: id,
    right: id,
    inlay: z.enum(["none", "swap-letters", "complex"]),
    inlayText: text(24).optional(),
  }),
  mount: z.strictObject({
    offsetMm: amount(-150, 150),
    bootSoleMm: amount(180, 420).optional(),
    bindingTrackMm: amount(100, 600).optional(),
  }),
  finish: z.strictObject({
    baseBevelDeg: amount(0, 3),
    sideAngleDeg: amount(0, 6),
    detuneTipMm: amount(0, 400),
    detuneTailMm: amount(0, 400),
    structure: z.enum(["F", "M", "MC", "C"]),
  }),
  tipTailProtectors: z.boolean(),
  destination: z.enum(["home", "domestic", "abroad", "collect"]),
  discounts: z.array(z.strictObject({ code: id, reason: text(300), basisPoints: z.number().int().min(1).max(10_000).optional() })).max(1),
};

const contact = {
  name: text(120),
  phone: text(40),
  email: z.email().max(200),
  address: z.strictObject({
    lines: z.array(text(120)).min(1).max(4),
    town: text(80),
    region: text(80).optional(),
    postcode: text(20),
    country: text(60),
  }),
};

const byPath = new Map<string, z.ZodType>([
  ...Object.entries(answers).map(([key, schema]) => [`answers.${key}`, schema] as const),
  ...Object.keys(answers).map((key) => [`asked.${key}`, z.enum(["not asked", "refused"])] as const),
  ...Object.entries(choices).map(([key, schema]) => [`choices.${key}`, schema] as const),
  ...Object.entries(contact).map(([key, schema]) => [`contact.${key}`, schema] as const),
  ["typed.height", typedHeight],
  ["typed.mass", typedMass],
  ["notes", z.string().trim().max(4000)],
]);

/** Paths of the fit interview, in the order they are asked. */
export const answerPaths: readonly string[] = Object.keys(answers).map((key) => `answers.${key}`);

/** Only staff decide about money off. */
export const staffOnlyPaths: readonly string[] = ["choices.discounts"];

/** The value as it will be kept, or which field is wrong, what was given and what is allowed. Null clears a field. */
export function checkField(path: string, value: unknown): Outcome<unknown> {
  const schema = byPath.get(path);
  if (schema === undefined) return refuse({ code: "invalid-field", path, value, message: "there is no such field" });
  if (value === null) return accept(null);
  const parsed = schema.safeParse(value);
  if (parsed.success) return accept(parsed.data);
  const issue = parsed.error.issues[0];
  const inside = (issue?.path ?? []).map(String).join(".");
  return refuse({
    code: "invalid-field",
    path: inside === "" ? path : `${path}.${inside}`,
    value,
    message: issue?.message ?? "not a value for this field",
  });
}
