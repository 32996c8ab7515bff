/** The engine on one sheet and on the demo's queue. */
import { engineCatalog, loadCatalog, priceBookNamed } from "#catalog";
import { assessSheet } from "#engine/assessment";
import { referenceOf, resolveSpec, type SolvedSpec, solveSpec } from "#engine/configuration";
import { bareBuild, evaluateFlex, solveCore } from "#engine/flex";
import {
  answerRange,
  candidateRange,
  type PairOnFloor,
  planQueue,
  prepareCandidate,
  prepareRuns,
  runRange,
  shopMinute,
} from "#engine/routing";
import { isoDate, type Outcome } from "#engine/units";
import { demoQueue } from "#lib/command/demo-queue";
import { type FlexOrder, flexBuildOf } from "#lib/engine/configuration/flex-build";
import { arithmetic, type Measured, measured } from "./measure";

const answers = { heightCm: 182, massKg: 82, ability: "confident", offPistePercent: 40 } as const;
const loaded = loadCatalog();
const catalog = engineCatalog(loaded, priceBookNamed(loaded, "PB-3"));
const { floor } = loaded;
const today = isoDate("2026-11-25");
const now = shopMinute(today, 510);
const candidate = {
  route: {
    kind: "pair",
    mould: floor.moulds[0]?.id ?? null,
    mouldFamily: floor.moulds[0]?.family ?? null,
    extraMinutes: [],
    hasOwnGraphic: false,
  },
  waitingOn: [],
} as const;

function accepted<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome));
  return outcome.value;
}

const situation = (pairs: readonly PairOnFloor[]) => ({ floor, changes: [], pairs, now });

/** So many open pairs: the demo's, again under other ids. */
function queueOf(count: number): readonly PairOnFloor[] {
  const demo = demoQueue(floor, today, now);
  return Array.from({ length: count }, (_, i) => ({ ...(demo[i % demo.length] as PairOnFloor), pairId: `bench-${i}` }));
}

export async function engineMeasures(): Promise<Measured[]> {
  return [...(await sheetMeasures()), ...(await queueMeasures())];
}

async function sheetMeasures(): Promise<Measured[]> {
  const assess = () => assessSheet({ answers, choices: {} }, catalog);
  const { spec } = assess();
  if (spec === null) throw new Error("the bench's sheet gives no spec");
  const solved = accepted(solveSpec(spec, catalog.build));
  const resolved = accepted(resolveSpec(spec, catalog.build));
  const bare = bareBuild(solved.build);
  const target = { reference: referenceOf(resolved.model, catalog.build), flexRatio: spec.flexRatio };
  const short = shortAndSoft();
  const runs = accepted(prepareRuns(situation(queueOf(30)), 1));
  runRange(runs, 100);
  const date = () => {
    const asked = accepted(prepareCandidate(runs, candidate));
    answerRange(asked, 100);
    return candidateRange(asked);
  };
  let turn = 0;
  // Another flex every time: nothing remembered helps.
  const another = () => assessSheet({ answers, choices: { flexRatio: 1 + (turn++ % 1000) / 10_000 } }, catalog);
  const million = "1,000,000 multiply-adds";
  return [
    await measured("sheet, warm: fit, flex, parts, price", assess, million, arithmetic(1e6)),
    await measured("sheet, flex changed every time", another, million, arithmetic(1e6)),
    await measured("sheet to date (100 runs, 30 pairs)", () => [another(), date()], million, arithmetic(1e6)),
    await measured(
      "evaluateFlex, 100 pieces",
      () => evaluateFlex(solved.build, solved.core.profile, { gridPieces: 100 }),
      "plain section sums at the same stations",
      plainSections(solved),
    ),
    await measured(
      "solveCore",
      () => solveCore(bare, target, catalog.build.rules.core),
      "plain section sums at the same stations",
      plainSections(solved),
    ),
    await measured(
      "core and cloth of a ski that its own cloth makes too stiff",
      () => flexBuildOf(short, catalog.build),
      "plain section sums at the same stations",
      plainSections(solved),
    ),
    await measured(
      "catalogue load and one sheet",
      () => assessSheet({ answers, choices: {} }, engineCatalog(loadCatalog(), priceBookNamed(loaded, "PB-3"))),
      million,
      arithmetic(1e6),
      3,
    ),
  ];
}

