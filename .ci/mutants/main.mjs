// One run of npm run mutants, once the packages are there.
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import { parseArgs } from "node:util";
import { cacheFolder, fail, hashOf, root, say, step } from "../lib.mjs";
import { faultsOfList, mostSetAside } from "./equivalent.mjs";
import { usesOf } from "./graph.mjs";
import { inOrder, judgeFault } from "./judge.mjs";
import { Lane } from "./lanes.mjs";
import { openMemory } from "./memory.mjs";
import { noteWhatRuns } from "./note.mjs";
import { plantedFaults } from "./plant.mjs";
import { resolverFor } from "./resolve.mjs";
import { roomOf } from "./rooms.mjs";
import { openRuns, testsFor } from "./runs.mjs";
import { productSources, testSources } from "./sources.mjs";
import { openTypes } from "./types.mjs";

const { seed, sample, room, limit, lanes: laneCount, isMap } = readWish();
const notes = path.join(cacheFolder, "what-runs.jsonl");
if (isMap) {
  await noteWhatRuns(root, notes);
  process.exit();
}

const product = productSources(root);
const sources = product.filter(({ file }) => room === null || roomOf(file) === room);
if (sources.length === 0) {
  const rooms = [...new Set(product.map(({ file }) => roomOf(file)))].sort();
  fail(`There is no room "${room}". There are: ${rooms.join(", ")}.`);
}
const entries = JSON.parse(readFileSync(path.join(import.meta.dirname, "equivalent.json"), "utf8"));
const textOf = new Map(product.map(({ file, text }) => [file, text]));
const wrong = faultsOfList(entries, (file) => textOf.get(file) ?? null);
if (wrong.length > 0) fail(`The list of equivalent faults is stale:\n${wrong.join("\n")}`);

const runs = openRuns(root, notes);
const memory = openMemory(
  path.join(cacheFolder, "mutants.json"),
  hashOf(["lib", "app", "content", "prisma", "proxy.ts", "tests", "package-lock.json", "vitest.config.ts"]),
  runs.seconds,
);
const uses = await step("reading who uses what", async () =>
  usesOf([...product, ...testSources(root)], resolverFor(root)),
);
const { faults, setAside, refused } = await step(`drawing ${sample} faults`, draw);
say(`  ${faults.length} compile, ${refused} did not, ${setAside.length} judged equivalent`);

const folder = mkdtempSync(path.join(os.tmpdir(), "pairwright-mutants-"));
const lanes = Array.from({ length: laneCount }, (_, index) => new Lane(root, path.join(folder, `lane-${index}`)));
const clear = () => {
  for (const lane of lanes) lane.close();
  rmSync(folder, { recursive: true, force: true, maxRetries: 10, retryDelay: 100 });
};
for (const signal of ["SIGINT", "SIGTERM", "SIGHUP"])
  process.on(signal, () => {
    memory.save();
    clear();
    process.exit(130);
  });

const verdicts = new Map();
try {
  await judgeAll();
} finally {
  clear();
  memory.save();
}
report();

function readWish() {
  const { values } = parseArgs({
    options: {
      seed: { type: "string", default: "1" },
      sample: { type: "string", default: "40" },
      room: { type: "string" },
      limit: { type: "string", default: "60" },
      lanes: { type: "string", default: "2" },
      map: { type: "boolean", default: false },
    },
  });
  const number = (name, least) => {
    const value = Number(values[name]);
    if (!Number.isInteger(value) || value < least) fail(`--${name} takes a whole number from ${least} on.`);
    return value;
  };
  return {
    seed: number("seed", 0),
    sample: number("sample", 1),
    limit: number("limit", 5),
    lanes: number("lanes", 1),
    room: values.room ?? null,
    isMap: values.map,
  };
}

async function draw() {
  const types = await openTypes(root);
  const compiles = async (file, text, line) => {
    const users = [...uses.reachedFrom(uses.unitAt(file, line), 1).keys()].filter((one) => /\.tsx?$/.test(one));
    return (await types.errorIn(file, text, users)) === null;
  };
  try {
    return await plantedFaults({ sources, seed, sample, entries, compiles });
  } finally {
    await types.close();
  }
}

async function judgeAll() {
  const waiting = [...faults.keys()];
  await Promise.all(
    lanes.map(async (lane) => {
      for (let next = waiting.shift(); next !== undefined; next = waiting.shift()) {
        const fault = faults[next];
        const began = performance.now();
        const verdict = await judgeFault(lane, withTests(fault), memory, limit);
        verdicts.set(next, verdict);
        const seconds = ((performance.now() - began) / 1000).toFixed(1);
        const word = verdict.isNoticed ? "noticed " : "SURVIVED";
        say(`${verdicts.size}/${faults.length} ${word} ${seconds} s  ${told(fault)}  (${verdict.how})`);
      }
    }),
  );
}

/** A fault with the tests that reach it and the bundled programs that hold it. */
function withTests(fault) {
  const reached = uses.reachedFrom(uses.unitAt(fault.file, fault.line));
  const bundles = [...uses.bundles]
    .filter(([, entry]) => entry.startsWith("lib/") && reached.has(entry))
    .map(([name, entry]) => ({ entry, name: name.replace(/\.mjs$/, "") }));
  const reaching = testsFor(fault, textOf.get(fault.file), bundles, { uses, runs });
  return { ...fault, bundles, tests: inOrder(reaching, fault.file, memory) };
}

function told({ file, line, what }) {
  return `${file}:${line} ${what}`;
}

function report() {
  const rooms = {};
  faults.forEach((fault, index) => {
    const name = roomOf(fault.file);
    rooms[name] ??= { planted: 0, noticed: 0, survivors: [] };
    const own = rooms[name];
    const { isNoticed, how } = verdicts.get(index);
    own.planted += 1;
    if (isNoticed) own.noticed += 1;
    else own.survivors.push(`${told(fault)} (${how})`);
  });
  const sorted = Object.fromEntries(Object.entries(rooms).sort(([a], [b]) => (a < b ? -1 : 1)));
  const noticed = Object.values(rooms).reduce((sum, one) => sum + one.noticed, 0);
  for (const [name, one] of Object.entries(sorted)) say(`${name.padEnd(16)} ${one.noticed} of ${one.planted}`);
  for (const test of memory.failing()) say(`fails on sound code, so it noticed nothing: ${test}`);
  process.stdout.write(`${JSON.stringify({ rooms: sorted, planted: faults.length, noticed }, null, 2)}\n`);
  if (setAside.length > mostSetAside(faults.length)) {
    say(`${setAside.length} faults were set aside as equivalent; at most ${mostSetAside(faults.length)} may be.`);
    process.exitCode = 1;
  }
}
