import { describe, expect, it } from "vitest";
import { isoDate } from "#engine/units";
import {
  composeKitList,
  composeLabels,
  type DocumentData,
  type DocumentKind,
  type OrderConfirmationData,
  type ProofData,
} from "#papers";
import { drawDocument } from "../../lib/papers/draw";
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
      "Fibre dust: mask, gloves, coverall.",
      "Local rules come first.",
      "void older prints",
    ],
  ],
  [
    "labels",
    composeLabels(facts),
    [
      "Strip bundle",
      "Core",
      "Base",
      "Print",
      "Cassette",
      "TY-0417-L-7",
      "TY-0417-R-5",
      "M95-178",
      "Two people or the cart.",
      "New edges cut.",
      "Local rules come first.",
    ],
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
      "of quote Q-212 r2",
      "Jon Aske",
      "26 Nov 2026, 18:04, on the quote's own page",
      "Pair TY-0417 for Maren Aske",
      "3fa9 c17e 52d0, revision 2",
      "Midlow 95, revision C",
      "$2,105.50",
      "$962.50 received Fri 27 Nov 2026, bank transfer",
      "Hard date: approved by the owner",
      "Ready by Wed 23 Dec 2026",
      "a loan pair until it is ready",
      "Still missing before the clock starts",
      "$200.00, not received yet",
      "$2,305.50",
      "$1,343.00",
      "up to the start of gluing the core",
      "right to withdraw",
      "30 % of the price",
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
      "a little higher than on the first one",
      "place in the queue is given up",
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
  const read = async (change: Partial<OrderConfirmationData>) =>
    pdfPages(await drawDocument("order-confirmation", { ...confirmation, ...change }, "A4")).join(" ");

  it("hides every price on a copy for somebody who is given the pair", async () => {
    const text = await read({ money: null });
    expect(text).not.toContain("$");
    expect(text).toContain("This copy carries no prices");
  });

  it("gives a range as an estimate and one day as a promise", async () => {
    const since = { waitingFor: [], note: null };
    const estimate = { class: "estimate", from: isoDate("2027-01-12"), to: isoDate("2027-01-22"), ...since } as const;
    const text = await read({ promise: estimate });
    expect(text).toContain("Estimate: a range that moves");
    expect(text).toContain("Tue 12 Jan 2027 to Fri 22 Jan 2027");
    expect(text).not.toContain("Still missing");
    const promised = await read({ promise: { class: "promise", on: isoDate("2027-01-22"), ...since } });
    expect(promised).toContain("Promise: fixed when the clock started");
    expect(promised).not.toContain("12 Jan 2027");
  });
});

describe("proof", () => {
  const read = async (answer: ProofData["answer"]) =>
    pdfPages(await drawDocument("proof", { ...proof, answer }, "A4")).join(" ");

  it("asks for an answer only while it is waited for", async () => {
    const draft = await read({ state: "draft" });
    expect(draft).toContain("not sent yet, revision 2");
    const approved = await read({ state: "approved", at: "2026-12-01T09:05", by: "Maren Aske" });
    expect(approved).toContain("Approved by Maren Aske, 1 Dec 2026, 09:05.");
    const changes = await read({ state: "changes-asked", at: "2026-12-01T09:05", note: "the name is PEAK HOME" });
    expect(changes).toContain("Changes asked, 1 Dec 2026, 09:05: the name is PEAK HOME");
    for (const text of [draft, approved, changes]) expect(text).not.toContain("Approve as drawn");
  });
});

describe("kit list", () => {
  it("has a line for every part of the configuration", () => {
    expect(composeKitList(facts).rows.map((row) => row.line)).toEqual(facts.parts.lines.map((line) => line.line));
  });
});
