/** What quote, offer and confirmation say of one case after another: every rule of their composition, worked by hand. */
import { describe, expect, it } from "vitest";
import type { FitChoice, FitReason } from "#engine/fit";
import type { Price } from "#engine/pricing";
import { cents, isoDate } from "#engine/units";
import type { QuoteData, TermFacts } from "#papers";
import { composeClubQuote } from "../../lib/papers/club/compose";
import type { ClubQuoteFacts } from "../../lib/papers/club/facts";
import { ClubQuotePages } from "../../lib/papers/club/page";
import { composeOrderConfirmation } from "../../lib/papers/confirmation/compose";
import type { CutOffFacts, MoneyFacts, OrderFacts, PromiseFacts } from "../../lib/papers/confirmation/facts";
import { OrderConfirmationPages } from "../../lib/papers/confirmation/page";
import { cancellationRows, taxNote } from "../../lib/papers/parts/terms";
import { composeQuote } from "../../lib/papers/quote/compose";
import type { QuoteFacts } from "../../lib/papers/quote/facts";
import { QuotePages } from "../../lib/papers/quote/page";
import { drawn, ofType } from "./drawn";
import { catalog, clubQuote, confirmation, facts, quote, spec } from "./sample";

const { shop, stamp } = facts;
const { price } = quote;
const plain = (text: string) => text.replaceAll("\u00a0", " ");

const reason = (factor: string, change: Partial<FitReason>): FitReason => ({
  factor,
  effect: "adds",
  unit: "cm",
  amount: 1,
  about: "length",
  ...change,
});

function choice(model: string, lengthCm: number, reasons: readonly FitReason[]): FitChoice {
  return {
    model,
    lengthCm,
    wantedLengthCm: lengthCm,
    flexRatio: 1,
    flexClass: 3,
    score: 0,
    reasons,
  } as unknown as FitChoice;
}

const terms: TermFacts = {
  cancellation: [
    { label: "At first", keepBasisPoints: 0, keepCents: 0, keepsArtFee: false },
    { label: "Locked", keepBasisPoints: 0, keepCents: 5_000, keepsArtFee: true },
    { label: "Milled", keepBasisPoints: 1_250, keepCents: 0, keepsArtFee: false },
    { label: "Pressed", keepBasisPoints: 10_000, keepCents: 1, keepsArtFee: true },
  ],
  cautions: {
    localRules: "Local rules come first.",
    lines: [{ id: "step", icon: "note", line: "Mind the step.", full: "There is one.", reference: "Own eyes" }],
  },
};

const quoteFacts: QuoteFacts = {
  pictures: null,
  ...terms,
  shop,
  stamp,
  number: "Q-212",
  url: "https://shop.example/q",
  madeAt: "2026-11-25T09:30",
  validUntil: isoDate("2026-12-16"),
  seller: "Odile",
  skierName: "Maren",
  buyerName: null,
  answers: {},
  typed: {},
  fit: {
    recommendation: { wantedWaistMm: 95, choices: [choice("midlow-95", 178, [])], flags: [] },
    flags: [],
    modelName: "Midlow 95",
    flexClassLabel: "3, medium",
  },
  flagAcks: [],
  catalog,
  spec,
  price,
  dates: { from: isoDate("2027-01-12"), to: isoDate("2027-01-22") },
  customerSpecified: [],
};
const quoteOf = (change: Partial<QuoteFacts>) => composeQuote({ ...quoteFacts, ...change });
const withFit = (change: Partial<QuoteFacts["fit"]>, more: Partial<QuoteFacts> = {}) =>
  quoteOf({ fit: { ...quoteFacts.fit, ...change }, ...more });

describe("terms", () => {
  it("say what is kept at each stage: share, sum, fee, or nothing", () => {
    expect(cancellationRows(terms)).toEqual([
      { label: "At first", value: "nothing is kept" },
      { label: "Locked", value: "kept: $50.00 and the fee for the graphic" },
      { label: "Milled", value: "kept: 12.50 % of the price" },
      { label: "Pressed", value: "kept: 100 % of the price and $0.01 and the fee for the graphic" },
    ]);
  });

  it("say whether tax is in", () => {
    expect(taxNote({ taxCents: cents(1) })).toMatch(/is included/);
    expect(taxNote({ taxCents: cents(0) })).toMatch(/No sales tax/);
  });
});

