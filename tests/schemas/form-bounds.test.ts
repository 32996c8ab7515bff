/** Limits of what buttons send and addresses ask, at the bound and one step beyond; the shop's own, no source. */
import { describe, expect, it } from "vitest";
import type { z } from "zod";
import {
  acceptQuoteSchema,
  acknowledgeFlagSchema,
  addressSchema,
  approveProofSchema,
  askProofChangesSchema,
  askReviewSchema,
  callBackSchema,
  cancelOrderSchema,
  confirmRightsSchema,
  emailSchema,
  firstOwnerSchema,
  floorSignInSchema,
  honourOldPriceSchema,
  idListField,
  idsField,
  listDraftsQuery,
  listOrdersQuery,
  listQuotesQuery,
  newStaffSchema,
  phoneSchema,
  recordDepositSchema,
  recordReceiptSchema,
  requestChangeSchema,
  shipOrderSchema,
  signInSchema,
  turnDownSchema,
  waiveRushSchema,
  withdrawSchema,
} from "#schemas";
import { tryBounds } from "./bounds";

const reason = ["reason text [3, 500]"];
const note = ["note text [1, 2000]"];

interface Form {
  readonly name: string;
  readonly schema: z.ZodType;
  readonly sample: unknown;
  readonly lines: readonly string[];
}

const forms: readonly Form[] = [
  {
    name: "somebody new",
    schema: newStaffSchema,
    sample: { role: "desk", name: "Ada", email: "ada@moor.example", password: "larch-board" },
    lines: ["name text [1, 120]", "password text [1, 200]"],
  },
  {
    name: "the first owner",
    schema: firstOwnerSchema,
    sample: { passcode: "ABCD", name: "Ada", email: "ada@moor.example", password: "x" },
    lines: ["passcode text [1, 60]", "name text [1, 120]", "password text [1, 200]"],
  },
  {
    name: "sign-in on the floor",
    schema: floorSignInSchema,
    sample: { staffId: "s-1", passcode: "4" },
    lines: ["staffId text [1, 60]", "passcode text [1, 20]"],
  },
  {
    name: "sign-in",
    schema: signInSchema,
    sample: { email: "ada@moor.example", password: "x" },
    lines: ["password text [1, 200]"],
  },
  {
    name: "accept a quote",
    schema: acceptQuoteSchema,
    sample: { name: "Ada", acceptsTerms: true, sawWithdrawalNotice: true },
    lines: ["name text [1, 120]"],
  },
  { name: "ask for a change", schema: requestChangeSchema, sample: { note: "x" }, lines: note },
  { name: "ask for a review", schema: askReviewSchema, sample: { note: "x" }, lines: note },
  { name: "withdraw", schema: withdrawSchema, sample: { reason: "gone" }, lines: reason },
  { name: "honour", schema: honourOldPriceSchema, sample: { reason: "told" }, lines: reason },
  { name: "turn down", schema: turnDownSchema, sample: { reason: "none" }, lines: reason },
  { name: "waive the fee", schema: waiveRushSchema, sample: { reason: "ours" }, lines: reason },
  { name: "cancel", schema: cancelOrderSchema, sample: { reason: "moved" }, lines: reason },
  { name: "acknowledge a flag", schema: acknowledgeFlagSchema, sample: { code: "x", reason: "asked" }, lines: reason },
  {
    name: "call back",
    schema: callBackSchema,
    sample: { at: "2026-11-10T17:00:00Z", reason: "later", phone: "303 555 0101" },
    lines: reason,
  },
  {
    name: "deposit",
    schema: recordDepositSchema,
    sample: { method: "counter" },
    lines: ["reference text [1, 120]"],
  },
  {
    name: "receipt",
    schema: recordReceiptSchema,
    sample: { what: "rush", method: "counter" },
    lines: ["reference text [1, 120]"],
  },
  { name: "rights", schema: confirmRightsSchema, sample: { basis: "own", name: "Ada" }, lines: ["name text [1, 120]"] },
  {
    name: "approve a proof",
    schema: approveProofSchema,
    sample: { revision: 1, name: "Ada" },
    lines: ["revision whole [1, 999]", "name text [1, 120]"],
  },
  {
    name: "changes to a proof",
    schema: askProofChangesSchema,
    sample: { revision: 1, note: "bluer" },
    lines: ["revision whole [1, 999]", ...note],
  },
  {
    name: "ship",
    schema: shipOrderSchema,
    sample: {},
    lines: ["tracking text [1, 120]", "unpaidReason text [3, 500]"],
  },
];

describe.each(forms)("$name", ({ schema, sample, lines }) => {
  tryBounds({ schema, sample, lines });
});

describe("an address", () => {
  tryBounds({
    schema: addressSchema,
    sample: { lines: ["7 Weir Lane"], town: "Lower Fennick", postcode: "80000", country: "US" },
    lines: [
      "lines items [1, 4]",
      "lines.0 text [1, 120]",
      "town text [1, 80]",
      "region text [1, 80]",
      "postcode text [1, 20]",
      "country text [2, 60]",
    ],
  });
});

