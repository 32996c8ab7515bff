/** An order that the search has found, with what it does to every promise; the owner may give it. */
import { ActionForm } from "#app/_ui/action-form.client.tsx";
import { Button } from "#app/_ui/button.tsx";
import { Notice } from "#app/_ui/notice.tsx";
import { Part } from "#app/_ui/page.tsx";
import { fill } from "#app/_ui/words.ts";
import { say } from "#app/shop/say.ts";
import { permit } from "#auth";
import words from "#content/copy/queue.json";
import { type SuggestedOrder, suggestOrder } from "#services";
import type { Context } from "#services/context";
import { Effect } from "../breakdown/effect";
import { reorder } from "./actions";

const w = words.suggest;

export async function Suggestion({ ctx, isLooking }: { readonly ctx: Context; readonly isLooking: boolean }) {
  const found = isLooking ? await suggestOrder(ctx) : null;
  return (
    <Part title={w.title} id="suggestion">
      <p className="mb-4 max-w-measure text-pencil">{w.lead}</p>
      {found === null ? (
        <form action="/shop/queue/order#suggestion">
          <input type="hidden" name="suggest" value="yes" />
          <Button type="submit">{w.look}</Button>
        </form>
      ) : found.ok ? (
        <Found suggested={found.value} mayApply={permit(ctx.actor, "queue.reorder").ok} />
      ) : (
        <Notice tone="iron" title={say(found.refusal)} />
      )}
    </Part>
  );
}

function Found({ suggested, mayApply }: { readonly suggested: SuggestedOrder; readonly mayApply: boolean }) {
  const { places, before, after, effect, revision } = suggested;
  if (places.length === 0 || effect === null) return <p>{w.none}</p>;
  return (
    <div className="grid gap-4">
      <p>
        {fill(w.found, { count: places.length, serials: places.map(({ serial }) => serial).join(", ") })}{" "}
        {fill(w.cost, {
          lateBefore: before.lateMinutes,
          lateAfter: after.lateMinutes,
          changeBefore: before.changeoverMinutes,
          changeAfter: after.changeoverMinutes,
        })}
      </p>
      <Effect effect={effect} />
      {mayApply ? (
        <ActionForm
          action={reorder}
          submit={w.apply}
          busy={w.applying}
          idPrefix="suggested-"
          fields={[
            { kind: "hidden", name: "revision", value: String(revision) },
            {
              kind: "hidden",
              name: "places",
              value: places.map(({ pairId, placeMinute }) => `${pairId}:${placeMinute}`).join(","),
            },
            { kind: "text", name: "reason", label: words.order.reason, hint: words.order.reasonHint },
          ]}
        />
      ) : (
        <p className="text-pencil">{w.ownerOnly}</p>
      )}
    </div>
  );
}