describe("a quote's answers", () => {
  const answers = {
    heightCm: 181,
    massKg: 82,
    ability: "confident",
    temperament: "calm",
    offPistePercent: 0,
    touringPercent: 20,
    homeSnow: "soft",
    turnSize: "long",
    bootSoleMm: 315,
  } as unknown as QuoteFacts["answers"];
  const rows = (change: Partial<QuoteFacts>) => quoteOf(change).answers.map(({ label, value }) => `${label}: ${value}`);

  it("stand in their own rows; nought is an answer", () => {
    expect(rows({ answers })).toEqual([
      "Height: 181 cm",
      "Mass: 82 kg",
      "Ability: confident",
      "Temperament: calm",
      "Off the piste: 0 %",
      "Touring: 20 %",
      "Snow at home: soft",
      "Turns: long",
      "Boot sole: 315 mm",
    ]);
  });

  it("are told as they were said, and not at all where they were not given", () => {
    const typed: QuoteFacts["typed"] = {
      height: { unit: "ft-in", feet: 5, inches: 11.5 },
      mass: { unit: "lb", lb: 181 },
    };
    expect(rows({ answers, typed }).slice(0, 2)).toEqual(["Height: 5 ft 11.5 in", "Mass: 181 lb"]);
    expect(rows({})).toEqual([]);
  });
});

describe("a quote's reasons", () => {
  it("are those of the model that was chosen, wherever it ranks", () => {
    const choices = [
      choice("other-84", 182, [reason("mass", { amount: 9 })]),
      choice("midlow-95", 178, [reason("height", { amount: 3 })]),
      choice("midlow-95b", 184, []),
    ];
    const { recommendation } = withFit({ recommendation: { wantedWaistMm: 95, choices, flags: [] } });
    expect(recommendation).toEqual({
      summary: "Midlow 95, 178 cm, flex class 3, medium",
      reasons: [{ label: "Your height (length)", amount: "+3.0 cm" }],
      alternatives: ["other-84, 182 cm", "midlow-95b, 184 cm"],
    });
  });

  it("are the first choice's where the shop chose a model outside the list, and none without a list", () => {
    const listed = (choices: readonly FitChoice[]) =>
      withFit({ recommendation: { wantedWaistMm: 95, choices, flags: [] } }).recommendation;
    const other = listed([choice("other-84", 182, [reason("mass", { amount: 9 })]), choice("other-90", 180, [])]);
    expect(other.reasons.map(({ amount }) => amount)).toEqual(["+9.0 cm"]);
    expect(other.alternatives).toEqual(["other-90, 180 cm"]);
    expect(listed([])).toMatchObject({ reasons: [], alternatives: [] });
  });

  it("have their own sign, unit and decimals", () => {
    const reasons = [
      reason("height", { amount: -2.26 }),
      reason("mass", { amount: 0 }),
      reason("off-piste", { amount: 4.04, unit: "mm", about: "waist" }),
      reason("ability", { amount: 1.066, effect: "multiplies", unit: "ratio", about: "flexRatio" }),
      reason("waist-distance", { amount: 0.504, effect: "costs", unit: "score", about: "rank" }),
      reason("by-hand", { amount: 0.1, unit: "ratio", about: "flexRatio" }),
    ];
    const choices = [choice("midlow-95", 178, reasons)];
    const told = withFit({ recommendation: { wantedWaistMm: 95, choices, flags: [] } }).recommendation.reasons;
    expect(told.map(({ label, amount }) => `${label}: ${amount}`)).toEqual([
      "Your height (length): −2.3 cm",
      "Your weight (length): +0.0 cm",
      "Your days off the groomed runs (waist): +4.0 mm",
      "How you ski (flex): × 1.07",
      "Waist differs from the wanted width (ranking): costs 0.50",
      "by-hand (flex): +0.1",
    ]);
  });

  it("have each flag with who acknowledged that flag", () => {
    const flag = (code: string, message: string) =>
      ({ code, message }) as unknown as QuoteFacts["fit"]["flags"][number];
    const { flags } = withFit(
      { flags: [flag("a", "First."), flag("b", "Second.")] },
      { flagAcks: [{ code: "b", by: "Odile" }] },
    );
    expect(flags).toEqual([
      { message: "First.", acknowledgedBy: null },
      { message: "Second.", acknowledgedBy: "Odile" },
    ]);
  });
});

