import { gzipSync } from "node:zlib";
import { expect, test } from "./support/test";

test("a page made for one visitor runs its scripts under a nonce of its own", async ({ page }) => {
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
  test(`${path} is finished HTML: light, still, the same for everybody, its one script named by its hash`, async ({
    page,
    request,
  }) => {
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

    await page.addInitScript(() => {
      const seen = { shift: 0 };
      Object.assign(window, { seen });
      new PerformanceObserver((list) => {
        for (const entry of list.getEntries()) seen.shift += (entry as unknown as { value: number }).value;
      }).observe({ type: "layout-shift", buffered: true });
    });
    // The faces come late, as on a slow line.
    await page.route(/\.woff2/, async (route) => {
      await new Promise((resolve) => setTimeout(resolve, 400));
      await route.continue();
    });
    await page.goto(path);
    await page.evaluate(() => document.fonts.ready);
    const shift = await page.evaluate(() => (window as unknown as { seen: { shift: number } }).seen.shift);
    expect(shift).toBeLessThanOrEqual(0.02);
    // The switch works, and the server knows of it at the next visit.
    await page.getByRole("button", { name: "Paper: as your device" }).click();
    await page.getByRole("button", { name: "Paper: dark" }).click();
    await expect(page.locator("html")).toHaveAttribute("data-theme", "light");
    await page.reload();
    await expect(page.locator("html")).toHaveAttribute("data-theme", "light");
    await expect(page.getByRole("button", { name: "Paper: light" })).toBeVisible();
  });

test("the health check asks the database", async ({ request }) => {
  const answer = await request.get("/health");
  expect(answer.status()).toBe(200);
  expect(await answer.json()).toEqual({ ready: true });
});

test("the shop sends a visitor to the sign-in", async ({ page }) => {
  await page.goto("/shop");
  await expect(page).toHaveURL(/\/shop\/sign-in/);
});
