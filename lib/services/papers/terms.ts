/** The terms that every offer prints. */
import type { Catalog } from "#catalog";
import type { Price } from "#engine/pricing";
import { textForPeople } from "#engine/units";
import type { Row } from "#papers";
import { currentCatalog } from "#shop/catalogue/current";

type Shop = Catalog["shop"];

export const clockStartTerms: readonly string[] = [
  "deposit received",
  "specification locked",
  "proof approved",
  "picture rights confirmed",
];

export function taxNote({ taxCents }: Pick<Price, "taxCents">): string {
  return taxCents > 0
    ? "Sales tax of the shop's own state is included in the total."
    : "No sales tax is charged here; follow the tax rules of the destination.";
}

export function cancellationRows({ cancellation }: Pick<Shop, "cancellation">): readonly Row[] {
  return cancellation.map((step) => ({ label: step.label, value: cancellationText(step) }));
}

export function cautionsOf({ terms }: Pick<Shop, "terms">): readonly string[] {
  return [currentCatalog().safety.binding, ...terms.slice(-2)];
}

function cancellationText(step: {
  readonly keepBasisPoints: number;
  readonly keepCents: number;
  readonly keepsArtFee: boolean;
}): string {
  const kept = [
    ...(step.keepBasisPoints > 0 ? [`${step.keepBasisPoints / 100} % of the price`] : []),
    ...(step.keepCents > 0 ? [`$${textForPeople(step.keepCents / 100, 2)}`] : []),
    ...(step.keepsArtFee ? ["the fee for the graphic"] : []),
  ];
  return kept.length === 0 ? "nothing is kept" : `kept: ${kept.join(" and ")}`;
}
