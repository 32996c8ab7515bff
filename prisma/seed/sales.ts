/** Sales of the demo, made with the shop's own use cases at times in the past. */
import type { Actor } from "#auth";
import type { Db } from "#data/client";
import type { Outcome } from "#engine/units";
import {
  type AcceptedQuote,
  acceptQuote,
  type Context,
  createQuote,
  type MadeQuote,
  openSheet,
  type SheetId,
  saveSheet,
  stateRights,
  uploadArtwork,
} from "#services";
import type { DemoPerson } from "./people";

export interface DemoShop {
  readonly db: Db;
  readonly newId: () => string;
  readonly desk: Actor;
}

export function at(shop: DemoShop, now: Date, actor: Actor = shop.desk): Context {
  return { actor, now, newId: shop.newId, db: shop.db, promiseRuns: 16 };
}

/** @throws Error naming the refusal: the demo's own sales must go through */
export function done<T>(outcome: Outcome<T>, what: string): T {
  if (!outcome.ok) throw new Error(`demo, ${what}: ${JSON.stringify(outcome.refusal)}`);
  return outcome.value;
}

/** A skier who fits a model well. `step` varies them. */
interface Fitting {
  readonly model: string;
  readonly lengthCm: number;
  readonly heightCm: number;
  readonly massKg: number;
  readonly offPistePercent: number;
}

const fittings: readonly Fitting[] = [
  { model: "midlow-95", lengthCm: 178, heightCm: 175, massKg: 75, offPistePercent: 50 },
  { model: "midlow-84", lengthCm: 182, heightCm: 182, massKg: 82, offPistePercent: 30 },
  { model: "ridgefold-106", lengthCm: 184, heightCm: 176, massKg: 78, offPistePercent: 75 },
  { model: "midlow-95", lengthCm: 186, heightCm: 184, massKg: 84, offPistePercent: 55 },
  { model: "kerfline-68", lengthCm: 168, heightCm: 174, massKg: 76, offPistePercent: 5 },
  { model: "pathwick-75", lengthCm: 170, heightCm: 175, massKg: 74, offPistePercent: 10 },
  { model: "midlow-95", lengthCm: 170, heightCm: 168, massKg: 66, offPistePercent: 50 },
  { model: "drifthold-117", lengthCm: 188, heightCm: 178, massKg: 80, offPistePercent: 90 },
];

const houseGraphics = ["plain", "contour-lines", "autumn-larch", "rock-strata", "ice-facets"] as const;

/** Fields of a filled sheet; which of them depends on the number alone. */
export function demoFields(index: number): Readonly<Record<string, unknown>> {
  const fit = fittings[index % fittings.length];
  if (fit === undefined) throw new RangeError(`demoFields: no skier ${index}`);
  const extra = index % 4 === 1 ? ["carbon-stringers"] : index % 7 === 3 ? ["flax"] : [];
  return {
    "typed.height": { unit: "cm", cm: fit.heightCm },
    "typed.mass": { unit: "kg", kg: fit.massKg },
    "answers.ability": "confident",
    "answers.temperament": index % 3 === 0 ? "fast" : "steady",
    "answers.offPistePercent": fit.offPistePercent,
    "answers.homeSnow": index % 2 === 0 ? "mixed" : "firm",
    "answers.daysTotal": 120 + 7 * index,
    "choices.model": fit.model,
    "choices.lengthCm": fit.lengthCm,
    "choices.reinforcements": fit.model === "kerfline-68" ? [] : extra,
    "choices.graphic": {
      kind: "house",
      house: houseGraphics[index % houseGraphics.length],
      layout: "same",
      windows: [],
    },
    "choices.destination": index % 5 === 0 ? "domestic" : "home",
  };
}

export interface DemoSale {
  readonly person: DemoPerson;
  readonly index: number;
  readonly now: Date;
  /** A picture of the skier's own: proof and rights are then needed. */
  readonly picture?: { readonly bytes: Uint8Array; readonly hasRights: boolean };
  /** A core other than the recommended one. */
  readonly core?: string;
}

export async function demoSheet(shop: DemoShop, sale: DemoSale): Promise<SheetId> {
  const ctx = at(shop, sale.now);
  const { person, index, picture, core } = sale;
  const opened = done(await openSheet(ctx, { channel: "phone", phone: person.phone, name: person.name }), "a sheet");
  const { sheetId, version } = opened.sheet;
  const graphic =
    picture === undefined ? {} : { "choices.graphic": await ownGraphic(ctx, sheetId, picture, person.name) };
  const ownCore = core === undefined ? {} : { "choices.core": core };
  const patch = { ...demoFields(index), "contact.email": person.email, ...graphic, ...ownCore };
  done(await saveSheet(ctx, { sheetId, patch, baseVersion: version }), "its fields");
  return sheetId;
}

export async function demoQuote(shop: DemoShop, sale: DemoSale): Promise<MadeQuote> {
  const sheetId = await demoSheet(shop, sale);
  return done(await createQuote(at(shop, sale.now), { sheetId }), `a quote for sale ${sale.index}`);
}

export async function demoOrder(shop: DemoShop, sale: DemoSale): Promise<AcceptedQuote> {
  const { quote } = await demoQuote(shop, sale);
  const accept = { quoteId: quote.quoteId, how: "phone", name: sale.person.name } as const;
  return done(await acceptQuote(at(shop, sale.now), accept), "an acceptance");
}

async function ownGraphic(ctx: Context, sheetId: SheetId, picture: NonNullable<DemoSale["picture"]>, name: string) {
  const upload = { sheetId, fileName: "own-graphic.png", bytes: picture.bytes };
  const { artworkId, widthPx, heightPx, sha256 } = done(await uploadArtwork(ctx, upload), "a picture");
  if (picture.hasRights) done(await stateRights(ctx, { artworkId, basis: "own", name }), "its rights");
  return {
    kind: "own",
    artwork: { id: artworkId, widthPx, heightPx, sha256 },
    placement: { centreXMm: 900, centreYMm: 0, mmPerPixel: 0.15, angleDeg: 0 },
    layout: "same",
    windows: [],
  };
}
