/** The floor's stations and the four conditions, as the few steps a skier wants to know. */
import type { OrderAloneRecord } from "#data/orders";
import type { PairRecord } from "#data/pairs";
import { isOneOf, type StationRole, shippedStates, stationsOfRole } from "#engine/floor";
import { currentCatalog } from "#shop/catalogue/current";
import type { ProgressView } from "./views";

type Step = ProgressView["steps"][number];

const floorSteps: readonly { readonly key: string; readonly label: string; readonly roles: readonly StationRole[] }[] =
  [
    { key: "core", label: "Core: strips chosen, glued and milled", roles: ["strips", "core", "profile", "sidewalls"] },
    { key: "base", label: "Base and edges", roles: ["base", "edges"] },
    { key: "print", label: "Graphic printed", roles: ["print"] },
    { key: "press", label: "Laid up and pressed", roles: ["kit", "lay-up", "press"] },
    { key: "finish", label: "Trimmed, ground and waxed", roles: ["trim", "finish"] },
    { key: "check", label: "Measured, matched and packed", roles: ["check"] },
  ];

export function progressSteps(pair: PairRecord, order: OrderAloneRecord): readonly Step[] {
  const accepted = step("accepted", "Order placed", "done", order.acceptedAt);
  const ready = step(
    "ready-to-build",
    "Deposit, specification, proof and rights complete",
    order.clockStartedAt === null ? "now" : "done",
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
    ready,
    ...floor,
    step("shipped", "Sent or fetched", isShipped ? "done" : "to-come", order.deliveredAt),
  ];
}

function step(key: string, label: string, state: Step["state"], at: Date | null): Step {
  return { key, label, state, at: at?.toISOString() ?? null };
}

function later(a: Date | null, b: Date | null): Date | null {
  if (a === null || b === null) return a ?? b;
  return a > b ? a : b;
}
