/**
 * Pages that are the same for every visitor, kept as finished bytes: drawn once, answered from memory until what they follow
 * has changed, and at most for a minute, since a date on them moves with the clock. Whatever is not a plain visit to one of
 * them, or cannot be finished, is the framework's to answer.
 */
import { createHash } from "node:crypto";
import {
  get,
  type IncomingHttpHeaders,
  type IncomingMessage,
  type OutgoingHttpHeaders,
  type ServerResponse,
} from "node:http";
import { text } from "node:stream/consumers";
import { promisify } from "node:util";
import { gzip } from "node:zlib";
import { themeScript } from "#app/_ui/theme.ts";
import { newToken, systemActor, visitor } from "#auth";
import { queueRevision, readPredictedVersusMeasured } from "#services";
import { openContext } from "#services/context";
import { reportFault } from "../faults";
import { finishedHtml, policyByHashes } from "./finish";

interface Finished {
  /** What the page followed, as it was when the page was drawn. */
  readonly basis: string;
  readonly drawnAtMs: number;
  readonly headers: OutgoingHttpHeaders;
  readonly etag: string;
  readonly plain: Buffer;
  readonly zipped: Buffer;
}

/** By path, what the page follows: drawn anew when the answer is another one. */
const followed: Readonly<Record<string, (now: Date) => Promise<unknown>>> = {
  "/": async (now) => queueRevision(await openContext(systemActor("finished pages"), now)),
  "/method": async (now) => readPredictedVersusMeasured(await openContext(visitor(), now)),
};

const askAgainMs = 1000;
const drawAgainMs = 60_000;
/** On a request that asks for the page itself, to finish it; nobody outside can know it. */
const ownMark = newToken();
const markHeader = "x-pairwright-unfinished";
/** Set by `.ci/serve.mjs` on every request it has looked at. */
const sentOnHeader = "x-pairwright-seen";

const bases = new Map<string, { readonly askedAtMs: number; readonly basis: Promise<string> }>();
const kept = new Map<string, Finished>();
const underWay = new Map<string, Promise<Finished | null>>();

/** Answers a plain visit to a finished page. @returns false where the framework has to answer */
export async function answerFinished(request: IncomingMessage, response: ServerResponse): Promise<boolean> {
  const path = (request.url ?? "").split("?", 1)[0] ?? "";
  if (!Object.hasOwn(followed, path) || !isPlainVisit(request)) return false;
  try {
    const page = await finished(path, themeOf(request.headers.cookie), request);
    if (page === null) return false;
    send(request, response, page);
    return true;
  } catch (error) {
    reportFault(error, "finish a page");
    return false;
  }
}

function isPlainVisit({ method, headers }: IncomingMessage): boolean {
  const isOwn = headers[markHeader] === ownMark;
  return (method === "GET" || method === "HEAD") && headers.rsc === undefined && !isOwn;
}

function themeOf(cookie = ""): string {
  return /(?:^|; )theme=(light|dark)(?:;|$)/.exec(cookie)?.[1] ?? "";
}

async function finished(path: string, theme: string, request: IncomingMessage): Promise<Finished | null> {
  const key = `${path} ${theme}`;
  const nowMs = Date.now();
  const basis = await basisOf(path, nowMs);
  const page = kept.get(key);
  if (page !== undefined && page.basis === basis && nowMs - page.drawnAtMs < drawAgainMs) return page;
  const drawing = underWay.get(key) ?? draw(path, theme, request, basis).finally(() => underWay.delete(key));
  underWay.set(key, drawing);
  const drawn = await drawing;
  if (drawn !== null) kept.set(key, drawn);
  return drawn;
}

/** Asked once a second at most, however many visitors there are. */
function basisOf(path: string, nowMs: number): Promise<string> {
  const known = bases.get(path);
  if (known !== undefined && nowMs - known.askedAtMs < askAgainMs) return known.basis;
  const basis = (followed[path]?.(new Date(nowMs)) ?? Promise.resolve()).then((answer) => JSON.stringify(answer) ?? "");
  bases.set(path, { askedAtMs: nowMs, basis });
  return basis;
}

/**
 * Asks this very server, as a visitor of this theme would, for the page as the framework makes it. It goes with the mark of
 * what the server sends on to itself: the visitor who waits for it holds a place already, and a second one might not be free.
 */
async function draw(path: string, theme: string, request: IncomingMessage, basis: string): Promise<Finished | null> {
  const drawnAtMs = Date.now();
  const sentOn = request.headers[sentOnHeader] ?? "";
  const headers = { [markHeader]: ownMark, [sentOnHeader]: sentOn, accept: "text/html", cookie: `theme=${theme}` };
  const { localAddress: host, localPort: port } = request.socket;
  const answer = await new Promise<IncomingMessage>((resolve, reject) => {
    // A connection of its own: one kept from the last drawing may just be ending.
    get({ host, port, path, headers, agent: false }, resolve).once("error", reject);
  });
  const drawn = await text(answer);
  const html = answer.statusCode === 200 ? finishedHtml(drawn, themeScript) : null;
  if (html === null) return null;
  const plain = Buffer.from(html);
  const zipped = await promisify(gzip)(plain, { level: 9 });
  const etag = `"${createHash("sha256").update(plain).digest("base64url").slice(0, 22)}"`;
  return { basis, drawnAtMs, etag, plain, zipped, headers: headersOf(answer.headers, html, etag) };
}

/** What the framework and the shop say on every page, but nothing that is about one answer. */
const ofOneAnswer =
  /^(connection|keep-alive|transfer-encoding|content-(length|encoding)|date|set-cookie|link|x-nextjs-.*|x-middleware-.*)$/;

function headersOf(drawn: IncomingHttpHeaders, html: string, etag: string): OutgoingHttpHeaders {
  const always = Object.fromEntries(Object.entries(drawn).filter(([name]) => !ofOneAnswer.test(name)));
  return {
    ...always,
    "content-security-policy": policyByHashes(String(drawn["content-security-policy"] ?? ""), html),
    // Kept by the browser, asked for again at every visit: the answer is then 304 while nothing has changed.
    "cache-control": "no-cache",
    vary: "accept-encoding, cookie, rsc",
    etag,
    ...fontsFirst(String(drawn.link ?? "")),
  };
}

/** Of what the framework wants fetched with the page, the faces: they are the same for every answer. */
function fontsFirst(links: string): OutgoingHttpHeaders {
  const fonts = links.split(/,\s*(?=<)/).filter((link) => /\bas="?font\b/.test(link));
  const link = fonts.map((font) => font.replace(/;\s*nonce="[^"]*"/, "")).join(", ");
  return link === "" ? {} : { link };
}

function send(request: IncomingMessage, response: ServerResponse, { headers, etag, plain, zipped }: Finished): void {
  if (request.headers["if-none-match"] === etag) {
    response.writeHead(304, headers).end();
    return;
  }
  const takesGzip = /\bgzip\b/.test(String(request.headers["accept-encoding"] ?? ""));
  const body = takesGzip ? zipped : plain;
  const encoding = takesGzip ? { "content-encoding": "gzip" } : {};
  response.writeHead(200, { ...headers, ...encoding, "content-length": body.length });
  response.end(request.method === "HEAD" ? undefined : body);
}
