/** Proof and rights of the skier's own picture. */
import { ActionForm } from "#app/_ui/action-form.client.tsx";
import { More } from "#app/_ui/section.tsx";
import { fill } from "#app/_ui/words.ts";
import { clock } from "#app/shop/say.ts";
import paperWords from "#content/copy/papers.json";
import words from "#content/copy/shop.json";
import type { OrderId, OrderPairView } from "#services";
import { proofApproved, proofChanges, rights, sendProof } from "../actions";

const w = words.order;

interface Props {
  readonly orderId: OrderId;
  readonly pair: OrderPairView;
}

function hidden({ orderId, pair }: Props) {
  return [
    { kind: "hidden", name: "orderId", value: orderId },
    { kind: "hidden", name: "pairId", value: pair.pairId },
  ] as const;
}

export function ProofGate(props: Props) {
  const { pair } = props;
  const latest = pair.proofs.at(-1);
  const revision = { kind: "hidden", name: "revision", value: String(latest?.revision ?? 0) } as const;
  const isOut = latest?.state === "issued";
  return (
    <More summary={`${w.proof}: ${w.proofStates[pair.proofState]}`}>
      <p className="mb-3 flex flex-wrap gap-x-4">
        <a href={`/files/proofs/shop/${pair.pairId}`}>{paperWords.links.proofA4}</a>
        <a href={`/files/proofs/shop/${pair.pairId}?paper=letter`}>{paperWords.links.proofLetter}</a>
      </p>
      <ul className="mb-3 text-sm">
        {pair.proofs.map((proof) => (
          <li key={proof.proofId}>
            {fill(w.proofRevision, { revision: proof.revision })}, {clock(proof.issuedAt)}: {w.proofStates[proof.state]}
            {proof.note ? ` (${proof.note})` : ""}
          </li>
        ))}
      </ul>
      {isOut ? (
        <div className="grid gap-6">
          <ActionForm
            action={proofApproved}
            idPrefix={`approve-${pair.serial}-`}
            tone="plain"
            fields={[
              ...hidden(props),
              revision,
              { kind: "text", name: "name", label: w.proofName, value: pair.skierName, autoComplete: "off" },
            ]}
            submit={w.proofApprove}
          />
          <ActionForm
            action={proofChanges}
            idPrefix={`changes-${pair.serial}-`}
            tone="plain"
            fields={[...hidden(props), revision, { kind: "textarea", name: "note", label: w.proofChangesNote }]}
            submit={w.proofChanges}
          />
        </div>
      ) : pair.proofState === "none" || pair.proofState === "changes-asked" ? (
        <ActionForm
          action={sendProof}
          idPrefix={`proof-${pair.serial}-`}
          tone="plain"
          fields={[...hidden(props), { kind: "textarea", name: "note", label: w.proofNote, optional: true }]}
          submit={w.proofIssue}
        />
      ) : null}
    </More>
  );
}

export function RightsGate({ name, ...props }: Props & { readonly name: string }) {
  return (
    <More summary={w.rights}>
      <ActionForm
        action={rights}
        idPrefix={`rights-${props.pair.serial}-`}
        tone="plain"
        fields={[
          ...hidden(props),
          {
            kind: "radio",
            name: "basis",
            label: w.rightsBasis,
            choices: Object.entries(w.bases).map(([value, label]) => ({ value, label })),
          },
          { kind: "text", name: "name", label: w.rightsName, value: name, autoComplete: "off" },
        ]}
        submit={w.rightsButton}
      />
    </More>
  );
}