describe("a quote", () => {
  it("is accepted by its private page, or by telephone", () => {
    const byScan = quoteOf({});
    expect(byScan.urlNote).toBe("scan to read and accept it");
    expect(byScan.howToAccept).toEqual([
      "Scan the code above, or open https://shop.example/q",
      "Or call +1 555 0142 and name Q-212",
    ]);
  });

  const told = (change: Partial<QuoteData>) =>
    ofType(drawn(QuotePages({ data: { ...quote, ...change }, paper: "A4" })).shapes, "TEXT").map(({ text }) => text);
  const beside = (texts: readonly string[], label: string) => texts[texts.indexOf(label) + 1];

  it("names who sells and who pays", () => {
    expect(beside(told({}), "Buyer")).toBe("Jon Aske");
    expect(beside(told({ buyerName: null }), "Buyer")).toBe("the skier");
    expect(beside(told({}), "Sold by")).toBe("Odile, Thistle Yard");
    expect(beside(told({ seller: "Thistle Yard" }), "Sold by")).toBe("Thistle Yard");
    expect(beside(told({}), "Reach us")).toBe("+1 555 0142, bench@thistleyard.example");
    expect(beside(told({}), "Total, tax and shipping in")).toBe("$2,105.50");
    expect(beside(told({}), "Valid until the end of")).toBe("Wed 16 Dec 2026");
  });

  it("has alternatives, flags and a skier's own wishes only where there are some", () => {
    const full = told({ flags: [{ message: "Long.", acknowledgedBy: null }] });
    expect(full).toContain("Also considered: Midlow 84 at 182 cm; Ridgefold 106 at 184 cm.");
    expect(full).toContain("Long. Not yet acknowledged.");
    expect(told({})).toContain("The mount line is moved 10 mm forward. Acknowledged by Odile, 25 Nov.");
    const bare = told({
      flags: [],
      customerSpecified: [],
      recommendation: { ...quote.recommendation, alternatives: [] },
    });
    expect(bare.filter((text) => /Also considered|Talked over/.test(text))).toEqual([]);
    expect(bare).toContain("Nothing: chosen from the shop's own options.");
    expect(full).not.toContain("Nothing: chosen from the shop's own options.");
  });
});

describe("a price", () => {
  const told = (lines: Price["lines"]) => {
    const { shapes } = drawn(QuotePages({ data: { ...quote, price: { ...price, lines } }, paper: "A4" }));
    return ofType(shapes, "TEXT").map(({ text }) => text);
  };
  const line = price.lines[0] as Price["lines"][number];

  it("has quantity, each and amount in their columns, and each total beside its name", () => {
    const texts = told([{ ...line, label: "Screws", quantity: 3, unitCents: cents(250), lineCents: cents(750) }]);
    const at = texts.indexOf("Screws");
    expect(texts.slice(at, at + 4)).toEqual(["Screws", "3", "$2.50", "$7.50"]);
    const totals: readonly (readonly [string, string])[] = [
      ["Goods and services, without tax", "$1,925.00"],
      ["Shipping", "$65.00"],
      ["Tax", "$115.50"],
      ["Total", "$2,105.50"],
      ["Deposit, due at acceptance", "$962.50"],
      ["Balance, due before shipping", "$1,143.00"],
    ];
    for (const [label, amount] of totals) expect(texts[texts.indexOf(label) + 1]).toBe(amount);
  });

  it("says why a line is what it is, and who approved it", () => {
    expect(told([{ ...line, label: "Less", reason: "loyal" }])).toContain("Less (loyal)");
    expect(told([{ ...line, label: "Less", reason: "loyal", approvedBy: "Ines" }])).toContain(
      "Less (loyal; approved by Ines)",
    );
  });
});

