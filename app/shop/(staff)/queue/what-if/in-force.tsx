/** What is different about the floor now or later, and taking it back. */
import { ActionForm } from "#app/_ui/action-form.client.tsx";
import { moneyText } from "#app/_ui/money.ts";
import { clock } from "#app/shop/say.ts";
import words from "#content/copy/breakdowns.json";
import type { FloorChangeView } from "#services";
import { withdraw } from "./actions";

const w = words.whatIf;

export function InForce(props: { readonly changes: readonly FloorChangeView[]; readonly mayWithdraw: boolean }) {
  if (props.changes.length === 0) return <p className="text-pencil">{w.noneInForce}</p>;
  return (
    <ul className="grid grid-cols-1 gap-6">
      {props.changes.map((change) => (
        <li key={change.floorChangeId} className="grid gap-2 border-t border-rule pt-3">
          <p>
            <span className="font-medium">{w.changes[change.kind]}</span>
            {change.fromAt === null ? null : `, ${clock(change.fromAt)}`}
            {change.fromAt === null ? null : ` – ${change.toAt === null ? w.forGood : clock(change.toAt)}`}
            {change.costCents === null ? null : `, ${moneyText(change.costCents, "short")}`}
          </p>
          <p className="text-sm text-pencil">
            {change.reason} ({change.madeBy}, {clock(change.madeAt)})
          </p>
          {props.mayWithdraw ? (
            <ActionForm
              action={withdraw}
              idPrefix={`withdraw-${change.floorChangeId}-`}
              tone="plain"
              fields={[
                { kind: "hidden", name: "floorChangeId", value: change.floorChangeId },
                { kind: "text", name: "reason", label: w.reason },
              ]}
              submit={w.withdraw}
              busy={w.withdrawing}
            />
          ) : null}
        </li>
      ))}
    </ul>
  );
}
