import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { staffContext } from "#app/_server/request.ts";
import { ActionForm } from "#app/_ui/action-form.client.tsx";
import { Page, Part } from "#app/_ui/page.tsx";
import { Table } from "#app/_ui/table.tsx";
import { Clock, Day, NumberLink } from "#app/shop/cells.tsx";
import words from "#content/copy/clubs.json";
import sheetWords from "#content/copy/sheet.json";
import { type ClubRow, listClubs, settings } from "#services";
import { begin } from "./actions";

export const metadata: Metadata = { title: words.title };

const options = (rows: readonly { readonly id: string; readonly label: string }[]) =>
  rows.map(({ id, label }) => ({ value: id, label }));
const colours = options(settings().baseColours);
const destinations = Object.entries(sheetWords.price.destinations).map(([value, label]) => ({ value, label }));

export default async function ClubsPage() {
  const clubs = await listClubs(await staffContext("/shop/clubs"));
  if (!clubs.ok) notFound();
  return (
    <Page wide title={words.title} lead={words.lead}>
      <div className="grid gap-x-12 *:min-w-0 lg:grid-cols-[minmax(0,1fr)_minmax(0,24rem)]">
        <Part title={words.list.known} id="known">
          <Known clubs={clubs.value} />
        </Part>
        <Part title={words.begin.title} id="begin">
          <Begin />
        </Part>
      </div>
    </Page>
  );
}

function Known({ clubs }: { readonly clubs: readonly ClubRow[] }) {
  const { heads, known, none } = words.list;
  return (
    <Table
      caption={known}
      hideCaption
      stacks
      empty={<p className="text-pencil">{none}</p>}
      columns={[
        {
          key: "number",
          head: heads.number,
          cell: (row) => <NumberLink href={`/shop/clubs/${row.clubId}`} number={row.number} />,
        },
        { key: "name", head: heads.name, cell: (row) => row.name },
        { key: "customer", head: heads.customer, cell: (row) => row.customerName },
        { key: "skiers", head: heads.skiers, numeric: true, cell: (row) => row.skiers },
        { key: "quoted", head: heads.quoted, numeric: true, cell: (row) => row.quoted },
        { key: "ordered", head: heads.ordered, numeric: true, cell: (row) => row.ordered },
        { key: "wanted", head: heads.wanted, cell: (row) => <Day on={row.wantedOn} /> },
        { key: "begun", head: heads.begun, cell: (row) => <Clock at={row.createdAt} /> },
      ]}
      rows={clubs}
      rowKey={(row) => row.clubId}
    />
  );
}

function Begin() {
  const w = words.begin;
  return (
    <ActionForm
      action={begin}
      fields={[
        { kind: "text", name: "name", label: w.name, autoComplete: "off" },
        { kind: "text", name: "customer.name", label: w.customerName, autoComplete: "off" },
        { kind: "tel", name: "customer.phone", label: w.phone, autoComplete: "off" },
        { kind: "email", name: "email", label: w.email, optional: true, autoComplete: "off" },
        { kind: "select", name: "palette.base.left", label: w.left, options: colours },
        { kind: "select", name: "palette.base.right", label: w.right, options: colours },
        { kind: "select", name: "palette.house", label: w.house, options: options(settings().houseGraphics) },
        { kind: "checkbox", name: "isNamed", label: w.isNamed, hint: w.isNamedHint },
        { kind: "select", name: "palette.destination", label: w.destination, options: destinations },
        { kind: "date", name: "wantedOn", label: w.wantedOn, hint: w.wantedOnHint, optional: true },
      ]}
      submit={w.submit}
      busy={w.busy}
    />
  );
}
