/** What stands between a request and the use cases: fields as they are sent, answers as they go out, links told once. */

import { redirect } from "next/navigation";
import { beforeEach, describe, expect, it, type MockInstance, vi } from "vitest";
import { z } from "zod";
import { forgetTyped, showTicked } from "#app/_server/club-choice.ts";
import {
  idField,
  linkField,
  maybeTicked,
  shopInstantField,
  takenPairFields,
  textField,
  tickedField,
  wholeField,
  withoutEmpty,
  withTicks,
} from "#app/_server/fields.ts";
import { messagesByPath } from "#app/_server/form-state.ts";
import { refusalResponse } from "#app/_server/handler.ts";
import { replyOf } from "#app/_server/sheet-reply.ts";
import { csvOfPages } from "#app/shop/(staff)/csv-response.ts";
import { tellLink, toldLink } from "#app/shop/told-link.ts";
import { browser, called, freshBrowser } from "../support/page-requests";

const says = (schema: z.ZodType, value: unknown) => {
  const read = schema.safeParse(value);
  return read.success ? read.data : read.error.issues.map(({ message }) => message).join("; ");
};
const takes = (schema: z.ZodType, most: number) =>
  [0, 1, most, most + 1].map((length) => schema.safeParse("x".repeat(length)).success);

describe("fields as a form sends them", () => {
  it("hold as much as is meant, no more", () => {
    expect(takes(linkField.token, 100)).toEqual([false, true, true, false]);
    expect(takes(idField, 60)).toEqual([false, true, true, false]);
    expect(takes(takenPairFields.candidate, 60)).toEqual([false, true, true, false]);
    expect(takes(takenPairFields.other, 400)).toEqual([true, true, true, false]);
    expect(takes(textField("Note", 12), 12)).toEqual([true, true, true, false]);
  });

  it("say what is wrong with them", () => {
    expect(says(textField("Note", 3), "long")).toBe("Note: at most 3 characters, not 4");
    expect(says(textField("Note", 3), undefined)).toBe("Note is missing");
    expect(says(textField("Note", 3, "a word, please"), undefined)).toBe("a word, please");
    expect(says(wholeField, "x")).toBe("Number: a whole number is needed");
    expect([says(wholeField, "0"), says(wholeField, "123456789")]).toEqual([0, 123_456_789]);
    expect(wholeField.safeParse("1234567890").success).toBe(false);
    expect(says(tickedField("Terms"), undefined)).toBe("Terms: please tick");
    expect(says(tickedField("Terms"), "on")).toBe("on");
  });

  it("know a tick that was set from one that was not", () => {
    expect([says(maybeTicked, "on"), says(maybeTicked, undefined)]).toEqual([true, false]);
    const ticks = withTicks(["a", "b"], z.object({ a: z.boolean(), b: z.boolean(), c: z.string() }));
    expect(says(ticks, { a: "on", c: "x" })).toEqual({ a: true, b: false, c: "x" });
  });

  it("leave out what is empty, and read a day and time off the shop's clock", () => {
    const optional = withoutEmpty(z.object({ a: z.string().optional(), b: z.string().optional() }));
    expect(says(optional, { a: "", b: "x" })).toEqual({ b: "x" });
    const at = shopInstantField("Call back", "America/Denver");
    // Winter in Denver is seven hours behind UTC, summer six.
    expect((says(at, "2026-11-12T10:05") as Date).toISOString()).toBe("2026-11-12T17:05:00.000Z");
    expect((says(at, "2026-07-12T23:59") as Date).toISOString()).toBe("2026-07-13T05:59:00.000Z");
    expect(says(at, "tomorrow")).toBe("Call back: a day and a time are needed");
  });

  it("are refused with the first message of each", () => {
    const name = z.object({
      name: z
        .string()
        .min(3, "three letters")
        .regex(/^[A-Z]/, "a capital"),
    });
    const read = name.safeParse({ name: "x" });
    expect(read.error && messagesByPath(read.error.issues)).toEqual({ name: "three letters" });
  });
});

