/** A discount is its own negative line, with the reason and the person who approved it; one a price at most. */
import { accept, type Outcome, refuse } from "#engine/units";
import { shareHalfUpCents } from "./rounding";
import { line, sumCents, type UntaxedLine } from "./totals";
import type { DiscountRule, GivenDiscount, PriceBook, PriceRefusal } from "./types";

/** @param lines the model's line first, then the options; what the discount is taken from */
export function discountLine(
  given: readonly GivenDiscount[],
  book: PriceBook,
  lines: readonly UntaxedLine[],
): Outcome<UntaxedLine | null, PriceRefusal> {
  if (given.length > book.maxDiscounts) {
    return refuse({ code: "too-many-discounts", path: "discounts", given: given.length, most: book.maxDiscounts });
  }
  const discount = given[0];
  if (discount === undefined) return accept(null);
  const rule = book.discounts.find((each) => each.code === discount.code);
  if (rule === undefined) {
    const known = book.discounts.map((each) => each.code);
    return refuse({ code: "unknown-discount", path: "discounts.0.code", discount: discount.code, known });
  }
  if (discount.reason.trim() === "" || discount.approvedBy.trim() === "") {
    return refuse({ code: "discount-without-reason", path: "discounts.0.reason", discount: discount.code });
  }
  return withRate(discount, rule, rule.on === "model" ? lines.slice(0, 1) : lines);
}

function withRate(
  discount: GivenDiscount,
  rule: DiscountRule,
  base: readonly UntaxedLine[],
): Outcome<UntaxedLine, PriceRefusal> {
  const basisPoints = discount.basisPoints ?? rule.basisPoints;
  const isAllowed = rule.isCeiling ? basisPoints <= rule.basisPoints : basisPoints === rule.basisPoints;
  if (!isAllowed) {
    return refuse({
      code: "discount-too-high",
      path: "discounts.0.basisPoints",
      discount: rule.code,
      basisPoints,
      mostBasisPoints: rule.basisPoints,
    });
  }
  const off = 0 - shareHalfUpCents(sumCents(base), basisPoints);
  return accept({ ...line(rule.code, rule.label, off), reason: discount.reason, approvedBy: discount.approvedBy });
}
