/** What happened, when, and who did it. The record itself; nothing is worded away. */
import { dayText } from "#app/_ui/date-range.tsx";
import { moneyText } from "#app/_ui/money.ts";
import { Table } from "#app/_ui/table.tsx";
import { wordOf } from "#app/_ui/words.ts";
import shopWords from "#content/copy/shop.json";
import { readEvent } from "#schemas/events";
import type { EventView } from "#services";
import { Clock } from "./cells";
import { optionChoice } from "./strip-option-words";

const w = shopWords.history;
/** Particulars worth a reader's time, in this order. */
const shown = Object.keys(w.particulars) as (keyof typeof w.particulars)[];

function particulars({ kind, data }: EventView): string {
  // The event keeps the whole way out as it was offered.
  const facts = readEvent(kind, data);
  const way = facts.kind === "strips-decided" ? [optionChoice(facts.data.option).label] : [];
  const others = shown.flatMap((key) =>
    data[key] == null || data[key] === "" ? [] : [`${w.particulars[key]} ${told(key, data[key])}`],
  );
  return [...way, ...others].join(", ");
}

function told(key: string, value: unknown): string {
  if (typeof value === "number") return key.endsWith("Cents") ? moneyText(value) : String(value);
  if (key === "method") return wordOf(shopWords.order.depositMethods, String(value));
  return /^\d{4}-\d{2}-\d{2}$/.test(String(value)) ? dayText(String(value)) : String(value);
}

/** What happened in words, with its particulars. */
export function Happened({ event }: { readonly event: EventView }) {
  const more = particulars(event);
  return (
    <>
      {wordOf(w.kinds, event.kind)}
      {more ? <span className="text-pencil">: {more}</span> : null}
    </>
  );
}

export function History({ events, title }: { readonly events: readonly EventView[]; readonly title: string }) {
  return (
    <Table
      caption={title}
      hideCaption
      dense
      columns={[
        {
          key: "at",
          head: w.at,
          cell: (event) => <Clock at={event.at} />,
        },
        {
          key: "what",
          head: w.what,
          cell: (event) => <Happened event={event} />,
        },
        { key: "who", head: w.who, cell: (event) => event.by },
      ]}
      rows={events}
      rowKey={(event) => event.seq}
      empty={<p className="text-pencil">{w.none}</p>}
    />
  );
}
