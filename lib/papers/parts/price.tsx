/** Price lines with their totals, every amount from the frozen price; nothing is added up here. */
import { Text, View } from "@react-pdf/renderer";
import type { Price } from "#engine/pricing";
import { MONO } from "./fonts";
import { money } from "./format";
import { Table } from "./table";
import { HAIRLINE, INK, PENCIL, RULE } from "./theme";

const COLUMNS = [
  { title: "Item", flex: 4 },
  { title: "Quantity", flex: 0.8, align: "right" as const, mono: true },
  { title: "Each", flex: 1.2, align: "right" as const, mono: true },
  { title: "Amount", flex: 1.2, align: "right" as const, mono: true },
];

export function PriceTable({ price, taxNote }: { readonly price: Price; readonly taxNote: string }) {
  const { currency } = price;
  const totals: readonly (readonly [string, number, boolean])[] = [
    ["Goods and services, without tax", price.exTaxCents, false],
    ["Shipping", price.shippingCents, false],
    ["Tax", price.taxCents, false],
    ["Total", price.totalCents, true],
    ["Deposit, due at acceptance", price.depositCents, false],
    ["Balance, due before shipping", price.balanceCents, false],
  ];
  return (
    <View>
      <Table
        columns={COLUMNS}
        size={8.5}
        rows={price.lines.map((line, index) => ({
          key: `${index}${line.code}`,
          cells: [
            line.label +
              (line.reason ? ` (${line.reason}${line.approvedBy ? `; approved by ${line.approvedBy}` : ""})` : ""),
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
        Price book {price.priceBook}, {currency}; each line is rounded to the cent, then tax on the total. {taxNote}
      </Text>
    </View>
  );
}
