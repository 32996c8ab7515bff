import type { Metadata } from "next";
import Link from "next/link";
import { staffContext } from "#app/_server/request.ts";
import { ActionForm } from "#app/_ui/action-form.client.tsx";
import { moneyText } from "#app/_ui/money.ts";
import { Badge } from "#app/_ui/notice.tsx";
import { Page, Part } from "#app/_ui/page.tsx";
import { fill, wordOf } from "#app/_ui/words.ts";
import { Clock } from "#app/shop/cells.tsx";
import { refusedPage } from "#app/shop/refused-page.tsx";
import { clock } from "#app/shop/say.ts";
import { permit } from "#auth";
import words from "#content/copy/breakdowns.json";
import { idOf } from "#schemas/ids";
import { type IncidentView, readIncident } from "#services";
import { choose, close } from "../actions";
import { Base } from "../base";
import { Effect } from "../effect";
import { optionWords } from "../option-words";
import { Ways } from "../ways";

const w = words.incident;
export const metadata: Metadata = { title: words.list.title };

export default async function IncidentPage({ params }: { readonly params: Promise<{ readonly incidentId: string }> }) {
  const { incidentId } = await params;
  const ctx = await staffContext(`/shop/queue/breakdown/${incidentId}`);
  const read = await readIncident(ctx, { incidentId: idOf("incident", incidentId) });
  if (!read.ok) return refusedPage(read.refusal);
  const incident = read.value;
  const hidden = [
    { kind: "hidden", name: "incidentId", value: incident.incidentId },
    { kind: "hidden", name: "version", value: String(incident.version) },
  ] as const;
  return (
    <Page
      title={`${incident.number}: ${words.kinds[incident.input.kind]}`}
      lead={fill(w.reported, { by: incident.reportedBy, at: clock(incident.reportedAt) })}
      aside={<Badge tone={incident.state === "open" ? "amber" : "info"}>{words.states[incident.state]}</Badge>}
    >
      {incident.note === "" ? null : (
        <p className="mb-6 max-w-measure">
          {w.note}: {incident.note}
        </p>
      )}
      {incident.input.kind === "ski-rebuild" ? <p className="mb-6 max-w-measure">{w.rebuild}</p> : null}
      {incident.state === "closed" ? (
        <p className="mb-6">
          {incident.closed ? fill(w.closed, { at: clock(incident.closed.at), by: incident.closed.by }) : null}
        </p>
      ) : (
        <div className="mb-8 grid gap-2">
          <ActionForm
            action={close}
            idPrefix="close-"
            tone="plain"
            size="floor"
            fields={hidden}
            submit={w.close}
            busy={w.closing}
          >
            <p className="text-pencil">{w.closeNote}</p>
          </ActionForm>
        </div>
      )}
      <Part title={words.ways.title} id="ways">
        <Ways options={incident.options} showCost={permit(ctx.actor, "what-if.ask").ok} />
        <Decision incident={incident} mayDecide={permit(ctx.actor, "incident.decide").ok} hidden={hidden} />
      </Part>
      {incident.base === null ? null : (
        <Part title={words.base.title} id="base">
          <Base base={incident.base} />
        </Part>
      )}
      <Part title={words.effect.title} id="effect">
        <Effect effect={incident.effect} />
      </Part>
      {permit(ctx.actor, "notice.send").ok ? (
        <Part title={w.notices} id="letters">
          <p>
            {incident.notices.length === 0 ? w.noLetters : fill(w.letters, { count: incident.notices.length })}{" "}
            <Link href="/shop/notices">{w.toLetters}</Link>
          </p>
        </Part>
      ) : null}
      <Part title={w.history} id="history">
        <ol className="grid gap-2">
          {incident.history.map((event) => (
            <li key={event.seq}>
              <Clock at={event.at} /> {event.by}: {wordOf(words.events, event.kind)}
            </li>
          ))}
        </ol>
      </Part>
    </Page>
  );
}

type Hidden = { readonly kind: "hidden"; readonly name: string; readonly value: string };

function Decision(props: {
  readonly incident: IncidentView;
  readonly mayDecide: boolean;
  readonly hidden: readonly Hidden[];
}) {
  const { incident, mayDecide, hidden } = props;
  const { chosen } = incident;
  if (chosen !== null) {
    return (
      <p className="mt-4 max-w-measure font-medium">
        {fill(words.ways.chosen, {
          option: optionWords(incident.options.find(({ way }) => way === chosen.option) ?? { way: chosen.option }),
          reason: chosen.reason,
          by: chosen.by,
          at: clock(chosen.at),
          cost: moneyText(chosen.costCents, "short"),
        })}
      </p>
    );
  }
  if (incident.state !== "open") return null;
  if (!mayDecide) return <p className="mt-4 text-pencil">{words.ways.ownerOnly}</p>;
  return (
    <div className="mt-6">
      <ActionForm
        action={choose}
        idPrefix="choose-"
        fields={[
          ...hidden,
          {
            kind: "radio",
            name: "option",
            label: words.ways.choose,
            choices: incident.options.map((option) => ({ value: option.way, label: optionWords(option) })),
          },
          { kind: "textarea", name: "reason", label: words.ways.reason },
        ]}
        submit={words.ways.decide}
        busy={words.ways.deciding}
      />
    </div>
  );
}
