/**
 * What a shop says about all it holds, read through its use cases alone: orders, promises, money, pairs, quotes, clubs,
 * incidents and papers. Written down by the version that made the data, and asked again of every later one. Ids, hashes and
 * whatever depends on simulated futures are left out; inlays go by what they are, not by their id.
 */
import { createHash } from "node:crypto";
import { solveSpec } from "#engine/configuration";
import { type Price, priceSpec } from "#engine/pricing";
import type { Outcome } from "#engine/units";
import {
  buildSheetDocument,
  type Context,
  catalogOfRelease,
  clubDocument,
  type DocumentBytes,
  kitListDocument,
  labelsDocument,
  listClubs,
  listDrafts,
  listFloorChanges,
  listIncidents,
  listNotices,
  listOrders,
  listQuotes,
  type OrderView,
  orderDocument,
  type Page,
  type PairId,
  type PairView,
  proofDocument,
  type QuoteView,
  quoteDocument,
  readClub,
  readIncident,
  readLearning,
  readOrder,
  readPair,
  readProgress,
  readQuote,
  readSheet,
  readStripStock,
} from "#services";
import { releasedCatalog } from "#shop/catalogue/current";
import { readers } from "../../papers/pdf-text";
import { must } from "../builders/shop";

export type ShopFacts = Awaited<ReturnType<typeof shopFacts>>;

/** Everything but the papers. @param ctx the owner's, who may see all */
export async function shopFacts(ctx: Context) {
  const orders = await all((page) => listOrders(ctx, { page }));
  const quotes = await all((page) => listQuotes(ctx, { page }));
  const orderFacts: Record<string, unknown> = {};
  const pairs: PairView[] = [];
  for (const { orderId } of orders) {
    const order = must(await readOrder(ctx, { orderId }));
    orderFacts[order.number] = await orderFact(ctx, order);
    for (const { pairId } of order.pairs) pairs.push(must(await readPair(ctx, { pairId })));
  }
  const quoteFacts: Record<string, unknown> = {};
  for (const { quoteId } of quotes) {
    const quote = must(await readQuote(ctx, { quoteId }));
    quoteFacts[quote.number] = await quoteFact(ctx, quote);
  }
  return {
    orders: orderFacts,
    pairs: Object.fromEntries(pairs.map((pair) => [pair.serial, pairFact(pair)])),
    quotes: quoteFacts,
    sheets: await sheetFacts(ctx),
    clubs: await clubFacts(ctx),
    floor: await floorFacts(ctx),
    learning: await learningFacts(ctx),
    wood: must(await readStripStock(ctx)).species,
    releases: await releaseFacts(ctx, pairs),
  };
}

/** Papers of every kind, one for each state that things can be in, word by word. */
export async function paperFacts(ctx: Context): Promise<Readonly<Record<string, readonly string[]>>> {
  const papers: Record<string, readonly string[]> = {};
  const say = async (name: string, paper: Promise<Outcome<DocumentBytes>>) => {
    papers[name] = readers.readByOurselves(must(await paper).bytes).map((text) => text.replace(/\s+/g, " ").trim());
  };
  const quotes = await all((page) => listQuotes(ctx, { page }));
  for (const { quoteId, number } of firstOfEach(quotes, ({ state }) => state))
    await say(`quote ${number}`, quoteDocument(ctx, { quoteId, paper: "A4" }));
  const orders = (await all((page) => listOrders(ctx, { page }))).filter(({ state }) => state !== "cancelled");
  const proofs = new Map<string, PairId>();
  for (const { orderId } of orders) {
    for (const { pairId, proofState } of must(await readOrder(ctx, { orderId })).pairs)
      if (proofState !== "none" && !proofs.has(proofState)) proofs.set(proofState, pairId);
  }
  for (const { orderId, number, state } of firstOfEach(orders, (order) => order.state)) {
    await say(`confirmation ${number}`, orderDocument(ctx, { orderId, paper: "LETTER" }));
    const [pair] = must(await readOrder(ctx, { orderId })).pairs;
    if (pair === undefined || state === "waiting") continue;
    const input = { pairId: pair.pairId, paper: "A4" } as const;
    await say(`build sheet ${pair.serial}`, buildSheetDocument(ctx, input));
    await say(`kit list ${pair.serial}`, kitListDocument(ctx, input));
    await say(`labels ${pair.serial}`, labelsDocument(ctx, input));
  }
  for (const [state, pairId] of proofs) await say(`proof ${state}`, proofDocument(ctx, { pairId, paper: "A4" }));
  for (const { clubId, number } of must(await listClubs(ctx)))
    await say(`club ${number}`, clubDocument(ctx, { clubId, paper: "A4" }));
  return papers;
}

function firstOfEach<T>(rows: readonly T[], keyOf: (row: T) => string): readonly T[] {
  return rows.filter((row, index) => rows.findIndex((other) => keyOf(other) === keyOf(row)) === index);
}

