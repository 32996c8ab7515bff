/** When a fault counts as noticed. The lane is played by a script of answers. */
import { mkdirSync, writeFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { workedSeconds } from "../../../.ci/mutants/clock.mjs";
import { type Answer, judgeFault, type Memory, type Question } from "../../../.ci/mutants/judge.mjs";
import { temporaryFolder } from "../../support/child";

const none = { end: "judged", failure: null, passed: new Map(), running: null } as const;
const failed = (test: string): Answer => ({ ...none, failure: { test, message: "expected 1 to be 2" } });
const passed = (test: string, seconds = 1): Answer => ({ ...none, passed: new Map([[test, seconds]]) });
const late = (test: string, seconds: number): Answer => ({ ...none, end: "late", running: { test, seconds } });

function memoryOf(): Memory {
  const seconds = new Map<string, number>();
  const sound = new Map<string, boolean>();
  return {
    seconds: (test) => seconds.get(test) ?? null,
    isSound: (test) => sound.get(test) ?? null,
    decide: (test, isSound) => void sound.set(test, isSound),
    learn: (all) => {
      for (const [test, took] of all) seconds.set(test, took);
    },
  };
}

/** Judges with answers for the faulty code, one after the other, and for each test file on sound code. */
async function judged(
  tests: readonly string[],
  faulty: readonly Answer[],
  sound: Readonly<Record<string, Answer>> = {},
) {
  const asked: Question[] = [];
  const rest = [...faulty];
  const lane = {
    async judge(question: Question): Promise<Answer> {
      if (!question.file) return sound[question.tests[0] ?? ""] ?? none;
      asked.push(question);
      return rest.shift() ?? none;
    },
  };
  const fault = { file: "lib/a.ts", text: "", bundles: [], tests } as const;
  const verdict = await judgeFault(lane, fault, memoryOf(), 60);
  return { ...verdict, asked: asked.map((question) => question.tests) };
}

describe("the clock of a lane", () => {
  it("adds what a group and its ended children have worked, whatever a program is called", () => {
    const proc = temporaryFolder();
    const stat = (id: number, name: string, group: number, times: string) => {
      mkdirSync(path.join(proc, String(id)));
      const text = `${id} (${name}) S 1 ${group} 9 0 -1 0 0 0 0 0 ${times} 20 0 11 0 5`;
      writeFileSync(path.join(proc, String(id), "stat"), text);
    };
    stat(10, "node", 10, "100 20 300 50");
    stat(11, "node (vitest 1) x", 10, "30 0 0 0");
    stat(12, "other", 12, "5000 0 0 0");
    mkdirSync(path.join(proc, "13"));
    expect(workedSeconds(10, proc)).toBe(5);
    expect(workedSeconds(99, proc)).toBe(null);
    expect(workedSeconds(10, path.join(proc, "none"))).toBe(null);
  });
});

describe("a fault", () => {
  it("survives when no test reaches it, and when all that reach it pass", async () => {
    expect(await judged([], [])).toMatchObject({ isNoticed: false, how: "no test reaches it", asked: [] });
    expect(await judged(["a", "b"], [none])).toMatchObject({ isNoticed: false, asked: [["a", "b"]] });
  });

  it("is noticed by a test that passes on sound code", async () => {
    const verdict = await judged(["a", "b"], [failed("b"), failed("b")], { b: passed("b") });
    expect(verdict).toMatchObject({ isNoticed: true, how: "by b: expected 1 to be 2" });
  });

  it("is not noticed by a test that fails anyway: the others are asked again", async () => {
    const verdict = await judged(["a", "b"], [failed("a"), none], { a: failed("a") });
    expect(verdict).toMatchObject({ isNoticed: false, asked: [["a", "b"], ["b"]] });
  });

  it("is not noticed by a test that fails only in the company of others", async () => {
    const verdict = await judged(["a", "b"], [failed("b"), passed("b"), none], { b: passed("b") });
    expect(verdict).toMatchObject({ isNoticed: false, asked: [["a", "b"], ["b"], ["a"]] });
  });

  it("is noticed when a test no longer comes to an end", async () => {
    expect(await judged(["a"], [late("a", 60)], { a: passed("a", 2) })).toMatchObject({ isNoticed: true });
  });

  it("survives when the time is over before a slow test has ended", async () => {
    const verdict = await judged(["a"], [late("a", 60)], { a: passed("a", 50) });
    expect(verdict).toMatchObject({ isNoticed: false, how: "not in 60 s of work: 0 of 1 test files passed" });
  });
});
