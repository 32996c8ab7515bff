/** Pages of a real shop, from the database to the page: who is let in where, and that a page says what its use case says. */
import { expect, it, vi } from "vitest";
import { dayText } from "#app/_ui/date-range.tsx";
import { moneyText } from "#app/_ui/money.ts";
import SkierPairPage from "#app/(skier)/pair/[token]/page.tsx";
import SheetPage from "#app/(skier)/sheet/[token]/page.tsx";
import StartPage from "#app/(skier)/sheet/page.tsx";
import { GET as health } from "#app/health/route.ts";
import OrderPage from "#app/shop/(staff)/orders/[orderId]/page.tsx";
import OrdersPage from "#app/shop/(staff)/orders/page.tsx";
import DeskPage from "#app/shop/(staff)/page.tsx";
import PairPage from "#app/shop/(staff)/pair/[code]/page.tsx";
import PromisesPage from "#app/shop/(staff)/promises/page.tsx";
import { GET as live } from "#app/shop/(staff)/queue/live/route.ts";
import QueuePage from "#app/shop/(staff)/queue/page.tsx";
import QuotePage from "#app/shop/(staff)/quotes/[quoteId]/page.tsx";
import SignInPage from "#app/shop/sign-in/page.tsx";
import { type OrderId, type QuoteId, queueBoard, readOrder, readQuote } from "#services";
import { quotedSheet, releasedOrder } from "../../support/builders/sale";
import { must, openShop, stockWood } from "../../support/builders/shop";
import { databaseForTests } from "../../support/db";
import { sentTo, shown } from "../../support/page-render";
import { browser, freshBrowser, sitDown } from "../../support/page-requests";

vi.mock("next/headers", () => import("../../support/page-requests"));
vi.mock("next/cache", () => import("../../support/page-requests"));

const db = databaseForTests();

it("lets each person into their own pages, and says there what the use cases say", async () => {
  freshBrowser();
  const shop = await openShop(db());
  await stockWood(db());
  const { orderId, token } = await releasedOrder(shop);
  const made = await quotedSheet(shop, { phone: "303 555 0103", name: "Lou Fir" });
  const quoteId: QuoteId = made.quote.quoteId;

  // A stranger is sent to the sign-in, and back to where they were.
  expect(await sentTo(DeskPage)).toBe("/shop/sign-in?back=%2Fshop");
  expect(await sentTo(OrderPage, { params: { orderId } })).toBe(
    `/shop/sign-in?back=${encodeURIComponent(`/shop/orders/${orderId}`)}`,
  );
  expect((await live(new Request("http://shop/shop/queue/live"))).status).toBe(401);
  const door = await shown(SignInPage, { query: { back: "/shop/queue", left: "yes" } });
  expect(door.form("Sign in").sent).toEqual({ back: "/shop/queue", email: "", password: "" });
  expect(door.text).toContain("You are signed out.");
  expect((await shown(SignInPage, { query: { back: "//elsewhere.example" } })).form("Sign in").sent.back).toBe("/shop");

  await sitDown("maker");
  expect(await sentTo(DeskPage)).toBe("/shop/queue");
  expect(await sentTo(SignInPage, { query: { back: "/shop/queue" } })).toBe("/shop/queue");
  // Makers see no order and no price.
  for (const page of [
    () => sentTo(OrderPage, { params: { orderId } }),
    () => sentTo(OrdersPage),
    () => sentTo(QuotePage, { params: { quoteId } }),
  ])
    expect(await page()).toBe("not-found");
  const pair = await shown(PairPage, { params: { code: "TY-0401" } });
  expect(pair.text).not.toMatch(/\$\d/);
  expect(pair.buttons).toContain("Start");
  expect(pair.links["O-301"]).toBeUndefined();

  await sitDown("desk1");
  const order = must(await readOrder(shop.as(shop.desk), { orderId: orderId as OrderId }));
  const page = await shown(OrderPage, { params: { orderId } });
  expect(page.facts.Total).toBe(moneyText(order.money.totalCents));
  expect(page.text).toContain(`Promised for ${dayText(order.promisedOn ?? "")}`);
  expect(page.buttons).not.toContain("Take the slot away");
  const listed = (await shown(OrdersPage)).table("Orders");
  expect(listed.map((row) => [row.Order, row.Customer, row.Total])).toEqual([
    [order.number, "Robin Alder", moneyText(order.price.totalCents)],
  ]);
  const quote = must(await readQuote(shop.as(shop.desk), { quoteId }));
  expect((await shown(QuotePage, { params: { quoteId } })).table("Price").at(-2)).toEqual({
    Line: "Total",
    USD: moneyText(quote.price.totalCents),
  });
  expect((await shown(DeskPage)).one("ul").items).toContain("1quotes open");
  const board = must(await queueBoard(shop.as(shop.desk), { days: 14 }));
  const queue = await shown(QueuePage, { query: { view: "promises" } });
  expect(queue.table("Promises").map((row) => row.Pair)).toEqual(board.pairs.map(({ serial }) => serial));
  expect(queue.all("nav a[aria-current=page]").map(({ text }) => text)).toEqual(["Promises"]);
  expect(queue.text).toContain(`${board.pairs.length} pairs, ${board.backlogPairs} of them not begun.`);
  for (const [view, part] of [
    ["press", "Pressings:"],
    ["waiting", "Nothing is blocked."],
    ["floor", "TY-0401"],
    ["none", "The board as a list"],
  ] as const)
    expect((await shown(QueuePage, { query: { view } })).text).toContain(part);
  // The queue is followed as events: how soon to come back, then the revision; what a page has seen is not told again.
  const leaving = new AbortController();
  const stream = await live(new Request("http://shop/shop/queue/live", { signal: leaving.signal }));
  expect(stream.headers.get("content-type")).toBe("text/event-stream; charset=utf-8");
  const reader = stream.body?.getReader();
  const next = async () => new TextDecoder().decode((await reader?.read())?.value);
  expect(await next()).toBe("retry: 2000\n\n");
  expect(await next()).toBe(`id: ${board.revision}\nevent: revision\ndata: ${board.revision}\n\n`);
  leaving.abort();
  expect((await reader?.read())?.done).toBe(true);
  expect((await shown(PromisesPage)).text).toContain("1 promises are open; 0 of them are past their nine-of-ten day.");

  await sitDown(null);
  const skier = await shown(SkierPairPage, { params: { token } });
  expect(skier.headings[0]).toBe("Your pair TY-0401");
  expect(await sentTo(SkierPairPage, { params: { token: "x".repeat(43) } })).toBe("not-found");
  expect(await sentTo(SheetPage, { params: { token } })).toBe("not-found");
  expect((await shown(StartPage)).buttons).toEqual(["Start a new sheet"]);
  expect(browser.cookies.has("pairwright-session")).toBe(false);
  expect(await (await health()).json()).toEqual({ ready: true });
});