async function all<T>(read: (page: number) => Promise<Outcome<Page<T>>>): Promise<readonly T[]> {
  const rows: T[] = [];
  for (let page = 1; ; page += 1) {
    const { rows: next, total } = must(await read(page));
    rows.push(...next);
    if (rows.length >= total || next.length === 0) return rows;
  }
}

async function orderFact(ctx: Context, order: OrderView) {
  const [pair] = order.pairs;
  const progress = pair === undefined ? null : must(await readProgress(ctx, { pairId: pair.pairId }));
  return {
    state: order.state,
    quote: order.quote.number,
    customer: order.customer.name,
    club: order.club?.number ?? null,
    acceptedAt: order.acceptedAt,
    promiseClass: classFact(order.promiseClass),
    promisedOn: order.promisedOn,
    estimate: [order.estimate.p50, order.estimate.p90],
    dates: progress?.dateHistory.map(({ at: _at, ...told }) => told) ?? [],
    hardDate: order.hardDate,
    slotLost: order.slotLost,
    clockStartedAt: order.clockStartedAt,
    waitingFor: order.waitingFor,
    price: priceFact(order.price),
    money: order.money,
    payments: order.payments.map(({ kind, state, cents, method, at }) => [kind, state, cents, method, at]),
    cancelled: order.cancelled,
    customerSpecified: order.customerSpecified.length,
    history: order.history.map(({ kind, at }) => `${at} ${kind}`),
    pairs: order.pairs.map(({ serial }) => serial),
  };
}

/** How binding a day is, in the words of the first version: ids of a class may change, what they mean may not. */
function classFact(promiseClass: OrderView["promiseClass"]): string {
  return promiseClass === "hard-date" ? "hard" : promiseClass;
}

function priceFact({ priceBook, lines, exTaxCents, shippingCents, taxCents, totalCents, depositCents }: Price) {
  const cents = lines.map(({ lineCents }) => lineCents);
  return { priceBook, lines: cents, exTaxCents, shippingCents, taxCents, totalCents, depositCents };
}

function pairFact(pair: PairView) {
  const { springCentreNPerMm, springForebodyNPerMm, springAfterbodyNPerMm, massKg } = pair.flex;
  return {
    state: pair.state,
    order: pair.orderNumber,
    revision: pair.revision,
    spec: specFact(pair.spec),
    mould: pair.mould,
    skis: pair.skis.map(({ serial, state, location }) => [serial, state, location]),
    springs: [springCentreNPerMm, springForebodyNPerMm, springAfterbodyNPerMm].map(rounded),
    massKg: rounded(massKg),
    achievedRatio: rounded(pair.core.achievedRatio),
    strips: digest(pair.strips.map((strip) => [strip.side, strip.position, strip.place, strip.species, strip.bin])),
    parts: pair.parts.lines.length,
    operations: pair.operations.map(
      ({ stationName, visit, side, state }) => `${stationName} ${visit}${side ?? ""} ${state}`,
    ),
    ticked: pair.operations.map(({ startedAt, finishedAt }) => [startedAt, finishedAt]).filter(([at]) => at !== null),
    holds: pair.holds.map(({ reason, expectedOn }) => [reason, expectedOn]),
    gates: pair.gates,
    proofs: pair.proofs.map(({ revision, state, note, answeredBy }) => [revision, state, note, answeredBy]),
    promise: [classFact(pair.promiseClass), pair.promisedOn],
    prints: pair.prints.map(({ print, pairRevision, voided }) => [print, pairRevision, voided?.reason ?? null]),
    revisions: pair.revisions.map(({ revision, reason, by }) => [revision, reason, by]),
    history: pair.history.map(({ kind, at }) => `${at} ${kind}`),
  };
}

function specFact(spec: PairView["spec"]) {
  const { model, lengthCm, core, reinforcements, flexRatio, base, graphic, mount } = spec;
  const { left, right, inlay, inlayText = null } = base;
  const letters = inlay === "none" || inlay === "complex" ? inlay : "letters exchanged between the bases";
  return {
    ski: [model, lengthCm, core, ...reinforcements],
    flexRatio,
    base: [left, right, letters, inlayText],
    graphic: [graphic.kind, graphic.house ?? null, graphic.layout, graphic.text?.text ?? null],
    mountMm: mount.offsetMm,
  };
}

/** What was frozen, and what its own release and price book say today of the same spec. */
async function quoteFact(ctx: Context, quote: QuoteView) {
  const { priceBook, destination } = quote.price;
  const { engine } = must(await catalogOfRelease(ctx, { hash: quote.releaseHash, priceBook }));
  const again = must(priceSpec(quote.spec, engine.priceBook, engine.build, { destination }));
  return {
    state: quote.state,
    customer: quote.customer.name,
    club: quote.club?.skierName ?? null,
    spec: specFact(quote.spec),
    price: priceFact(quote.price),
    pricedAgainCents: again.totalCents,
    fit: [
      quote.fit.modelName,
      quote.fit.flexClassLabel,
      rounded(quote.fit.massKg),
      rounded(quote.fit.springCentreNPerMm),
    ],
    answers: quote.answers,
    dateRange: [quote.dateRange.p50, quote.dateRange.p90],
    validUntilDay: quote.validUntilDay,
    replaces: quote.replaces?.number ?? null,
    replacedBy: quote.replacedBy?.number ?? null,
    changeRequest: quote.changeRequest,
    withdrawn: quote.withdrawn,
    honoured: quote.honoured?.reason ?? null,
    order: quote.order?.number ?? null,
    history: quote.history.map(({ kind, at }) => `${at} ${kind}`),
  };
}

