/**
 * Warm pages of the production server with its own demo shop, beside a bare Node server answering as many bytes; what they
 * weigh; and how many a second go out beside the barest page that the same framework draws behind the same server.
 */
import { spawn } from "node:child_process";
import { once } from "node:events";
import { mkdtempSync, rmSync } from "node:fs";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import os from "node:os";
import path from "node:path";
import { gzipSync } from "node:zlib";
import { type Measured, measured } from "./measure";

async function read(address: string): Promise<string> {
  const answer = await fetch(address);
  if (!answer.ok) throw new Error(`${address} answered ${answer.status}`);
  return answer.text();
}

/** A server that answers every request with `body`. */
async function bareServer(body: string) {
  const server = createServer((_, response) => response.end(body));
  server.listen(0, "127.0.0.1");
  await once(server, "listening");
  return { address: `http://127.0.0.1:${(server.address() as AddressInfo).port}/`, close: () => server.close() };
}

async function freePort(): Promise<number> {
  const server = createServer().listen(0, "127.0.0.1");
  await once(server, "listening");
  const { port } = server.address() as AddressInfo;
  server.close();
  await once(server, "close");
  return port;
}

export interface PageWeight {
  readonly path: string;
  readonly htmlBytes: number;
  readonly zippedBytes: number;
  /** Of the page's script files, zipped. */
  readonly scriptBytes: number;
}

export interface Throughput {
  readonly path: string;
  readonly perSecond: number;
  /** Of what the barest page reaches in the same run. */
  readonly share: number;
}

async function weightOf(shop: string, where: string): Promise<PageWeight> {
  const html = await read(shop + where);
  const files = new Set([...html.matchAll(/<script\b[^>]*\bsrc="([^"]+)"/g)].map(([, file = ""]) => file));
  const scripts = await Promise.all([...files].map((file) => read(shop + file)));
  const scriptBytes = scripts.reduce((sum, script) => sum + gzipSync(script).length, 0);
  return { path: where, htmlBytes: Buffer.byteLength(html), zippedBytes: gzipSync(html).length, scriptBytes };
}

/** Answers a second to so many visitors who ask again at once. */
async function perSecond(address: string, visitors = 20, seconds = 3): Promise<number> {
  const end = performance.now() + seconds * 1000;
  let answers = 0;
  const visit = async () => {
    while (performance.now() < end) {
      await (await fetch(address)).arrayBuffer();
      answers += 1;
    }
  };
  await Promise.all(Array.from({ length: visitors }, visit));
  return answers / seconds;
}

/** Nothing is there: the frame of every page around one line, drawn by the same framework with the same headers. */
const barest = "/nothing-is-there";

async function throughputs(shop: string): Promise<Throughput[]> {
  await perSecond(shop + barest, 20, 1);
  const bare = await perSecond(shop + barest);
  const found: Throughput[] = [{ path: "barest page", perSecond: bare, share: 1 }];
  for (const where of ["/", "/method"]) {
    const reached = await perSecond(shop + where);
    found.push({ path: where, perSecond: reached, share: reached / bare });
  }
  return found;
}

export interface PageFigures {
  readonly times: readonly Measured[];
  readonly weights: readonly PageWeight[];
  readonly throughputs: readonly Throughput[];
}

export async function pageFigures(): Promise<PageFigures> {
  const data = mkdtempSync(path.join(os.tmpdir(), "pairwright-bench-"));
  const port = await freePort();
  const env = { ...process.env, PORT: `${port}`, HOST: "127.0.0.1", PAIRWRIGHT_DATA: data, DATABASE_URL: "" };
  const shop = spawn(process.execPath, [path.resolve(".ci/start.mjs")], { env, stdio: ["ignore", "ignore", "pipe"] });
  const ended = once(shop, "exit");
  try {
    await new Promise<void>((resolve, reject) => {
      let said = "";
      shop.stderr.on("data", (chunk) => {
        said += chunk;
        if (said.includes("Stop with Ctrl-C")) resolve();
      });
      shop.once("exit", () => reject(new Error(`the shop did not start:\n${said}`)));
    });
    const found: Measured[] = [];
    for (const [name, where] of [
      ["home page, warm", "/"],
      ["page that starts a sheet, warm", "/sheet"],
    ] as const) {
      const address = `http://127.0.0.1:${port}${where}`;
      const bare = await bareServer(await read(address));
      found.push(
        await measured(
          name,
          () => read(address),
          "a bare Node server, same bytes",
          () => read(bare.address),
        ),
      );
      bare.close();
    }
    const shopAddress = `http://127.0.0.1:${port}`;
    const weights: PageWeight[] = [];
    for (const where of ["/", "/method", "/sheet", "/shop/sign-in"]) weights.push(await weightOf(shopAddress, where));
    return { times: found, weights, throughputs: await throughputs(shopAddress) };
  } finally {
    shop.kill("SIGTERM");
    await ended;
    rmSync(data, { recursive: true, force: true });
  }
}
