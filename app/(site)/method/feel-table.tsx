/** The rules behind the sentence that stands beside a pair: from the engine's own list, in the sheet's own words. */

import { moneyText } from "#app/_ui/money.ts";
import { Table } from "#app/_ui/table.tsx";
import { fill } from "#app/_ui/words.ts";
import sheetWords from "#content/copy/sheet.json";
import words from "#content/copy/site.json";
import { choiceRules, differenceRules, type FeelRule, feelRules } from "#engine/assessment";
import { textForPeople } from "#engine/units";

const w = words.method.feel;

export function FeelTable() {
  return (
    <Table
      caption={w.title}
      hideCaption
      columns={[
        { key: "about", head: w.columns.about, cell: (row) => row.about },
        { key: "from", head: w.columns.from, cell: (row) => row.from },
        { key: "says", head: w.columns.says, cell: (row) => row.says },
      ]}
      rowKey={(row) => row.key}
      rows={feelRules.flatMap((rule) =>
        rule.words.map((word, i) => ({
          key: `${rule.about} ${word}`,
          about: w.about[rule.about],
          from: rangeOf(rule, i),
          says: saysOf(rule, word),
        })),
      )}
    />
  );
}

/** From how much on a choice is felt, and a difference between compared pairs is told. */
export function ChangesTable() {
  const amount = (least: number, unit: string) =>
    unit === "cents"
      ? moneyText(least, "short")
      : `${textForPeople(unit === "share" ? 100 * least : least, 1)} ${unit === "share" ? "%" : unit}`;
  return (
    <Table
      caption={w.changes}
      hideCaption
      columns={[
        { key: "what", head: w.columns.about, cell: (row) => row.what },
        { key: "least", head: w.columns.least, cell: (row) => row.least, numeric: true },
        { key: "says", head: w.columns.says, cell: (row) => row.says },
      ]}
      rows={[
        ...choiceRules.map(({ about, unit, least, more, less }) => ({
          what: w.choices[about],
          least: amount(least, unit),
          says: fill(w.either, { more: sheetWords.choiceFeel[more], less: sheetWords.choiceFeel[less] }),
        })),
        ...differenceRules.map(({ about, unit, least }) => ({
          what: w.differences[about],
          least: amount(least, unit),
          says: w.verdict,
        })),
      ]}
      rowKey={(row) => row.what}
    />
  );
}

function saysOf({ about }: FeelRule, word: string): string {
  const words: Readonly<Record<string, string>> = sheetWords.feel[about];
  return words[word] ?? word;
}

function rangeOf({ limits: [first, second], unit }: FeelRule, index: number): string {
  const shown = w.units[unit];
  const text = (value: number) => textForPeople(value, 2);
  if (index === 0) return fill(w.below, { limit: text(first), unit: shown });
  if (index === 1) return fill(w.between, { from: text(first), below: text(second), unit: shown });
  return fill(w.above, { limit: text(second), unit: shown });
}
