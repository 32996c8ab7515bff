/** The press, day by day, grouped by mould as it is planned: a changeover costs its minutes. */
import { dayText } from "#app/_ui/date-range.tsx";
import { Badge } from "#app/_ui/notice.tsx";
import { Part } from "#app/_ui/page.tsx";
import { fill } from "#app/_ui/words.ts";
import { timeOfDay } from "#app/shop/say.ts";
import queueWords from "#content/copy/queue.json";
import words from "#content/copy/shop.json";
import type { PressDay, PressSlot, QueueBoard } from "#services";

const w = words.queue;
const press = queueWords.press;

export function PressPlan({ board }: { readonly board: QueueBoard }) {
  const days = board.pressPlan.filter((day) => day.slots.length > 0);
  if (days.length === 0) return <p className="text-pencil">{w.noPress}</p>;
  return (
    <>
      <p className="mb-6 max-w-measure text-pencil">
        {press.note} {press.pastNote}
      </p>
      <div className="grid gap-x-10 *:min-w-0 lg:grid-cols-2">
        {days.map((day) => (
          <Part key={day.date} title={dayText(day.date)} id={`press-${day.date}`}>
            <p className="mb-3 text-sm text-pencil">
              {fill(press.changeovers, {
                pairs: day.slots.length,
                minutes: day.slots.reduce((sum, { changeoverMinutes }) => sum + changeoverMinutes, 0),
              })}
            </p>
            <Moulds day={day} />
          </Part>
        ))}
      </div>
    </>
  );
}

/** Neighbours on the same mould of one press stand together, in the order of the day. */
function grouped(slots: readonly PressSlot[]) {
  const groups: { readonly first: PressSlot; readonly slots: PressSlot[] }[] = [];
  for (const slot of slots) {
    const last = groups.findLast(({ first }) => first.press === slot.press);
    if (last?.first.mould === slot.mould) last.slots.push(slot);
    else groups.push({ first: slot, slots: [slot] });
  }
  return groups;
}

function Moulds({ day }: { readonly day: PressDay }) {
  return (
    <ul className="grid gap-3">
      {grouped(day.slots).map(({ first, slots }) => (
        <li key={first.pairId} className="border-l-2 border-control pl-3">
          <p className="text-sm font-medium">
            {fill(press.onPress, { press: first.press, mould: first.mould })}
            {first.changeoverMinutes > 0 ? (
              <span className="font-normal text-pencil">
                , {fill(w.changeover, { minutes: first.changeoverMinutes })}
              </span>
            ) : null}
          </p>
          <ul>
            {slots.map((slot) => (
              <li key={slot.pairId} className="flex flex-wrap items-baseline gap-x-4">
                <span className="measure">
                  {timeOfDay(slot.startsAt)}–{timeOfDay(slot.endsAt)}
                </span>
                <a href={`/shop/pair/${slot.serial}`} className="inline-flex min-h-9 items-center">
                  {slot.serial}
                </a>
                {slot.curesPastClosing ? <span className="text-sm text-pencil">☾ {press.pastClosing}</span> : null}
                {slot.isFixed ? <Badge tone="info">{w.fixed}</Badge> : null}
              </li>
            ))}
          </ul>
        </li>
      ))}
    </ul>
  );
}