describe("answers", () => {
  let written: MockInstance<typeof process.stderr.write>;
  beforeEach(() => {
    written = vi.spyOn(process.stderr, "write").mockReturnValue(true);
    return () => written.mockRestore();
  });
  const no = (code: string, known: object = {}) => ({ ok: false, refusal: { code, ...known } }) as const;
  const say = ({ code }: { readonly code: string }) => `no: ${code}`;

  it("to a handler's caller have a status of their own where one is usual, and are not kept", async () => {
    const status = (code: string) => refusalResponse({ code }, "no").status;
    expect(["not-allowed", "not-found", "too-many-attempts", "too-large", "anything"].map(status)).toEqual([
      403, 404, 429, 413, 422,
    ]);
    const answer = refusalResponse({ code: "not-found", what: "quote" }, "No such quote.");
    expect(answer.headers.get("cache-control")).toBe("no-store");
    expect(await answer.json()).toEqual({ refusal: { code: "not-found", what: "quote" }, message: "No such quote." });
  });

  it("to the sheet are a value, words with their field, or a fault's reference", async () => {
    const reply = (work: () => Promise<never>) => replyOf("save", work, say);
    expect(await replyOf("save", async () => ({ ok: true, value: 7 }), say)).toEqual({ ok: true, value: 7 });
    expect(await replyOf("save", async () => no("late"), say)).toEqual({ ok: false, message: "no: late" });
    expect(await replyOf("save", async () => no("late", { path: "a.b" }), say)).toEqual({
      ok: false,
      message: "no: late",
      path: "a.b",
    });
    const fault = await reply(async () => {
      throw new RangeError("no tip");
    });
    expect(fault).toEqual({ ok: false, message: expect.stringMatching(/reference \d{4}-\d{4}\.$/) });
    expect(JSON.parse(String(written.mock.calls[0]?.[0]))).toMatchObject({ where: "save", fault: "no tip" });
    await expect(reply(async () => redirect("/shop"))).rejects.toMatchObject({
      digest: expect.stringContaining("/shop"),
    });
  });

  it("as CSV hold every page of a list, to an end far beyond any shop", async () => {
    const asked: number[] = [];
    const read = (total: number) => async (page: number) => {
      asked.push(page);
      return { ok: true, value: { rows: [page], total, page, pageSize: 2, unreadable: [] } } as never;
    };
    const file = await csvOfPages("list.csv", ["n"], read(5), (row) => [String(row)]);
    expect(await file?.text()).toBe("n\r\n1\r\n2\r\n3\r\n");
    expect(asked).toEqual([1, 2, 3]);
    expect(Object.fromEntries(file?.headers ?? [])).toEqual({
      "content-type": "text/csv; charset=utf-8",
      "content-disposition": 'attachment; filename="list.csv"',
      "cache-control": "no-store",
    });
    asked.length = 0;
    await csvOfPages("list.csv", ["n"], read(4), (row) => [String(row)]);
    expect(asked).toEqual([1, 2]);
    asked.length = 0;
    await csvOfPages("list.csv", ["n"], read(1e9), (row) => [String(row)]);
    expect(asked.at(-1)).toBe(400);
    expect(
      await csvOfPages(
        "list.csv",
        ["n"],
        async () => no("not-allowed") as never,
        () => [],
      ),
    ).toBeNull();
  });
});

describe("a private link", () => {
  it("is told to its own subject's page, for a quarter of an hour, out of reach of scripts", async () => {
    freshBrowser();
    expect(await toldLink("quote", "q-1")).toBeNull();
    for (const [kind, page] of [
      ["sheet", "sheet"],
      ["quote", "quote"],
      ["club", "club"],
      ["order", "pair"],
      ["wall", "wall"],
    ] as const) {
      await tellLink(kind, "x-1", "tok");
      expect((await toldLink(kind, "x-1"))?.url).toMatch(new RegExp(`^https?://[^/]+/${page}/tok$`));
    }
    expect((await toldLink("wall", "x-1"))?.token).toBe("tok");
    expect([await toldLink("wall", "x-2"), await toldLink("quote", "x-1")]).toEqual([null, null]);
    const [kept] = [...browser.cookies.values()];
    expect(kept?.options).toMatchObject({ httpOnly: true, sameSite: "lax", path: "/", maxAge: 900 });
  });
});

describe("what is typed beside the ticks of a club's offer", () => {
  it("travels in a cookie that no browser drops, and is forgotten when it is done with", async () => {
    freshBrowser();
    const typed = { quoteIds: "q-1,q-2", name: "x".repeat(401), note: "y".repeat(400), token: "secret", priced: "q-1" };
    expect((await called(() => showTicked("/club/tok", typed))).to).toBe("/club/tok?pairs=q-1%2Cq-2");
    const kept = () => browser.cookies.get("club-typed")?.value ?? "{}";
    expect(JSON.parse(kept())).toEqual({ name: "x".repeat(400), note: "y".repeat(400) });
    expect((await called(() => showTicked("/club/tok", { quoteIds: "q-1" }, "changed"))).to).toBe(
      "/club/tok?pairs=q-1&changed=yes",
    );
    await forgetTyped("/club/tok");
    expect(kept()).toBe("{}");
  });
});
