/** Today's floor for a screen on the wall: no names of customers, no price, nothing to press; it follows by itself. */
import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { linkContext } from "#app/_server/request.ts";
import { LiveQueue } from "#app/_ui/live-queue.client.tsx";
import { fill } from "#app/_ui/words.ts";
import words from "#content/copy/people.json";
import { type QueueBoard, queueBoard, settings } from "#services";

const w = words.wall;
export const metadata: Metadata = { title: w.title, robots: { index: false, follow: false } };

interface Props {
  readonly params: Promise<{ readonly token: string }>;
}

export default async function WallPage({ params }: Props) {
  const { token } = await params;
  const { ctx, subject } = await linkContext(token, "wall");
  const read = await queueBoard(ctx, { days: 7, wallId: subject.id });
  if (!read.ok) notFound();
  const board = read.value;
  return (
    <main id="main" tabIndex={-1} className="flex-1 px-6 py-5 outline-none">
      <div className="mb-5 flex flex-wrap items-baseline justify-between gap-x-8 border-b border-ink pb-2">
        <h1 className="text-[2.25rem]">{w.title}</h1>
        <p className="text-[1.75rem] text-pencil">{settings().shop.name}</p>
      </div>
      <ul className="grid grid-cols-[repeat(auto-fill,minmax(18rem,1fr))] border-t border-l border-rule">
        {board.stations.map((station) => (
          <Station key={station.station} station={station} work={workAt(board, station.station)} />
        ))}
      </ul>
      <div className="mt-4">
        <LiveQueue revision={board.revision} from={`/wall/${token}/live`} />
      </div>
    </main>
  );
}

/** A wall is not scrolled: what is at work comes first, and the rest is counted. */
const mostShown = 5;

interface Work {
  readonly serial: string;
  readonly state: "running" | "ready";
  readonly isLate: boolean;
}

function Station({
  station: { number, name },
  work,
}: {
  readonly station: QueueBoard["stations"][number];
  readonly work: readonly Work[];
}) {
  return (
    <li className="border-r border-b border-rule px-4 py-3">
      <h2 className="text-[1.75rem] leading-tight">
        <span className="measure text-pencil">{number}</span> {name}
      </h2>
      {work.length === 0 ? (
        <p className="text-[1.75rem] text-pencil">{w.nothing}</p>
      ) : (
        <ul className="text-[1.75rem] leading-snug">
          {work.slice(0, mostShown).map(({ serial, state, isLate }) => (
            <li key={serial} className={state === "running" ? "font-semibold" : ""}>
              <span aria-hidden="true">{state === "running" ? "▸" : "○"}</span> {serial}{" "}
              <span className="text-pencil">{w[state]}</span>
              {isLate ? <span className="whitespace-nowrap text-iron"> ✕ {w.late}</span> : null}
            </li>
          ))}
          {work.length > mostShown ? (
            <li className="text-pencil">{fill(w.more, { count: work.length - mostShown })}</li>
          ) : null}
        </ul>
      )}
    </li>
  );
}

/** What stands at a station now, at work first. */
function workAt(board: QueueBoard, station: string): readonly Work[] {
  const late = new Set(
    board.pairs.filter(({ slackDays }) => slackDays !== null && slackDays < 0).map(({ serial }) => serial),
  );
  const found = new Map<string, Work>();
  for (const { station: at, state, serial } of board.days.flatMap(({ cells }) => cells)) {
    if (at === station && (state === "running" || state === "ready"))
      found.set(serial, { serial, state, isLate: late.has(serial) });
  }
  return [...found.values()].sort((a, b) => b.state.localeCompare(a.state) || a.serial.localeCompare(b.serial));
}