const order: OrderFacts = {
  ...terms,
  shop,
  stamp,
  orderNumber: "O-0388",
  url: "https://shop.example/o",
  quotes: ["Q-212 r2"],
  club: null,
  customerName: "Jon",
  acceptedBy: "Jon",
  acceptedAt: "2026-11-26T18:04",
  acceptedHow: "phone",
  pairs: [{ serial: "TY-1", skierName: "Maren", revision: 2, spec, catalog, pictures: null, specHash: stamp.specHash }],
  money: null,
  promise: { class: "promise", on: isoDate("2026-12-23"), waitingFor: [], slotLost: null },
  cutOffs: [],
  customerSpecified: [],
  notices: {
    chosenFromOptions: "You may withdraw.",
    madeToSpecification: "Made for you: {items}.",
    delay: "If late.",
    warranty: "Faults.",
  },
};
const orderOf = (change: Partial<OrderFacts>) => composeOrderConfirmation({ ...order, ...change });
const paid: MoneyFacts = {
  price,
  deposit: { cents: 96_250, on: isoDate("2026-11-27"), method: "counter" },
  rush: null,
  totalCents: 210_550,
  paidCents: 96_250,
  openCents: 114_300,
};

describe("a confirmation", () => {
  it.each([
    ["online", "on the quote's own page"],
    ["phone", "by telephone"],
    ["counter", "at the counter"],
  ] as const)("tells an acceptance %s", (acceptedHow, words) => {
    expect(orderOf({ acceptedHow }).acceptedHow).toBe(words);
  });

  it("names the club, and what the code opens", () => {
    expect(orderOf({}).club).toBeNull();
    expect(orderOf({ club: { number: "C-21", name: "Fell" } }).club).toBe("C-21, Fell");
    expect(orderOf({}).urlNote).toBe("scan to follow the order");
  });

  it("gives who pays the right that fits, and who is given the pair the warranty alone", () => {
    expect(orderOf({}).notices).toEqual(["Faults."]);
    expect(orderOf({ money: paid }).notices).toEqual(["You may withdraw.", "If late.", "Faults."]);
    expect(orderOf({ money: paid, customerSpecified: ["picture", "letters"] }).notices[0]).toBe(
      "Made for you: picture, letters.",
    );
  });

  it("tells how a deposit came, in the shop's words or in its own", () => {
    const how = (method: string) =>
      orderOf({ money: { ...paid, deposit: { cents: 1, on: isoDate("2026-11-27"), method } } }).money?.deposit?.how;
    expect(how("counter")).toBe("at the counter");
    expect(how("in kind")).toBe("in kind");
    expect(orderOf({ money: { ...paid, deposit: null } }).money?.deposit).toBeNull();
    expect(orderOf({ money: paid }).money).toMatchObject({
      totalCents: 210_550,
      paidCents: 96_250,
      openCents: 114_300,
    });
    expect(orderOf({ money: paid }).money?.cancellation).toHaveLength(4);
  });

  it("says what the clock waits for and why a place was given up", () => {
    const promised = (change: Partial<PromiseFacts>) =>
      orderOf({ promise: { ...order.promise, ...change } as PromiseFacts }).promise;
    expect(promised({})).toEqual({ class: "promise", on: "2026-12-23", waitingFor: [], note: null });
    const waiting = promised({ waitingFor: ["deposit", "rights"], slotLost: "proof-late" });
    expect(waiting.waitingFor).toEqual(["The deposit", "The rights in your picture"]);
    expect(waiting.note).toMatch(/proof has not been answered/);
    expect(promised({ slotLost: "hold-lapsed" }).note).toMatch(/deposit has not come/);
  });
});

