"use client";
import type { EngineCatalog } from "#engine/assessment";
import type { Destination } from "#engine/pricing";
import { RadioGroup } from "../choice-group";
import { DateRange } from "../date-range";
import { Drivers } from "../drivers";
import { TextField } from "../field";
import { moneyText } from "../money";
import { PriceTable } from "../price-table";
import { More } from "../section";
import { fill } from "../words";
import { Beside } from "./beside.client";
import type { SheetState } from "./use-sheet.client";
import type { SheetWords } from "./words";

interface Props {
  readonly sheet: SheetState;
  readonly catalog: EngineCatalog;
  readonly words: SheetWords;
}

export function PriceSection({ sheet, catalog, words }: Props) {
  const { price } = sheet.assessment;
  const w = words.price;
  if (!price) return <p className="text-pencil">{w.pending}</p>;
  const shipping = catalog.priceBook.shippingCents;
  return (
    <>
      <p className="max-w-measure text-pencil">
        {w.lead} {fill(w.book, { book: price.priceBook })}.
      </p>
      <Beside paths={["choices.destination"]}>
        <RadioGroup
          name="destination"
          label={w.destination}
          choices={Object.entries(w.destinations).map(([value, label]) => ({
            value,
            label,
            aside: moneyText(shipping[value as Destination], "short"),
          }))}
          value={sheet.choices.destination ?? price.destination}
          onChange={(value) => sheet.setChoices({ destination: value as Destination })}
        />
      </Beside>
      <div className="max-w-measure">
        <PriceTable price={price} words={w} caption={words.sections.price} hideCaption />
      </div>
    </>
  );
}

/** Who the quote is for. Saved like every other field. */
export function ContactFields({ sheet, words }: Omit<Props, "catalog">) {
  const { contact, errors } = sheet;
  const w = words.price;
  return (
    <fieldset className="grid max-w-measure gap-4">
      <legend className="mb-2 text-lg font-semibold">{w.contact}</legend>
      <Beside paths={["contact.name"]}>
        <TextField
          name="name"
          label={w.name}
          autoComplete="name"
          value={contact.name ?? ""}
          error={errors["contact.name"]}
          onChange={(event) => sheet.setContact("name", event.target.value || undefined)}
        />
      </Beside>
      <Beside paths={["contact.email"]}>
        <TextField
          name="email"
          type="email"
          label={w.email}
          autoComplete="email"
          value={contact.email ?? ""}
          error={errors["contact.email"]}
          onChange={(event) => sheet.setContact("email", event.target.value || undefined)}
        />
      </Beside>
      <Beside paths={["contact.phone"]}>
        <TextField
          name="phone"
          type="tel"
          label={w.phone}
          hint={w.phoneHint}
          autoComplete="tel"
          value={contact.phone ?? ""}
          error={errors["contact.phone"]}
          onChange={(event) => sheet.setContact("phone", event.target.value || undefined)}
        />
      </Beside>
    </fieldset>
  );
}

export function DateSection({
  dateRange,
  words,
}: {
  readonly dateRange: SheetState["dateRange"];
  readonly words: SheetWords;
}) {
  const w = words.date;
  if (!dateRange) return <p className="text-pencil">{w.pending}</p>;
  return (
    <>
      <p className="max-w-measure text-lg">
        <DateRange verb="Ready" from={dateRange.p50} to={dateRange.p90} shares={dateRange.shares} withYear />.
      </p>
      <p className="max-w-measure text-pencil">{w.lead}</p>
      <p className="max-w-measure">{w.clock}</p>
      <More summary={w.drivers}>
        <Drivers drivers={dateRange.drivers} words={w} />
        <p className="mt-2 text-sm text-pencil">{fill(w.runs, { runs: dateRange.basis.runs })}</p>
      </More>
    </>
  );
}
