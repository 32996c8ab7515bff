/** Letters under way: carried out by a worker, looked at and sent again by a person. */
import { permit } from "#auth";
import { addJob, type Job, type JobQueue } from "#data/jobs";
import { type LetterRecord, letterById, letterText, listLetters, moveLetter, noteLetterProblem } from "#data/letters";
import { transaction, translated } from "#data/transaction";
import { accept, type Outcome, refuse } from "#engine/units";
import type { Context } from "#services/context";
import { moveState } from "#services/move";
import { eventOf } from "#services/record";
import type { Post } from "./post";
import type { LetterView } from "./views";

const most = 100;
const atOnce = 5;
const longestProblem = 300;

/**
 * Carries out what is due, once around. For the worker alone.
 * @returns how many letters were looked at
 */
export async function postLetters(ctx: Context, queue: JobQueue, post: Post): Promise<number> {
  const jobs = await queue.take("letter", atOnce);
  for (const job of jobs) await postOne(ctx, queue, post, job);
  return jobs.length;
}

async function postOne(ctx: Context, queue: JobQueue, post: Post, job: Job): Promise<void> {
  const letter = await translated(letterById(ctx.db, job.rowId));
  // Gone already, when the instance that sent it vanished before it could say so.
  if (letter === null || letter.state !== "waiting" || letter.body === null) return queue.done("letter", job);
  try {
    const { id, recipient, heading, createdAt } = letter;
    await post({ id, to: recipient, subject: heading, text: letterText(letter) ?? "", createdAt });
  } catch (error) {
    const problem = (error instanceof Error ? error.message : String(error)).slice(0, longestProblem);
    if (job.isLastTry) await move(ctx, letter, "dead", problem);
    else await translated(noteLetterProblem(ctx.db, letter.id, problem));
    return queue.failed("letter", job, problem);
  }
  await move(ctx, letter, "sent", null);
  return queue.done("letter", job);
}

/** On their way, and given up; newest first. */
export async function listWaitingLetters(ctx: Context): Promise<Outcome<readonly LetterView[]>> {
  const allowed = permit(ctx.actor, "notice.send");
  if (!allowed.ok) return allowed;
  return accept((await translated(listLetters(ctx.db, ["waiting", "dead"], most))).map(letterView));
}

/** A letter that was given up goes through the queue once more. Refuses `not-found`, `letter-forgotten`, `changed-meanwhile`. */
export async function sendLetterAgain(
  ctx: Context,
  input: { readonly letterId: string },
): Promise<Outcome<LetterView>> {
  const allowed = permit(ctx.actor, "notice.send");
  if (!allowed.ok) return allowed;
  const letter = await translated(letterById(ctx.db, input.letterId));
  if (letter === null) return refuse({ code: "not-found", what: "letter", id: input.letterId });
  if (letter.state === "dead" && letter.body === null) return refuse({ code: "letter-forgotten", id: letter.id });
  const isWaiting = letter.state === "dead" && (await move(ctx, letter, "waiting", null));
  if (!isWaiting) return refuse({ code: "changed-meanwhile", what: "letter", id: letter.id, version: 0 });
  return accept(letterView({ ...letter, state: "waiting", tries: 0, problem: null }));
}

const told = { sent: "letter-sent", dead: "letter-given-up", waiting: "letter-sent-again" } as const;

async function move(
  ctx: Context,
  letter: LetterRecord,
  to: LetterRecord["state"],
  problem: string | null,
): Promise<boolean> {
  const subject = { kind: letter.subjectKind, id: letter.subjectId };
  return transaction(ctx.db, (tx) =>
    moveState(
      tx,
      { kind: "letter", from: letter.state, to },
      async () => {
        const sentAt = to === "sent" ? ctx.now : null;
        const isOurs = await moveLetter(tx, letter, { state: to, problem, sentAt });
        if (isOurs && to === "waiting") await addJob(tx, "letter", letter.id);
        return isOurs;
      },
      [eventOf(ctx, told[to], subject, { letterId: letter.id, kind: letter.kind })],
    ),
  );
}

function letterView(letter: LetterRecord): LetterView {
  return {
    letterId: letter.id,
    kind: letter.kind,
    recipient: letter.recipient,
    subject: letter.heading,
    state: letter.state,
    tries: letter.tries,
    problem: letter.problem,
    canBeSentAgain: letter.state === "dead" && letter.body !== null,
    createdAt: letter.createdAt.toISOString(),
  };
}
