/** One line a skier, from the first answers to the pair. */
import { moneyText } from "#app/_ui/money.ts";
import { Badge } from "#app/_ui/notice.tsx";
import { Table } from "#app/_ui/table.tsx";
import { wordOf } from "#app/_ui/words.ts";
import { NumberLink, PairLink } from "#app/shop/cells.tsx";
import words from "#content/copy/clubs.json";
import shopWords from "#content/copy/shop.json";
import type { ClubMember } from "#services";

const w = words.club;
const { heads } = w;

export function Members({ members }: { readonly members: readonly ClubMember[] }) {
  return (
    <Table
      caption={w.skiers}
      hideCaption
      stacks
      empty={<p className="text-pencil">{w.noSkiers}</p>}
      columns={[
        { key: "skier", head: heads.skier, cell: (row) => row.skierName },
        {
          key: "ski",
          head: heads.ski,
          cell: ({ quote, sheetId }) =>
            quote === null ? (
              <a href={`/shop/call/${sheetId}`}>{w.answers}</a>
            ) : (
              <>
                {quote.ski} {quote.leavesPalette ? <Badge tone="amber">{w.offPalette}</Badge> : null}
              </>
            ),
        },
        { key: "flex", head: heads.flex, cell: ({ quote }) => quote?.flexClassLabel ?? "–" },
        { key: "mould", head: heads.mould, cell: ({ quote }) => quote?.mould ?? "–" },
        { key: "name", head: heads.name, cell: ({ quote }) => quote?.lettering ?? "–" },
        {
          key: "price",
          head: heads.price,
          numeric: true,
          cell: ({ quote }) => (quote === null ? "–" : moneyText(quote.totalCents)),
        },
        {
          key: "quote",
          head: heads.quote,
          cell: ({ quote }) =>
            quote === null ? (
              "–"
            ) : (
              <>
                <NumberLink href={`/shop/quotes/${quote.quoteId}`} number={quote.number} />{" "}
                {shopWords.quotes.states[quote.state]}
              </>
            ),
        },
        {
          key: "pair",
          head: heads.pair,
          cell: ({ pair }) => (pair === null ? "–" : <PairLink serial={pair.serial} />),
        },
        {
          key: "proof",
          head: heads.proof,
          cell: ({ pair }) =>
            pair === null ? "–" : pair.proofNeeded ? wordOf(w.proofStates, pair.proofState) : w.noProof,
        },
      ]}
      rows={members}
      rowKey={(row) => row.sheetId}
    />
  );
}
