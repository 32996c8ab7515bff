/** A hard date: what it would take is looked at first, then an owner approves it. */
import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { staffContext } from "#app/_server/request.ts";
import { ActionForm } from "#app/_ui/action-form.client.tsx";
import { Button } from "#app/_ui/button.tsx";
import { dayText } from "#app/_ui/date-range.tsx";
import { TextField } from "#app/_ui/field.tsx";
import { moneyText } from "#app/_ui/money.ts";
import { Notice, type Tone } from "#app/_ui/notice.tsx";
import { Page, Part } from "#app/_ui/page.tsx";
import { fill } from "#app/_ui/words.ts";
import type { Query } from "#app/shop/(staff)/list-href.ts";
import { Effect } from "#app/shop/(staff)/queue/breakdown/effect.tsx";
import { say } from "#app/shop/say.ts";
import { permit } from "#auth";
import words from "#content/copy/promises.json";
import { isoDate } from "#engine/units";
import { idOf } from "#schemas/ids";
import { type HardDatePreview, type OrderView, previewHardDate, readOrder } from "#services";
import { fixHardDate } from "../promise-actions";

const w = words.hard;
export const metadata: Metadata = { title: "Hard date" };

const isDay = (text: string | undefined): text is string =>
  text !== undefined && /^\d{4}-\d{2}-\d{2}$/.test(text) && !Number.isNaN(Date.parse(text));

export default async function HardDatePage({
  params,
  searchParams,
}: {
  readonly params: Promise<{ readonly orderId: string }>;
  readonly searchParams: Promise<Query>;
}) {
  const { orderId } = await params;
  const { on } = await searchParams;
  const ctx = await staffContext(`/shop/orders/${orderId}/hard-date`);
  const read = await readOrder(ctx, { orderId: idOf("order", orderId) });
  if (!read.ok) notFound();
  const order = read.value;
  const preview = isDay(on) ? await previewHardDate(ctx, { orderId: order.orderId, on: isoDate(on) }) : null;
  const refusal = preview?.ok === false ? preview.refusal : null;
  const error =
    refusal?.path === "on" ? say(refusal) : on === undefined || isDay(on) ? undefined : fill(w.noDay, { on });
  return (
    <Page wide title={fill(w.title, { number: order.number })} lead={w.lead}>
      <form action={`/shop/orders/${order.orderId}/hard-date`} className="mb-8 grid max-w-measure gap-4">
        <TextField
          id="on"
          name="on"
          type="date"
          label={w.on}
          defaultValue={on ?? ""}
          error={error}
          autoFocus={error !== undefined}
        />
        <p className="flex flex-wrap items-center gap-4">
          <Button type="submit">{w.show}</Button>
          <a href={`/shop/orders/${order.orderId}`}>{w.back}</a>
        </p>
      </form>
      {refusal !== null && refusal.path !== "on" ? (
        <Notice tone="iron" title={say(refusal)} live="polite" takesFocus />
      ) : null}
      {preview?.ok ? (
        <Shown preview={preview.value} order={order} isOwner={permit(ctx.actor, "promise.hard").ok} />
      ) : null}
    </Page>
  );
}

const tones: Readonly<Record<HardDatePreview["fits"], Tone>> = {
  now: "moss",
  "by-moving": "info",
  "not-at-all": "iron",
};

function Shown({
  preview,
  order,
  isOwner,
}: {
  readonly preview: HardDatePreview;
  readonly order: OrderView;
  readonly isOwner: boolean;
}) {
  const { fits, p95, movedSerials, breaksPromises, feeCents, feeTaxCents, effect } = preview;
  const days = { p95: dayText(p95.now), moved: dayText(p95.moved) };
  return (
    <Part title={dayText(preview.on)} id="shown" arrives>
      <div className="mb-6 grid gap-2">
        <Notice tone={tones[fits]} title={fill(w.fits[fits], days)} />
        {fits === "by-moving" ? (
          <>
            <p>{movedSerials.length > 0 ? fill(w.moved, { serials: movedSerials.join(", ") }) : w.nobody}</p>
            {breaksPromises.length > 0 ? (
              <Notice tone="amber" title={fill(w.breaks, { serials: breaksPromises.join(", ") })} />
            ) : null}
          </>
        ) : null}
        {fits === "not-at-all" ? null : (
          <p>
            {feeCents > 0
              ? fill(w.fee, { fee: moneyText(feeCents), total: moneyText(feeCents + feeTaxCents) })
              : w.noFee}
          </p>
        )}
      </div>
      {/* Of a day that cannot be kept nothing moves. */}
      {effect && fits !== "not-at-all" ? <Effect effect={effect} /> : null}
      {fits === "not-at-all" ? null : isOwner ? (
        <div className="mt-6">
          <ActionForm
            action={fixHardDate}
            submit={w.approve}
            fields={[
              { kind: "hidden", name: "orderId", value: order.orderId },
              { kind: "hidden", name: "version", value: String(order.version) },
              { kind: "hidden", name: "revision", value: String(preview.revision) },
              { kind: "hidden", name: "on", value: preview.on },
              { kind: "text", name: "planB", label: w.planB, hint: w.planBHint, autoComplete: "off" },
              ...(breaksPromises.length > 0
                ? ([{ kind: "text", name: "overrideReason", label: w.override, autoComplete: "off" }] as const)
                : []),
            ]}
          />
        </div>
      ) : (
        <p className="mt-4 text-pencil">{w.ownerOnly}</p>
      )}
    </Part>
  );
}
