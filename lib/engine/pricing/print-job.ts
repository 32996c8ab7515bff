/** Prints for another maker: no ski, no press, a set-up and a price a sheet. */
import { line, priceOf } from "./totals";
import type { Destination, Price, PriceBook } from "./types";

/**
 * @param sheets left and right together
 * @throws RangeError when there is no whole sheet to print
 */
export function pricePrintJob(sheets: number, book: PriceBook, destination: Destination): Price {
  if (!Number.isSafeInteger(sheets) || sheets < 1)
    throw new RangeError(`sheets ${sheets} is not a whole number from 1`);
  return priceOf(
    [
      line("print-set-up", "Printing, set-up", book.printOnly.setUpCents, { taxClass: "service" }),
      line("print-sheet", "Printed sheet", book.printOnly.perSheetCents, { quantity: sheets }),
    ],
    book,
    destination,
  );
}
