/** The floor's fourteen stations and the four conditions, as the few steps a skier wants to know. */

import names from "#content/copy/names.json";
import type { OrderAloneRecord } from "#data/orders";
import type { PairRecord } from "#data/pairs";
import type { ProgressView } from "./views";

const w = names.progress;

type Step = ProgressView["steps"][number];

const floorSteps: readonly { readonly key: string; readonly label: string; readonly stations: readonly number[] }[] = [
  { key: "core", label: w.core, stations: [2, 3, 4, 5] },
  { key: "base", label: w.base, stations: [6, 7] },
  { key: "print", label: w.print, stations: [8] },
  { key: "press", label: w.press, stations: [9, 10, 11] },
  { key: "finish", label: w.finish, stations: [12, 13] },
  { key: "check", label: w.check, stations: [14] },
];

export function progressSteps(pair: PairRecord, order: OrderAloneRecord): readonly Step[] {
  const accepted = step("accepted", w.accepted, "done", order.acceptedAt);
  const ready = step(
    "ready-to-build",
    w.readyToBuild,
    order.clockStartedAt === null ? "now" : "done",
    order.clockStartedAt,
  );
  const floor = floorSteps.map(({ key, label, stations }): Step => {
    const operations = pair.operations.filter((operation) => stations.includes(operation.station));
    const isDone = operations.every((operation) => operation.state === "done");
    const hasBegun = operations.some((operation) => operation.startedAt !== null);
    const lastEnd = operations.reduce<Date | null>((latest, { finishedAt }) => later(latest, finishedAt), null);
    return step(key, label, isDone ? "done" : hasBegun ? "now" : "to-come", isDone ? lastEnd : null);
  });
  const isShipped = order.state === "shipped" || order.state === "delivered";
  return [accepted, ready, ...floor, step("shipped", w.shipped, isShipped ? "done" : "to-come", order.deliveredAt)];
}

function step(key: string, label: string, state: Step["state"], at: Date | null): Step {
  return { key, label, state, at: at?.toISOString() ?? null };
}

function later(a: Date | null, b: Date | null): Date | null {
  if (a === null || b === null) return a ?? b;
  return a > b ? a : b;
}
