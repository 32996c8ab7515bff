// What is done to a shop, each with what must hold. A step gives { held, words }.
import { spawn } from "node:child_process";
import { randomBytes } from "node:crypto";
import { readFileSync, rmSync } from "node:fs";
import path from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import { root } from "../lib.mjs";
import { fuzz } from "./fuzz.mjs";
import { countThere, newName, openSheet, openShop, sheetForm, signedIn } from "./shop.mjs";

/** The first start, demo and all, is killed at random instants; the next one must succeed. */
export async function firstStarts({ place, times, draw }) {
  const one = (env) =>
    spawn(process.execPath, [path.join(root, ".ci/migrate.mjs")], {
      cwd: root,
      env: { ...process.env, ...env },
      stdio: "ignore",
    });
  const env = place.env;
  const end = (child) => new Promise((resolve) => child.once("close", resolve));
  const began = performance.now();
  await end(one(env));
  const longest = performance.now() - began;
  await place.empty();
  for (let n = 0; n < times; n += 1) {
    const child = one(env);
    const over = end(child);
    await sleep(draw() * longest);
    child.kill("SIGKILL");
    await over;
  }
  const code = await end(one(env));
  return {
    held: code === 0,
    words: `${times} first starts killed within ${(longest / 1000).toFixed(0)} s; the next one ended with ${code}`,
  };
}

/** kill -9 while sheets are opened by many at once: what was acknowledged must be there. */
export async function killsUnderLoad({ place, port, times, draw }) {
  const acknowledged = [];
  let lost = 0;
  for (let n = 0; n < times; n += 1) {
    const shop = await openShop({ ...place.settings, port });
    const form = await sheetForm(shop.address);
    let isOver = false;
    const visitors = Array.from({ length: 4 }, async () => {
      while (!isOver) {
        const sheet = await openSheet(shop.address, form);
        if (sheet !== null) acknowledged.push(sheet);
      }
    });
    await sleep(300 + draw() * 1500);
    await shop.kill("SIGKILL");
    isOver = true;
    await Promise.all(visitors);
  }
  const shop = await openShop({ ...place.settings, port });
  lost = acknowledged.length - (await countThere(shop.address, acknowledged));
  await shop.kill("SIGTERM");
  return {
    held: lost === 0 && acknowledged.length > 0,
    words: `${times} kills, ${acknowledged.length} sheets acknowledged, ${lost} lost`,
  };
}

