/** Letters to customers: read, sent or dropped by a person. */

import { permit } from "#auth";
import problems from "#content/copy/problems.json";
import { letterStates } from "#data/letters";
import { decideNotice, listNoticeRecords, type NoticeRecord, noticeById } from "#data/notices";
import { queueMessages } from "#data/outbox";
import { transaction, translated } from "#data/transaction";
import type { LetterState, NoticeState } from "#engine/floor";
import type { NoticeId } from "#engine/units";
import { accept, fill, type Outcome, refuse } from "#engine/units";
import type { Context } from "#services/context";
import { moveState } from "#services/move";
import { eventOf, messageOf, nameOf } from "#services/record";
import { orderNumber } from "#shop/names/numbers";
import { enqueueLetter, isMailAddress } from "./enqueue-letter";
import type { NoticeView } from "./views";

const w = problems.letters;

const most = 200;
const longestLetter = 5000;

/** Drafts first, newest first. */
export async function listNotices(ctx: Context): Promise<Outcome<readonly NoticeView[]>> {
  const allowed = permit(ctx.actor, "notice.send");
  if (!allowed.ok) return allowed;
  const notices = await translated(listNoticeRecords(ctx.db, most));
  const states = await translated(
    letterStates(
      ctx.db,
      notices.map(({ id }) => id),
    ),
  );
  return accept(notices.map((notice) => noticeView(notice, states.get(notice.id) ?? null)));
}

/** Sends a draft as it was last edited: by the queue, or by hand where there is no mail address. Refuses `not-found`, `invalid-field` (body), `changed-meanwhile`. */
export async function sendNotice(
  ctx: Context,
  input: { readonly noticeId: NoticeId; readonly version: number; readonly body: string },
): Promise<Outcome<NoticeView>> {
  const body = input.body.trim();
  return decide(ctx, input, "sent", { body, reason: null });
}

/** Throws a draft away, with a reason. Refuses `reason-missing`, `not-found`, `changed-meanwhile`. */
export async function dropNotice(
  ctx: Context,
  input: { readonly noticeId: NoticeId; readonly version: number; readonly reason: string },
): Promise<Outcome<NoticeView>> {
  return decide(ctx, input, "dropped", { body: null, reason: input.reason.trim() });
}

async function decide(
  ctx: Context,
  input: { readonly noticeId: NoticeId; readonly version: number },
  state: Exclude<NoticeState, "draft">,
  what: { readonly body: string | null; readonly reason: string | null },
): Promise<Outcome<NoticeView>> {
  const allowed = permit(ctx.actor, "notice.send");
  if (!allowed.ok) return allowed;
  if (what.reason === "") return refuse({ code: "reason-missing", path: "reason" });
  if (what.body !== null && (what.body === "" || what.body.length > longestLetter)) {
    const message = fill(w.length, { most: longestLetter, length: what.body.length });
    return refuse({ code: "invalid-field", path: "body", message });
  }
  const notice = await translated(noticeById(ctx.db, input.noticeId));
  if (notice === null) return refuse({ code: "not-found", what: "notice", id: input.noticeId });
  return transaction(ctx.db, async (tx) => {
    const body = what.body ?? notice.body;
    const decision = { state, body, at: ctx.now, by: nameOf(ctx.actor), reason: what.reason };
    const subject = { kind: "order", id: notice.orderId } as const;
    const data = { noticeId: notice.id, kind: notice.kind, reason: what.reason };
    const isDecided =
      notice.state === "draft" &&
      (await moveState(
        tx,
        { kind: "notice", from: notice.state, to: state },
        () => decideNotice(tx, notice.id, input.version, decision),
        [eventOf(ctx, `notice-${state}`, subject, data)],
      ));
    if (!isDecided) return refuse({ code: "changed-meanwhile", what: "notice", id: notice.id, version: input.version });
    const to = recipientOf(notice);
    // Whoever gave no mail address is told by the person who says so here.
    const byMail = state === "sent" && isMailAddress(to);
    if (byMail) {
      const text = { subject: fill(w.heading, { order: orderNumber(notice.order) }), text: body };
      // A notice is sent once at most, so its letter has its id: what became of it is asked of the letter.
      const letter = { id: notice.id, kind: `notice-${notice.kind}`, to, about: subject, createdAt: ctx.now };
      await enqueueLetter(tx, { ...letter, ...text });
    }
    // That it was told is kept; what it says stays with the notice alone.
    if (state === "sent") await queueMessages(tx, [messageOf(ctx, `notice-${notice.kind}`, to, subject, data)]);
    const after = await noticeById(tx, notice.id);
    if (after === null) throw new Error(`notice ${notice.id} was there a moment ago`);
    return accept(noticeView(after, byMail ? "waiting" : null));
  });
}

function recipientOf({ order }: NoticeRecord): string {
  return order.customer.email ?? order.customer.phone ?? "desk";
}

/** @param letter where its letter is; null where none was written */
export function noticeView(notice: NoticeRecord, letter: LetterState | null): NoticeView {
  return {
    noticeId: notice.id,
    orderId: notice.orderId,
    orderNumber: orderNumber(notice.order),
    recipient: recipientOf(notice),
    byMail: isMailAddress(recipientOf(notice)),
    kind: notice.kind,
    state: notice.state,
    letter,
    version: notice.version,
    body: notice.body,
    promisedOn: notice.order.promisedOn,
    draftedAt: notice.draftedAt.toISOString(),
    draftedBy: notice.draftedByName,
    decided:
      notice.decidedAt === null
        ? null
        : { at: notice.decidedAt.toISOString(), by: notice.decidedByName ?? "", reason: notice.decidedReason },
  };
}
