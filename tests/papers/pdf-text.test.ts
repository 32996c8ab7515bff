import { describe, expect, it } from "vitest";
import { composeLabels } from "#papers";
import { drawDocument } from "../../lib/papers/draw";
import { readers } from "./pdf-text";
import { facts } from "./sample";

describe("the tests' own reader", () => {
  it("finds the words that stand in a document", async () => {
    const text = readers.readByOurselves(await drawDocument("labels", composeLabels(facts), "A4")).join(" ");
    for (const words of ["Strip bundle", "TY-0417-R-5", "revision 2 · void older prints"])
      expect(text).toContain(words);
  });

  it("agrees with Poppler on every letter", async ({ skip }) => {
    skip(!readers.hasPdftotext, "Poppler's pdftotext is not installed");
    const bytes = await drawDocument("labels", composeLabels(facts), "A4");
    const letters = (pages: readonly string[]) => [...pages.join("").replace(/\s/g, "")].sort().join("");
    expect(letters(readers.readByOurselves(bytes))).toBe(letters(readers.readByPoppler(bytes)));
  });
});
