import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { staffContext } from "#app/_server/request.ts";
import { ActionForm } from "#app/_ui/action-form.client.tsx";
import { Cautions } from "#app/_ui/cautions.tsx";
import { Badge, Notice } from "#app/_ui/notice.tsx";
import { Page, Part } from "#app/_ui/page.tsx";
import { Table } from "#app/_ui/table.tsx";
import { fill } from "#app/_ui/words.ts";
import { Clock } from "#app/shop/cells.tsx";
import { clock } from "#app/shop/say.ts";
import words from "#content/copy/cautions.json";
import shopWords from "#content/copy/shop.json";
import { type CautionAnswer, listCautionAnswers, type MyCautions, readMyCautions, settings } from "#services";
import { sayYes } from "./actions";

const w = words.page;
export const metadata: Metadata = { title: w.title };

/** Everything that concerns who reads it, whole; the yes stands at the end. */
export default async function CautionsPage() {
  const ctx = await staffContext("/shop/cautions");
  const [read, answers] = await Promise.all([readMyCautions(ctx), listCautionAnswers(ctx)]);
  if (!read.ok) notFound();
  const mine = read.value;
  const { localRules } = settings().safety;
  return (
    <Page title={w.title} lead={w.lead}>
      <div className="mb-8 grid gap-4">
        <Yes mine={mine} />
        <p className="max-w-measure font-semibold">{localRules}</p>
      </div>
      {mine.stations.map(({ station, number, name, cautions }) => (
        <Part key={station} id={station} title={`${number} ${name}`}>
          <Cautions open size="floor" cautions={cautions} localRules={null} />
        </Part>
      ))}
      {mine.general.length > 0 ? (
        <Part id="general" title={w.general}>
          <Cautions open size="floor" cautions={mine.general} localRules={null} />
        </Part>
      ) : null}
      {mine.state === "said" ? null : (
        <div className="mb-10 grid max-w-measure gap-2">
          <ActionForm
            action={sayYes}
            idPrefix="yes-"
            size="floor"
            fields={[{ kind: "hidden", name: "textsHash", value: mine.textsHash }]}
            submit={w.yes}
            busy={w.saying}
          />
          <p className="text-sm text-pencil">{w.note}</p>
        </div>
      )}
      {answers.ok ? (
        <Part id="people" title={w.people}>
          <p className="mb-3 max-w-measure text-pencil">{fill(w.peopleLead, { season: mine.season })}</p>
          <People answers={answers.value} />
        </Part>
      ) : null}
    </Page>
  );
}

function Yes({ mine: { state, name, season, saidAt } }: { readonly mine: MyCautions }) {
  const title = fill(w.states[state], { name, season, at: saidAt === null ? "" : clock(saidAt) });
  return <Notice tone={state === "said" ? "moss" : "amber"} title={title} />;
}

function People({ answers }: { readonly answers: readonly CautionAnswer[] }) {
  return (
    <Table
      caption={w.people}
      hideCaption
      columns={[
        { key: "name", head: w.heads.name, cell: (row) => row.name },
        { key: "role", head: w.heads.role, cell: (row) => shopWords.frame.roles[row.role] },
        {
          key: "state",
          head: w.heads.state,
          cell: (row) => <Badge tone={row.state === "said" ? "moss" : "amber"}>{w.short[row.state]}</Badge>,
        },
        { key: "at", head: w.heads.at, cell: (row) => (row.saidAt === null ? "–" : <Clock at={row.saidAt} />) },
      ]}
      rows={answers}
      rowKey={(row) => row.staffId}
    />
  );
}
