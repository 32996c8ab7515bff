/** Screens on the wall with their links. A link is told once, where it was made. */
import { ActionForm } from "#app/_ui/action-form.client.tsx";
import { Notice } from "#app/_ui/notice.tsx";
import { Part } from "#app/_ui/page.tsx";
import { Table } from "#app/_ui/table.tsx";
import { Clock } from "#app/shop/cells.tsx";
import { toldLink } from "#app/shop/told-link.ts";
import words from "#content/copy/people.json";
import type { WallView } from "#services";
import { endScreen, openScreen } from "./actions";

const w = words.walls;
const { heads } = words;

export async function Walls({ walls }: { readonly walls: readonly WallView[] }) {
  const links = await Promise.all(walls.map(({ wallId }) => toldLink("wall", wallId)));
  const told = links.find((link) => link !== null);
  return (
    <Part id="walls" title={w.title}>
      <p className="mb-3 max-w-measure text-pencil">{w.lead}</p>
      {told ? (
        <div className="mb-4">
          <Notice tone="info" title={w.told} live="polite">
            <p className="break-all">
              <a href={told.url}>{told.url}</a>
            </p>
            <p className="text-sm text-pencil">{w.toldNote}</p>
          </Notice>
        </div>
      ) : null}
      <Table
        caption={w.title}
        hideCaption
        stacks
        columns={[
          { key: "name", head: w.name, cell: (row) => row.name },
          { key: "opened", head: heads.opened, cell: (row) => <Clock at={row.openedAt} /> },
          { key: "until", head: heads.until, cell: (row) => <Until wall={row} /> },
          { key: "end", head: <span>{heads.end}</span>, cell: (row) => <End wall={row} /> },
        ]}
        rows={walls}
        rowKey={(row) => row.wallId}
        empty={<p className="text-pencil">{w.none}</p>}
      />
      <div className="mt-6">
        <ActionForm
          action={openScreen}
          idPrefix="wall-"
          tone="plain"
          fields={[{ kind: "text", name: "name", label: w.name, autoComplete: "off" }]}
          submit={w.open}
        />
      </div>
    </Part>
  );
}

function Until({ wall: { until, isOver } }: { readonly wall: WallView }) {
  return (
    <>
      <Clock at={until} />
      {isOver ? <span className="text-pencil"> ({w.over})</span> : null}
    </>
  );
}

function End({ wall: { wallId, name } }: { readonly wall: WallView }) {
  return (
    <ActionForm
      action={endScreen}
      idPrefix={`${wallId}-`}
      tone="plain"
      size="small"
      fields={[{ kind: "hidden", name: "wallId", value: wallId }]}
      submit={`${w.end}: ${name}`}
    />
  );
}
