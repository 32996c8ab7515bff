import { ActionForm } from "#app/_ui/action-form.client.tsx";
import { Facts } from "#app/_ui/facts.tsx";
import { moneyText } from "#app/_ui/money.ts";
import { Badge, Notice } from "#app/_ui/notice.tsx";
import { fill } from "#app/_ui/words.ts";
import paperWords from "#content/copy/papers.json";
import words from "#content/copy/skier.json";
import type { DepositMethod, ProgressView } from "#services";
import { approve, askForChanges, chooseDeposit, confirmPictureRights } from "../actions";
import { ProofInSight } from "./proof-in-sight";
import { dayIn } from "./shop-day";

const w = words.pair;

interface Props {
  readonly progress: ProgressView;
  readonly token: string;
  /** How money may come here. */
  readonly methods: readonly DepositMethod[];
  /** The order's own link may answer; a link that only shows the pair may not. */
  readonly canAnswer: boolean;
}

/** The things the clock waits for, each with what the skier can do about it. */
export function Gates(props: Props) {
  const { gates } = props.progress;
  return (
    <div className="grid grid-cols-1 gap-8">
      {gates.waitingFor.length > 0 ? (
        <ul className="flex flex-wrap gap-2">
          {gates.waitingFor.map((condition) => (
            <li key={condition}>
              <Badge tone="amber">{w.gates[condition]}</Badge>
            </li>
          ))}
        </ul>
      ) : (
        <Notice tone="moss" title={w.nothingWaiting} />
      )}
      {props.progress.state === "cancelled" ? null : (
        <>
          <Deposit {...props} />
          <Money {...props} />
          <Proof {...props} />
          <Rights {...props} />
        </>
      )}
    </div>
  );
}

function Deposit({ progress, token, methods, canAnswer }: Props) {
  const { deposit } = progress;
  const choices = Object.entries(w.depositMethods).flatMap(([value, text]) =>
    methods.some((method) => method === value) ? [{ value, ...text }] : [],
  );
  return (
    <section aria-labelledby="deposit-title">
      <h3 id="deposit-title" className="font-semibold">
        {w.deposit}
      </h3>
      {deposit.paidAt ? (
        <Notice tone="moss" title={fill(w.depositPaid, { day: dayIn(deposit.paidAt) })} />
      ) : (
        <>
          <p className="mb-3 text-pencil">
            {fill(w.depositLead, { amount: moneyText(deposit.cents) })}{" "}
            {methods.includes("demo-card") ? w.depositDemo : null}
          </p>
          {deposit.method ? (
            <p className="mb-3">{fill(w.depositAnnounced, { method: w.depositMethods[deposit.method].label })}</p>
          ) : null}
          {canAnswer ? (
            <ActionForm
              action={chooseDeposit}
              idPrefix="deposit-"
              fields={[
                { kind: "hidden", name: "token", value: token },
                {
                  kind: "radio",
                  name: "method",
                  label: w.depositMethod,
                  choices,
                  value: deposit.method ?? "bank-transfer",
                },
              ]}
              submit={w.depositButton}
            />
          ) : null}
        </>
      )}
    </section>
  );
}

/** What the order costs in all; the fee of a hard date stands in it from the approval on, unpaid until it is here. */
function Money({ progress }: Props) {
  const { rush, totalCents, paidCents, openCents } = progress.money;
  const isHard = progress.promiseClass === "hard-date";
  const amount = (name: string, cents: number) => ({ name, value: moneyText(cents), measure: true });
  return (
    <section aria-labelledby="money-title" className="grid gap-3">
      <h3 id="money-title" className="font-semibold">
        {w.money}
      </h3>
      {rush ? (
        <Notice
          tone={rush.paidAt ? "moss" : "amber"}
          title={fill(rush.paidAt ? w.rushPaid : isHard ? w.rushOpen : w.rushLost, { fee: moneyText(rush.totalCents) })}
        />
      ) : null}
      <Facts
        facts={[amount(w.moneyTotal, totalCents), amount(w.moneyPaid, paidCents), amount(w.moneyOpen, openCents)]}
      />
    </section>
  );
}

function Proof({ progress, token, canAnswer }: Props) {
  const { proof, proofToAnswer, gates } = progress;
  if (gates.proof === "not-needed") return null;
  const link = [
    { kind: "hidden", name: "token", value: token },
    { kind: "hidden", name: "pairId", value: progress.pairId },
    { kind: "hidden", name: "revision", value: String(proof?.revision ?? 0) },
  ] as const;
  return (
    <section aria-labelledby="proof-title" className="grid grid-cols-1 gap-3">
      <h3 id="proof-title" className="font-semibold">
        {w.proof}
        {proof ? <span className="font-normal text-pencil">, {w.proofStates[proof.state]}</span> : null}
      </h3>
      {proof === null ? (
        <p className="text-pencil">{w.proofNone}</p>
      ) : (
        <p className="flex flex-wrap gap-x-4">
          <a href={`/files/proofs/${token}/${progress.pairId}`}>{paperWords.links.proofA4}</a>
          <a href={`/files/proofs/${token}/${progress.pairId}?paper=letter`}>{paperWords.links.proofLetter}</a>
        </p>
      )}
      {proof?.state === "issued" ? (
        <>
          <p>{fill(w.proofIssued, { revision: proof.revision })}</p>
          {proof.note ? <p className="border-l-2 border-rule pl-3">{proof.note}</p> : null}
          {proofToAnswer ? <ProofInSight proof={proofToAnswer} pictureBase={`/files/artwork/${token}`} /> : null}
          {canAnswer ? (
            <div className="grid gap-6">
              <ActionForm
                action={approve}
                idPrefix="approve-"
                fields={[...link, { kind: "text", name: "name", label: w.proofName, autoComplete: "name" }]}
                submit={w.proofApprove}
              />
              <ActionForm
                action={askForChanges}
                idPrefix="changes-"
                tone="plain"
                fields={[...link, { kind: "textarea", name: "note", label: w.proofNote }]}
                submit={w.proofChanges}
              />
            </div>
          ) : null}
        </>
      ) : null}
    </section>
  );
}

function Rights({ progress, token, canAnswer }: Props) {
  const { gates, rights } = progress;
  if (gates.rights === "not-needed") return null;
  return (
    <section aria-labelledby="rights-title" className="grid gap-3">
      <h3 id="rights-title" className="font-semibold">
        {w.rights}
      </h3>
      {rights ? (
        <Notice tone="moss" title={fill(w.rightsDone, { name: rights.name })}>
          <p>{w.bases[rights.basis]}</p>
        </Notice>
      ) : (
        <>
          <p className="text-pencil">{w.rightsLead}</p>
          {canAnswer ? (
            <ActionForm
              action={confirmPictureRights}
              idPrefix="rights-"
              fields={[
                { kind: "hidden", name: "token", value: token },
                { kind: "hidden", name: "pairId", value: progress.pairId },
                {
                  kind: "radio",
                  name: "basis",
                  label: w.rightsBasis,
                  choices: Object.entries(w.bases).map(([value, label]) => ({ value, label })),
                },
                { kind: "text", name: "name", label: w.rightsName, autoComplete: "name" },
              ]}
              submit={w.rightsButton}
            />
          ) : null}
        </>
      )}
    </section>
  );
}
