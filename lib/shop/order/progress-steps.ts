/** The floor's stations and the four conditions, as the few steps a skier wants to know. */

import names from "#content/copy/names.json";
import type { OrderAloneRecord } from "#data/orders";
import type { PairRecord } from "#data/pairs";
import { isOneOf, type StationRole, shippedStates, stationsOfRole } from "#engine/floor";
import { currentCatalog } from "#shop/catalogue/current";
import type { ProgressView } from "./views";

const w = names.progress;

type Step = ProgressView["steps"][number];

const floorSteps: readonly { readonly key: string; readonly label: string; readonly roles: readonly StationRole[] }[] =
  [
    { key: "core", label: w.core, roles: ["strips", "core", "profile", "sidewalls"] },
    { key: "base", label: w.base, roles: ["base", "edges"] },
    { key: "print", label: w.print, roles: ["print"] },
    { key: "press", label: w.press, roles: ["kit", "lay-up", "press"] },
    { key: "finish", label: w.finish, roles: ["trim", "finish"] },
    { key: "check", label: w.check, roles: ["check"] },
  ];

export function progressSteps(pair: PairRecord, order: OrderAloneRecord): readonly Step[] {
  const accepted = step("accepted", w.accepted, "done", order.acceptedAt);
  // Told where it had to be shown; who was on the telephone needs no such step.
  const isShown = order.confirmedHow !== "desk" && order.confirmedHow !== "earlier";
  const confirmed = isShown
    ? [step("confirmed", w.confirmed, order.confirmedAt === null ? "now" : "done", order.confirmedAt)]
    : [];
  const ready = step(
    "ready-to-build",
    w.readyToBuild,
    order.clockStartedAt !== null ? "done" : order.confirmedAt === null ? "to-come" : "now",
    order.clockStartedAt,
  );
  const floor = floorSteps.flatMap(({ key, label, roles }): readonly Step[] => {
    const stations = roles.flatMap((role) => stationsOfRole(currentCatalog().floor, role)).map(({ id }) => id);
    // What the shop does not do itself is no step.
    if (stations.length === 0) return [];
    const operations = pair.operations.filter((operation) => stations.includes(operation.station));
    const isDone = operations.every((operation) => operation.state === "done");
    const hasBegun = operations.some((operation) => operation.startedAt !== null);
    const lastEnd = operations.reduce<Date | null>((latest, { finishedAt }) => later(latest, finishedAt), null);
    return [step(key, label, isDone ? "done" : hasBegun ? "now" : "to-come", isDone ? lastEnd : null)];
  });
  const isShipped = isOneOf(shippedStates, order.state);
  return [
    accepted,
    ...confirmed,
    ready,
    ...floor,
    step("shipped", w.shipped, isShipped ? "done" : "to-come", order.deliveredAt),
  ];
}

function step(key: string, label: string, state: Step["state"], at: Date | null): Step {
  return { key, label, state, at: at?.toISOString() ?? null };
}

function later(a: Date | null, b: Date | null): Date | null {
  if (a === null || b === null) return a ?? b;
  return a > b ? a : b;
}
