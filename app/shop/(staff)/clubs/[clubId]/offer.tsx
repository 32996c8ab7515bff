/** What is open, as one offer: lines, sum, one day, and the yes. */
import type { ChosenClub } from "#app/_server/club-choice.ts";
import { ClubDay, ClubOrderForm, ClubWish, namesOfSome, openPicks } from "#app/_ui/club-offer.tsx";
import { PriceTable } from "#app/_ui/price-table.tsx";
import { fill } from "#app/_ui/words.ts";
import words from "#content/copy/clubs.json";
import sheetWords from "#content/copy/sheet.json";
import type { ClubView } from "#services";
import { order } from "../actions";

const w = words.club;

export function Offer({ chosen: { club, start } }: { readonly chosen: ChosenClub }) {
  const count = openPicks(club).length;
  if (count === 0) return <p className="text-pencil">{w.nothingOpen}</p>;
  return (
    <div className="grid grid-cols-1 gap-6">
      <p className="max-w-measure">{count === 1 ? w.openOne : fill(w.openCount, { count })}</p>
      {club.open === null ? (
        <p className="max-w-measure">{w.deliveriesDiffer}</p>
      ) : (
        <Sum club={club} open={club.open} />
      )}
      <section aria-labelledby="accept">
        <h3 id="accept" className="mb-4 text-lg">
          {w.accept}
        </h3>
        <ClubOrderForm
          club={club}
          start={start}
          action={order}
          idPrefix="order-"
          hint={w.picksHint}
          fields={[
            { kind: "hidden", name: "clubId", value: club.clubId },
            {
              kind: "radio",
              name: "how",
              label: w.how,
              choices: [
                { value: "phone", label: w.phoneYes },
                { value: "counter", label: w.counterYes },
              ],
            },
            { kind: "text", name: "name", label: w.who, value: club.customer.name, autoComplete: "off" },
          ]}
          submit={w.submit}
          busy={w.submitting}
        />
      </section>
    </div>
  );
}

/** Of what is ticked, or of all; the paper is always of all. */
function Sum({ club, open }: { readonly club: ClubView; readonly open: NonNullable<ClubView["open"]> }) {
  const names = namesOfSome(club);
  return (
    <>
      {names === null ? null : <p className="max-w-measure">{fill(w.pricedSome, { names })}</p>}
      <PriceTable price={open.price} words={sheetWords.price} caption={w.lines} hideCaption />
      <p>
        <ClubDay open={open} />
      </p>
      <p className="flex flex-wrap gap-x-4">
        <a href={`/files/clubs/${club.clubId}`}>{w.print}</a>
        <a href={`/files/clubs/${club.clubId}?paper=letter`}>{w.printLetter}</a>
      </p>
      <ClubWish club={club} />
    </>
  );
}
