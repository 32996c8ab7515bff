/** The builds worth a choice, lightest first, each against the one on the sheet. The button stays in sight on a phone. */
import type { SameFlexOption } from "#engine/assessment";
import { textForPeople } from "#engine/units";
import { Button } from "../button";
import { moneyChangeText } from "../money";
import { signedText } from "../signed";
import { type Column, Table } from "../table";
import type { SheetWords } from "./words";

interface Props {
  readonly rows: readonly SameFlexOption[];
  readonly words: SheetWords;
  readonly nameOf: (option: SameFlexOption) => string;
  readonly onTake: (option: SameFlexOption) => void;
}

export function SameFlexTable({ rows, words, nameOf, onTake }: Props) {
  const w = words.sameFlex;
  const changed = (key: string, head: string, text: (change: SameFlexOption["change"]) => string) =>
    ({ key, head, numeric: true, cell: (row) => text(row.change) }) satisfies Column<SameFlexOption>;
  return (
    <Table
      caption={w.caption}
      hideCaption
      dense
      rows={rows}
      rowKey={(row) => [row.core, ...row.reinforcements].join(" ")}
      columns={[
        {
          key: "build",
          head: w.build,
          cell: (row) => (
            <span className="grid min-w-40 justify-items-start gap-1">
              {nameOf(row)}
              {/* The same button before and after, so that the keyboard stays where it was. */}
              <Button
                size="small"
                aria-disabled={row.isCurrent}
                onClick={() => (row.isCurrent ? undefined : onTake(row))}
              >
                {row.isCurrent ? w.now : w.take}
                <span className="sr-only">: {nameOf(row)}</span>
              </Button>
            </span>
          ),
        },
        changed("mass", w.mass, ({ massG }) => `${signedText(massG)} g`),
        changed("price", w.price, ({ priceCents }) => moneyChangeText(priceCents)),
        changed("twist", w.twist, ({ twistPercent }) => `${signedText(twistPercent)} %`),
        changed("days", w.days, ({ leadDays }) => signedText(leadDays)),
        {
          key: "core",
          head: w.core,
          numeric: true,
          cell: (row) => `${textForPeople(row.coreMidMm, 1)} mm`,
        },
      ]}
    />
  );
}
