/** The content security policy of every page (CSP Level 3, from memory): what each rule must say, and what must not be there. */
import { NextRequest } from "next/server";
import { beforeEach, describe, expect, it, vi } from "vitest";

const settings = vi.hoisted(() => ({ secureCookies: false, isDevelopment: false }));
vi.mock("#config", () => ({ config: () => settings, isDevelopment: () => settings.isDevelopment }));

import proxy, { config } from "../../proxy";

const page = () => proxy(new NextRequest("http://skis.example/desk", { headers: { accept: "text/html" } }));
const policyOf = (response: Response) => response.headers.get("content-security-policy") ?? "";
const rulesOf = (response: Response) =>
  new Map(
    policyOf(response)
      .split("; ")
      .map((rule) => [rule.split(" ")[0] ?? "", rule.split(" ").slice(1)]),
  );
const nonceOf = (response: Response) => /'nonce-([^']+)'/.exec(policyOf(response))?.[1] ?? "";

beforeEach(() => {
  settings.secureCookies = false;
  settings.isDevelopment = false;
});

describe("proxy", () => {
  it("lets pages load from the shop alone, scripts and styles by a nonce", () => {
    const response = page();
    const nonce = `'nonce-${nonceOf(response)}'`;
    expect(Object.fromEntries(rulesOf(response))).toEqual({
      "default-src": ["'self'"],
      "script-src": ["'self'", nonce, "'strict-dynamic'"],
      "style-src": ["'self'", nonce],
      "style-src-attr": ["'unsafe-inline'"],
      "img-src": ["'self'", "blob:", "data:"],
      "font-src": ["'self'"],
      "connect-src": ["'self'"],
      "worker-src": ["'self'", "blob:"],
      "object-src": ["'none'"],
      "base-uri": ["'none'"],
      "form-action": ["'self'"],
      "frame-ancestors": ["'none'"],
    });
    expect(rulesOf(response).has("upgrade-insecure-requests")).toBe(false);
  });

  it("draws 18 random bytes anew for every page, and hands them to it with the policy", () => {
    const nonces = Array.from({ length: 50 }, () => nonceOf(page()));
    expect(new Set(nonces).size).toBe(50);
    for (const nonce of nonces) expect(Buffer.from(nonce, "base64")).toHaveLength(18);
    const response = page();
    // Next passes request headers on under this prefix.
    expect(response.headers.get("x-middleware-request-x-nonce")).toBe(nonceOf(response));
    expect(response.headers.get("x-middleware-request-content-security-policy")).toBe(policyOf(response));
    expect(response.headers.get("x-middleware-request-accept")).toBe("text/html");
  });

  it("asks for everything by https where the shop's address is https", () => {
    settings.secureCookies = true;
    expect(rulesOf(page()).has("upgrade-insecure-requests")).toBe(true);
  });

  it("hands the path on, to come back to after a sign-in, whatever a visitor claims it to be", () => {
    const headers = { "x-path": "/elsewhere" };
    const response = proxy(new NextRequest("http://skis.example/shop/orders?state=open", { headers }));
    expect(response.headers.get("x-middleware-request-x-path")).toBe("/shop/orders?state=open");
  });

  it("opens what the development server needs, and only there", () => {
    settings.isDevelopment = true;
    const rules = rulesOf(page());
    expect(rules.get("script-src")).toContain("'unsafe-eval'");
    expect(rules.get("style-src")).toEqual(["'self'", "'unsafe-inline'"]);
    expect(rules.get("connect-src")).toEqual(["'self'", "ws:"]);
  });

  it("leaves files, uploads, health check, static parts and prefetches alone", () => {
    const [matcher] = config.matcher;
    const pattern = new RegExp(`^${matcher?.source}$`);
    for (const path of [
      "/files/a.pdf",
      "/uploads/1",
      "/health",
      "/_next/static/a.js",
      "/_next/image",
      "/favicon.ico",
      "/icon.svg",
      "/robots.txt",
    ])
      expect([path, pattern.test(path)]).toEqual([path, false]);
    for (const path of ["/", "/desk", "/healthy", "/desk/files"])
      expect([path, pattern.test(path)]).toEqual([path, true]);
    expect(matcher?.missing).toEqual([
      { type: "header", key: "next-router-prefetch" },
      { type: "header", key: "purpose", value: "prefetch" },
    ]);
  });
});
