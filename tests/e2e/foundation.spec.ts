import { gzipSync } from "node:zlib";
import { expectStill } from "./support/still";
import { expect, signInAs, test } from "./support/test";

test("a page made for one visitor runs its scripts under a nonce of its own", { tag: "@desktop" }, async ({ page }) => {
  const answer = await page.goto("/sheet");
  const policy = answer?.headers()["content-security-policy"] ?? "";
  const nonce = /'nonce-([^']+)'/.exec(policy)?.[1];
  expect(nonce).toBeTruthy();
  expect(policy).not.toContain("unsafe-eval");
  expect(policy).toContain("frame-ancestors 'none'");
  // Browsers hide the attribute; the property tells.
  const nonces = await page.evaluate(() => [...document.scripts].map((script) => script.nonce));
  expect(nonces.length).toBeGreaterThan(0);
  expect(new Set(nonces)).toEqual(new Set([nonce]));
  const again = (await page.goto("/sheet"))?.headers()["content-security-policy"];
  expect(again).not.toBe(policy);
});

for (const path of ["/", "/method"])
  test(`${path} is finished HTML: light, still, the same for everybody, its one script named by its hash`, {
    tag: "@desktop",
  }, async ({ page, request }) => {
    const answer = await request.get(path);
    const headers = answer.headers();
    const html = await answer.body();
    expect([html.length <= 250_000, gzipSync(html).length <= 45_000]).toEqual([true, true]);
    const policy = headers["content-security-policy"] ?? "";
    expect(policy).toMatch(/script-src 'sha256-[^']{44}';/);
    expect(policy).not.toMatch(/(script-src|style-src) [^;]*unsafe|nonce-/);
    expect(headers["x-content-type-options"]).toBe("nosniff");
    expect(headers["referrer-policy"]).toBe("strict-origin-when-cross-origin");
    expect(headers["x-powered-by"]).toBeUndefined();
    const again = await request.get(path, { headers: { "if-none-match": headers.etag ?? "" } });
    expect([again.status(), (await again.body()).length]).toEqual([304, 0]);

    await expectStill(page, path);
    await page.goto(path);
    // The switch works, and the server knows of it at the next visit.
    await page.getByRole("button", { name: "Paper: as your device" }).click();
    await page.getByRole("button", { name: "Paper: dark" }).click();
    await expect(page.locator("html")).toHaveAttribute("data-theme", "light");
    await page.reload();
    await expect(page.locator("html")).toHaveAttribute("data-theme", "light");
    await expect(page.getByRole("button", { name: "Paper: light" })).toBeVisible();
  });

test("the sheet's beginning, the sign-in, the desk and the queue stand still while they arrive", async ({ page }) => {
  await expectStill(page, "/sheet");
  await expectStill(page, "/shop/sign-in");
  await signInAs(page, "owner");
  for (const path of ["/shop", "/shop/queue", "/shop/queue/order"]) await expectStill(page, path);
});

test("the health check asks the database", { tag: "@desktop" }, async ({ request }) => {
  const answer = await request.get("/health");
  expect(answer.status()).toBe(200);
  expect(await answer.json()).toEqual({ ready: true });
});

test("the shop sends a visitor to the sign-in", { tag: "@desktop" }, async ({ page }) => {
  await page.goto("/shop");
  await expect(page).toHaveURL(/\/shop\/sign-in/);
});
