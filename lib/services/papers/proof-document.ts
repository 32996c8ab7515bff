import { permit } from "#auth";
import { config } from "#config";
import { artworkImage } from "#data/artwork";
import type { PairRecord } from "#data/pairs";
import { shapeAtLength } from "#engine/geometry";
import type { PairId } from "#engine/units";
import { accept, type Outcome, refuse } from "#engine/units";
import { composeProof, type Paper, type ProofFacts, type ProofStanding } from "#papers";
import type { Context } from "#services/context";
import { spend } from "#services/doors/budgets";
import { proofPictures } from "#services/graphics/proof-pictures";
import { findPair } from "#services/orders/find-order";
import { proofWaits } from "#services/orders/proof-to-answer";
import { drawInTurn } from "#services/papers/draw-in-turn";
import { linkForPaper } from "#services/people/links";
import { currentCatalog, releasedCatalog } from "#shop/catalogue/current";
import type { DocumentBytes } from "#shop/names/views";
import { standingSki } from "#shop/pair/standing-ski";
import { shopClock } from "#shop/time/shop-time";
import { pdf, shopFacts } from "./pair-documents";

export interface ProofDocumentInput {
  readonly pairId: PairId;
  readonly paper: Paper;
  /** Of the link it is asked for through: its code opens the same page. Without it the office's paper gets a link of its own. */
  readonly token?: string;
}

/**
 * The proof as PDF: what is printed on both skis, from the pair's current specification. Staff see it before it is sent.
 * Refuses `not-needed` where the graphic is the shop's own without words, `no-proof` to a skier who has been sent none,
 * `order-closed` for a cancelled pair.
 */
export async function proofDocument(ctx: Context, input: ProofDocumentInput): Promise<Outcome<DocumentBytes>> {
  const found = await findPair(ctx, ctx.db, "pair.progress", input.pairId);
  if (!found.ok) return found;
  const pair = found.value;
  if (!pair.proofNeeded) return refuse({ code: "not-needed", what: "proof" });
  if (pair.state === "cancelled") return refuse({ code: "order-closed", state: pair.state });
  const standing = standingOf(ctx, pair);
  if (standing.state === "draft" && ctx.actor.kind === "guest") return refuse({ code: "no-proof", pairId: pair.id });
  const within = await spend(ctx, "drawing");
  if (!within.ok) return within;
  const data = composeProof(await proofFacts(ctx, pair, standing, input.token));
  const bytes = await drawInTurn(ctx, "proof", data, input.paper);
  return accept(pdf(bytes, `${pair.serial}-proof-${data.stamp.revision}.pdf`));
}

async function proofFacts(
  ctx: Context,
  pair: PairRecord,
  standing: ProofStanding,
  token: string | undefined,
): Promise<ProofFacts> {
  const { shop } = currentCatalog();
  const catalog = await releasedCatalog(ctx.db, pair.releaseHash);
  if (catalog === null) throw new Error(`catalogue release ${pair.releaseHash} is not stored`);
  const { build, recipe } = catalog;
  const spec = pair.spec;
  const model = build.models.find(({ id }) => id === spec.model);
  if (model === undefined) throw new Error(`pair ${pair.serial}: model ${spec.model} is not in its own release`);
  const { artwork } = spec.graphic;
  const picture = artwork ? await artworkImage(ctx.db, artwork.id, "full") : null;
  const latest = pair.proofs.at(-1);
  return {
    shop: shopFacts(shop),
    stamp: {
      printedAt: shopClock(ctx.now, shop.timeZone),
      revision: (latest?.revision ?? 0) + (standing.state === "draft" ? 1 : 0),
      specHash: pair.specHash,
    },
    serial: pair.serial,
    leftSerial: standingSki(pair, "L")?.serial ?? "",
    rightSerial: standingSki(pair, "R")?.serial ?? "",
    url: await pageOf(ctx, pair, token),
    catalog: build,
    spec,
    printFace: recipe.printFace,
    pictures: await proofPictures(spec, shapeAtLength(model.shape, spec.lengthCm), build, picture?.bytes ?? null),
    note: standing.state === "issued" ? (latest?.note ?? null) : null,
    standing,
  };
}

/** The customer's page of the pair; who may not read the order prints for the bench, and gets no key to it. */
async function pageOf(ctx: Context, { orderId, serial }: PairRecord, token: string | undefined): Promise<string> {
  const { publicOrigin } = config();
  if (token !== undefined) return `${publicOrigin}/pair/${token}`;
  const subject = { kind: "order", id: orderId } as const;
  if (!permit(ctx.actor, "order.read", subject).ok) return `${publicOrigin}/shop/pair/${serial}`;
  return `${publicOrigin}/pair/${await linkForPaper(ctx, subject)}`;
}

/** A void proof counts as none. The approver's full name is the office's and the skier's own business. */
function standingOf(ctx: Context, pair: PairRecord): ProofStanding {
  const proof = pair.proofs.at(-1);
  if (proof === undefined || proof.state === "void") return { state: "draft" };
  if (proof.answeredAt === null) {
    const { answerBy, meanwhile } = proofWaits(pair, proof.issuedAt);
    return { state: "issued", answerBy, order: meanwhile };
  }
  const at = shopClock(proof.answeredAt, currentCatalog().shop.timeZone);
  if (proof.state === "changes-asked") return { state: "changes-asked", at, note: proof.note ?? "" };
  const isTold = permit(ctx.actor, "order.read", { kind: "order", id: pair.orderId }).ok;
  return { state: "approved", at, by: isTold ? proof.answeredByName : null };
}
