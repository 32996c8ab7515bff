/** The rules behind the sentence that stands beside a pair: from the engine's own list, in the sheet's own words. */
import { Table } from "#app/_ui/table.tsx";
import { fill } from "#app/_ui/words.ts";
import sheetWords from "#content/copy/sheet.json";
import words from "#content/copy/site.json";
import { type FeelRule, feelRules } from "#engine/assessment";
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
