/** The order of the queue: moved by button, by list or by dragging; every promise is shown before it counts. */
import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { staffContext } from "#app/_server/request.ts";
import { ActionForm } from "#app/_ui/action-form.client.tsx";
import { Button, ButtonLink } from "#app/_ui/button.tsx";
import { SelectField } from "#app/_ui/field.tsx";
import { LiveQueue } from "#app/_ui/live-queue.client.tsx";
import { Notice } from "#app/_ui/notice.tsx";
import { Page, Part } from "#app/_ui/page.tsx";
import { pageOf } from "#app/_ui/paging.tsx";
import { fill } from "#app/_ui/words.ts";
import { listHref, type Query } from "#app/shop/(staff)/list-href.ts";
import { clock, say } from "#app/shop/say.ts";
import { permit } from "#auth";
import words from "#content/copy/queue.json";
import { idOf } from "#schemas/ids";
import { type MovePreview, previewMove, type QueueOrder, readQueueOrder } from "#services";
import { Effect } from "../breakdown/effect";
import { move, undo } from "./actions";
import { OrderTable } from "./order-table";
import { Suggestion } from "./suggestion";

const w = words.order;
export const metadata: Metadata = { title: w.title };

export default async function QueueOrderPage({ searchParams }: { readonly searchParams: Promise<Query> }) {
  const query = await searchParams;
  const ctx = await staffContext(listHref("/shop/queue/order", query, {}));
  const read = await readQueueOrder(ctx);
  if (!read.ok) notFound();
  const order = read.value;
  const mayMove = permit(ctx.actor, "queue.order").ok;
  const preview =
    mayMove && query.move
      ? await previewMove(ctx, {
          pairId: idOf("pair", query.move),
          before: query.before ? idOf("pair", query.before) : null,
        })
      : null;
  const isLooking = mayMove && query.suggest === "yes";
  return (
    <Page
      wide
      title={w.title}
      lead={w.lead}
      aside={<LiveQueue revision={order.revision} isBusy={preview !== null || isLooking} />}
    >
      {preview === null ? null : preview.ok ? (
        <Preview preview={preview.value} />
      ) : (
        <Notice tone="iron" live="assertive">
          <p>{say(preview.refusal)}</p>
        </Notice>
      )}
      <OrderTable order={order} mayMove={mayMove} page={query.page} />
      {mayMove ? <MoveForm order={order} page={query.page} /> : null}
      {mayMove ? <Suggestion ctx={ctx} isLooking={isLooking} /> : null}
      <Moves order={order} mayMove={mayMove} />
    </Page>
  );
}

function Preview({ preview }: { readonly preview: MovePreview }) {
  const { serial, fromPosition, toPosition } = preview;
  return (
    <Part title={fill(w.preview, { serial, from: fromPosition, to: toPosition })} id="preview">
      <p className="mb-4 font-medium">{w.notYet}</p>
      <Effect effect={preview.effect} />
      <div className="mt-6">
        <ActionForm
          action={move}
          submit={w.apply}
          busy={w.applying}
          fields={[
            { kind: "hidden", name: "pairId", value: preview.pairId },
            { kind: "hidden", name: "before", value: preview.before?.pairId ?? "" },
            { kind: "hidden", name: "revision", value: String(preview.revision) },
            { kind: "text", name: "reason", label: w.reason, hint: w.reasonHint },
          ]}
        />
        <p className="mt-3">
          <ButtonLink href="/shop/queue/order" tone="quiet">
            {w.cancel}
          </ButtonLink>
        </p>
      </div>
    </Part>
  );
}

/** The pairs of the page shown, to the places of this page or the first of any other: anywhere in two moves. */
function MoveForm({ order, page: asked }: { readonly order: QueueOrder; readonly page: string | undefined }) {
  const { shown, pageCount } = pageOf(order.places, asked);
  const firsts = Array.from({ length: pageCount }, (_, i) => pageOf(order.places, String(i + 1)).shown.slice(0, 1));
  const near = new Set([...shown, ...firsts.flat()]);
  const movable = shown.filter(({ fixedBecause }) => fixedBecause === null);
  const option = ({ pairId, serial, ski }: QueueOrder["places"][number]) => ({
    value: pairId,
    label: `${serial}, ${ski}`,
  });
  if (movable.length === 0) return null;
  return (
    <Part title={w.toPlace} id="to-place">
      <form action="/shop/queue/order" className="grid max-w-measure gap-4">
        <SelectField id="move" name="move" label={w.pair} options={movable.map(option)} />
        <SelectField
          id="before"
          name="before"
          label={w.before}
          options={order.places.filter((place) => near.has(place)).map(option)}
          empty={w.end}
        />
        <p>
          <Button type="submit">{w.show}</Button>
        </p>
      </form>
    </Part>
  );
}

function Moves({ order, mayMove }: { readonly order: QueueOrder; readonly mayMove: boolean }) {
  return (
    <Part title={w.moves} id="moves">
      {order.moves.length === 0 ? <p className="text-pencil">{w.noMoves}</p> : null}
      <ul className="grid gap-4">
        {order.moves.map((each) => (
          <li key={each.decisionId} className="border-l-2 border-control pl-3">
            <p>
              {fill(w.moved, {
                serials: each.serials.join(", "),
                reason: each.reason,
                by: each.by,
                at: clock(each.at),
              })}
            </p>
            {each.undone ? (
              <p className="text-pencil">{fill(w.undone, { by: each.undone.by, at: clock(each.undone.at) })}</p>
            ) : mayMove ? (
              <ActionForm
                action={undo}
                submit={w.undo}
                busy={w.undoing}
                tone="plain"
                size="small"
                idPrefix={`${each.decisionId}-`}
                fields={[{ kind: "hidden", name: "decisionId", value: each.decisionId }]}
              />
            ) : null}
          </li>
        ))}
      </ul>
    </Part>
  );
}
