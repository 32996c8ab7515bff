import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { staffContext } from "#app/_server/request.ts";
import { ActionForm } from "#app/_ui/action-form.client.tsx";
import { Button, ButtonLink } from "#app/_ui/button.tsx";
import { dayText } from "#app/_ui/date-range.tsx";
import { TextField } from "#app/_ui/field.tsx";
import { Notice } from "#app/_ui/notice.tsx";
import { Page, Part } from "#app/_ui/page.tsx";
import { fill } from "#app/_ui/words.ts";
import { say } from "#app/shop/say.ts";
import { optionChoice } from "#app/shop/strip-option-words.ts";
import { permit } from "#auth";
import copy from "#content/copy/rework.json";
import { findPairByCode, type StripsShortView, stripsShort } from "#services";
import { decide } from "../actions";

const w = copy.strips;
export const metadata: Metadata = { title: w.title };

interface Props {
  readonly params: Promise<{ readonly code: string }>;
  readonly searchParams: Promise<{ readonly expectedOn?: string }>;
}

/** The ways out for one pair; `?expectedOn=` shows first what waiting until that day would do. */
export default async function StripsShortPage({ params, searchParams }: Props) {
  const [{ code }, { expectedOn }] = await Promise.all([params, searchParams]);
  const ctx = await staffContext(`/shop/strips/${code}`);
  const scan = await findPairByCode(ctx, { code });
  if (!scan.ok) notFound();
  const { pairId, serial } = scan.value;
  const asked = await stripsShort(ctx, { pairId, ...(expectedOn ? { expectedOn } : {}) });
  const read = asked.ok ? asked : await stripsShort(ctx, { pairId });
  if (!read.ok) notFound();
  const view = read.value;
  return (
    <Page title={fill(w.decide, { serial })}>
      {view.isShort ? (
        <>
          <Part title={w.why} id="why">
            <ul className="list-disc pl-5">
              {view.why.map((reason) => (
                <li key={`${reason.code}${reason.position ?? ""}`}>
                  {fill(w.reasons[reason.code], { ...reason, ...reason.least })}
                </li>
              ))}
            </ul>
          </Part>
          <Part title={w.wait} id="wait">
            <Waiting view={view} expectedOn={expectedOn} error={asked.ok ? undefined : say(asked.refusal)} />
          </Part>
          <Part title={w.options} id="options">
            <Decision view={view} expectedOn={expectedOn} mayDecide={permit(ctx.actor, "strips.decide").ok} />
          </Part>
        </>
      ) : (
        <Notice tone="moss" title={w.notShort} />
      )}
      <p className="mt-6">
        <ButtonLink href="/shop/strips">{w.back}</ButtonLink>
      </p>
    </Page>
  );
}

interface WaitingProps {
  readonly view: StripsShortView;
  readonly expectedOn: string | undefined;
  readonly error: string | undefined;
}

const tones = { safe: "moss", "at-risk": "amber", late: "iron", open: "info" } as const;

function Waiting({ view: { waiting }, expectedOn, error }: WaitingProps) {
  const told =
    waiting === null
      ? w.waitingNone
      : fill(w.waiting, {
          days: waiting.movedWorkingDays,
          standing: copy.rework.standings[waiting.standingAfter],
        });
  return (
    <div className="grid gap-4">
      <form method="get" className="flex flex-wrap items-end gap-4">
        <TextField
          id="ask-expectedOn"
          name="expectedOn"
          type="date"
          label={w.expected}
          defaultValue={expectedOn ?? ""}
          error={error}
        />
        <Button type="submit">{w.ask}</Button>
      </form>
      {expectedOn && error === undefined ? (
        <Notice tone={waiting === null ? "moss" : tones[waiting.standingAfter]} title={dayText(expectedOn)}>
          <p>{told}</p>
        </Notice>
      ) : null}
    </div>
  );
}

interface DecisionProps {
  readonly view: StripsShortView;
  readonly expectedOn: string | undefined;
  readonly mayDecide: boolean;
}

function Decision({ view, expectedOn, mayDecide }: DecisionProps) {
  const choices = view.options.map(optionChoice);
  if (!mayDecide) {
    return (
      <>
        <ul className="list-disc pl-5">
          {choices.map(({ value, label, detail }) => (
            <li key={value}>
              {label} {detail ? <span className="text-pencil">{detail}</span> : null}
            </li>
          ))}
        </ul>
        <p className="mt-3 text-sm text-pencil">{w.deskOnly}</p>
      </>
    );
  }
  return (
    <ActionForm
      action={decide}
      fields={[
        { kind: "hidden", name: "pairId", value: view.pairId },
        { kind: "hidden", name: "version", value: String(view.version) },
        { kind: "radio", name: "option", label: w.options, choices },
        {
          kind: "date",
          name: "expectedOn",
          label: w.expected,
          hint: w.expectedHint,
          optional: true,
          value: expectedOn ?? "",
        },
        { kind: "text", name: "reason", label: w.reason, autoComplete: "off" },
      ]}
      submit={w.choose}
      busy={w.choosing}
    />
  );
}
