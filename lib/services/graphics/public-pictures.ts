/** Pictures that anybody may see: a house graphic, and the card that stands for the shop where its address is passed on. */
import sharp from "sharp";
import { type BuildCatalog, readSharedLook, sharedLook } from "#engine/configuration";
import {
  daylightColour,
  housePattern,
  lyingSvg,
  modelLook,
  type PairLook,
  pairLook,
  pairScene,
  type Scene,
  sideScene,
} from "#engine/scene";
import { accept, type Outcome, refuse } from "#engine/units";
import type { Context } from "#services/context";
import { spend } from "#services/doors/budgets";
import { activeCatalog } from "#services/settings/active-catalog";
import type { DocumentBytes } from "#shop/names/views";

const manner = { colour: daylightColour, picture: () => null, hairlineMm: 1, font: "sans-serif" } as const;

/** A ski of 178 cm and 132 mm. */
const area = { lengthMm: 1780, reachMm: 66 };

/** A house graphic as a file of its own, lying: what a page shows of it without carrying its drawing. */
export async function houseGraphicFile(
  ctx: Context,
  input: { readonly graphic: string },
): Promise<Outcome<DocumentBytes>> {
  const catalog = await activeCatalog(ctx);
  if (!catalog.ok) return catalog;
  const graphic = catalog.value.engine.build.houseGraphics.find(({ id }) => id === input.graphic);
  if (graphic === undefined) return refuse({ code: "not-found", what: "graphic", path: "graphic" });
  const box = { x: -area.reachMm, y: 0, width: 2 * area.reachMm, height: area.lengthMm };
  const svg = lyingSvg({ box, marks: housePattern(graphic, area) }, area.lengthMm, { ...manner, id: "g" });
  return accept({ bytes: new TextEncoder().encode(svg), contentType: "image/svg+xml", fileName: `${graphic.id}.svg` });
}

/** The size that pages which show addresses ask for. */
const card = { widthPx: 1200, heightPx: 630, marginPx: 50 };
const paper = "#f7f4ee";

/**
 * Three pairs of the shop on its paper, or the one whose look the address says: no words, no price, nobody's name.
 * Each is drawn once and kept; a new one counts among what a guest may have drawn. Refuses `budget-used`, `budget-all-used`.
 * @param input.look the query of a shared look; one that cannot be read shows the shop's own
 */
export async function shareCard(
  ctx: Context,
  input: { readonly look: Pick<URLSearchParams, "get"> },
): Promise<Outcome<DocumentBytes>> {
  const catalog = await activeCatalog(ctx);
  if (!catalog.ok) return catalog;
  const { build } = catalog.value.engine;
  const shared = readSharedLook(input.look, build);
  // By what is drawn: other words in an address that say the same, or nothing, draw nothing anew.
  const key = `${catalog.value.hash} ${shared.ok ? sharedLook(shared.value) : ""}`;
  const kept = cards.get(key);
  if (kept !== undefined) return accept({ bytes: kept, contentType: "image/png", fileName: "card.png" });
  const within = await spend(ctx, "drawing");
  if (!within.ok) return within;
  const bytes = await drawCard(build, shared.ok ? pairLook(shared.value, build) : null);
  if (cards.size >= mostCards) cards.delete([...cards.keys()][0] ?? key);
  cards.set(key, bytes);
  return accept({ bytes, contentType: "image/png", fileName: "card.png" });
}

/** Of about 60 kB each, the one that was drawn longest ago goes first. */
const cards = new Map<string, Uint8Array>();
const mostCards = 100;

async function drawCard(build: BuildCatalog, look: PairLook | null): Promise<Uint8Array> {
  const scenes = look ? [pairScene(look), sideScene(look)] : pairsToShow(build);
  const roomPx = (card.heightPx - 2 * card.marginPx) / Math.max(1, scenes.length);
  const composite = scenes.map((scene, i) => {
    // As long as the card allows, and no taller than its row.
    const longest = Math.min(card.widthPx - 2 * card.marginPx, roomPx * 0.86 * (scene.box.height / scene.box.width));
    return {
      input: Buffer.from(lyingSvg(scene, Math.round(longest), { ...manner, id: `c${i}` })),
      left: card.marginPx,
      top: Math.round(card.marginPx + i * roomPx),
    };
  });
  const ground = { width: card.widthPx, height: card.heightPx, channels: 3, background: paper } as const;
  return sharp({ create: ground }).composite(composite).png().toBuffer();
}

/** Models that differ most at a glance: the first, the middle and the last in use. */
function pairsToShow(build: BuildCatalog): readonly Scene[] {
  const models = build.models.filter(({ state }) => state === "active");
  const chosen = new Set([models[0], models[Math.floor(models.length / 2)], models.at(-1)]);
  return [...chosen].flatMap((model): Scene[] => {
    const look = model === undefined ? null : modelLook(model, build);
    return look ? [pairScene(look)] : [];
  });
}
