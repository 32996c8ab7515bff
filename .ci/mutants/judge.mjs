// One fault, asked of the tests that reach it: noticed, or not.
import { isTest } from "./runs.mjs";

/** A test file takes this much longer than on sound code before it counts as hanging. */
const hangs = (soundSeconds) => 3 * soundSeconds + 20;
/** Before anything is known of a test file. */
const usualSeconds = 4;
/** What the start of any test file takes. */
const startSeconds = 1;
/** What one test file may take on sound code. */
const soundLimitSeconds = 240;

/** Test files that reach a fault: the likeliest for their time first. */
export function inOrder(reached, file, memory) {
  return [...reached]
    .filter(([test]) => isTest(test))
    .map(([test, distance]) => {
      const seconds = memory.seconds(test) ?? usualSeconds;
      return { test, weight: (startSeconds + seconds) * distance ** 2 * (isBeside(test, file) ? 0.25 : 1) };
    })
    .sort((a, b) => a.weight - b.weight || (a.test < b.test ? -1 : 1))
    .map(({ test }) => test);
}

/** Tests mirror the product's folders: tests/engine/fit/… is beside lib/engine/fit/…, and so is a test of the file's name. */
function isBeside(test, file) {
  const folder = file.replace(/^lib\//, "").replace(/\/[^/]*$/, "");
  const name = file.replace(/^.*\/|\.\w+$/g, "");
  return test.startsWith(`tests/${folder}/`) || test.replace(/^.*\/|\.test\.\w+$/g, "") === name;
}

/**
 * @param {{file: string, text: string, bundles: readonly {entry: string, name: string}[], tests: readonly string[]}} fault
 * @returns {Promise<{isNoticed: boolean, how: string}>}
 */
export async function judgeFault(lane, fault, memory, seconds) {
  let tests = fault.tests.filter((test) => memory.isSound(test) !== false);
  for (;;) {
    if (tests.length === 0) return { isNoticed: false, how: "no test reaches it" };
    const patience = (test) => hangs(memory.seconds(test) ?? seconds);
    const { failure, running, end, passed } = await lane.judge({ ...fault, tests, seconds, patience });
    memory.learn(passed);
    if (failure !== null) {
      const { test, message } = failure;
      if (test === "" || ((await failsAlone(lane, fault, test, tests)) && (await passesSound(lane, test, memory))))
        return { isNoticed: true, how: `by ${test || "the run"}: ${message}` };
      tests = tests.filter((one) => one !== test);
      continue;
    }
    if (end === "late" && running !== null && (await isHanging(lane, running, memory)))
      return { isNoticed: true, how: `by ${running.test}: it does not come to an end` };
    if (end === "late")
      return {
        isNoticed: false,
        how: `not in ${seconds} s of work: ${passed.size} of ${tests.length} test files passed`,
      };
    return { isNoticed: false, how: `not by ${count(tests.length)}` };
  }
}

const count = (files) => (files === 1 ? "the one test file that reaches it" : `the ${files} test files that reach it`);

async function isHanging(lane, { test, seconds }, memory) {
  if (seconds <= hangs(memory.seconds(test) ?? 0)) return false;
  if (!(await passesSound(lane, test, memory))) return false;
  return seconds > hangs(memory.seconds(test));
}

/** Whether the fault itself made it fail, not what other files left behind in their worker. */
async function failsAlone(lane, fault, test, tests) {
  if (tests[0] === test) return true;
  const { failure, end } = await lane.judge({ ...fault, tests: [test], seconds: soundLimitSeconds });
  return failure !== null || end === "late";
}

/** Whether a test file passes on sound code, here and now: what fails anyway notices nothing. */
async function passesSound(lane, test, memory) {
  if (memory.isSound(test) === null || memory.seconds(test) === null) {
    const { passed } = await lane.judge({ tests: [test], seconds: soundLimitSeconds });
    memory.learn(passed);
    memory.decide(test, passed.has(test));
  }
  return memory.isSound(test);
}
