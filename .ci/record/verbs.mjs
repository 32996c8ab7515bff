// Questions to the command line: some for every verb, refusals among them.
import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import path from "node:path";
import { root } from "../lib.mjs";
import { paperText } from "./text.mjs";

const plain = { model: "midlow-95", lengthCm: 178, core: "aspen-ash" };
const metal = {
  model: "midlow-95",
  lengthCm: 178,
  core: "maple-poplar-planted",
  reinforcements: ["metal-pair"],
  flexRatio: 1.2,
};
const touring = { model: "upleigh-92", lengthCm: 174, core: "paulownia-poplar", reinforcements: ["carbon-stringers"] };
const complete = {
  ...plain,
  reinforcements: ["carbon-stringers"],
  flexRatio: 1.07,
  graphic: { kind: "house", house: "contour-lines", layout: "same", windows: [] },
  base: { left: "black", right: "black", inlay: "none" },
  mount: { offsetMm: 0 },
  finish: { baseBevelDeg: 1, sideAngleDeg: 2, detuneTipMm: 80, detuneTailMm: 50, structure: "M" },
  tipTailProtectors: false,
};

/** The id of letters exchanged between the bases, as this version's prices name it. */
function letters() {
  const { priceBooks } = JSON.parse(readFileSync(path.join(root, "content/catalog/price-books.json"), "utf8"));
  const codes = JSON.stringify(priceBooks).match(/"inlay-[\w-]+"/g) ?? [];
  const own = codes.map((code) => code.slice(7, -1)).find((id) => id !== "complex");
  return { left: "black", right: "yellow", inlay: own, inlayText: "ROBIN" };
}

function questions() {
  const skier = { heightCm: 182, massKg: 82, ability: "confident", temperament: "steady", offPistePercent: 40 };
  const ply = (angleDeg) => ({ e1Mpa: 181_000, e2Mpa: 10_300, g12Mpa: 7170, nu12: 0.28, angleDeg, thicknessMm: 5 });
  const part = (widthMm, modulusMpa) => ({ widthMm, modulusMpa, shearModulusMpa: modulusMpa / 2.7, densityKgM3: 900 });
  const beam = (support, load) => ({
    stations: [0, 300, 900, 1200].map((xMm, index) => ({ xMm, bendingStiffnessNmm2: 1e8 * (1 + index) })),
    support,
    load,
  });
  const strips = Array.from({ length: 24 }, (_, index) => ({
    id: `s${index}`,
    species: "aspen",
    modulusMpa: 9500 + 40 * (index % 6),
    densityKgM3: 420 + (index % 3),
    grade: "W",
    board: `b${index >> 1}`,
  }));
  const jobs = [4, 4, 30, 6, 2].map((minutes, index) => ({
    id: `j${index}`,
    dueMinute: 40,
    operations: [
      { id: "a", resource: "A", minutes },
      { id: "b", resource: "B", minutes: [5, 1, 4, 30, 3][index] },
    ],
  }));
  const resources = ["A", "B"].map((id) => ({ id, capacity: 1 }));
  const choices = { ...plain, reinforcements: ["carbon-stringers"], graphic: complete.graphic, base: complete.base };
  const lettered = { ...choices, base: letters() };
  return {
    recommend: [
      skier,
      { ...skier, massKg: 38 },
      { ...skier, heightCm: 205, massKg: 128, ability: "expert" },
      { ...skier, touringPercent: 70 },
      { heightCm: 1 },
    ],
    shape: [
      { shoulderMm: 120, waistMm: 85, heelMm: 110, sidecutLengthMm: 1450 },
      { model: "midlow-95", lengthCm: 178 },
      { model: "midlow-95", lengthCm: 177 },
    ],
    laminate: [{ plies: [ply(0), ply(30), ply(-45)] }],
    section: [
      {
        layers: [
          { thicknessMm: 1.3, parts: [part(80, 760)] },
          { thicknessMm: 8, parts: [part(10, 2000), part(60, 9000), part(10, 2000)] },
        ],
      },
    ],
    beam: [
      beam({ kind: "simple", xMm: [0, 1200] }, { xMm: 600, forceN: 300 }),
      beam({ kind: "clamped", xMm: 0 }, { xMm: 1200, forceN: 30 }),
      beam({ kind: "clamped", xMm: 0 }, { xMm: 1300, forceN: 30 }),
    ],
    flex: [plain, metal, touring, { ...plain, lengthCm: 177 }],
    core: [plain, metal, touring, { ...plain, flexRatio: 1.9 }],
    alternatives: [
      { ...plain, lighterByG: 150, priceBook: "PB-3" },
      { ...touring, lighterByG: 4000 },
    ],
    strips: [
      {
        strips,
        need: {
          pairs: 2,
          positions: [
            { name: "C", perSki: 1, species: ["aspen"] },
            { name: "I", perSki: 2, species: ["aspen"] },
          ],
          targetModulusMpa: 9600,
        },
      },
    ],
    price: [
      { choices, priceBook: "PB-3" },
      { choices: lettered, priceBook: "PB-3" },
      { choices: lettered, priceBook: "PB-4" },
    ],
    schedule: [
      { resources, jobs, objective: "makespan", iterations: 2000, seed: 1 },
      { resources, jobs, objective: { makespan: 0, weightedTardiness: 1 }, iterations: 500, seed: 2 },
    ],
    promise: [
      { spec: plain, today: "2026-11-25", runs: 60, seed: 7 },
      { spec: metal, today: "2026-11-25", runs: 60, seed: 7 },
    ],
    parts: [
      { choices },
      { choices: lettered },
      { choices: { ...touring, graphic: complete.graphic, base: complete.base } },
    ],
    sheet: [
      { spec: complete, pairNumber: 417 },
      { spec: { ...complete, base: letters() }, pairNumber: 418 },
      { spec: { ...complete, core: "none-such" } },
    ],
    artwork: [
      { widthPx: 4000, heightPx: 3000, model: "ridgefold-106", lengthCm: 184, layout: "continuing" },
      { widthPx: 12_000, heightPx: 1200, model: "midlow-95", lengthCm: 178, layout: "same" },
    ],
  };
}

function ask(words, input) {
  const answer = spawnSync(process.execPath, [path.join(root, ".ci/pairwright.mjs"), ...words], {
    cwd: root,
    input: input === undefined ? "" : JSON.stringify(input),
    encoding: "utf8",
    maxBuffer: 1 << 28,
  });
  return { code: answer.status, said: answer.stdout };
}

/** Papers in an answer are told by their words. */
function readable(said) {
  const known = (key, value) => (key === "pdfBase64" ? paperText(Buffer.from(value, "base64")).split("\n") : value);
  try {
    return JSON.stringify(JSON.parse(said, known), null, 1);
  } catch {
    return said;
  }
}

/** @param keep takes a name and a text */
export async function recordVerbs(keep) {
  const help = ask(["--help"]).said;
  keep("verbs/help", help);
  const verbs =
    /\nVerbs\n([\s\S]*?)\n\n/
      .exec(`${help}\n\n`)?.[1]
      .split("\n")
      .map((line) => line.trim().split(" ")[0]) ?? [];
  const asked = questions();
  for (const verb of new Set([...verbs, ...Object.keys(asked)])) {
    keep(`verbs/${verb}-schema`, readable(ask([verb, "--schema"]).said));
    for (const [index, input] of (asked[verb] ?? []).entries()) {
      const { code, said } = ask([verb], input);
      keep(`verbs/${verb}-${index + 1}`, `${JSON.stringify(input)}\nexit ${code}\n${readable(said)}`);
    }
  }
}
