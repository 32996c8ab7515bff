// A shop served at a fixed instant, and somebody who looks at it: plain requests with a jar of cookies.
import { spawn } from "node:child_process";
import { readFileSync } from "node:fs";
import path from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import { pathToFileURL } from "node:url";
import { root } from "../lib.mjs";

/**
 * Starts the shop in a data folder; returns once nothing goes on in it any more.
 * @returns {Promise<{address: string, stop: () => Promise<void>}>}
 */
export async function openShop({ data, port, instant, series }) {
  const clock = pathToFileURL(path.join(root, ".ci/record/clock.mjs")).href;
  const server = spawn(process.execPath, [path.join(root, ".ci/start.mjs")], {
    cwd: root,
    env: {
      ...process.env,
      HOST: "127.0.0.1",
      PORT: String(port),
      PAIRWRIGHT_DATA: data,
      PAIRWRIGHT_ORIGIN: "",
      DATABASE_URL: "",
      TZ: "UTC",
      NODE_OPTIONS: `--import=${clock}`,
      RECORD_INSTANT: instant,
      RECORD_SERIES: series,
    },
    stdio: ["ignore", "ignore", "pipe"],
  });
  let said = "";
  await new Promise((resolve, reject) => {
    server.stderr.on("data", (chunk) => {
      said += chunk;
      if (said.includes("Stop with Ctrl-C")) resolve();
    });
    server.once("exit", () => reject(new Error(`the shop did not start:\n${said}`)));
  });
  await untilQuiet(server.pid);
  const stop = () =>
    new Promise((resolve) => {
      server.removeAllListeners("exit");
      server.once("exit", resolve);
      server.kill("SIGTERM");
    });
  return { address: `http://localhost:${port}`, stop, log: () => said };
}

/** What the start set going in the background would change pages while they are read. */
async function untilQuiet(pid) {
  const ticks = () => {
    try {
      const fields = readFileSync(`/proc/${pid}/stat`, "utf8").split(") ")[1].split(" ");
      return Number(fields[11]) + Number(fields[12]);
    } catch {
      return Number.NaN;
    }
  };
  let quiet = 0;
  for (let last = ticks(); quiet < 8; ) {
    await sleep(500);
    const now = ticks();
    // Where the system does not tell, a while has to do.
    quiet = Number.isNaN(now) ? quiet + 0.2 : now - last <= 5 ? quiet + 1 : 0;
    last = now;
  }
}

export function visitor(address) {
  const jar = new Map();
  const ask = async (where, options = {}) => {
    const url = new URL(where, address);
    const cookie = [...jar].map(([name, value]) => `${name}=${value}`).join("; ");
    const headers = { ...(cookie ? { cookie } : {}), origin: address, ...options.headers };
    const answer = await fetch(url, { ...options, headers, redirect: "manual" });
    for (const line of answer.headers.getSetCookie()) {
      const [pair] = line.split(";");
      const at = pair.indexOf("=");
      jar.set(pair.slice(0, at), pair.slice(at + 1));
    }
    const next = answer.headers.get("location");
    if (next === null) return answer;
    await answer.arrayBuffer();
    return ask(new URL(next, url).href);
  };
  /** Sends a form of a page as a browser without scripts would: the first that has all the fields named in `has`. */
  const send = async (where, has, values) => {
    const html = await (await ask(where)).text();
    const forms = [...html.matchAll(/<form\b[\s\S]*?<\/form>/g)].map(([form]) => fieldsOf(form));
    const fields = forms.find((form) =>
      Object.entries(has).every(([name, value]) => form.has(name) && (value === null || form.get(name) === value)),
    );
    if (fields === undefined) return null;
    const body = new FormData();
    for (const [name, value] of fields) body.append(name, values[name] ?? value);
    return ask(where, { method: "POST", body });
  };
  return { ask, send, cookies: () => [...jar].map(([name, value]) => ({ name, value })) };
}

function fieldsOf(form) {
  const fields = new Map();
  for (const [tag] of form.matchAll(/<(?:input|textarea|select)\b[^>]*>/g)) {
    const name = /\bname="([^"]*)"/.exec(tag)?.[1];
    const isOff = /type="(?:checkbox|radio)"/.test(tag) && !/\schecked/.test(tag);
    if (name !== undefined && !isOff)
      fields.set(name, (/\bvalue="([^"]*)"/.exec(tag)?.[1] ?? "").replaceAll("&quot;", '"').replaceAll("&amp;", "&"));
  }
  return fields;
}
