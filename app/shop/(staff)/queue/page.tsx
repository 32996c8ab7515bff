import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { staffContext } from "#app/_server/request.ts";
import { LiveQueue } from "#app/_ui/live-queue.client.tsx";
import { Page } from "#app/_ui/page.tsx";
import { fill } from "#app/_ui/words.ts";
import { CautionReminder } from "#app/shop/caution-reminder.tsx";
import { UnreadableLine } from "#app/shop/unreadable-line.tsx";
import queueWords from "#content/copy/queue.json";
import words from "#content/copy/shop.json";
import { type QueueBoard, queueBoard } from "#services";
import { listHref, type Query } from "../list-href";
import { Blocked } from "./blocked";
import { Board } from "./board";
import { BoardList } from "./board-list";
import { Floor } from "./floor";
import { PressPlan } from "./press-plan";
import { Promises } from "./promises";

const w = words.queue;
export const metadata: Metadata = { title: w.title };

const { links } = queueWords;
const hrefs = {
  order: "/shop/queue/order",
  breakdown: "/shop/queue/breakdown",
  whatIf: "/shop/queue/what-if",
  promises: "/shop/promises",
} as const;

type View = keyof typeof w.view;
const isView = (text: string | undefined): text is View => text !== undefined && text in w.view;

export default async function QueuePage({ searchParams }: { readonly searchParams: Promise<Query> }) {
  const query = await searchParams;
  const ctx = await staffContext(listHref("/shop/queue", query, {}));
  const read = await queueBoard(ctx, { days: 14 });
  if (!read.ok) notFound();
  const board = read.value;
  const view = isView(query.view) ? query.view : "board";
  return (
    <Page
      wide
      title={w.title}
      lead={fill(w.lead, { pairs: board.pairs.length, backlog: board.backlogPairs })}
      aside={<LiveQueue revision={board.revision} />}
    >
      <nav aria-label={links.label} className="no-print -mt-4 mb-4 flex flex-wrap gap-x-5">
        {(["order", "breakdown", "whatIf", "promises"] as const).map((each) => (
          <a key={each} href={hrefs[each]} className="inline-flex min-h-9 items-center">
            {links[each]}
          </a>
        ))}
      </nav>
      <nav
        aria-label={w.views}
        className="no-print mb-6 flex flex-wrap gap-x-5 border-b border-rule max-sm:grid max-sm:grid-cols-2"
      >
        {(Object.keys(w.view) as View[]).map((each) => (
          <a
            key={each}
            href={`/shop/queue?view=${each}`}
            aria-current={each === view ? "page" : undefined}
            className="inline-flex min-h-12 items-center aria-[current=page]:border-b-2 aria-[current=page]:border-larch aria-[current=page]:font-semibold aria-[current=page]:text-ink aria-[current=page]:no-underline"
          >
            {w.view[each]}
          </a>
        ))}
      </nav>
      <CautionReminder ctx={ctx} />
      <UnreadableLine rows={board.unreadable} />
      <Shown view={view} board={board} station={query.station} page={query.page} />
    </Page>
  );
}

function Shown({
  view,
  board,
  station,
  page,
}: {
  readonly view: View;
  readonly board: QueueBoard;
  readonly station: string | undefined;
  readonly page: string | undefined;
}) {
  switch (view) {
    case "list":
      return <BoardList board={board} page={page} />;
    case "floor":
      return <Floor board={board} station={station} />;
    case "press":
      return <PressPlan board={board} />;
    case "promises":
      return <Promises board={board} page={page} />;
    case "waiting":
      return <Blocked pairs={board.blocked} page={page} />;
    case "board":
      return (
        <>
          <div className="max-md:hidden">
            <Board board={board} />
          </div>
          {/* A board of ten columns is of no use on a phone: there the stations come one at a time. */}
          <div className="md:hidden">
            <Floor board={board} station={station} />
          </div>
        </>
      );
  }
}
