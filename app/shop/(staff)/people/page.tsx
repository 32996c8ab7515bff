import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { requestDevice, staffContext } from "#app/_server/request.ts";
import { ActionForm } from "#app/_ui/action-form.client.tsx";
import { Notice } from "#app/_ui/notice.tsx";
import { Page, Part } from "#app/_ui/page.tsx";
import { Table } from "#app/_ui/table.tsx";
import { fill } from "#app/_ui/words.ts";
import { Clock } from "#app/shop/cells.tsx";
import { Happened } from "#app/shop/history.tsx";
import { passwordLength } from "#auth";
import words from "#content/copy/people.json";
import shopWords from "#content/copy/shop.json";
import { type PeopleView, type PersonView, readPeople } from "#services";
import { takeSomebodyOn } from "./actions";
import { Devices } from "./devices";
import { Guessing } from "./guessing";
import { Walls } from "./walls";

const { heads } = words;
const roles = shopWords.frame.roles;
export const metadata: Metadata = { title: words.title };

export default async function PeoplePage() {
  const ctx = await staffContext("/shop/people");
  const read = await readPeople(ctx, { deviceToken: (await requestDevice()).token });
  if (!read.ok) notFound();
  const { people, guessing, record, ...places } = read.value;
  const here = people.filter(({ leftAt }) => leftAt === null);
  const gone = people.filter(({ leftAt }) => leftAt !== null);
  return (
    <Page wide title={words.title} lead={words.lead}>
      <div className="mb-6 grid gap-4 empty:hidden">
        <Guessing guessing={guessing} />
        <DemoPasswords people={here} />
      </div>
      <Part id="here" title={words.here}>
        <People people={here} />
      </Part>
      <Part id="take-on" title={words.takeOn.title}>
        <TakeOn />
      </Part>
      <Devices {...places} />
      <Walls walls={places.walls} />
      {gone.length > 0 ? (
        <Part id="gone" title={words.gone}>
          <Gone people={gone} />
        </Part>
      ) : null}
      <Part id="record" title={words.record.title}>
        <Record record={record} />
      </Part>
    </Page>
  );
}

function DemoPasswords({ people }: { readonly people: readonly PersonView[] }) {
  const names = people.filter(({ isDemoPassword }) => isDemoPassword).map(({ name }) => name);
  if (names.length === 0) return null;
  return (
    <Notice tone="info" title={`${names.join(", ")}: ${words.demoPassword}`}>
      <p className="max-w-measure">{words.demoPasswordNote}</p>
    </Notice>
  );
}

function People({ people }: { readonly people: readonly PersonView[] }) {
  return (
    <Table
      caption={words.here}
      hideCaption
      stacks
      columns={[
        { key: "name", head: heads.name, cell: (row) => <PersonLink person={row} /> },
        { key: "role", head: heads.role, cell: (row) => roles[row.role] },
        { key: "email", head: heads.email, cell: (row) => row.email },
        { key: "code", head: heads.code, cell: (row) => (row.hasFloorCode ? words.yes : words.none) },
        { key: "signIns", head: heads.signIns, cell: (row) => <Places person={row} /> },
      ]}
      rows={people}
      rowKey={(row) => row.staffId}
    />
  );
}

function PersonLink({ person: { staffId, name } }: { readonly person: PersonView }) {
  return (
    <a href={`/shop/people/${staffId}`} className="font-semibold">
      {name}
    </a>
  );
}

function Places({ person: { signIns } }: { readonly person: PersonView }) {
  if (signIns.length === 0) return <span className="text-pencil">{words.nowhere}</span>;
  return (
    <ul>
      {signIns.map(({ sessionId, device, lastUsedAt }) => (
        <li key={sessionId}>
          {device ?? words.unknownDevice}, <Clock at={lastUsedAt} />
        </li>
      ))}
    </ul>
  );
}

function TakeOn() {
  const w = words.takeOn;
  return (
    <ActionForm
      action={takeSomebodyOn}
      idPrefix="new-"
      fields={[
        { kind: "text", name: "name", label: w.name, autoComplete: "off" },
        { kind: "email", name: "email", label: w.email, autoComplete: "off" },
        {
          kind: "select",
          name: "role",
          label: w.role,
          options: Object.entries(roles).map(([value, label]) => ({ value, label })),
        },
        {
          kind: "password",
          name: "password",
          label: w.password,
          hint: fill(words.passwordHint, passwordLength),
          autoComplete: "new-password",
        },
      ]}
      submit={w.button}
      done={w.done}
    />
  );
}

function Gone({ people }: { readonly people: readonly PersonView[] }) {
  return (
    <Table
      caption={words.gone}
      hideCaption
      dense
      columns={[
        { key: "name", head: heads.name, cell: (row) => <PersonLink person={row} /> },
        { key: "role", head: heads.role, cell: (row) => roles[row.role] },
        { key: "left", head: heads.left, cell: (row) => (row.leftAt === null ? "–" : <Clock at={row.leftAt} />) },
      ]}
      rows={people}
      rowKey={(row) => row.staffId}
    />
  );
}

function Record({ record }: { readonly record: PeopleView["record"] }) {
  return (
    <Table
      caption={words.record.title}
      hideCaption
      dense
      stacks
      columns={[
        { key: "at", head: heads.at, cell: (event) => <Clock at={event.at} /> },
        { key: "about", head: heads.about, cell: (event) => event.about },
        { key: "what", head: heads.what, cell: (event) => <Happened event={event} /> },
        { key: "who", head: heads.who, cell: (event) => event.by },
      ]}
      rows={record}
      rowKey={(event) => event.seq}
      empty={<p className="text-pencil">{words.record.none}</p>}
    />
  );
}
