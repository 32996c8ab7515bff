// The web server: Next behind a plain Node server that believes no forwarded header unless told which proxies are ours.
import { randomUUID } from "node:crypto";
import { createServer } from "node:http";
import { loadBundled } from "./bundle.mjs";
import { root } from "./lib.mjs";

const forwarded = [
  "forwarded",
  "x-forwarded-for",
  "x-forwarded-host",
  "x-forwarded-proto",
  "x-forwarded-port",
  "x-real-ip",
];

/**
 * Serves until SIGTERM or SIGINT, then lets running requests finish.
 * @returns {Promise<void>} resolves once it listens
 */
export async function serve({ host, port, address, trustedProxies, dev = false }) {
  process.env.NODE_ENV = dev ? "development" : "production";
  process.env.NEXT_TELEMETRY_DISABLED = "1";
  const { default: next } = await import("next");
  const app = next({ dev, dir: root, hostname: host, port, quiet: true });
  await app.prepare();
  const handle = dev ? app.getRequestHandler() : finishedFirst(app.getRequestHandler());
  const believe = headerGuard(trustedProxies);
  const always = Object.entries(alwaysSent(address));
  const { admit, answering, faultWords, refusalOf, reportFault, reportUntold } = await loadBundled(
    "app/_server/front-door.ts",
    "front-door",
  );
  const follows = new Set();
  const server = createServer((request, response) => {
    const isOwn = believe(request);
    for (const [name, value] of always) response.setHeader(name, value);
    const refusal = refusalOf(request, hostsOf(request));
    if (refusal !== null) return refuse(request, response, refusal);
    const begin = () => answer(request, response);
    // What we send on to ourselves has its place already.
    const full = isOwn ? begin() : admit(request, response, begin);
    if (full) refuseLater(request, response, full);
  });
  const answer = (request, response) =>
    answering(request, response, (record) => {
      blameTheRequest(response, record);
      response.once("finish", () => {
        if (response.statusCode >= 500 && record.reference === null)
          reportUntold(response.statusCode, "answer a request");
      });
      followed(follows, response);
      handle(request, response).catch((error) => {
        const reference = reportFault(error, "answer a request");
        if (response.headersSent) return response.destroy();
        response.writeHead(500, plainText).end(faultWords(reference));
      });
    });
  if (dev) server.on("upgrade", app.getUpgradeHandler());
  await new Promise((resolve, reject) => {
    server.once("error", reject);
    server.listen(port, host, resolve);
  });
  stopInOrder(server, follows);
}

const plainText = { "content-type": "text/plain; charset=utf-8", "cache-control": "no-store" };

/** By which names we are called: what the visitor asked for, or what a proxy of ours says so. */
function hostsOf({ headers }) {
  return new Set([headers.host, headers["x-forwarded-host"]].filter(Boolean));
}

/** Whoever finds no place and asks again at once would keep us busy with nothing else: each is told after a second. */
const toldAfterMs = 1000;
/** So many are held; the next is told at once. */
const mostHeld = 1000;
let held = 0;

function refuseLater(request, response, refusal) {
  if (held >= mostHeld) return refuse(request, response, refusal);
  held += 1;
  const timer = setTimeout(() => {
    if (!response.destroyed) refuse(request, response, refusal);
  }, toldAfterMs);
  response.once("close", () => {
    held -= 1;
    clearTimeout(timer);
  });
}

function refuse(request, response, { status, words, headers = {} }) {
  // What is still on its way is not waited for; who sent none comes again by the same line, which costs us less than a new one.
  const sends = request.headers["content-length"] !== undefined || request.headers["transfer-encoding"] !== undefined;
  response.writeHead(status, { ...plainText, ...headers, ...(sends ? { connection: "close" } : {}) }).end(words);
  request.resume();
}

/** A fault that lies in what was sent is answered as one, whatever the framework makes of it. */
function blameTheRequest(response, record) {
  const writeHead = response.writeHead.bind(response);
  response.writeHead = (status, ...rest) => writeHead(record.isMalformed ? 400 : status, ...rest);
}

/** Live pages stay open until somebody ends them: a server that stops does. */
function followed(follows, response) {
  const flush = response.flushHeaders.bind(response);
  const look = () => {
    if (!String(response.getHeader("content-type") ?? "").startsWith("text/event-stream")) return;
    follows.add(response);
    response.once("close", () => follows.delete(response));
  };
  const writeHead = response.writeHead.bind(response);
  response.writeHead = (...all) => {
    const result = writeHead(...all);
    look();
    return result;
  };
  response.flushHeaders = () => {
    look();
    flush();
  };
}

/**
 * What every answer says, refusals, files and the health check too: its kind is as it says, nobody frames it, and where people
 * reach the shop by https, browsers come by nothing else for a year (RFC 6797). Pages put their own policy in its place; it
 * says the same and more.
 * @param address as people type it
 */
export function alwaysSent(address) {
  return {
    "x-content-type-options": "nosniff",
    "content-security-policy": "frame-ancestors 'none'; base-uri 'none'; object-src 'none'",
    ...(address.startsWith("https:") ? { "strict-transport-security": "max-age=31536000" } : {}),
  };
}

/**
 * Finished pages go out before the framework is asked. The server's start, inside the framework's bundle, puts what answers
 * them on globalThis: it stands on the one open database.
 */
function finishedFirst(handle) {
  return async (request, response) =>
    (await globalThis.pairwrightFinishedPages?.(request, response)) || handle(request, response);
}

/**
 * Replaces what a visitor claims about its address and ours by what the connection says. Next sends some actions to
 * itself over HTTP with the visitor's headers; those carry a mark nobody outside can know, and stay as they are.
 * The guard it returns says whether a request is one of those.
 */
export function headerGuard(trustedProxies) {
  const ownMark = randomUUID();
  return ({ headers, socket }) => {
    if (headers["x-pairwright-seen"] === ownMark) return true;
    headers["x-pairwright-seen"] = ownMark;
    delete headers["x-pairwright-forwarded"];
    if (trustedProxies === 0) {
      // Told on, so that visitors behind a proxy nobody has named are not taken for one.
      if (forwarded.some((name) => headers[name] !== undefined)) headers["x-pairwright-forwarded"] = "1";
      for (const name of forwarded) delete headers[name];
      headers["x-forwarded-for"] = socket.remoteAddress ?? "";
    }
    headers["x-forwarded-host"] ??= headers.host ?? "";
    return false;
  };
}

/** Longer than an upload of the largest picture over a slow line takes is waited for nobody. */
const mostPatienceMs = 60_000;

/**
 * What is under way ends first; live pages only listen, so they are let go at once and come back to the next server. The
 * database needs no farewell: what was acknowledged is on the disk, and the next start takes the lock over.
 */
function stopInOrder(server, follows) {
  let stopping = false;
  const stop = () => {
    if (stopping) process.exit(0);
    stopping = true;
    server.close(() => process.exit(0));
    const letGo = () => {
      for (const response of follows) response.destroy();
      server.closeIdleConnections();
    };
    letGo();
    setInterval(letGo, 100).unref();
    setTimeout(() => process.exit(0), mostPatienceMs).unref();
  };
  process.on("SIGTERM", stop);
  process.on("SIGINT", stop);
  // npm does not hand a SIGTERM on; when it is gone, so are we.
  if (process.env.npm_lifecycle_event !== undefined) {
    const parent = process.ppid;
    setInterval(() => process.ppid !== parent && stop(), 1000).unref();
  }
}
