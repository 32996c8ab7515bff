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
export async function serve({ host, port, trustedProxies, dev = false }) {
  process.env.NODE_ENV = dev ? "development" : "production";
  process.env.NEXT_TELEMETRY_DISABLED = "1";
  const { default: next } = await import("next");
  const app = next({ dev, dir: root, hostname: host, port, quiet: true });
  await app.prepare();
  const handle = dev ? app.getRequestHandler() : finishedFirst(app.getRequestHandler());
  const believe = headerGuard(trustedProxies);
  const server = createServer((request, response) => {
    believe(request);
    handle(request, response).catch((error) => answerFault(error, response));
  });
  if (dev) server.on("upgrade", app.getUpgradeHandler());
  await new Promise((resolve, reject) => {
    server.once("error", reject);
    server.listen(port, host, resolve);
  });
  stopInOrder(server);
}

/** What the framework itself could not answer. */
async function answerFault(error, response) {
  const { faultWords, reportFault } = await loadBundled("app/_server/faults.ts", "faults");
  const reference = reportFault(error, "answer a request");
  if (response.headersSent) return response.destroy();
  response.writeHead(500, { "content-type": "text/plain; charset=utf-8" }).end(faultWords(reference));
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
 */
export function headerGuard(trustedProxies) {
  const ownMark = randomUUID();
  return ({ headers, socket }) => {
    if (headers["x-pairwright-seen"] === ownMark) return;
    headers["x-pairwright-seen"] = ownMark;
    if (trustedProxies === 0) {
      for (const name of forwarded) delete headers[name];
      headers["x-forwarded-for"] = socket.remoteAddress ?? "";
    }
    headers["x-forwarded-host"] ??= headers.host ?? "";
  };
}

/** The database needs no farewell: what was acknowledged is on the disk, and the lock goes with the process. */
function stopInOrder(server) {
  let stopping = false;
  const stop = () => {
    if (stopping) process.exit(0);
    stopping = true;
    server.close(() => process.exit(0));
    server.closeIdleConnections();
    setTimeout(() => process.exit(0), 10_000).unref();
  };
  process.on("SIGTERM", stop);
  process.on("SIGINT", stop);
  // npm does not hand a SIGTERM on; when it is gone, so are we.
  if (process.env.npm_lifecycle_event !== undefined) {
    const parent = process.ppid;
    setInterval(() => process.ppid !== parent && stop(), 1000).unref();
  }
}