describe("until when a part may be changed", () => {
  const gluing: CutOffFacts["closesAt"] = {
    station: "core-glue" as NonNullable<CutOffFacts["closesAt"]>["station"],
    label: "bonding",
  };
  const cutOff = (
    part: CutOffFacts["part"],
    states: readonly ("open" | "closed" | "shipped")[],
    closesAt: CutOffFacts["closesAt"] | null = gluing,
  ): CutOffFacts => ({
    part,
    ...(closesAt ? { closesAt } : {}),
    pairs: states.map((state, index) => ({ serial: `TY-${index + 1}`, state })),
  });
  const rows = (...cutOffs: readonly CutOffFacts[]) =>
    orderOf({ cutOffs }).changeCutOffs.map(({ label, value }) => `${label}: ${value}`);

  it.each([
    ["open", "Core: up to the start of gluing the core"],
    ["closed", "Core: closed with the start of gluing the core"],
    ["shipped", "Core: closed: the pair is on its way"],
  ] as const)("%s", (state, words) => {
    expect(rows(cutOff("core", [state]))).toEqual([words]);
  });

  it("is the shipping where no station closes it, and a station's own name where the shop has none for it", () => {
    expect(rows(cutOff("delivery", ["open"], null))).toEqual(["Name, address and delivery: until the pair is shipped"]);
    const own = { station: "varnish" as NonNullable<CutOffFacts["closesAt"]>["station"], label: "Varnish" };
    expect(rows(cutOff("finish", ["closed"], own))).toEqual(["Edges and structure: closed with the start of Varnish"]);
  });

  it("stands once for parts that close together", () => {
    expect(rows(cutOff("core", ["open"]), cutOff("delivery", ["open"], null), cutOff("flex", ["open"]))).toEqual([
      "Core, flex: up to the start of gluing the core",
      "Name, address and delivery: until the pair is shipped",
    ]);
  });

  it("is told once for pairs that stand alike, and by serial where they differ", () => {
    expect(rows(cutOff("core", ["open", "open"]))).toEqual(["Core: up to the start of gluing the core"]);
    expect(rows(cutOff("core", ["open", "closed", "open"]))).toEqual([
      "Core: TY-1, TY-3 up to the start of gluing the core; TY-2 closed with the start of gluing the core",
    ]);
    expect(rows(cutOff("core", []))).toEqual(["Core: "]);
  });
});

describe("a confirmation's page", () => {
  const told = (change: Partial<typeof confirmation>) =>
    ofType(drawn(OrderConfirmationPages({ data: { ...confirmation, ...change }, paper: "A4" })).shapes, "TEXT").map(
      ({ text }) => text,
    );
  const beside = (texts: readonly string[], label: string) => texts[texts.indexOf(label) + 1];
  const [pair] = confirmation.pairs;
  if (!pair || !confirmation.money) throw new Error("the sample has a pair and a price");
  const { money } = confirmation;

  it("names one quote, or counts several", () => {
    expect(told({})).toContain("of quote Q-212 r2");
    expect(beside(told({}), "From quote")).toBe("Q-212 r2");
    const two = told({ quotes: ["Q-1", "Q-2"], club: "C-21, Fell" });
    expect(two).toContain("of 2 quotes");
    expect(beside(two, "From quotes")).toBe("Q-1, Q-2");
    expect(beside(two, "Club")).toBe("C-21, Fell");
    expect(told({})).not.toContain("Club");
  });

  it("names one pair, or counts several, and says which revision a changed one has", () => {
    expect(beside(told({}), "Pair")).toBe("TY-0417");
    expect(beside(told({ pairs: [pair, { ...pair, serial: "TY-0418" }] }), "Pairs")).toBe("2");
    const has = (revision: number) => told({ pairs: [{ ...pair, revision }] }).join(" ");
    expect(has(2)).toContain("specification 3fa9 c17e 52d0, revision 2");
    expect(has(1)).not.toContain("52d0, revision");
  });

  it("says what was paid, and what is still to pay", () => {
    const with_ = told({});
    expect(beside(with_, "Rush fee of the hard date, tax in")).toBe("$200.00, not received yet");
    expect(beside(with_, "Total with the rush fee")).toBe("$2,305.50");
    expect(beside(with_, "Received")).toBe("$962.50");
    expect(beside(with_, "Still to pay before shipping")).toBe("$1,343.00");
    expect(with_.map(plain)).toContain("received Fri 27 Nov 2026");
    const paidRush = told({ money: { ...money, rush: { cents: 20_000, isPaid: true } } });
    expect(beside(paidRush, "Rush fee of the hard date, tax in")).toBe("$200.00, received");
    const open = told({ money: { ...money, rush: null, deposit: null } });
    expect(open).not.toContain("Total with the rush fee");
    expect(open).toContain("$962.50, not received yet: the clock waits for it");
    expect(open).toContain("not received yet");
    const given = told({ money: null });
    expect(given).not.toContain("Deposit");
    expect(given).not.toContain("If you cancel what the workshop keeps");
  });

  it("tells range, day and plan B, each of its own class alone", () => {
    const since = { waitingFor: [], note: null };
    const day = isoDate("2026-12-23");
    const range = told({ promise: { class: "estimate", from: day, to: isoDate("2026-12-30"), ...since } });
    expect(beside(range, "Ready, nine of ten by the later date")).toBe("Wed 23 Dec 2026 to Wed 30 Dec 2026");
    expect(range.join(" ")).not.toContain("cannot be kept");
    const shares = { p50: 0.76, p90: 0.94 };
    const sure = told({ promise: { class: "estimate", from: day, to: isoDate("2026-12-30"), shares, ...since } });
    expect(beside(sure, "Ready, three of four by the first day, 19 of 20 by the last")).toBe(
      "Wed 23 Dec 2026 to Wed 30 Dec 2026",
    );
    expect(sure.join(" ")).toContain(
      "Wed 23 Dec 2026 to Wed 30 Dec 2026: of orders like this one, three of four by the first day, 19 of 20 by the last.",
    );
    const fixed = told({ promise: { class: "promise", on: day, waitingFor: [], note: "Your place was given up." } });
    expect(beside(fixed, "Ready by")).toBe("Wed 23 Dec 2026");
    expect(fixed).toContain("Your place was given up.");
    expect(fixed.join(" ")).not.toContain("cannot be kept");
    const hard = told({});
    expect(hard).toContain("If it cannot be kept: a loan pair until it is ready");
    expect(hard).toContain("Still missing before the clock starts:");
    expect(hard).toContain("Hard date: approved by the owner, with a reserved place.");
    expect(fixed).not.toContain("Still missing before the clock starts:");
  });
});

