import { sha256Of } from "#catalog";
import history from "#content/copy/history.json";
import type { Tx } from "#data/client";
import { bumpQueue } from "#data/counters";
import { recordEvents } from "#data/events";
import { type OrderRecord, orderById, updateOrder } from "#data/orders";
import { queueMessages } from "#data/outbox";
import {
  insertPairRevision,
  moveProof,
  type PairRecord,
  pairById,
  updatePair,
  voidProof,
  voidTravellers,
} from "#data/pairs";
import { quoteById } from "#data/quotes";
import { detachUsedStrips } from "#data/strips";
import { transaction } from "#data/transaction";
import { assessSheet, type SheetChoices } from "#engine/assessment";
import type { PairSpec } from "#engine/configuration";
import { type EditConsequence, editAllowed, isFinal, type SpecificationPart } from "#engine/floor";
import { comparePrices, joinPrices, type Price } from "#engine/pricing";
import type { PairId } from "#engine/units";
import { accept, fill, type Outcome, type Refusal, refuse } from "#engine/units";
import type { Context } from "#services/context";
import { moveState } from "#services/move";
import { setPromise } from "#services/promises/set-promise";
import { rightsOfSpec } from "#services/quotes/rights";
import { eventOf, isOwner, messageOf, nameOf } from "#services/record";
import { stoppedBy } from "#services/sheets/assess-sheet";
import { allocateStrips } from "#services/stock/allocate";
import { putStripsBack } from "#services/stock/strip-moves";
import { catalogOf, type FrozenCatalog } from "#shop/catalogue/current";
import { mouldOf, needsProof, needsRights } from "#shop/floor/facts";
import { floorCatalog } from "#shop/floor/recipe";
import type { DateRange } from "#shop/names/views";
import { ifCancelled, startedStations } from "#shop/order/view";
import type { EditPreview } from "#shop/order/views";
import { orderedOn } from "#shop/queue/on-floor";
import { rangeOf, rangeOfPairs } from "#shop/queue/range";
import { shopDay } from "#shop/time/shop-time";
import { changedParts } from "./changed-parts";
import { findPair } from "./find-order";
import { changed } from "./gates";
import { canStartAgain, startAgain } from "./start-again";

const w = history.orders;

export interface EditPairInput {
  readonly pairId: PairId;
  /** What changes; the rest of the spec stays. */
  readonly choices: SheetChoices;
  readonly reason: string;
  /** An owner agrees that work already done is lost. */
  readonly ownerApproves?: boolean;
  /** The revision the change was made over. */
  readonly revision: number;
}

/** What the edit would do. Refuses `edit-too-late` (part, station, lostCents: what an owner could still approve). */
export async function previewEdit(
  ctx: Context,
  input: Pick<EditPairInput, "pairId" | "choices"> & { readonly ownerApproves?: boolean },
): Promise<Outcome<EditPreview>> {
  const edit = await workOutEdit(ctx, input);
  return edit.ok ? accept(edit.value.preview) : edit;
}

/**
 * Does it: new revision, price, strips and promise; proof and older prints void. Both versions are kept. Refuses as
 * previewEdit does, and `reason-missing`, `owner-needed`, `changed-meanwhile`.
 */
export async function editPair(ctx: Context, input: EditPairInput): Promise<Outcome<EditPreview>> {
  const reason = input.reason.trim();
  if (reason === "") return refuse({ code: "reason-missing", path: "reason" });
  const edit = await workOutEdit(ctx, input);
  if (!edit.ok) return edit;
  const { pair, preview } = edit.value;
  if (pair.revision !== input.revision)
    return refuse({ code: "changed-meanwhile", what: "pair", revision: pair.revision });
  if (preview.parts.length === 0) return refuse({ code: "nothing-changed", path: "choices" });
  return transaction(ctx.db, async (tx) => {
    await bumpQueue(tx);
    if (!(await writeOrder(ctx, tx, edit.value))) return refuse(changed(pair));
    // The queue's row is held, so the pair can only have changed before this transaction; then nothing of it stays.
    if (!(await writeRevision(ctx, tx, edit.value, reason))) throw new Error(`pair ${pair.serial} changed meanwhile`);
    return accept(preview);
  });
}

interface WorkedEdit {
  readonly pair: PairRecord;
  readonly order: OrderRecord;
  readonly catalog: FrozenCatalog;
  readonly preview: EditPreview;
  readonly rights: Awaited<ReturnType<typeof rightsOfSpec>>;
}

