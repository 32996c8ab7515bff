// Which pages and papers of a shop are read, and by whom. What a list shows is found on the list, one for each state.

import { visitor } from "./shop.mjs";
import { pageText, paperText } from "./text.mjs";

const orderStates = ["waiting", "released", "building", "ready", "shipped", "delivered", "cancelled"];
const quoteStates = ["open", "accepted", "expired", "withdrawn", "replaced"];
const sheetStates = ["open", "quoted", "turned-down"];
const staffPages = [
  "",
  "/call",
  "/quotes",
  "/quotes?page=2",
  "/orders",
  "/orders?page=2",
  "/clubs",
  "/queue",
  "/queue?days=14",
  "/queue/order",
  "/queue/breakdown",
  "/queue/what-if",
  "/promises",
  "/measured",
  "/notices",
  "/strips",
  "/prices",
  "/search?text=alder",
];
const tables = ["/orders/csv", "/quotes/csv", "/measured/csv"];
const id = "[0-9a-f]{8}-[0-9a-f-]{27}";

/**
 * @param address of the shop
 * @param signIns of its people, one a role
 * @param keep takes a name and a text
 */
export async function recordShop(address, signIns, keep) {
  const people = {};
  for (const { role, email, password } of signIns) {
    people[role] ??= visitor(address);
    await people[role].send("/shop/sign-in", { email: null, password: null }, { email, password });
  }
  const { owner, desk, maker } = people;
  const stranger = visitor(address);
  const page = async (who, where, name) => {
    const answer = await who.ask(where);
    const text = await answer.text();
    const isPage = (answer.headers.get("content-type") ?? "").includes("html");
    keep(`pages/${name}`, `${answer.status}\n${isPage ? pageText(text) : pageText(text.replaceAll("<", "&lt;"))}`);
    return text;
  };
  const found = (html, pattern) => [...new Set([...html.matchAll(new RegExp(pattern, "g"))].map((match) => match[1]))];
  const html = async (where) => (await owner.ask(where)).text();
  const linkTo = async (where, kind, ownId) => {
    await owner.send(where, { kind, id: ownId }, {});
    const told = /\/(?:sheet|quote|club|pair)\/[A-Za-z0-9_-]{43}/.exec(await html(where));
    return told?.[0] ?? null;
  };

  for (const [where, name] of [
    ["/", "home"],
    ["/method", "method"],
    ["/sheet", "sheet-start"],
    ["/shop", "sign-in"],
    ["/nowhere", "not-found"],
  ])
    await page(stranger, where, `public-${name}`);
  for (const [role, who] of [
    ["owner", owner],
    ["desk", desk],
    ["maker", maker],
  ])
    for (const where of staffPages)
      await page(who, `/shop${where}`, `${role}${where.replace(/[/?=]/g, "-") || "-shop"}`);
  for (const where of tables) await page(owner, `/shop${where}`, `owner${where.replaceAll("/", "-")}`);

  const papers = new Map();
  const collect = (name, text) => {
    for (const [index, where] of found(text, `href="(/files/(?!artwork)[^"#]+)"`).entries())
      papers.set(where.replaceAll("&amp;", "&"), `${name}-${index + 1}`);
  };
  for (const state of quoteStates) {
    const [quoteId] = found(await html(`/shop/quotes?state=${state}`), `/shop/quotes/(${id})`);
    if (quoteId === undefined) continue;
    collect(`quote-${state}`, await page(owner, `/shop/quotes/${quoteId}`, `quote-${state}`));
    const link = await linkTo(`/shop/quotes/${quoteId}`, "quote", quoteId);
    if (link !== null) collect(`quote-${state}-skier`, await page(stranger, link, `quote-${state}-skier`));
  }
  for (const state of orderStates) {
    const [orderId] = found(await html(`/shop/orders?state=${state}`), `/shop/orders/(${id})`);
    if (orderId === undefined) continue;
    const where = `/shop/orders/${orderId}`;
    const order = await page(owner, where, `order-${state}`);
    collect(`order-${state}`, order);
    await page(desk, where, `order-${state}-desk`);
    await page(owner, `${where}/edit`, `order-${state}-edit`);
    await page(owner, `${where}/edit?lengthCm=186`, `order-${state}-edit-186`);
    await page(owner, `${where}/hard-date`, `order-${state}-hard-date`);
    await page(owner, `${where}/hard-date?on=2027-01-15`, `order-${state}-hard-date-on`);
    const link = await linkTo(where, "order", orderId);
    if (link !== null) collect(`order-${state}-skier`, await page(stranger, link, `order-${state}-skier`));
    for (const code of found(order, "/shop/pair/([A-Z]+-\\d+)").slice(0, 1)) {
      collect(`pair-${state}`, await page(owner, `/shop/pair/${code}`, `pair-${state}`));
      await page(maker, `/shop/pair/${code}`, `pair-${state}-maker`);
      await page(maker, `/shop/strips/${code}`, `pair-${state}-strips`);
    }
  }
  for (const state of sheetStates) {
    const [sheetId] = found(await html(`/shop/call?state=${state}`), `/shop/call/(${id})`);
    if (sheetId === undefined) continue;
    await page(desk, `/shop/call/${sheetId}`, `sheet-${state}`);
    await page(desk, `/shop/call/${sheetId}/compare`, `sheet-${state}-compare`);
    const link = await linkTo(`/shop/call/${sheetId}`, "sheet", sheetId);
    if (link === null) continue;
    await page(stranger, link, `sheet-${state}-skier`);
    await page(stranger, `${link}/compare`, `sheet-${state}-skier-compare`);
  }
  for (const [index, clubId] of found(await html("/shop/clubs"), `/shop/clubs/(${id})`)
    .slice(0, 2)
    .entries()) {
    collect(`club-${index + 1}`, await page(owner, `/shop/clubs/${clubId}`, `club-${index + 1}`));
    const link = await linkTo(`/shop/clubs/${clubId}`, "club", clubId);
    if (link !== null) collect(`club-${index + 1}-skier`, await page(stranger, link, `club-${index + 1}-skier`));
  }
  for (const [index, incidentId] of found(
    await html("/shop/queue/breakdown"),
    "/shop/queue/breakdown/([\\w-]+)",
  ).entries())
    await page(owner, `/shop/queue/breakdown/${incidentId}`, `breakdown-${index + 1}`);
  await newSheet(stranger, page);

  // Last, because printing is counted and said on pages.
  for (const [where, name] of papers) {
    const answer = await owner.ask(where);
    const bytes = Buffer.from(await answer.arrayBuffer());
    const isPaper = bytes.subarray(0, 5).toString() === "%PDF-";
    keep(`papers/${name}`, isPaper ? paperText(bytes) : `${answer.status} ${answer.headers.get("content-type")}`);
  }
}

/** A skier's own sheet, as it is before anything is answered. */
async function newSheet(skier, page) {
  const answer = await skier.send("/sheet", {}, {});
  const [link] = /\/sheet\/[A-Za-z0-9_-]{43}/.exec(`${answer?.url} ${await answer?.text()}`) ?? [];
  if (link !== undefined) await page(skier, link, "sheet-new-skier");
}
