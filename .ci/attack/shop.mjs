// A shop to attack: a built copy in a process of its own, on this machine alone, with data of its own.
import { spawn } from "node:child_process";
import { randomUUID } from "node:crypto";
import path from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import { root } from "../lib.mjs";

/** Starts the shop and waits until it is healthy. */
export async function openShop({ port, data, databaseUrl = "", demo = "off" }) {
  const lines = [];
  const child = spawn(process.execPath, [path.join(root, ".ci/start.mjs")], {
    cwd: root,
    env: {
      ...process.env,
      HOST: "127.0.0.1",
      PORT: String(port),
      PAIRWRIGHT_DATA: data,
      DATABASE_URL: databaseUrl,
      PAIRWRIGHT_DEMO: demo,
      PAIRWRIGHT_ORIGIN: "",
    },
    stdio: ["ignore", "ignore", "pipe"],
  });
  let rest = "";
  child.stderr.on("data", (chunk) => {
    const parts = (rest + chunk).split("\n");
    rest = parts.pop();
    lines.push(...parts);
  });
  let isOver = false;
  const ended = new Promise((resolve) => {
    child.once("close", (code) => {
      isOver = true;
      resolve(code);
    });
  });
  const address = `http://127.0.0.1:${port}`;
  while (!(await isHealthy(address))) {
    if (isOver) throw new Error(`the shop did not start:\n${lines.slice(-8).join("\n")}`);
    await sleep(200);
  }
  const kill = async (signal) => {
    const began = performance.now();
    child.kill(signal);
    await ended;
    return performance.now() - began;
  };
  return { address, pid: child.pid, lines, kill };
}

async function isHealthy(address) {
  try {
    return (await fetch(`${address}/health`)).ok;
  } catch {
    return false;
  }
}

/** The fields that the page's own form sends without scripts; they name its action. */
export async function sheetForm(address) {
  return formOf(await (await fetch(`${address}/sheet`)).text());
}

function formOf(html) {
  const names = [...html.matchAll(/name="(\$ACTION[^"]*)"(?: value="([^"]*)")?/g)];
  if (names.length === 0) throw new Error("the page has no form");
  return names.map(([, name, value = ""]) => [name, value.replaceAll("&quot;", '"')]);
}

/** Signs one of the demo's people in. @returns the cookies of their browser */
export async function signedIn(address, email, password) {
  const page = `${address}/shop/sign-in`;
  const form = new FormData();
  for (const [name, value] of formOf(await (await fetch(page)).text())) form.append(name, value);
  form.append("email", email);
  form.append("password", password);
  const answer = await fetch(page, { method: "POST", body: form, redirect: "manual" });
  await answer.arrayBuffer();
  const cookies = answer.headers.getSetCookie().map((cookie) => cookie.split(";")[0]);
  if (!cookies.some((cookie) => cookie.includes("pairwright-session=")))
    throw new Error(`${email} could not sign in: ${answer.status}`);
  return cookies.join("; ");
}

/** Opens a sheet. @returns its path, or null when it was not acknowledged */
export async function openSheet(address, fields) {
  const form = new FormData();
  for (const [name, value] of fields) form.append(name, value);
  try {
    const answer = await fetch(`${address}/sheet`, { method: "POST", body: form, redirect: "manual" });
    await answer.arrayBuffer();
    return answer.status === 303 ? new URL(answer.headers.get("location"), address).pathname : null;
  } catch {
    return null;
  }
}

/** How many of these pages are there. */
export async function countThere(address, paths) {
  let there = 0;
  for (const one of paths) {
    const answer = await fetch(`${address}${one}`);
    await answer.arrayBuffer();
    if (answer.status === 200) there += 1;
  }
  return there;
}

export const newName = () => randomUUID().slice(0, 8);
