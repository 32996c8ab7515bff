/** Where somebody is signed in, each with its end: for an owner and for the person alike. */
import { ActionForm } from "#app/_ui/action-form.client.tsx";
import { Table } from "#app/_ui/table.tsx";
import { Clock } from "#app/shop/cells.tsx";
import words from "#content/copy/people.json";
import type { SignInView } from "#services";
import { endOne } from "./actions";

const w = words.person;
const { heads, kinds } = words;

export function SignIns({ title, signIns }: { readonly title: string; readonly signIns: readonly SignInView[] }) {
  return (
    <Table
      caption={title}
      hideCaption
      stacks
      columns={[
        { key: "device", head: heads.device, cell: (row) => <Device signIn={row} /> },
        { key: "kind", head: heads.kind, cell: (row) => kinds[row.kind] },
        { key: "since", head: heads.since, cell: (row) => <Clock at={row.since} /> },
        { key: "used", head: heads.used, cell: (row) => <Clock at={row.lastUsedAt} /> },
        { key: "ends", head: heads.ends, cell: (row) => <Clock at={row.endsAt} /> },
        { key: "end", head: <span>{heads.end}</span>, cell: (row) => <End signIn={row} /> },
      ]}
      rows={signIns}
      rowKey={(row) => row.sessionId}
      empty={<p className="text-pencil">{w.nowhere}</p>}
    />
  );
}

function Device({ signIn: { device, isThis } }: { readonly signIn: SignInView }) {
  return (
    <>
      {device ?? words.unknownDevice}
      {isThis ? <span className="text-pencil"> ({words.thisOne})</span> : null}
    </>
  );
}

function End({ signIn: { sessionId } }: { readonly signIn: SignInView }) {
  return (
    <ActionForm
      action={endOne}
      idPrefix={`${sessionId}-`}
      tone="plain"
      size="small"
      fields={[{ kind: "hidden", name: "sessionId", value: sessionId }]}
      submit={w.end}
    />
  );
}
