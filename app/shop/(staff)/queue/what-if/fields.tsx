/** One question's fields: a plain form that puts the question into the address. */

import { Button } from "#app/_ui/button.tsx";
import { NumberField, SelectField, TextField } from "#app/_ui/field.tsx";
import { fill } from "#app/_ui/words.ts";
import type { Query } from "#app/shop/(staff)/list-href.ts";
import words from "#content/copy/breakdowns.json";
import type { WhatIfKind } from "#services";
import { settings } from "#services";
import { arrivalAt } from "../question";
import { whatIfFields } from "./read-input";

const w = words.whatIf;

/** Stations by the numbers that people know them by. */
function numbersOf(stations: readonly string[]): string {
  return settings()
    .floor.stations.flatMap(({ id, number }) => (stations.includes(id) ? [number] : []))
    .join(", ");
}

const example = numbersOf(settings().remedies.overnightCure.stations);

const usual: Readonly<Record<string, string>> = {
  stations: example,
  pairs: "8",
  factor: "2",
  weeks: "8",
};

export function answersIn(kind: WhatIfKind, query: Query): Readonly<Record<string, string>> {
  return { kind, ...Object.fromEntries(whatIfFields[kind].map((name) => [name, query[name] ?? ""])) };
}

export function WhatIfFields(props: {
  readonly kind: WhatIfKind;
  readonly query: Query;
  readonly today: string;
  readonly errors: Readonly<Record<string, string>>;
}) {
  const { kind, query, today, errors } = props;
  const arrivesAt = arrivalAt<string>(whatIfFields[kind], errors);
  return (
    // With its own address, or the page would keep the skip link's "#main", which takes the focus from where it arrives.
    <form action="/shop/queue/what-if" className="grid max-w-measure gap-4">
      <input type="hidden" name="kind" value={kind} />
      {whatIfFields[kind].map((name) => {
        const isDay = name === "from" || name === "until";
        const defaultValue = query[name] ?? (isDay ? today : usual[name]) ?? "";
        const look = { name, label: fill(w[name], { example }), defaultValue, error: errors[name], ...arrivesAt(name) };
        switch (name) {
          case "from":
          case "until":
            return <TextField key={name} {...look} type="date" />;
          case "mould":
            return (
              <SelectField
                key={name}
                {...look}
                options={settings().floor.moulds.map(({ id }) => ({ value: id, label: id }))}
              />
            );
          case "station":
            return (
              <SelectField
                key={name}
                {...look}
                options={settings().floor.stations.map(({ id, number, label }) => ({
                  value: id,
                  label: `${number} ${label}`,
                }))}
              />
            );
          case "stations":
            return <TextField key={name} {...look} />;
          default:
            return <NumberField key={name} {...look} />;
        }
      })}
      <p>
        <Button type="submit" tone="primary">
          {w.ask}
        </Button>
      </p>
    </form>
  );
}
