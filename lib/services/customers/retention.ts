/** How long what is kept: set by the owner, looked at before it is done, and done by hand or once a day. */

import { permit } from "#auth";
import { dropPictures } from "#data/artwork";
import type { Tx } from "#data/client";
import { recordEvents } from "#data/events";
import { forgetPictures, forgetSheets } from "#data/forget";
import { personalColumns, personalFiles } from "#data/personal-data";
import {
  artworksOfSheets,
  countOldLetters,
  emptyOldLetters,
  staleAskers,
  staleBuyers,
  staleDrafts,
  staleUnconfirmed,
} from "#data/persons";
import { insertRetention, retentionInForce } from "#data/retention";
import { moveSheet } from "#data/sheets";
import { transaction } from "#data/transaction";
import { accept, type Outcome, refuse } from "#engine/units";
import { idOf } from "#schemas/ids";
import { type RetentionKind, type RetentionRules, retentionKinds } from "#schemas/stored/index";
import type { Context } from "#services/context";
import { moveState } from "#services/move";
import { releaseUnconfirmed } from "#services/orders/release-unconfirmed";
import { eventOf, nameOf } from "#services/record";
import { orderNumber } from "#shop/names/numbers";
import { erasedWord, eraseInside } from "./erase-person";
import type { RetentionLine, RetentionView } from "./views";

/** Nothing goes by itself before the owner has said so. */
const keepAll: RetentionRules = { drafts: null, askers: null, unconfirmed: null, letters: null, buyers: null };
/** At most so many of a kind in one round; the next round takes the rest. */
const mostAtOnce = 200;
const shown = 8;
const dayMs = 86_400_000;
const bySettings = "retention";

/** The rules in force, and what they (or others that are only asked about) would forget now. Changes nothing. Owner only. */
export async function readRetention(ctx: Context, asked?: RetentionRules): Promise<Outcome<RetentionView>> {
  const allowed = permit(ctx.actor, "retention.set");
  if (!allowed.ok) return allowed;
  const set = await retentionInForce(ctx.db);
  const rules = asked ?? set?.rules ?? keepAll;
  const lines: RetentionLine[] = [];
  for (const kind of retentionKinds) lines.push(await lineOf(ctx, kind, rules[kind]));
  return accept({
    rules,
    set: set === null ? null : { by: set.setByName, at: set.setAt.toISOString(), reason: set.reason },
    lines,
    ...placesOfPersons(),
  });
}

/** The list that erasing goes by, for people. */
function placesOfPersons(): Pick<RetentionView, "tables" | "files"> {
  const tables = Object.entries(personalColumns).flatMap(([place, columns]) =>
    (["customer", "words", "staff"] as const).flatMap((holds) => {
      const names = Object.keys(columns).filter((name) => columns[name] === holds);
      return names.length === 0 ? [] : [{ place, holds, columns: names }];
    }),
  );
  const files = Object.entries(personalFiles).map(([place, holds]) => ({ place, holds }));
  return { tables, files };
}

async function lineOf(ctx: Context, kind: RetentionKind, days: number | null): Promise<RetentionLine> {
  if (days === null) return { kind, days, count: 0, first: [] };
  const before = cutOff(ctx, days);
  if (kind === "letters") return { kind, days, count: await countOldLetters(ctx.db, before, erasedWord), first: [] };
  const names = await namesOf(ctx.db, kind, before);
  return { kind, days, count: names.length, first: names.slice(0, shown) };
}

const cutOff = (ctx: Context, days: number) => new Date(ctx.now.getTime() - days * dayMs);

async function namesOf(client: Tx, kind: Exclude<RetentionKind, "letters">, before: Date): Promise<readonly string[]> {
  switch (kind) {
    case "drafts":
      return (await staleDrafts(client, before, mostAtOnce)).map(({ updatedAt }) =>
        updatedAt.toISOString().slice(0, 10),
      );
    case "askers":
      return (await staleAskers(client, before, mostAtOnce)).map(({ name }) => name);
    case "buyers":
      return (await staleBuyers(client, before, mostAtOnce)).map(({ name }) => name);
    case "unconfirmed":
      return (await staleUnconfirmed(client, before, mostAtOnce)).map(orderNumber);
  }
}