async function workOutEdit(
  ctx: Context,
  input: Pick<EditPairInput, "pairId" | "choices"> & { readonly ownerApproves?: boolean },
): Promise<Outcome<WorkedEdit>> {
  const found = await findPair(ctx, ctx.db, "order.change", input.pairId);
  if (!found.ok) return found;
  const pair = found.value;
  const order = await orderById(ctx.db, pair.orderId);
  const quote = await quoteById(ctx.db, pair.quoteId);
  if (order === null || quote === null) throw new Error(`pair ${pair.id} has no order or quote`);
  if (isFinal("pair", pair.state)) return refuse({ code: "order-closed", state: pair.state });
  // Terms of the accepted quote: the price book it froze holds for changes too.
  const catalog = await catalogOf(ctx.db, { releaseHash: pair.releaseHash, priceBook: quote.priceBook });
  const before = { spec: pair.spec, price: priceOf(pair) };
  const answers = { ...quote.answers, typed: quote.typed };
  const choices: SheetChoices = { ...quote.choices, ...before.spec, ...input.choices };
  const rightsConfirmed = pair.rightsAt !== null;
  const assessment = assessSheet({ answers, choices, rightsConfirmed }, catalog.engine);
  const stops = stoppedBy(assessment, quote.flagAcks);
  const { spec, price } = assessment;
  if (stops.length > 0 || spec === null || price === null) return refuse({ code: "sale-blocked", by: stops });
  const parts = changedParts(before.spec, spec);
  const allowed = await checkStations(ctx, order, pair, parts, input.ownerApproves === true);
  if (!allowed.ok) return allowed;
  const { consequences, lostCents } = allowed.value;
  const after = consequences.includes("promise") ? await rangeAfter(ctx, order, pair, spec) : null;
  return accept({
    pair,
    order,
    catalog,
    rights: await rightsOfSpec(ctx.db, spec),
    preview: {
      pairId: input.pairId,
      parts,
      consequences,
      before,
      after: { spec, price },
      comparison: comparePrices(before.price, price),
      lostCents,
      promise: after === null ? null : { before: order.promisedOn, after },
    },
  });
}

/**
 * Before the clock starts an order's pairs are dated together; afterwards the edited pair alone can be later than what was
 * promised for all. Null: the promise stands for the others' sake.
 */
async function rangeAfter(
  ctx: Context,
  order: OrderRecord,
  pair: PairRecord,
  spec: PairSpec,
): Promise<DateRange | null> {
  if (order.promisedOn === null) {
    const pairs = order.pairs.map((each) => ({
      pairId: each.id,
      spec: each.id === pair.id ? spec : each.spec,
    }));
    return rangeOfPairs(ctx, pairs);
  }
  const { timeZone } = floorCatalog().hours;
  const own = await rangeOf(ctx, spec, {
    without: pair.id,
    isPromise: true,
    orderedOn: orderedOn(pair, shopDay(ctx.now, timeZone), timeZone),
  });
  return order.pairs.length > 1 && own.p90 <= order.promisedOn ? null : own;
}

/** What the pair costs since its latest revision. */
function priceOf(pair: PairRecord): Price {
  const latest = pair.revisions.at(-1);
  if (latest === undefined) throw new Error(`pair ${pair.serial} has no revision`);
  return latest.price;
}

/** Every changed part must still be open; what is closed only an owner may open, at the cost of the work done. */
async function checkStations(
  ctx: Context,
  order: OrderRecord,
  pair: PairRecord,
  parts: readonly SpecificationPart[],
  ownerApproves: boolean,
): Promise<Outcome<{ readonly consequences: readonly EditConsequence[]; readonly lostCents: number }>> {
  const facts = { startedStations: startedStations(pair.operations), shipped: pair.state === "shipped" };
  const answers = parts.map((part) => editAllowed(part, facts, floorCatalog()));
  const late = answers.find((answer) => !answer.ok);
  if (late === undefined || late.ok) {
    const consequences = answers.flatMap((answer) => (answer.ok ? answer.value.consequences : []));
    return accept({ consequences: [...new Set(consequences)], lostCents: 0 });
  }
  const lostCents = (await ifCancelled(ctx.db, order))?.keepCents ?? 0;
  const ownerMayApprove = canStartAgain(pair, parts);
  const refusal: Refusal = { ...late.refusal, lostCents, ownerMayApprove };
  if (!ownerApproves || !ownerMayApprove) return refuse(refusal);
  if (!isOwner(ctx.actor)) return refuse({ code: "owner-needed", action: "edit-after-work", lostCents });
  const open = parts.flatMap((part) => {
    const answer = editAllowed(part, { startedStations: [], shipped: false }, floorCatalog());
    return answer.ok ? answer.value.consequences : [];
  });
  return accept({ consequences: [...new Set(open)], lostCents });
}

