/** The lines of a price and what they add up to. Every figure comes from the engine; nothing is summed here. */
import type { Price } from "#engine/pricing";
import { moneyText } from "./money";
import { Table } from "./table";

export interface PriceWords {
  readonly net: string;
  readonly shipping: string;
  readonly tax: string;
  readonly total: string;
  readonly deposit: string;
}

export function PriceTable({
  price,
  words,
  caption,
  hideCaption,
}: {
  readonly price: Price;
  readonly words: PriceWords;
  readonly caption: string;
  readonly hideCaption?: boolean;
}) {
  const sums = [
    { label: words.net, cents: price.exTaxCents },
    { label: words.shipping, cents: price.shippingCents },
    { label: words.tax, cents: price.taxCents },
  ];
  return (
    <Table
      caption={caption}
      hideCaption={hideCaption ?? false}
      columns={[
        {
          key: "label",
          head: "Line",
          cell: (line) => (
            <>
              {line.label}
              {line.quantity === 1 ? null : <span className="text-pencil"> × {line.quantity}</span>}
              {line.reason ? <span className="block text-sm text-pencil">{line.reason}</span> : null}
            </>
          ),
        },
        { key: "cents", head: price.currency, numeric: true, cell: (line) => moneyText(line.lineCents) },
      ]}
      rows={price.lines}
      rowKey={(line) => `${line.code}${line.label}`}
      foot={
        <>
          {sums.map((sum) => (
            <tr key={sum.label}>
              <th scope="row" className="px-3 py-1 text-left font-normal text-pencil">
                {sum.label}
              </th>
              <td className="measure px-3 py-1 text-right">{moneyText(sum.cents)}</td>
            </tr>
          ))}
          <tr className="border-t border-rule">
            <th scope="row" className="px-3 py-2 text-left font-semibold">
              {words.total}
            </th>
            <td className="measure px-3 py-2 text-right font-semibold">{moneyText(price.totalCents)}</td>
          </tr>
          <tr>
            <th scope="row" className="px-3 py-1 text-left font-normal text-pencil">
              {words.deposit}
            </th>
            <td className="measure px-3 py-1 text-right">{moneyText(price.depositCents)}</td>
          </tr>
        </>
      }
    />
  );
}
