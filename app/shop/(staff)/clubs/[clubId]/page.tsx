import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { type ClubQuery, readChosenClub } from "#app/_server/club-choice.ts";
import { staffContext } from "#app/_server/request.ts";
import { ActionForm } from "#app/_ui/action-form.client.tsx";
import { dayText } from "#app/_ui/date-range.tsx";
import { Facts } from "#app/_ui/facts.tsx";
import { Page, Part } from "#app/_ui/page.tsx";
import { fill, wordOf } from "#app/_ui/words.ts";
import { NumberLink } from "#app/shop/cells.tsx";
import { PrivateLink } from "#app/shop/private-link.tsx";
import words from "#content/copy/clubs.json";
import sheetWords from "#content/copy/sheet.json";
import { idOf } from "#schemas/ids";
import type { ClubView } from "#services";
import { settings } from "#services";
import { addSkier } from "../actions";
import { Members } from "./members";
import { Offer } from "./offer";
import { PressGroups } from "./press-groups";

const w = words.club;
export const metadata: Metadata = { title: words.title };

interface Props {
  readonly params: Promise<{ readonly clubId: string }>;
  readonly searchParams: Promise<ClubQuery>;
}

/** `?pairs=` shows price and day of those quotes alone. */
export default async function ClubPage({ params, searchParams }: Props) {
  const { clubId } = await params;
  const ctx = await staffContext(`/shop/clubs/${clubId}`);
  const chosen = await readChosenClub(ctx, idOf("club", clubId), await searchParams);
  if (chosen === null) notFound();
  const { club } = chosen;
  return (
    <Page
      wide
      title={fill(w.title, { number: club.number, name: club.name })}
      lead={fill(w.lead, { name: club.customer.name })}
    >
      <Part title={w.skiers} id="skiers">
        <Members members={club.members} />
      </Part>
      <div className="grid gap-x-12 *:min-w-0 lg:grid-cols-[minmax(0,3fr)_minmax(0,2fr)]">
        <Part title={w.openTitle} id="offer">
          <Offer chosen={chosen} />
        </Part>
        <div>
          <Part title={w.addTitle} id="add">
            <ActionForm
              action={addSkier}
              idPrefix="add-"
              tone="plain"
              fields={[
                { kind: "hidden", name: "clubId", value: club.clubId },
                { kind: "text", name: "skierName", label: w.skierName, autoComplete: "off" },
              ]}
              submit={w.add}
              busy={w.adding}
            />
          </Part>
          <Part title={w.link} id="link">
            <PrivateLink ctx={ctx} kind="club" id={club.clubId} />
          </Part>
          <Part title={w.palette} id="palette">
            <Facts facts={paletteFacts(club)} />
          </Part>
          {club.orders.length === 0 ? null : (
            <Part title={w.orders} id="orders">
              <ul className="flex flex-wrap gap-x-4">
                {club.orders.map(({ orderId, number }) => (
                  <li key={orderId}>
                    <NumberLink href={`/shop/orders/${orderId}`} number={number} />
                  </li>
                ))}
              </ul>
            </Part>
          )}
          {club.press.length === 0 ? null : (
            <Part title={w.press} id="press">
              <PressGroups groups={club.press} />
            </Part>
          )}
        </div>
      </div>
    </Page>
  );
}

function paletteFacts({ palette, wantedOn, customer }: ClubView) {
  const colour = (id: string) => settings().baseColours.find((each) => each.id === id)?.label ?? id;
  const { left, right } = palette.base;
  return [
    { name: w.bases, value: left === right ? colour(left) : `${colour(left)}, ${colour(right)}` },
    {
      name: w.graphic,
      value: settings().houseGraphics.find(({ id }) => id === palette.house)?.label ?? palette.house,
    },
    { name: w.names, value: palette.isNamed ? w.named : w.notNamed },
    { name: w.delivery, value: wordOf(sheetWords.price.destinations, palette.destination) },
    { name: w.wantedOn, value: wantedOn === null ? "–" : dayText(wantedOn) },
    { name: w.phone, value: customer.phone ?? "–" },
  ];
}
