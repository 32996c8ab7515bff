/** What is made to the skier's specification, the terms, and what cancelling costs. */

import { PageCautions } from "#app/_server/page-cautions.tsx";
import { Facts } from "#app/_ui/facts.tsx";
import { moneyText } from "#app/_ui/money.ts";
import { Part } from "#app/_ui/page.tsx";
import { More } from "#app/_ui/section.tsx";
import { fill } from "#app/_ui/words.ts";
import words from "#content/copy/skier.json";
import type { SoldFor } from "#engine/floor";
import { settings } from "#services";

export function Terms(props: {
  readonly specified: readonly string[];
  /** The skis that are offered and who they are for. */
  readonly soldFor: readonly SoldFor[];
}) {
  const { specified, soldFor } = props;
  const { shop } = settings();
  const w = words.quote;
  const notice = specified.length > 0 ? shop.withdrawal.madeToSpecification : shop.withdrawal.chosenFromOptions;
  return (
    <Part title={w.terms} id="terms">
      {specified.length > 0 ? (
        <div className="mb-4">
          <h3 className="font-semibold">{w.specified}</h3>
          <p className="text-pencil">{w.specifiedLead}</p>
          <ul className="list-disc pl-5">
            {specified.map((item) => (
              <li key={item}>{item}</li>
            ))}
          </ul>
        </div>
      ) : null}
      <h3 className="font-semibold">{w.withdrawal}</h3>
      <p className="mb-4">{fill(notice, { items: specified.join(", ") })}</p>
      <ul className="mb-4 list-disc pl-5">
        {[...shop.terms, shop.deposit.text, shop.warranty, shop.delayNotice].map((term) => (
          <li key={term}>{term}</li>
        ))}
      </ul>
      <div className="mb-4">
        <PageCautions page="quote" soldFor={soldFor} />
      </div>
      <More summary={w.cancel}>
        <p className="mb-2 text-pencil">{w.cancelLead}</p>
        <Facts
          facts={shop.cancellation.map((step) => ({
            name: step.label,
            value: [
              fill(w.cancelKeep, {
                keep: step.keepBasisPoints > 0 ? `${step.keepBasisPoints / 100} %` : moneyText(step.keepCents, "short"),
              }),
              step.keepsArtFee ? w.cancelArt : "",
            ]
              .filter(Boolean)
              .join(" "),
          }))}
        />
      </More>
    </Part>
  );
}
