/** A club's offer on the customer's and on the shop's page: who is in the price, the day, and the form that takes it. */
import words from "#content/copy/clubs.json";
import type { ClubView } from "#services/views";
import { ActionForm, type ActionFormProps, type FormField, type FormState } from "./action-form.client";
import { arrival } from "./arrival";
import { DateRange, dayText } from "./date-range";
import { moneyText } from "./money";
import { Notice } from "./notice";
import { fill, listText } from "./words";

const w = words.club;

/** The skiers whose quotes can be accepted. */
export function openPicks({ members }: ClubView) {
  return members.flatMap(({ skierName, quote }) => (quote?.state === "open" ? [{ skierName, quote }] : []));
}

/** Those in price and day. */
export function pricedPicks(club: ClubView) {
  return openPicks(club).filter(({ quote }) => club.open?.quoteIds.includes(quote.quoteId));
}

/** Names of those in the price when they are not all; else null. */
export function namesOfSome(club: ClubView): string | null {
  const priced = pricedPicks(club);
  return priced.length === openPicks(club).length ? null : listText(priced.map(({ skierName }) => skierName));
}

/** The joint day as a sentence. */
export function ClubDay({ open: { dateRange, quoteIds } }: { readonly open: NonNullable<ClubView["open"]> }) {
  const { p50, p90, shares } = dateRange;
  return (
    <>
      <DateRange verb={quoteIds.length === 1 ? w.one : w.all} from={p50} to={p90} shares={shares} withYear />.
    </>
  );
}

/** Whether the day they want is kept; nothing when they want none. */
export function ClubWish({ club: { wantedOn, open } }: { readonly club: ClubView }) {
  if (wantedOn === null || open === null || open.keepsWish === null) return null;
  const { keepsWish } = open;
  return (
    <Notice
      tone={keepsWish ? "moss" : "amber"}
      title={fill(keepsWish ? w.keeps : w.misses, { day: dayText(wantedOn) })}
    />
  );
}

interface ClubOrderFormProps
  extends Required<Pick<ActionFormProps, "action" | "fields" | "idPrefix" | "submit" | "busy">> {
  readonly club: ClubView;
  readonly start: FormState | undefined;
  readonly hint: string;
}

/** The ticks, the button that asks for their price and day, and the yes to them. `fields` are those of the page itself. */
export function ClubOrderForm({ club, start, hint, fields, ...form }: ClubOrderFormProps) {
  const { open } = club;
  const priced = open?.quoteIds.join(",") ?? "";
  const isAnswer = start !== undefined && Object.keys(start.refusals).length === 0;
  const ticks: readonly FormField[] = [
    { kind: "hidden", name: "priced", value: priced },
    {
      kind: "checks",
      name: "quoteIds",
      label: w.picks,
      hint,
      value: priced,
      choices: openPicks(club).map(({ skierName, quote }) => ({
        value: quote.quoteId,
        label: fill(w.pick, { name: skierName, ski: quote.ski, price: moneyText(quote.totalCents) }),
      })),
    },
    {
      kind: "ask",
      name: "ask",
      label: w.ask,
      busy: w.asking,
      answer: open === null ? null : <Priced club={club} open={open} isAnswer={isAnswer} />,
    },
  ];
  return <ActionForm key={JSON.stringify([priced, start])} start={start} fields={[...ticks, ...fields]} {...form} />;
}

/** Price and day once more where they are ticked, by name, as the ticks may have moved on. */
function Priced(props: {
  readonly club: ClubView;
  readonly open: NonNullable<ClubView["open"]>;
  readonly isAnswer: boolean;
}) {
  const { club, open, isAnswer } = props;
  const names = listText(pricedPicks(club).map(({ skierName }) => skierName));
  return (
    <>
      {club.leftOut.length === 0 ? null : (
        <Notice tone="amber" title={fill(w.leftOut, { names: listText(club.leftOut) })} />
      )}
      <p role="status" {...(isAnswer ? arrival : {})}>
        {fill(w.priced, { names, price: moneyText(open.price.totalCents) })} <ClubDay open={open} />
      </p>
    </>
  );
}
