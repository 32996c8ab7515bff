/** What happened, when, and who did it. The record itself; nothing is worded away. */
import { Table } from "@/app/_ui/table";
import { wordOf } from "@/app/_ui/words";
import shopWords from "@/content/copy/shop.json";
import type { EventView } from "@/lib/services";
import { Clock } from "./cells";

const w = shopWords.history;
/** Particulars worth a reader's time, in this order. */
const shown = Object.keys(w.particulars) as (keyof typeof w.particulars)[];

function particulars(data: EventView["data"]): string {
  return shown
    .flatMap((key) => (data[key] == null || data[key] === "" ? [] : [`${w.particulars[key]} ${String(data[key])}`]))
    .join(", ");
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
          cell: (event) => (
            <>
              {wordOf(w.kinds, event.kind)}
              {particulars(event.data) ? <span className="text-pencil">: {particulars(event.data)}</span> : null}
            </>
          ),
        },
        { key: "who", head: w.who, cell: (event) => event.by },
      ]}
      rows={events}
      rowKey={(event) => event.seq}
      empty={<p className="text-pencil">{w.none}</p>}
    />
  );
}
