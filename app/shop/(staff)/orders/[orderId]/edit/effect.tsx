/** What a change of the pair would do, and the button that does it. */
import { ActionForm } from "#app/_ui/action-form.client.tsx";
import { ButtonLink } from "#app/_ui/button.tsx";
import { DateRange, dayText } from "#app/_ui/date-range.tsx";
import { moneyText } from "#app/_ui/money.ts";
import { Notice } from "#app/_ui/notice.tsx";
import { Part } from "#app/_ui/page.tsx";
import { PriceDifferences } from "#app/_ui/price-differences.tsx";
import { fill } from "#app/_ui/words.ts";
import { changePair } from "#app/shop/(staff)/orders/actions.ts";
import { choicesOf } from "#app/shop/(staff)/orders/edit-fields.ts";
import { say } from "#app/shop/say.ts";
import { permit } from "#auth";
import words from "#content/copy/shop.json";
import type { Refusal } from "#engine/units";
import { type Context, type EditPreview, type OrderPairView, type OrderView, previewEdit } from "#services";

const w = words.edit;

interface Props {
  readonly ctx: Context;
  readonly order: OrderView;
  readonly pair: OrderPairView;
  readonly asked: Parameters<typeof choicesOf>[0] & { readonly approve?: string | undefined };
  readonly query: Readonly<Record<string, string | string[]>>;
}

export async function EditEffect({ ctx, order, pair, asked, query }: Props) {
  const approves = asked.approve === "yes";
  const seen = await previewEdit(ctx, { pairId: pair.pairId, choices: choicesOf(asked), ownerApproves: approves });
  if (!seen.ok) return <Refused refusal={seen.refusal} ctx={ctx} query={query} />;
  const preview = seen.value;
  if (preview.parts.length === 0) return <Notice tone="info" title={w.same} live="polite" />;
  return (
    <Part title={w.consequences} id="effect">
      <Effects preview={preview} />
      <PriceDifferences
        title={w.consequences}
        before={preview.before.price}
        after={preview.after.price}
        comparison={preview.comparison}
      />
      <div className="mt-6">
        <ActionForm
          action={changePair}
          idPrefix="change-"
          fields={[
            { kind: "hidden", name: "orderId", value: order.orderId },
            { kind: "hidden", name: "pairId", value: pair.pairId },
            { kind: "hidden", name: "revision", value: String(pair.revision) },
            { kind: "hidden", name: "lengthCm", value: String(asked.lengthCm) },
            { kind: "hidden", name: "flexRatio", value: String(asked.flexRatio) },
            { kind: "hidden", name: "core", value: asked.core },
            { kind: "hidden", name: "reinforcements", value: asked.reinforcements.join(",") },
            ...(approves ? [{ kind: "checkbox", name: "ownerApproves", label: w.ownerApproves } as const] : []),
            { kind: "text", name: "reason", label: w.reason, autoComplete: "off" },
          ]}
          submit={w.button}
        />
      </div>
    </Part>
  );
}

function Effects({ preview }: { readonly preview: EditPreview }) {
  const { promise } = preview;
  return (
    <>
      <ul className="mb-4 list-disc pl-5">
        {preview.consequences.map((consequence) => (
          <li key={consequence}>{w.consequenceNames[consequence]}</li>
        ))}
      </ul>
      {preview.lostCents > 0 ? (
        <Notice tone="iron" title={fill(w.lost, { cost: moneyText(preview.lostCents) })} />
      ) : null}
      {promise ? (
        <p className="mb-4">
          {w.promiseBefore}: {promise.before ? dayText(promise.before) : words.pair.noPromise}. {w.promiseAfter}:{" "}
          <DateRange from={promise.after.p50} to={promise.after.p90} shares={promise.after.shares} withYear />.
        </p>
      ) : null}
    </>
  );
}

/** Too late for the desk; an owner may still look at what it would cost. */
function Refused({
  refusal,
  ctx,
  query,
}: {
  readonly refusal: Refusal;
  readonly ctx: Context;
  readonly query: Props["query"];
}) {
  const lost = typeof refusal.lostCents === "number" ? refusal.lostCents : null;
  const mayApprove = permit(ctx.actor, "pair.override").ok;
  const again = new URLSearchParams(
    Object.entries(query).flatMap(([key, value]) => [value].flat().map((v) => [key, v])),
  );
  again.set("approve", "yes");
  return (
    <Notice tone="iron" title={say(refusal)} live="polite">
      {lost === null ? null : <p>{fill(w.lost, { cost: moneyText(lost) })}</p>}
      {lost !== null && mayApprove ? (
        <p>
          <ButtonLink href={`?${again.toString()}`}>{w.withApproval}</ButtonLink>
        </p>
      ) : null}
    </Notice>
  );
}
