/** Price lines with their totals, every amount from the frozen price; nothing is added up here. */
import { Text, View } from "@react-pdf/renderer";
import words from "#content/copy/papers.json";
import type { Price } from "#engine/pricing";
import { fill } from "#engine/units";
import { MONO } from "./fonts";
import { money } from "./format";
import { Table } from "./table";
import { HAIRLINE, INK, PENCIL, RULE } from "./theme";

const w = words.parts;

const COLUMNS = [
  { title: w.item, flex: 4 },
  { title: w.quantity, flex: 0.8, align: "right" as const, mono: true },
  { title: w.each, flex: 1.2, align: "right" as const, mono: true },
  { title: w.amount, flex: 1.2, align: "right" as const, mono: true },
];

export function PriceTable({ price, taxNote }: { readonly price: Price; readonly taxNote: string }) {
  const { currency } = price;
  const totals: readonly (readonly [string, number, boolean])[] = [
    [w.exTax, price.exTaxCents, false],
    [w.shipping, price.shippingCents, false],
    [w.tax, price.taxCents, false],
    [w.total, price.totalCents, true],
    [w.deposit, price.depositCents, false],
    [w.balance, price.balanceCents, false],
  ];
  return (
    <View>
      <Table
        columns={COLUMNS}
        size={8.5}
        rows={price.lines.map((line, index) => ({
          key: `${index}${line.code}`,
          cells: [
            line.label + reasonText(line),
            String(line.quantity),
            money(line.unitCents, currency),
            money(line.lineCents, currency),
          ],
        }))}
      />
      <View style={{ marginLeft: "45%" }} wrap={false}>
        {totals.map(([label, cents, isStrong]) => (
          <View
            key={label}
            style={{
              flexDirection: "row",
              borderBottomWidth: isStrong ? 1.1 : HAIRLINE,
              borderBottomColor: isStrong ? INK : RULE,
              paddingVertical: 1.6,
            }}
          >
            <Text style={{ flexGrow: 1, fontSize: isStrong ? 10 : 8.5, fontWeight: isStrong ? 600 : 400 }}>
              {label}
            </Text>
            <Text
              style={{
                fontFamily: MONO,
                fontSize: isStrong ? 10.5 : 8.5,
                fontWeight: isStrong ? 600 : 400,
                paddingRight: 4,
              }}
            >
              {money(cents, currency)}
            </Text>
          </View>
        ))}
      </View>
      <Text style={{ fontSize: 7.5, color: PENCIL, marginTop: 2 }}>
        {fill(w.priceNote, { priceBook: price.priceBook, currency, taxNote })}
      </Text>
    </View>
  );
}

function reasonText({ reason, approvedBy }: Price["lines"][number]): string {
  if (!reason) return "";
  return approvedBy ? fill(w.lineReasonApproved, { reason, approvedBy }) : fill(w.lineReason, { reason });
}
