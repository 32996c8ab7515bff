/** Pages kept as finished bytes, before a framework of the test's own that counts how often it draws. */
import { createHash } from "node:crypto";
import { createServer, type IncomingMessage, type Server, type ServerResponse } from "node:http";
import type { AddressInfo } from "node:net";
import { gunzipSync } from "node:zlib";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";

const told = vi.hoisted(() => ({ revision: 1 as number | Error }));
vi.mock("#services", () => ({
  queueRevision: async () => {
    if (told.revision instanceof Error) throw told.revision;
    return { ok: true, value: told.revision };
  },
  readPredictedVersusMeasured: async () => ({ ok: true, value: { skis: 0 } }),
}));
vi.mock("#services/context", () => ({ openContext: async () => ({}) }));
vi.mock("#lib/log", () => ({ log: vi.fn() }));

import { finishedHtml, hashSource, policyByHashes } from "#app/_server/finished/finish.ts";

const framework = '<script nonce="n">self.__next_f.push([1,"the page again"])</script>';
const pageOf = (words: string) =>
  `<!DOCTYPE html><html><head><link rel="preload" as="script" href="/a.js"/><link rel="preload" as="font" href="/f.woff2"/><script src="/a.js" async="" nonce="n"></script></head><body><p>${words}<!-- --> twice</p>${framework}</body></html>`;
const policy =
  "default-src 'self'; script-src 'self' 'nonce-n' 'strict-dynamic'; style-src 'self' 'nonce-n'; img-src 'self'";

describe("finished HTML", () => {
  it("has the page once, with its own script alone", () => {
    expect(finishedHtml(pageOf("Words"), "go()")).toBe(
      '<!DOCTYPE html><html><head><link rel="preload" as="font" href="/f.woff2"/></head><body><p>Words twice</p><script>go()</script></body></html>',
    );
  });

  it("is not made of a page that its scripts would still put together", () => {
    const parts = pageOf('<template id="B:0"></template>');
    expect(finishedHtml(parts, "go()")).toBeNull();
    expect(finishedHtml(pageOf('<div hidden="" id="S:0"></div>'), "go()")).toBeNull();
    expect(finishedHtml("not a page", "go()")).toBeNull();
  });

  it("names its scripts by the hash that browsers work out", () => {
    // The example of CSP Level 3, 6.7.3.2 and of its predecessors: alert('Hello, world.');
    const known = "'sha256-qznLcsROx4GACP2dm0UCKCzCG+HiZ1guq6ZZDob/Tng='";
    expect(hashSource("alert('Hello, world.');")).toBe(known);
    expect(policyByHashes(policy, "<body><script>alert('Hello, world.');</script></body>")).toBe(
      `default-src 'self'; script-src ${known}; style-src 'self'; img-src 'self'`,
    );
  });
});