/** Words that a choice may be, each alone, and one that it may not. */
const words: readonly (readonly [string, z.ZodType, object, string, readonly string[]])[] = [
  [
    "role",
    newStaffSchema,
    { name: "A", email: "a@b.example", password: "0123456789" },
    "role",
    ["desk", "maker", "owner"],
  ],
  ["deposit by", recordDepositSchema, {}, "method", ["pay-later", "bank-transfer", "counter", "demo-card"]],
  ["balance by", recordReceiptSchema, { what: "balance" }, "method", ["bank-transfer", "counter", "demo-card"]],
  ["paid for", recordReceiptSchema, { method: "counter" }, "what", ["rush", "balance"]],
  ["rights", confirmRightsSchema, { name: "A" }, "basis", ["own", "licensed", "public-domain", "commissioned"]],
];

describe("words", () => {
  it.each(words)("%s", (_what, schema, rest, field, allowed) => {
    const passes = (word: string) => schema.safeParse({ ...rest, [field]: word }).success;
    expect(allowed.filter(passes)).toEqual(allowed);
    expect(["pay-never", "system", "", allowed.join()].filter(passes)).toEqual([]);
  });

  it("cannot say of a balance that it is paid later", () => {
    expect(recordReceiptSchema.safeParse({ what: "balance", method: "pay-later" }).success).toBe(false);
  });

  it.each(["acceptsTerms", "sawWithdrawalNotice"])("a quote is not accepted without %s", (tick) => {
    const all = { name: "Ada", acceptsTerms: true, sawWithdrawalNotice: true };
    expect(acceptQuoteSchema.safeParse({ ...all, [tick]: false }).error?.issues[0]?.path).toEqual([tick]);
  });
});

describe("contact", () => {
  it.each([
    ["12345", true],
    ["1234", false],
    ["1".repeat(40), true],
    ["1".repeat(41), false],
    ["+1 (303) 555-01.01/2", true],
    ["303 555 0101 ext", false],
    ["1+303555", false],
  ])("telephone %s: %s", (phone, passes) => {
    expect(phoneSchema.safeParse(phone).success).toBe(passes);
  });

  const long = (length: number) => `${"a".repeat(length - "@moor.example".length)}@moor.example`;
  it.each([
    [" ada@moor.example ", true],
    ["ada", false],
    ["ada@moor", false],
    [long(200), true],
    [long(201), false],
  ])("e-mail %s: %s", (email, passes) => {
    expect(emailSchema.safeParse(email).success).toBe(passes);
  });
});

describe("queries", () => {
  it.each([
    ["1", true],
    ["999999", true],
    ["0", false],
    ["1000000", false],
    ["1.5", false],
    ["-1", false],
    ["one", false],
  ])("page %s: %s", (page, passes) => {
    for (const query of [listDraftsQuery, listQuotesQuery, listOrdersQuery]) {
      expect(query.safeParse({ page }).success).toBe(passes);
    }
  });

  it("searches for 1 to 120 characters", () => {
    for (const query of [listDraftsQuery, listQuotesQuery, listOrdersQuery]) {
      expect(query.safeParse({ text: "x".repeat(120) }).success).toBe(true);
      expect(query.safeParse({ text: "x".repeat(121) }).error?.issues[0]?.path).toEqual(["text"]);
      expect(query.safeParse({ text: "   " }).success).toBe(false);
      expect(query.safeParse({ unknown: "x" }).success).toBe(false);
    }
  });

  it.each([
    [listDraftsQuery, ["open", "quoted", "turned-down"]],
    [listQuotesQuery, ["open", "accepted", "expired", "withdrawn", "replaced"]],
    [listOrdersQuery, ["waiting", "released", "building", "ready", "shipped", "delivered", "cancelled"]],
  ] as const)("state, list %#", (query, states) => {
    const passes = (state: string) => query.safeParse({ state }).success;
    expect(states.every(passes)).toBe(true);
    expect(passes("lost")).toBe(false);
  });

  it("reads yes and no of the old book, and the four gates", () => {
    expect(listQuotesQuery.parse({ onOldBook: "true" })).toEqual({ onOldBook: true });
    expect(listQuotesQuery.parse({ onOldBook: "false" })).toEqual({ onOldBook: false });
    for (const waitingFor of ["deposit", "specification-lock", "proof", "rights"]) {
      expect(listOrdersQuery.parse({ waitingFor })).toEqual({ waitingFor });
    }
    expect(listOrdersQuery.safeParse({ waitingFor: "weather" }).success).toBe(false);
  });
});

describe("ticked rows", () => {
  it.each([
    [undefined, []],
    ["a", ["a"]],
    [
      ["a", "b"],
      ["a", "b"],
    ],
  ])("%o", (sent, ids) => {
    expect(idsField.parse(sent)).toEqual(ids);
  });

  it("are at most 200, of at most 60 characters each", () => {
    expect(idsField.safeParse(Array.from({ length: 200 }, () => "x".repeat(60))).success).toBe(true);
    expect(idsField.safeParse(Array.from({ length: 201 }, () => "x")).success).toBe(false);
    expect(idsField.safeParse("x".repeat(61)).success).toBe(false);
    expect(idListField.parse("a,,b,")).toEqual(["a", "b"]);
    expect(idListField.safeParse("x".repeat(12_200)).success).toBe(true);
    expect(idListField.safeParse("x".repeat(12_201)).success).toBe(false);
  });
});