/** The shortest metal ski in a soft class: its own glass leaves no 9 mm under the boot. */
function shortAndSoft(): FlexOrder {
  const spec = { model: "kerfline-68", lengthCm: 150, core: "aspen-ash", reinforcements: [], flexRatio: 0.7 };
  const resolved = accepted(resolveSpec(spec, catalog.build));
  const order = { resolved, lengthCm: spec.lengthCm, flexRatio: spec.flexRatio, mountOffsetMm: 0 };
  const { build, isReached } = flexBuildOf(order, catalog.build);
  if (!isReached || build.cloth.isOwn) throw new Error("the bench's short ski is built in its own cloth");
  return order;
}

/** EI by Σ E·(w·t³/12 + w·t·d²) of seven rectangles at every station. */
function plainSections({ build, core }: SolvedSpec): () => number {
  const stations = evaluateFlex(build, core.profile, { gridPieces: 100 }).stations.length;
  const moduli = [800, 200_000, 40_000, 11_000, 40_000, 2000, 1500];
  return () => {
    let total = 0;
    for (let s = 0; s < stations; s++) {
      let z = 0;
      for (const modulus of moduli) {
        const t = 1 + (s % 5) / 10;
        total += modulus * 90 * (t ** 3 / 12 + t * (z + t / 2 - 5) ** 2);
        z += t;
      }
    }
    return total;
  };
}

/** As many runs as the sheet looks at first (lib/services/floor/queue-runs.ts). */
const firstLook = 200;

async function queueMeasures(): Promise<Measured[]> {
  const found: Measured[] = [];
  for (const count of [30, 100]) {
    const pairs = queueOf(count);
    const fresh = accepted(prepareRuns(situation(pairs), 1));
    const operations = fresh.problem.operationCount;
    const perOperation = `a loop over ${operations} operations`;
    const loop = arithmetic(operations);
    found.push(await measured(`planQueue, ${count} pairs`, () => planQueue(situation(pairs)), perOperation, loop, 5));
    let done = 0;
    found.push(
      await measured(
        `one replication, ${count} pairs`,
        () => {
          // Kept few, so that memory stays flat.
          if (fresh.replications.length >= 200) fresh.replications.length = 0;
          done = runRange(fresh, fresh.replications.length + 1);
          return done;
        },
        perOperation,
        loop,
        5,
      ),
    );
    const runs = accepted(prepareRuns(situation(pairs), 1));
    runRange(runs, 2 * firstLook);
    for (const ready of [firstLook, 2 * firstLook]) {
      found.push(
        await measured(
          `one more order, ${ready} runs ready, ${count} pairs`,
          () => {
            const asked = accepted(prepareCandidate(runs, candidate));
            answerRange(asked, ready);
            return candidateRange(asked);
          },
          `${ready} loops over one pair's 14 stations`,
          arithmetic(ready * 14),
          5,
        ),
      );
    }
  }
  for (const count of longQueues) found.push(await replanned(count));
  return found;
}

/** Far more than a workshop has: a ratio that hardly changes says that planning grows with the operations. */
const longQueues = [1000, 5000] as const;

async function replanned(count: number): Promise<Measured> {
  const pairs = queueOf(count);
  const operations = accepted(prepareRuns(situation(pairs), 1)).problem.operationCount;
  const baseline = `a loop over ${operations} operations`;
  return measured(`planQueue, ${count} pairs`, () => planQueue(situation(pairs)), baseline, arithmetic(operations), 3);
}
