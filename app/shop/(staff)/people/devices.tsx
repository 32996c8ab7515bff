/** Devices on which people sign in by short code: those that are, and the one an owner sits at. */
import { ActionForm } from "#app/_ui/action-form.client.tsx";
import { Part } from "#app/_ui/page.tsx";
import { Table } from "#app/_ui/table.tsx";
import { fill } from "#app/_ui/words.ts";
import { Clock } from "#app/shop/cells.tsx";
import words from "#content/copy/people.json";
import type { FloorDeviceView, PeopleView } from "#services";
import { enrolThisDevice, giveDeviceBack } from "./actions";

const w = words.devices;
const { heads } = words;

export function Devices({ devices, thisBrowser }: Pick<PeopleView, "devices" | "thisBrowser">) {
  return (
    <Part id="devices" title={w.title}>
      <p className="mb-3 max-w-measure text-pencil">{w.lead}</p>
      <Table
        caption={w.title}
        hideCaption
        stacks
        columns={[
          { key: "name", head: heads.device, cell: (row) => <Name device={row} /> },
          { key: "browser", head: heads.browser, cell: (row) => row.browser },
          { key: "by", head: heads.by, cell: (row) => row.enrolledBy },
          { key: "used", head: heads.used, cell: (row) => <Clock at={row.lastSeenAt} /> },
          { key: "end", head: <span>{heads.end}</span>, cell: (row) => <GiveBack device={row} /> },
        ]}
        rows={devices}
        rowKey={(row) => row.deviceId}
        empty={<p className="text-pencil">{w.none}</p>}
      />
      <div className="mt-6">
        {thisBrowser === null ? (
          devices.some(({ isThis }) => isThis) ? null : (
            <p className="max-w-measure text-pencil">{w.unknown}</p>
          )
        ) : (
          <ActionForm
            action={enrolThisDevice}
            idPrefix="enrol-"
            tone="plain"
            fields={[
              {
                kind: "text",
                name: "name",
                label: w.enrolName,
                hint: fill(w.enrolNote, { browser: thisBrowser }),
                autoComplete: "off",
              },
            ]}
            submit={w.enrolButton}
          />
        )}
      </div>
    </Part>
  );
}

function Name({ device: { name, isThis } }: { readonly device: FloorDeviceView }) {
  return (
    <>
      {name}
      {isThis ? <span className="text-pencil"> ({words.thisOne})</span> : null}
    </>
  );
}

function GiveBack({ device: { deviceId, name } }: { readonly device: FloorDeviceView }) {
  return (
    <ActionForm
      action={giveDeviceBack}
      idPrefix={`${deviceId}-`}
      tone="plain"
      size="small"
      fields={[{ kind: "hidden", name: "deviceId", value: deviceId }]}
      submit={`${w.release}: ${name}`}
    />
  );
}
