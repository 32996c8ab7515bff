/** The fields of one kind of breakdown: a plain form whose answer stands in the address, so that nothing is stored. */

import { Button } from "#app/_ui/button.tsx";
import { SelectField, TextField } from "#app/_ui/field.tsx";
import type { Query } from "#app/shop/(staff)/list-href.ts";
import words from "#content/copy/breakdowns.json";
import type { BreakdownKind } from "#services";
import { settings } from "#services";
import { arrivalAt } from "../question";

const w = words.form;

type Name = Exclude<
  keyof typeof w,
  "left" | "right" | "choose" | "preview" | "report" | "reporting" | "notStored" | "note"
>;

const fieldsOf: Readonly<Record<BreakdownKind, readonly Name[]>> = {
  "press-down": ["press", "from", "until"],
  "person-away": ["person", "from", "until"],
  "supplier-late": ["material", "station", "expectedOn"],
  "base-short": ["colour", "leftM", "expectedOn"],
  "ski-rebuild": ["pairId", "side", "fromStation", "fault"],
  "proof-late": ["pairId", "expectedOn"],
};

export const stationOptions = settings().floor.stations.map(({ id, number, label }) => ({
  value: id,
  label: `${number} ${label}`,
}));
const faultOptions = Object.entries(words.faults).map(([value, label]) => ({ value, label }));
const named = (rows: readonly { readonly id: string; readonly label: string }[]) =>
  rows.map(({ id, label }) => ({ value: id, label }));

export interface PairOption {
  readonly value: string;
  readonly label: string;
}

export function BreakdownFields(props: {
  readonly kind: BreakdownKind;
  readonly query: Query;
  readonly pairs: readonly PairOption[];
  /** The shop's clock now, for the beginning. */
  readonly now: string;
  readonly errors: Readonly<Record<string, string>>;
}) {
  const { kind, query, pairs, now, errors } = props;
  const arrivesAt = arrivalAt(fieldsOf[kind], errors);
  return (
    // With its own address, or the page would keep the skip link's "#main", which takes the focus from where it arrives.
    <form action="/shop/queue/breakdown" className="grid max-w-measure gap-4">
      <input type="hidden" name="kind" value={kind} />
      {fieldsOf[kind].map((name) => {
        const look = {
          name,
          label: w[name],
          defaultValue: query[name] ?? (name === "from" ? now : ""),
          error: errors[name],
          ...arrivesAt(name),
        };
        switch (name) {
          case "press":
            return <SelectField key={name} {...look} options={named(settings().floor.presses)} />;
          case "person":
            return <SelectField key={name} {...look} options={named(settings().floor.crew)} empty={w.choose} />;
          case "station":
          case "fromStation":
            return <SelectField key={name} {...look} options={stationOptions} empty={w.choose} />;
          case "colour":
            return <SelectField key={name} {...look} options={named(settings().baseColours)} empty={w.choose} />;
          case "leftM":
            return <TextField key={name} {...look} inputMode="decimal" />;
          case "fault":
            return <SelectField key={name} {...look} options={faultOptions} empty={w.choose} />;
          case "pairId":
            return <SelectField key={name} {...look} options={pairs} empty={w.choose} />;
          case "side":
            return (
              <SelectField
                key={name}
                {...look}
                options={[
                  { value: "L", label: w.left },
                  { value: "R", label: w.right },
                ]}
              />
            );
          case "expectedOn":
            return <TextField key={name} {...look} type="date" />;
          case "from":
          case "until":
            return <TextField key={name} {...look} type="datetime-local" />;
          default:
            return <TextField key={name} {...look} />;
        }
      })}
      <p>
        <Button type="submit" size="floor" tone="plain">
          {w.preview}
        </Button>
      </p>
    </form>
  );
}

/** The answers of this kind alone, as the address has them. */
export function answersIn(kind: BreakdownKind, query: Query): Readonly<Record<string, string>> {
  const pairs = fieldsOf[kind].map((name) => [name, query[name] ?? ""] as const);
  return { kind, ...Object.fromEntries(pairs) };
}