/** Sets the rules; nothing is forgotten by it. Owner only. Refuses `reason-missing`. */
export async function setRetention(
  ctx: Context,
  input: { readonly rules: RetentionRules; readonly reason: string },
): Promise<Outcome<RetentionView>> {
  const allowed = permit(ctx.actor, "retention.set");
  if (!allowed.ok) return allowed;
  const reason = input.reason.trim();
  if (reason === "") return refuse({ code: "reason-missing", path: "reason" });
  const { rules } = input;
  await transaction(ctx.db, async (tx) => {
    await insertRetention(tx, { rules, reason, by: nameOf(ctx.actor), at: ctx.now });
    const subject = { kind: "retention", id: "rules" } as const;
    await recordEvents(tx, [eventOf(ctx, "retention-set", subject, { reason, rules })]);
  });
  return readRetention(ctx);
}

export interface RetentionDone {
  readonly sheets: number;
  readonly persons: number;
  readonly orders: number;
  readonly letters: number;
}

/** Forgets what the rules in force say, each person in a transaction of its own. By the owner, or once a day. */
export async function applyRetention(ctx: Context): Promise<Outcome<RetentionDone>> {
  const allowed = permit(ctx.actor, "retention.set");
  if (!allowed.ok) return allowed;
  const rules = (await retentionInForce(ctx.db))?.rules ?? keepAll;
  const orders = rules.unconfirmed === null ? 0 : await callOff(ctx, cutOff(ctx, rules.unconfirmed));
  const sheets = rules.drafts === null ? 0 : await forgetDrafts(ctx, cutOff(ctx, rules.drafts));
  const askers =
    rules.askers === null ? 0 : await forgetAll(ctx, await staleAskers(ctx.db, cutOff(ctx, rules.askers), mostAtOnce));
  const buyers =
    rules.buyers === null ? 0 : await forgetAll(ctx, await staleBuyers(ctx.db, cutOff(ctx, rules.buyers), mostAtOnce));
  const before = rules.letters === null ? null : cutOff(ctx, rules.letters);
  const letters = before === null ? 0 : await transaction(ctx.db, (tx) => emptyOldLetters(tx, before, erasedWord));
  const done = { sheets, persons: askers + buyers, orders, letters };
  if (Object.values(done).some((count) => count > 0)) {
    await recordEvents(ctx.db, [eventOf(ctx, "retention-applied", { kind: "retention", id: "rules" }, done)]);
  }
  return accept(done);
}

async function callOff(ctx: Context, before: Date): Promise<number> {
  const stale = await staleUnconfirmed(ctx.db, before, mostAtOnce);
  if (stale.length === 0) return 0;
  const orderIds = stale.map(({ id }) => idOf("order", id));
  const released = await releaseUnconfirmed(ctx, { orderIds, reason: bySettings });
  return released.ok ? released.value.released : 0;
}

async function forgetDrafts(ctx: Context, before: Date): Promise<number> {
  let forgotten = 0;
  for (const { id, state } of await staleDrafts(ctx.db, before, mostAtOnce)) {
    const files = await transaction(ctx.db, async (tx) => {
      if (state === "open") {
        const change = { turnedDownReason: bySettings };
        await moveState(tx, { kind: "sheet", from: state, to: "turned-down", reason: bySettings }, () =>
          moveSheet(tx, id, state, "turned-down", change),
        );
      }
      await forgetSheets(tx, [id], erasedWord);
      const gone = await forgetPictures(tx, await artworksOfSheets(tx, [id]), erasedWord);
      await recordEvents(tx, [eventOf(ctx, "sheet-erased", { kind: "sheet", id }, { reason: bySettings })]);
      return gone;
    });
    await dropPictures(ctx.db, files);
    forgotten += 1;
  }
  return forgotten;
}

async function forgetAll(ctx: Context, customers: readonly { readonly id: string }[]): Promise<number> {
  let forgotten = 0;
  for (const { id } of customers) {
    const erased = await transaction(ctx.db, (tx) => eraseInside(ctx, tx, idOf("customer", id), bySettings));
    if (!erased.ok) continue;
    await dropPictures(ctx.db, erased.value.files);
    forgotten += 1;
  }
  return forgotten;
}