async function writeRevision(ctx: Context, tx: Tx, edit: WorkedEdit, reason: string): Promise<boolean> {
  const { pair, catalog, preview, rights } = edit;
  const { spec, price } = preview.after;
  const consequences = new Set(preview.consequences);
  const revision = pair.revision + 1;
  const specHash = sha256Of(spec);
  const isVoid = consequences.has("proof-void");
  const isWritten = await updatePair(tx, pair.id, pair.version, {
    revision,
    spec,
    specHash,
    mould: mouldOf(spec, catalog.engine.build),
    proofNeeded: needsProof(spec),
    rightsNeeded: needsRights(spec),
    ...(isVoid ? { proofAt: null } : {}),
    ...(needsRights(spec) && pair.rightsAt === null && rights !== null ? { rightsAt: rights.at } : {}),
  });
  if (!isWritten) return false;
  if (isVoid) await voidProofsOf(tx, pair, reason);
  if (consequences.has("build-sheet-void"))
    await voidTravellers(tx, pair.id, fill(w.revision, { revision, reason }), ctx.now);
  if (preview.lostCents > 0) await startAgain(tx, pair, reason);
  const strips = consequences.has("new-strips") ? await newStrips(ctx, tx, edit) : null;
  const createdByName = nameOf(ctx.actor);
  await insertPairRevision(tx, {
    pairId: pair.id,
    revision,
    spec,
    specHash,
    price,
    reason,
    createdAt: ctx.now,
    createdByName,
  });
  const data = { revision, reason, parts: preview.parts, consequences: preview.consequences, strips };
  await recordEvents(tx, [eventOf(ctx, "pair-edited", { kind: "pair", id: pair.id }, data)]);
  return true;
}

/** What was issued shows what will not be printed. */
async function voidProofsOf(tx: Tx, pair: PairRecord, reason: string): Promise<void> {
  const { proofState } = pair;
  // The revision has raised the version once.
  const version = pair.version + 1;
  if (proofState !== "none") {
    await moveState(tx, { kind: "proof", from: proofState, to: "none", reason }, () =>
      moveProof(tx, pair.id, { proofState, version }, "none"),
    );
  }
  for (const { id, state } of pair.proofs.filter((proof) => proof.state !== "void")) {
    await moveState(tx, { kind: "proof-issue", from: state, to: "void", reason }, () => voidProof(tx, id, state));
  }
}

async function newStrips(ctx: Context, tx: Tx, { pair, order, catalog, preview }: WorkedEdit) {
  if (order.confirmedAt === null) return null;
  await putStripsBack(tx, pair.id);
  await detachUsedStrips(tx, pair.id);
  return allocateStrips(tx, { pairId: pair.id, spec: preview.after.spec, catalog: catalog.engine, now: ctx.now });
}

/** Price and promise follow the edit; a promise moves only with its event. */
async function writeOrder(ctx: Context, tx: Tx, { pair, order, preview }: WorkedEdit): Promise<boolean> {
  const prices: Price[] = [];
  for (const { id } of order.pairs) {
    const each = id === pair.id ? pair : await pairById(tx, id);
    if (each === null) throw new Error(`pair ${id} of order ${order.id} is gone`);
    prices.push(id === pair.id ? preview.after.price : priceOf(each));
  }
  const price = joinPrices(prices);
  const range: DateRange | null = preview.promise?.after ?? null;
  const change = {
    price,
    totalCents: price.totalCents,
    ...(range === null ? {} : { estimate: range }),
  };
  // A hard date stays while 95 of 100 runs keep it; else it is a promise like others, and its event says so.
  const staysHard =
    order.promiseClass === "hard-date" && range !== null && (range.p95 ?? range.p90) <= `${order.promisedOn}`;
  const isPromised = order.promisedOn !== null && range !== null && !staysHard;
  const lost = order.promiseClass === "hard-date" ? w.hardDateLost : "";
  const reason = fill(w.specificationChanged, { serial: pair.serial, lost });
  const isWritten = isPromised
    ? await setPromise(ctx, tx, order, { on: range.p90, class: "promise", reason, range, with: change })
    : await updateOrder(tx, order.id, order.version, change);
  if (!isWritten) return false;
  const subject = { kind: "order", id: order.id } as const;
  const repriced = { pairId: pair.id, beforeCents: order.totalCents, afterCents: price.totalCents };
  await recordEvents(tx, [
    eventOf(ctx, "order-repriced", subject, repriced),
    ...(range === null || isPromised || staysHard
      ? []
      : [eventOf(ctx, "estimate-changed", subject, { from: order.promisedOn, p50: range.p50, p90: range.p90 })]),
  ]);
  const recipient = order.customer.email ?? order.customer.phone ?? "desk";
  await queueMessages(tx, [messageOf(ctx, "order-edited", recipient, subject, repriced)]);
  return true;
}
