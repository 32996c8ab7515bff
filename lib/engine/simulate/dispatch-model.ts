/**
 * What a dispatch simulation needs beside the problem: ranks, and classes of operations that ask for exactly the same
 * resources. Only the best operation of a class can be the next to start, so a decision looks at one head a class.
 */
import type { CompiledProblem } from "#engine/schedule";
import { type SerialPlan, serialPlan } from "#engine/schedule";

/** Part of the work that is done again when `operation` fails; `redo` contains `operation`, its only way out. */
export interface RedoRule {
  readonly operation: number;
  readonly redo: readonly number[];
}

export interface DispatchClass {
  /** Resources with changeovers that the class waits for, and the family it needs there. */
  readonly changeoverMembers: readonly number[];
  readonly family: number;
}

export interface DispatchModel {
  readonly problem: CompiledProblem;
  readonly plan: SerialPlan;
  /** Lower goes first. */
  readonly rank: Float64Array;
  /** Added to the rank of what needs the longest changeover, in proportion for shorter ones. */
  readonly changeoverPenalty: number;
  /** Fixed operations that begin up to here are facts; later ones are releases with the best rank. */
  readonly startMinute: number;
  readonly redoRuleOf: readonly (RedoRule | null)[];
  readonly classOf: Int32Array;
  readonly classes: readonly DispatchClass[];
  /** 1 for heads of clusters whose members may get in one another's way on a resource. */
  readonly isEntangled: Uint8Array;
  readonly longestChangeover: number;
  /** Of those that take time; 0 without any. */
  readonly shortestChangeover: number;
  readonly slotFrom: Int32Array;
}

export interface DispatchSettings {
  readonly rank: Float64Array;
  readonly changeoverPenalty?: number;
  readonly startMinute?: number;
  readonly redoRules?: readonly RedoRule[];
}

export function dispatchModel(problem: CompiledProblem, settings: DispatchSettings): DispatchModel {
  const startMinute = settings.startMinute ?? 0;
  const plan = serialPlan(problem);
  const rank = settings.rank.slice();
  for (const operation of plan.fixed) rank[operation] = Number.NEGATIVE_INFINITY;
  const redoRuleOf: (RedoRule | null)[] = Array.from({ length: problem.operationCount }, () => null);
  for (const rule of settings.redoRules ?? []) redoRuleOf[rule.operation] = rule;
  const slotFrom = new Int32Array(problem.resourceCount + 1);
  problem.capacity.forEach((capacity, resource) => {
    slotFrom[resource + 1] = (slotFrom[resource] as number) + capacity;
  });
  return {
    problem,
    plan,
    rank,
    changeoverPenalty: settings.changeoverPenalty ?? 0,
    startMinute,
    redoRuleOf,
    ...classify(problem, plan),
    shortestChangeover: shortestChangeover(problem),
    isEntangled: Uint8Array.from(plan.clusterOf, (cluster) =>
      cluster !== null && areEntangled(problem, cluster) ? 1 : 0,
    ),
    longestChangeover: longestChangeover(problem),
    slotFrom,
  };
}

function longestChangeover({ changeover }: CompiledProblem): number {
  return changeover.reduce((most, table) => table?.reduce((longest, each) => Math.max(longest, each), most) ?? most, 1);
}

function shortestChangeover({ changeover }: CompiledProblem): number {
  const minutes = changeover.flatMap((table) => (table === null ? [] : [...table].filter((each) => each > 0)));
  return minutes.length === 0 ? 0 : minutes.reduce((least, each) => Math.min(least, each));
}

/** The operations that start together with `operation`: itself, or its cluster when a maximum gap ties others to it. */
export function clusterAt(model: DispatchModel, operation: number): readonly number[] {
  return model.plan.clusterOf[operation] ?? [operation];
}

/** Members that share a resource, unless one follows the other there without a changeover: then it is free in time. */
function areEntangled(problem: CompiledProblem, cluster: readonly number[]): boolean {
  if (cluster.length === 1) return false;
  const isChain = cluster.every((member, i) => {
    const before = problem.predecessors[problem.predecessorsFrom[member] as number];
    return i === 0 || before === cluster[i - 1];
  });
  const taken = new Set<number>();
  for (const member of cluster) {
    const resources = (problem.usesOf[member] ?? []).flatMap((use) => Array.from(use.members));
    if (resources.some((id) => taken.has(id) && (!isChain || problem.changeover[id] !== null))) return true;
    for (const id of resources) taken.add(id);
  }
  return false;
}

function classify(problem: CompiledProblem, plan: SerialPlan): Pick<DispatchModel, "classOf" | "classes"> {
  const byKey = new Map<string, number>();
  const classes: DispatchClass[] = [];
  const classOf = new Int32Array(problem.operationCount);
  for (let operation = 0; operation < problem.operationCount; operation++) {
    const cluster = plan.clusterOf[operation] ?? [operation];
    const key =
      cluster.length === 1 ? needsOf(problem, operation) : cluster.map((member) => needsOf(problem, member)).join("+");
    const known = byKey.get(key);
    classOf[operation] = known ?? classes.length;
    if (known !== undefined) continue;
    byKey.set(key, classes.length);
    const changeoverMembers = cluster.flatMap((member) =>
      (problem.usesOf[member] ?? []).flatMap((use) =>
        Array.from(use.members).filter((resource) => problem.changeover[resource] !== null),
      ),
    );
    const withFamily = cluster.find((member) => (problem.family[member] as number) >= 0) ?? operation;
    classes.push({ changeoverMembers, family: problem.family[withFamily] as number });
  }
  return { classOf, classes };
}

function needsOf(problem: CompiledProblem, operation: number): string {
  let needs = `${problem.family[operation]},${problem.isUninterrupted[operation]}`;
  for (const use of problem.usesOf[operation] ?? []) needs += `,${use.number}`;
  return needs;
}
