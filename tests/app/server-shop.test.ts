/** A request with a real shop behind it: another sheet by its link, a pair taken onto a sheet, a session that ends, the first start. */
import { expect, it, vi } from "vitest";
import { otherSheetOf } from "#app/_server/other-sheet.ts";
import { requestAddress, requestContext, staffContext, stillSignedIn } from "#app/_server/request.ts";
import { startUp } from "#app/_server/start-up.ts";
import { takePair } from "#app/_server/take-pair.ts";
import { startSheet } from "#app/(skier)/sheet/actions.ts";
import { GET as live } from "#app/shop/(staff)/queue/live/route.ts";
import { leave } from "#app/shop/actions.ts";
import { issueLink } from "#auth";
import words from "#content/copy/compare.json";
import { idOf } from "#schemas/ids";
import { readOrder, readSheet, saveSheet } from "#services";
import { acceptedQuote, filledSheet } from "../support/builders/sale";
import { daysAfter, must, openShop, shopNow, stockWood } from "../support/builders/shop";
import { databaseForTests } from "../support/db";
import { browser, called, freshBrowser, sitDown } from "../support/page-requests";

const db = databaseForTests();
const answers = {
  "typed.height": { unit: "cm", cm: 182 },
  "typed.mass": { unit: "kg", kg: 82 },
  "answers.ability": "confident",
};

async function sheetWithLink() {
  const { to } = await called(startSheet);
  const token = to?.replace("/sheet/", "") ?? "";
  const row = await db().sheet.findFirstOrThrow({});
  return { token, sheetId: idOf("sheet", row.id) };
}

it("compares with another sheet by its link alone, and says what else a link was", async () => {
  freshBrowser();
  const shop = await openShop(db());
  const own = await sheetWithLink();
  const sheetId = await filledSheet(shop);
  const refused = async (link: string) => {
    const other = await otherSheetOf(link, own.sheetId);
    return other.state === "refused" ? other.message : other.state;
  };
  expect(await refused("")).toBe("none");
  expect(await refused("hello")).toBe(words.other["not-a-link"]);
  expect(await refused(`/sheet/${"x".repeat(43)}`)).toBe(words.other["not-found"]);
  expect(await refused(`/sheet/${own.token}`)).toBe(words.other.same);
  const quote = await issueLink(db(), { kind: "quote", id: "q-1" }, { id: "l-1", now: shopNow });
  expect(await refused(`/quote/${quote}`)).toBe(words.other["not-a-sheet"].replace("{kind}", words.kinds.quote));
  const found = await otherSheetOf(`https://skis.example/sheet/${own.token}`, sheetId);
  expect(found).toMatchObject({ state: "found", input: { answers: {} } });
});

it("takes one of the compared pairs onto a sheet, unless the sheet has changed meanwhile", async () => {
  freshBrowser();
  const shop = await openShop(db());
  const ctx = shop.as(shop.desk);
  const other = await sheetWithLink();
  must(
    await saveSheet(ctx, {
      sheetId: other.sheetId,
      patch: { ...answers, "choices.model": "midlow-95" },
      baseVersion: 1,
    }),
  );
  const sheetId = await filledSheet(shop);
  const { version } = must(await readSheet(ctx, { sheetId }));
  const take = (candidate: string, link = "", seen = version) =>
    takePair(ctx, { sheetId, candidate, other: link, version: seen });
  expect(await take("no-such-ski")).toMatchObject({ ok: false, refusal: { code: "not-found", what: "pair" } });
  expect(await take("other")).toMatchObject({ ok: false, refusal: { code: "not-found" } });
  expect((await take("midlow-84")).ok).toBe(true);
  expect(must(await readSheet(ctx, { sheetId })).choices.model).toBe("midlow-84");
  // Somebody else's page still shows the sheet as it was.
  must(
    await saveSheet(shop.as(shop.secondDesk), {
      sheetId,
      patch: { "choices.model": "pathwick-75" },
      baseVersion: version + 1,
    }),
  );
  expect(await take("midlow-84", "", version)).toMatchObject({
    ok: false,
    refusal: { code: "changed-meanwhile", what: "sheet" },
  });
  const now = must(await readSheet(ctx, { sheetId })).version;
  expect((await take("other", `/sheet/${other.token}`, now)).ok).toBe(true);
  expect(must(await readSheet(ctx, { sheetId })).choices.model).toBe("midlow-95");
});

