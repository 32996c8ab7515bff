/** Warm pages of the production server with its own demo shop, beside a bare Node server answering as many bytes. */
import { spawn } from "node:child_process";
import { once } from "node:events";
import { mkdtempSync, rmSync } from "node:fs";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import os from "node:os";
import path from "node:path";
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

export async function pageMeasures(): Promise<Measured[]> {
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
    return found;
  } finally {
    shop.kill("SIGTERM");
    await ended;
    rmSync(data, { recursive: true, force: true });
  }
}