describe("a club's offer", () => {
  const club: ClubQuoteFacts = {
    ...terms,
    shop,
    stamp,
    number: "C-21",
    name: "Fell",
    url: "https://shop.example/c",
    madeAt: "2026-11-25T09:30",
    validUntil: isoDate("2026-12-16"),
    buyerName: "Jon",
    palette: { left: "blue", right: "white", graphic: "Contours", destination: "collect" },
    members: clubQuote.members,
    price,
    dates: { from: isoDate("2027-01-12"), to: isoDate("2027-01-22") },
  };

  it("names one colour once and two side by side", () => {
    const rows = (palette: ClubQuoteFacts["palette"]) =>
      composeClubQuote({ ...club, palette }).palette.map(({ label, value }) => `${label}: ${value}`);
    expect(rows(club.palette)).toEqual([
      "Bases: blue, white",
      "Graphic: Contours",
      "Delivery: Fetched at the workshop",
    ]);
    expect(rows({ ...club.palette, right: "blue", destination: "home" })).toEqual([
      "Bases: blue",
      "Graphic: Contours",
      "Delivery: Sent within the state",
    ]);
    expect(composeClubQuote(club).howToAccept[0]).toContain("Call +1 555 0142 and name C-21");
    expect(composeClubQuote(club).dates).toMatchObject({ from: "2027-01-12", to: "2027-01-22" });
    expect(composeClubQuote(club).taxNote).toMatch(/is included/);
  });

  it("has a line a skier, with a dash where nothing is written on the ski", () => {
    const [first] = clubQuote.members;
    if (!first) throw new Error("the sample has members");
    const members = [{ ...first, lettering: null, totalCents: 12_345 }];
    const texts = ofType(drawn(ClubQuotePages({ data: { ...clubQuote, members }, paper: "A4" })).shapes, "TEXT").map(
      ({ text }) => text,
    );
    const at = texts.indexOf("Midlow 95, 178 cm");
    expect(texts.slice(at - 1, at + 5)).toEqual([
      first.skierName,
      first.ski,
      first.flexClass,
      "–",
      first.quoteNumber,
      "$123.45",
    ]);
  });
});