it("knows who asks while the session lasts, and from where", async () => {
  freshBrowser();
  await openShop(db());
  expect((await requestContext()).actor.kind).toBe("guest");
  expect(await (await stillSignedIn())()).toBe(false);
  expect((await called(() => staffContext("/shop/orders?state=open"))).to).toBe(
    "/shop/sign-in?back=%2Fshop%2Forders%3Fstate%3Dopen",
  );
  expect((await called(() => staffContext())).to).toBe("/shop/sign-in");
  await sitDown("desk1");
  expect((await requestContext()).actor).toMatchObject({ kind: "staff", name: "Desk 1" });
  expect((await staffContext()).actor).toMatchObject({ kind: "staff", role: "desk" });
  const holds = await stillSignedIn();
  expect(await holds()).toBe(true);
  expect(await requestAddress()).toBe("192.0.2.7");
  expect((await called(leave)).to).toBe("/shop/sign-in?left=yes");
  expect(browser.cookies.has("pairwright-session")).toBe(false);
  // The session itself has ended, not only this browser's memory of it.
  expect(await holds()).toBe(false);
});

it("keeps the line of who follows the queue open, and ends it with their session", async () => {
  freshBrowser();
  await openShop(db());
  await sitDown("desk1");
  vi.useFakeTimers({ toFake: ["setInterval", "clearInterval", "Date"], now: shopNow });
  const follow = async (seen?: string) => {
    const request = new Request(
      "http://shop/shop/queue/live",
      seen === undefined ? {} : { headers: { "last-event-id": seen } },
    );
    const reader = (await live(request)).body?.getReader();
    return async () => {
      const { done, value } = (await reader?.read()) ?? { done: true, value: undefined };
      return done ? null : new TextDecoder().decode(value);
    };
  };
  const next = await follow();
  expect(await next()).toBe("retry: 2000\n\n");
  const first = (await next()) ?? "";
  const revision = /^id: (\d+)\nevent: revision\ndata: \1\n\n$/.exec(first)?.[1];
  expect(revision).toBeDefined();
  // Who has seen this revision is told of the next one alone.
  const again = await follow(revision);
  expect(await again()).toBe("retry: 2000\n\n");
  await vi.advanceTimersByTimeAsync(20_000);
  expect([await next(), await again()]).toEqual([": still here\n\n", ": still here\n\n"]);
  await called(leave);
  await vi.advanceTimersByTimeAsync(60_000);
  const last: (string | null)[] = [];
  while (last.at(-1) !== null && last.length < 9) last.push(await next());
  expect(new Set(last)).toEqual(new Set([": still here\n\n", null]));
});

it("gives up places whose time is over when the server starts, and again every quarter of an hour", async () => {
  freshBrowser();
  const shop = await openShop(db());
  await stockWood(db());
  const every = vi.spyOn(globalThis, "setInterval").mockImplementation(() => ({ unref: () => {} }) as never);
  await startUp();
  const [sweep, everyMs] = every.mock.calls.at(-1) ?? [];
  every.mockRestore();
  expect(everyMs).toBe(900_000);
  const { orderId } = await acceptedQuote(shop);
  const lost = async () => must(await readOrder(shop.as(shop.desk), { orderId })).slotLost;
  expect(await lost()).toBeNull();
  // An unpaid order keeps its place for five working days.
  vi.setSystemTime(daysAfter(shopNow, 14));
  await (sweep as unknown as () => Promise<void>)();
  expect(await lost()).toMatchObject({ reason: expect.any(String) });
});
