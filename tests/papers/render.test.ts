import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { performance } from "node:perf_hooks";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { composeBuildSheet, composeLabels, type LabelsData, renderDocument } from "#papers";
import { bundle } from "../../.ci/bundle.mjs";
import { pdfPages } from "./pdf-text";
import { facts } from "./sample";

/** The longest that a request may hold the server's own thread, ms (house rule). */
const LONGEST_BLOCK_MS = 50;

let worker = "";
let folder = "";
beforeAll(async () => {
  worker = await bundle("lib/papers/worker.ts", "documents-worker");
  folder = mkdtempSync(path.join(tmpdir(), "worker-"));
});
afterAll(() => rmSync(folder, { recursive: true }));

/** A thread that dies at its first document. */
function dyingWorker(): string {
  const file = path.join(folder, "dying.mjs");
  writeFileSync(
    file,
    'import { parentPort } from "node:worker_threads";\nparentPort.once("message", () => process.exit(3));\n',
  );
  return file;
}

describe("renderDocument", () => {
  it("draws in the thread without holding up this one", async () => {
    const data = composeBuildSheet(facts);
    await renderDocument("build-sheet", data, "A4", worker);
    const before = performance.eventLoopUtilization();
    const posting: number[] = [];
    const drawn: Promise<Uint8Array>[] = [];
    for (let i = 0; i < 3; i++) {
      const from = performance.now();
      drawn.push(renderDocument("build-sheet", data, "A4", worker));
      posting.push(performance.now() - from);
    }
    const [bytes] = await Promise.all(drawn);
    const { utilization } = performance.eventLoopUtilization(before);
    expect(pdfPages(bytes ?? new Uint8Array())).toHaveLength(7);
    // What the caller's thread does: hand over and wait. The best of three, because other programs share the processor.
    expect(Math.min(...posting)).toBeLessThan(LONGEST_BLOCK_MS);
    expect(utilization).toBeLessThan(0.5);
  });

  it("answers many requests, each with its own document", async () => {
    const label = (number: string): LabelsData => {
      const data = composeLabels(facts);
      return { ...data, pair: { ...data.pair, number } };
    };
    const numbers = ["0501", "0502", "0503", "0504"];
    const drawn = await Promise.all(numbers.map((n) => renderDocument("labels", label(n), "LETTER", worker)));
    for (const [i, bytes] of drawn.entries()) expect(pdfPages(bytes)[0]).toContain(`Labels ${numbers[i]} `);
  });

  it("reports a document that cannot be drawn and goes on with the next", async () => {
    const data = composeBuildSheet(facts);
    const tooLong = { ...data, drawing: { ...data.drawing, lengthMm: 1e6 } };
    await expect(renderDocument("build-sheet", tooLong, "A4", worker)).rejects.toThrow(/lengthMm/);
    await expect(renderDocument("labels", composeLabels(facts), "A4", worker)).resolves.toBeInstanceOf(Uint8Array);
  });

  it("fails what waits when the thread dies, and starts a fresh one for the next call", async () => {
    const file = dyingWorker();
    const first = renderDocument("labels", composeLabels(facts), "A4", file);
    const second = renderDocument("labels", composeLabels(facts), "A4", file);
    await expect(first).rejects.toThrow(/ended with code 3/);
    await expect(second).rejects.toThrow(/ended with code 3/);
    await expect(renderDocument("labels", composeLabels(facts), "A4", file)).rejects.toThrow(/ended with code 3/);
  });

  it("draws in this process where no thread was bundled", async () => {
    const bytes = await renderDocument("labels", composeLabels(facts), "A4", path.join(folder, "absent.mjs"));
    expect(pdfPages(bytes)[0]).toContain("TY-0417-L-7");
  });
});

describe("the drawing thread", () => {
  it("holds pages, words and the engine, and neither records nor use cases", async () => {
    const program = await bundle("lib/papers/worker.ts", "documents-worker");
    const { inputs } = JSON.parse(readFileSync(program.replace(/mjs$/, "inputs.json"), "utf8")) as {
      readonly inputs: readonly string[];
    };
    expect(inputs).toContain("lib/papers/build-sheet/page.tsx");
    expect(inputs.filter((file) => !/^(lib\/(papers|engine)|content\/copy)\//.test(file))).toEqual([]);
    // Facts are composed before they reach the thread.
    expect(inputs.filter((file) => /\/compose[^/]*$/.test(file))).toEqual([]);
  });
});