async function sheetFacts(ctx: Context) {
  const facts: unknown[] = [];
  for (const { sheetId, name } of await all((page) => listDrafts(ctx, { page }))) {
    const sheet = must(await readSheet(ctx, { sheetId }));
    const { base, ...choices } = sheet.choices;
    facts.push({
      name,
      state: sheet.state,
      answers: sheet.answers,
      choices: { ...choices, graphic: choices.graphic?.kind ?? null },
      base: base === undefined ? null : [base.left, base.right, base.inlay !== "none", base.inlayText ?? null],
      callBack: sheet.callBack,
      review: sheet.review,
      turnedDown: sheet.turnedDown,
      quotes: sheet.quotes.map(({ number }) => number),
    });
  }
  return facts;
}

async function clubFacts(ctx: Context) {
  const facts: Record<string, unknown> = {};
  for (const { clubId, number } of must(await listClubs(ctx))) {
    const club = must(await readClub(ctx, { clubId }));
    facts[number] = {
      name: club.name,
      palette: [club.palette.base.left, club.palette.base.right, club.palette.house],
      members: club.members.map(({ skierName, quote, pair }) => [
        skierName,
        quote?.number ?? null,
        pair?.serial ?? null,
      ]),
      open: club.open?.quoteIds.length ?? 0,
      orders: club.orders.map((order) => order.number),
    };
  }
  return facts;
}

async function floorFacts(ctx: Context) {
  const incidents: Record<string, unknown> = {};
  for (const { incidentId, number } of must(await listIncidents(ctx))) {
    const { input, state, note, options, chosen, effect, base } = must(await readIncident(ctx, { incidentId }));
    incidents[number] = {
      kind: input.kind,
      state,
      note,
      ways: options.map(({ way, costCents }) => [way, costCents]),
      chosen: chosen && [chosen.option, chosen.reason, chosen.costCents],
      moved: effect.moved.length,
      short: base?.pairs.map(({ serial, isServed }) => [serial, isServed]) ?? null,
    };
  }
  const changes = must(await listFloorChanges(ctx)).map(({ kind, reason, source, fromAt, toAt }) => ({
    kind,
    reason,
    source,
    fromAt,
    toAt,
  }));
  const letters = must(await listNotices(ctx)).map(({ orderNumber, kind, state, body }) => [
    orderNumber,
    kind,
    state,
    body,
  ]);
  return { incidents, changes, letters };
}

/** What every stored release makes of one plain pair and one with letters: cents by each of its price books, and a core. */
async function releaseFacts(ctx: Context, pairs: readonly PairView[]) {
  const lettered = pairs.find(({ spec }) => spec.base.inlayText === "READY");
  const plain = pairs.find(({ spec }) => spec.base.inlayText === undefined);
  const specs = [lettered, plain].flatMap((pair) => (pair === undefined ? [] : [pair.spec]));
  if (specs.length !== 2) throw new Error("the shop has no pair with letters or none without");
  const facts: Record<string, unknown> = {};
  for (const { hash } of await ctx.db.catalogueRelease.findMany({ select: { hash: true }, orderBy: { hash: "asc" } })) {
    const catalog = await releasedCatalog(ctx.db, hash);
    if (catalog === null) throw new Error(`release ${hash} cannot be read`);
    const { build, priceBooks, floor } = catalog;
    facts[hash] = {
      stations: floor.stations.length,
      books: priceBooks.map((book) => [
        book.id,
        ...specs.map((spec) => {
          const price = priceSpec(spec, book, build, { destination: "home" });
          return price.ok ? price.value.totalCents : price.refusal.code;
        }),
      ]),
      skis: specs.map((spec) => {
        const { springCentreNPerMm, massKg } = must(solveSpec(spec, build)).flexWithPlate;
        return [rounded(springCentreNPerMm), rounded(massKg)];
      }),
    };
  }
  return facts;
}

async function learningFacts(ctx: Context) {
  const { skis, decisions, books } = must(await readLearning(ctx));
  return {
    skis: skis.length,
    decisions: decisions.map(({ serial, measure, choice, reason }) => [serial, measure, choice, reason]),
    books: books.map(({ version }) => version),
  };
}

/** Six figures: what the engine says to a bench, without the last bits of the arithmetic. */
function rounded(value: number): number {
  return Number(value.toPrecision(6));
}

function digest(value: unknown): string {
  return createHash("sha256").update(JSON.stringify(value)).digest("hex").slice(0, 12);
}