/** Hostile requests: none may be answered as a fault of ours, and each that is must be in the log. */
export async function hostile({ place, port, count, draw }) {
  const shop = await openShop({ ...place.settings, port });
  const manifest = readFileSync(path.join(root, ".next/server/server-reference-manifest.json"), "utf8");
  const actions = [...new Set(manifest.match(/\b[0-9a-f]{42}\b/g))];
  const { byStatus, bad } = await fuzz(shop.address, count, draw, actions);
  const lines = shop.lines.filter((line) => line.startsWith("{") && line.includes('"reference"'));
  const told = lines.filter((line) => /"route":"/.test(line)).length;
  const isUp = (await fetch(`${shop.address}/health`)).ok;
  await shop.kill("SIGTERM");
  const counts = Object.entries(byStatus)
    .map(([status, n]) => `${status}: ${n}`)
    .join(", ");
  return {
    held: bad.length === 0 && isUp && told === lines.length,
    words: `${count} hostile requests: ${counts}; ${lines.length} fault lines, ${told} with their route${bad.map((one) => `\n      ${one}`).join("")}`,
  };
}

/** More visitors than can be served at once, and one of the desk who goes on working: how long that one waits, beside the same without visitors, and what memory it took. */
export async function flood({ place, port, seconds }) {
  const shop = await openShop({ ...place.settings, port, demo: "on" });
  const cookie = await signedIn(shop.address, "desk@thistle-yard.example", "larch-desk-demo");
  const ask = async (page, headers) => {
    const answer = await fetch(`${shop.address}${page}`, { headers }).catch(() => null);
    await answer?.arrayBuffer();
    return answer?.status ?? 0;
  };
  const atTheDesk = async (ms) => {
    const until = performance.now() + ms;
    const waits = [];
    let refused = 0;
    while (performance.now() < until) {
      const began = performance.now();
      if ((await ask("/shop", { cookie })) !== 200) refused += 1;
      waits.push(performance.now() - began);
      await sleep(100);
    }
    return { pages: waits.length, refused, p95: waits.sort((a, b) => a - b)[Math.floor(waits.length * 0.95)] };
  };
  await atTheDesk(2000);
  const quiet = await atTheDesk(Math.min(4, seconds) * 1000);
  const until = performance.now() + seconds * 1000;
  const crowd = { served: 0, refused: 0, faults: 0 };
  const visitors = Array.from({ length: 100 }, async () => {
    while (performance.now() < until) {
      const status = await ask("/sheet", { cookie: `pairwright-session=${newName().repeat(5)}abc` });
      crowd[status === 503 ? "refused" : status === 200 ? "served" : "faults"] += 1;
    }
  });
  let mostMb = 0;
  const watch = setInterval(() => {
    mostMb = Math.max(mostMb, memoryMb(shop.pid));
  }, 100);
  const { pages, refused, p95 } = await atTheDesk(seconds * 1000);
  await Promise.all(visitors);
  clearInterval(watch);
  await shop.kill("SIGTERM");
  return {
    held: crowd.faults === 0 && refused === 0 && p95 < 1000 && mostMb < 1024,
    words: `100 visitors for ${seconds} s: ${(crowd.served / seconds).toFixed(0)} pages a second, ${crowd.refused} turned away, ${crowd.faults} faults; the desk's ${pages} pages: p95 ${p95.toFixed(0)} ms (${quiet.p95.toFixed(0)} ms before), ${refused} refused; at most ${mostMb} MB`,
  };
}

/** Longest wait of a light page while `work` goes on, asked every 50 ms. */
export async function longestWait(address, work) {
  let isOver = false;
  let longest = 0;
  const asking = (async () => {
    while (!isOver) {
      const began = performance.now();
      await (await fetch(`${address}/robots.txt`)).arrayBuffer();
      longest = Math.max(longest, performance.now() - began);
      await sleep(50);
    }
  })();
  await work();
  isOver = true;
  await asking;
  return longest;
}

/** One large picture is sent: others wait, the memory it takes. */
export async function upload({ place, port }) {
  const { default: sharp } = await import("sharp");
  const [width, height] = [4200, 3300];
  const noise = randomBytes(width * height * 3);
  const picture = await sharp(noise, { raw: { width, height, channels: 3 } })
    .png({ compressionLevel: 0 })
    .toBuffer();
  const shop = await openShop({ ...place.settings, port });
  const sheet = await openSheet(shop.address, await sheetForm(shop.address));
  let status = 0;
  let mostMb = 0;
  const watch = setInterval(() => {
    mostMb = Math.max(mostMb, memoryMb(shop.pid));
  }, 50);
  const quiet = await longestWait(shop.address, () => sleep(2000));
  const wait = await longestWait(shop.address, async () => {
    const key = sheet.split("/").at(-1);
    const answer = await fetch(`${shop.address}/files/artwork/${key}?name=noise.png`, {
      method: "POST",
      body: picture,
    });
    status = answer.status;
    await answer.arrayBuffer();
  });
  clearInterval(watch);
  await shop.kill("SIGTERM");
  const megabytes = (picture.length / 1024 / 1024).toFixed(0);
  return {
    held: status === 200 && mostMb < 1536,
    words: `a picture of ${megabytes} MB: ${status}; others waited ${wait.toFixed(0)} ms at most (${quiet.toFixed(0)} ms before), ${mostMb} MB at most`,
  };
}

/** Two instances on one server under load, one killed: what was acknowledged is there for the other. */
export async function twoInstances({ place, port, seconds }) {
  const shops = await Promise.all(
    [0, 1].map((n) => openShop({ ...place.settings, data: `${place.settings.data}-${n}`, port: port + n })),
  );
  const form = await sheetForm(shops[0].address);
  const acknowledged = [];
  let tries = 0;
  let failed = 0;
  const until = performance.now() + seconds * 1000;
  // As a proxy does: in turn, and to the other when one does not answer.
  const visitor = async () => {
    while (performance.now() < until) {
      tries += 1;
      const order = tries % 2 === 0 ? shops : [shops[1], shops[0]];
      const sheet = (await openSheet(order[0].address, form)) ?? (await openSheet(order[1].address, form));
      if (sheet === null) failed += 1;
      else acknowledged.push(sheet);
    }
  };
  const crowd = Array.from({ length: 6 }, visitor);
  await sleep((seconds * 1000) / 2);
  await shops[0].kill("SIGKILL");
  await Promise.all(crowd);
  const lost = acknowledged.length - (await countThere(shops[1].address, acknowledged));
  await shops[1].kill("SIGTERM");
  for (const n of [0, 1]) rmSync(`${place.settings.data}-${n}`, { recursive: true, force: true });
  return {
    held: failed === 0 && lost === 0 && acknowledged.length > 0,
    words: `two instances, one killed: ${acknowledged.length} sheets acknowledged, ${failed} failed on both, ${lost} lost`,
  };
}

/** A stop while nothing but reading goes on. */
export async function stop({ place, port }) {
  const shop = await openShop({ ...place.settings, port });
  const idle = await fetch(`${shop.address}/sheet`);
  await idle.arrayBuffer();
  const ms = await shop.kill("SIGTERM");
  return { held: ms < 2000, words: `stopped after ${ms.toFixed(0)} ms` };
}

function memoryMb(pid) {
  try {
    const text = readFileSync(`/proc/${pid}/status`, "utf8");
    return Math.round(Number(/VmRSS:\s+(\d+)/.exec(text)?.[1] ?? 0) / 1024);
  } catch {
    return 0;
  }
}