describe("a finished page", () => {
  let server: Server;
  let drawn: string[];
  let status: number;
  let words: string;

  beforeEach(async () => {
    [drawn, status, words, told.revision] = [[], 200, "As of one", 1];
    vi.resetModules();
    const { answerFinished } = await import("#app/_server/finished/pages.ts");
    const answer = async (request: IncomingMessage, response: ServerResponse) => {
      if (await answerFinished(request, response)) return;
      drawn.push(`${request.method} ${request.url} ${request.headers.cookie ?? ""}`.trim());
      const link =
        '</f.woff2>; rel=preload; as="font"; nonce="n"; type="font/woff2", </a.js>; rel=preload; as="script"';
      response.writeHead(status, {
        link,
        "content-security-policy": policy,
        "x-frame-options": "DENY",
        "set-cookie": "a=1",
      });
      response.end(pageOf(words));
    };
    server = createServer((request, response) => void answer(request, response)).listen(0, "127.0.0.1");
    await new Promise((resolve) => server.once("listening", resolve));
  });
  afterEach(() => {
    vi.useRealTimers();
    server.closeAllConnections();
    server.close();
  });

  const ask = (path: string, init: RequestInit = {}) =>
    fetch(`http://127.0.0.1:${(server.address() as AddressInfo).port}${path}`, init);
  const pass = (ms: number) => vi.useFakeTimers({ now: Date.now() + ms, toFake: ["Date"] });

  it("is drawn once for all who come, with what every answer says and nothing of one answer", async () => {
    const all = await Promise.all([ask("/"), ask("/"), ask("/?from=letter"), ask("/")]);
    expect(drawn).toEqual(["GET / theme="]);
    const texts = await Promise.all(all.map((answer) => answer.text()));
    expect(new Set(texts).size).toBe(1);
    expect(texts[0]).toContain("As of one twice");
    expect(texts[0]?.match(/<script/g)).toHaveLength(1);
    const { headers } = all[0] as Response;
    expect(headers.get("x-frame-options")).toBe("DENY");
    expect(headers.get("set-cookie")).toBeNull();
    expect(headers.get("link")).toBe('</f.woff2>; rel=preload; as="font"; type="font/woff2"');
    const script = /<script>([\s\S]*)<\/script>/.exec(texts[0] ?? "")?.[1] ?? "";
    const hash = createHash("sha256").update(script).digest("base64");
    expect(headers.get("content-security-policy")).toContain(`; script-src 'sha256-${hash}'; style-src 'self'; `);
  });

  it("is drawn in the place that its first visitor holds: the server knows the request as one it sends on to itself", async () => {
    const marks: unknown[] = [];
    server.on("request", ({ headers }: IncomingMessage) => marks.push(headers["x-pairwright-seen"]));
    await ask("/", { headers: { "x-pairwright-seen": "the server's own mark" } });
    expect(marks).toEqual(["the server's own mark", "the server's own mark"]);
  });

  it("is zipped for whom it may be, and not sent to whom has it", async () => {
    const { request } = await import("node:http");
    const raw = await new Promise<{ encoding: string | undefined; body: Buffer }>((resolve) =>
      request(
        { port: (server.address() as AddressInfo).port, path: "/", headers: { "accept-encoding": "gzip" } },
        async (answer) =>
          resolve({
            encoding: answer.headers["content-encoding"],
            body: Buffer.concat((await answer.toArray()) as Buffer[]),
          }),
      ).end(),
    );
    expect(raw.encoding).toBe("gzip");
    expect(gunzipSync(raw.body).toString()).toContain("As of one twice");
    const plain = await ask("/", { headers: { "accept-encoding": "identity" } });
    expect(plain.headers.get("content-encoding")).toBeNull();
    expect(await plain.text()).toContain("As of one twice");
    const again = await ask("/", { headers: { "if-none-match": plain.headers.get("etag") ?? "" } });
    expect([again.status, await again.text()]).toEqual([304, ""]);
    const head = await ask("/", { method: "HEAD" });
    expect([head.status, Number(head.headers.get("content-length")) > 0, await head.text()]).toEqual([200, true, ""]);
    expect(drawn).toHaveLength(1);
  });

  it("is another one on another paper, and drawn anew when what it follows has changed or a minute is over", async () => {
    await ask("/");
    expect(await (await ask("/", { headers: { cookie: "a=b; theme=dark" } })).text()).toContain("As of one");
    expect(drawn).toEqual(["GET / theme=", "GET / theme=dark"]);
    [words, told.revision] = ["As of two", 2];
    expect(await (await ask("/")).text()).toContain("As of one");
    pass(1001);
    expect(await (await ask("/")).text()).toContain("As of two");
    expect(drawn).toHaveLength(3);
    words = "A minute later";
    pass(59_000);
    expect(await (await ask("/")).text()).toContain("As of two");
    pass(2000);
    expect(await (await ask("/")).text()).toContain("A minute later");
    expect(drawn).toHaveLength(4);
  });

  it("leaves to the framework what is no plain visit, and what cannot be finished", async () => {
    for (const init of [{ method: "POST" }, { headers: { rsc: "1" } }])
      expect(await (await ask("/", init)).text()).toContain("the page again");
    await (await ask("/sheet")).text();
    await (await ask("/constructor")).text();
    expect(drawn).toEqual(["POST /", "GET /", "GET /sheet", "GET /constructor"]);
    // A visitor's own mark is not the server's.
    const marked = await ask("/", { headers: { "x-pairwright-unfinished": "1" } });
    expect(await marked.text()).not.toContain("the page again");
    pass(61_000);
    status = 503;
    const busy = await ask("/");
    expect([busy.status, (await busy.text()).includes("the page again")]).toEqual([503, true]);
    [status, told.revision] = [200, new Error("no database")];
    pass(1001);
    expect(await (await ask("/")).text()).toContain("the page again");
  });
});
