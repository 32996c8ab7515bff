import { describe, expect, it } from "vitest";
import { composeKitList, composeLabels, type DocumentData, type DocumentKind } from "@/lib/documents";
import { drawDocument } from "@/lib/documents/draw";
import { collisions, fonts, pdfPages, readers } from "./pdf-text";
import { clubQuote, confirmation, facts, proof, quote } from "./sample";

type Case = { readonly [K in DocumentKind]: readonly [K, DocumentData[K], readonly string[]] }[DocumentKind];

/** Required contents of each paper: the workshop's own list; common practice, no source. */
const CASES: readonly Case[] = [
  [
    "kit-list",
    composeKitList(facts),
    [
      "Kit list",
      "0417",
      "M95-178",
      "Binding plate",
      "480 × 77 mm",
      "scan L",
      "scan R",
      "ASP-2609",
      "rack A2",
      "fast hardener, approved by owner",
      "560 g",
      "Kit complete",
      "void older prints",
    ],
  ],
  [
    "labels",
    composeLabels(facts),
    ["Strip bundle", "Core", "Base", "Print", "Cassette", "TY-0417-L-7", "TY-0417-R-5", "M95-178"],
  ],
  [
    "quote",
    quote,
    [
      "Q-212",
      "revision 2",
      "25 Nov 2026, 09:30",
      "Wed 16 Dec 2026",
      "PB-3",
      "Odile",
      "Maren Aske",
      "Jon Aske",
      "5 ft 11½ in",
      "181 lb",
      "Why this pair",
      "+3.0 cm of length",
      "Midlow 84 at 182 cm",
      "The mount line is moved 10 mm forward.",
      "Acknowledged by Odile",
      "Midlow 95, revision C",
      "178 cm",
      "class 3",
      "aspen with ash",
      "carbon stringers",
      "Mount line",
      "$1,590.00",
      "$1,925.00",
      "$65.00",
      "$115.50",
      "$2,105.50",
      "$962.50",
      "$1,143.00",
      "6 % added at checkout",
      "Tue 12 Jan 2027 to Fri 22 Jan 2027",
      "nine of ten",
      "proof approved",
      "Made to your specification",
      "How to accept",
      "If you cancel",
      "30 % of the price",
      "ISO 11088",
    ],
  ],
  [
    "club-quote",
    clubQuote,
    [
      "C-21",
      "Fell Runners",
      "Jon Aske",
      "Wed 16 Dec 2026",
      "Lake blue, Bone white",
      "Who rides what",
      "CLEO",
      "Q-219",
      "$2,105.50",
      "$16,844.00",
      "Tue 12 Jan 2027 to Fri 22 Jan 2027",
      "proof approved",
      "How to accept",
      "If you cancel",
      "ISO 11088",
    ],
  ],
  [
    "order-confirmation",
    confirmation,
    [
      "O-0388",
      "Q-212, revision 2",
      "Jon Aske",
      "26 Nov 2026, 18:04",
      "3fa9 c17e 52d0",
      "Midlow 95, revision C",
      "$2,105.50",
      "$962.50 received Fri 27 Nov 2026",
      "Promise",
      "until the core is milled",
      "right to withdraw",
      "+1 555 0142",
    ],
  ],
  [
    "proof",
    proof,
    [
      "Proof",
      "RIDGE HOME",
      "155 dpi",
      "6 mm inside the edge",
      "hidden by boot and binding, 320 mm",
      "left foot",
      "right foot",
      "inside edge",
      "revision 2",
      "5a1f e0c2 77d1",
      "Wed 2 Dec 2026",
      "Approve as drawn",
    ],
  ],
];

const FORBIDDEN = [/\bDIN\b/, /release (value|setting)/i, /skier type/i, /\bdrill/i];

describe.each(CASES)("%s", (kind, data, required) => {
  it.each(["A4", "LETTER"] as const)("holds its required contents on %s", async (paper) => {
    const bytes = await drawDocument(kind, data as DocumentData[typeof kind], paper);
    const pages = pdfPages(bytes);
    const text = pages.join(" ");
    expect(required.filter((words) => !text.includes(words))).toEqual([]);
    expect(FORBIDDEN.filter((words) => words.test(text))).toEqual([]);
    if (readers.hasPdftotext) expect(collisions(bytes)).toEqual([]);
    expect(fonts(bytes).missing).toEqual([]);
    for (const [index, page] of pages.entries()) expect(page).toContain(`page ${index + 1} / ${pages.length}`);
  });
});

describe("order confirmation", () => {
  it("hides every price on a gift's copy", async () => {
    const bytes = await drawDocument(
      "order-confirmation",
      { ...confirmation, price: null, depositReceived: null },
      "A4",
    );
    expect(pdfPages(bytes).join(" ")).not.toContain("$");
  });
});

describe("kit list", () => {
  it("has a line for every part of the configuration", () => {
    expect(composeKitList(facts).rows.map((row) => row.line)).toEqual(facts.parts.lines.map((line) => line.line));
  });
});
