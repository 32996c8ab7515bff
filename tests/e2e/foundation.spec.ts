import { expect, test } from "./support/test";

test("the home page runs its scripts under the content security policy", async ({ page }) => {
  const answer = await page.goto("/");
  const policy = answer?.headers()["content-security-policy"] ?? "";
  const nonce = /'nonce-([^']+)'/.exec(policy)?.[1];
  expect(nonce).toBeTruthy();
  expect(policy).not.toContain("unsafe-eval");
  expect(policy).toContain("frame-ancestors 'none'");
  // Browsers hide the attribute; the property tells.
  const nonces = await page.evaluate(() => [...document.scripts].map((script) => script.nonce));
  expect(nonces.length).toBeGreaterThan(0);
  expect(new Set(nonces)).toEqual(new Set([nonce]));
});

test("every page has its own nonce and the fixed headers", async ({ page }) => {
  const first = (await page.goto("/"))?.headers() ?? {};
  const second = (await page.goto("/"))?.headers() ?? {};
  expect(first["content-security-policy"]).not.toBe(second["content-security-policy"]);
  expect(first["x-content-type-options"]).toBe("nosniff");
  expect(first["referrer-policy"]).toBe("strict-origin-when-cross-origin");
  expect(first["x-powered-by"]).toBeUndefined();
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
