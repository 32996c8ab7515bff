/** The gates before the clock starts: what is missing, who acts next, and the act itself. */
import { ActionForm } from "#app/_ui/action-form.client.tsx";
import { moneyText } from "#app/_ui/money.ts";
import { Badge, Notice } from "#app/_ui/notice.tsx";
import { More } from "#app/_ui/section.tsx";
import { Table } from "#app/_ui/table.tsx";
import { fill } from "#app/_ui/words.ts";
import { clock } from "#app/shop/say.ts";
import words from "#content/copy/shop.json";
import { type ClockStartCondition, clockStartConditions } from "#engine/floor";
import type { DepositMethod, OrderPairView, OrderView } from "#services";
import { deposit, lock } from "../actions";
import { ProofGate, RightsGate } from "./picture-gates";

const w = words.order;

interface GatesProps {
  readonly order: OrderView;
  /** How money may come here. */
  readonly methods: readonly DepositMethod[];
}

export function Gates({ order, methods }: GatesProps) {
  if (order.state === "cancelled") return null;
  return (
    <div className="grid gap-8">
      {order.waitingFor.length === 0 ? <Notice tone="moss" title={w.gatesDone} /> : null}
      {order.waitingFor.includes("deposit") ? <DepositAct order={order} methods={methods} /> : null}
      {order.pairs.map((pair) => (
        <div key={pair.pairId} className="grid gap-4">
          <GateTable pair={pair} caption={`${w.gates} ${pair.serial}`} />
          {order.waitingFor.length > 0 ? <Acts order={order} pair={pair} /> : null}
        </div>
      ))}
    </div>
  );
}

function gateOf(pair: OrderPairView, condition: ClockStartCondition): string | null {
  const { gates } = pair;
  return {
    deposit: gates.deposit,
    "specification-lock": gates.specificationLock,
    proof: gates.proof,
    rights: gates.rights,
  }[condition];
}

function nextActor({ proofState }: OrderPairView, condition: ClockStartCondition): string {
  return words.nextActor[condition === "proof" && proofState === "issued" ? "proof-asked" : condition];
}

function GateTable({ pair, caption }: { readonly pair: OrderPairView; readonly caption: string }) {
  return (
    <Table
      caption={caption}
      dense
      columns={[
        { key: "gate", head: w.gateHead, cell: (condition) => words.waitingFor[condition] },
        {
          key: "state",
          head: w.gateState,
          cell: (condition) => {
            const at = gateOf(pair, condition);
            if (at === "not-needed") return <span className="text-pencil">{w.gateNotNeeded}</span>;
            return at ? <Badge tone="moss">{clock(at)}</Badge> : <Badge tone="amber">{w.gateOpen}</Badge>;
          },
        },
        {
          key: "who",
          head: w.gateWho,
          cell: (condition) => (gateOf(pair, condition) === null ? nextActor(pair, condition) : ""),
        },
      ]}
      rows={clockStartConditions}
      rowKey={(condition) => condition}
    />
  );
}

function Acts({ order, pair }: { readonly order: OrderView; readonly pair: OrderPairView }) {
  const { gates } = pair;
  const fields = [
    { kind: "hidden", name: "orderId", value: order.orderId },
    { kind: "hidden", name: "pairId", value: pair.pairId },
  ] as const;
  return (
    <div className="grid gap-2">
      {gates.specificationLock === null ? (
        <More summary={w.lock}>
          <p className="mb-2 text-pencil">{w.lockLead}</p>
          <ActionForm
            action={lock}
            idPrefix={`lock-${pair.serial}-`}
            tone="plain"
            fields={fields}
            submit={w.lockButton}
          />
        </More>
      ) : null}
      {gates.proof === "not-needed" ? null : <ProofGate orderId={order.orderId} pair={pair} />}
      {gates.rights === null ? <RightsGate orderId={order.orderId} pair={pair} name={order.customer.name} /> : null}
    </div>
  );
}

function DepositAct({ order, methods }: GatesProps) {
  return (
    <More summary={w.deposit}>
      <p className="mb-2 text-pencil">{fill(w.depositLead, { amount: moneyText(order.price.depositCents) })}</p>
      <ActionForm
        action={deposit}
        idPrefix="deposit-"
        tone="plain"
        fields={[
          { kind: "hidden", name: "orderId", value: order.orderId },
          {
            kind: "radio",
            name: "method",
            label: w.depositMethod,
            value: "bank-transfer",
            choices: Object.entries(w.depositMethods).flatMap(([value, label]) =>
              methods.some((method) => method === value) ? [{ value, label }] : [],
            ),
          },
          { kind: "text", name: "reference", label: w.depositReference, optional: true, autoComplete: "off" },
        ]}
        submit={w.depositButton}
      />
    </More>
  );
}
