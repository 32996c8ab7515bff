/**
 * The states of everything that moves through the shop, and the only moves between them, as data.
 * A move has a name (the verb a person would use), so that pages can offer it and events can record it.
 * Nothing here reads a clock or a database: services make each move a conditional update plus an event.
 */
export interface Move<State extends string> {
  readonly verb: string;
  readonly from: State;
  readonly to: State;
  /** The move is an exception to the normal course: who does it must say why. */
  readonly needsReason?: true;
}

export type SheetState = "open" | "quoted";
export type QuoteState = "open" | "accepted" | "expired" | "withdrawn";
export type OrderState = "waiting" | "released" | "building" | "ready" | "shipped" | "delivered" | "cancelled";
export type OperationState = "blocked" | "ready" | "running" | "done" | "redo";
export type SkiState = "good" | "held" | "scrapped";
export type ProofState = "none" | "issued" | "changes-asked" | "approved" | "locked";

/** Which states each kind of thing may have. */
export interface StatesByKind {
  readonly sheet: SheetState;
  readonly quote: QuoteState;
  readonly order: OrderState;
  readonly operation: OperationState;
  readonly ski: SkiState;
  readonly proof: ProofState;
}
export type StatefulKind = keyof StatesByKind;

export interface StateMachine<State extends string> {
  readonly initial: State;
  readonly states: readonly State[];
  readonly moves: readonly Move<State>[];
}

const cancellable = ["waiting", "released", "building", "ready"] as const;

/** Every state machine of the product. Moves off the normal course need a reason. */
export const stateMachines: { readonly [K in StatefulKind]: StateMachine<StatesByKind[K]> } = {
  sheet: {
    initial: "open",
    states: ["open", "quoted"],
    // A quoted sheet stays quoted; changing it opens a new sheet, so that the quote keeps what it was made from.
    moves: [{ verb: "quote", from: "open", to: "quoted" }],
  },
  quote: {
    initial: "open",
    states: ["open", "accepted", "expired", "withdrawn"],
    moves: [
      { verb: "accept", from: "open", to: "accepted" },
      { verb: "expire", from: "open", to: "expired" },
      { verb: "withdraw", from: "open", to: "withdrawn" },
      // The owner may stand by the old price after expiry; otherwise re-pricing makes a new revision.
      { verb: "honour", from: "expired", to: "accepted", needsReason: true },
    ],
  },
  order: {
    initial: "waiting",
    states: ["waiting", "released", "building", "ready", "shipped", "delivered", "cancelled"],
    moves: [
      { verb: "release", from: "waiting", to: "released" },
      { verb: "hold", from: "released", to: "waiting", needsReason: true },
      { verb: "start", from: "released", to: "building" },
      { verb: "finish", from: "building", to: "ready" },
      { verb: "reopen", from: "ready", to: "building", needsReason: true },
      { verb: "ship", from: "ready", to: "shipped" },
      { verb: "deliver", from: "shipped", to: "delivered" },
      ...cancellable.map((from) => ({ verb: "cancel", from, to: "cancelled", needsReason: true }) as const),
    ],
  },
  operation: {
    initial: "blocked",
    states: ["blocked", "ready", "running", "done", "redo"],
    moves: [
      { verb: "unblock", from: "blocked", to: "ready" },
      { verb: "block", from: "ready", to: "blocked", needsReason: true },
      { verb: "start", from: "ready", to: "running" },
      { verb: "stop", from: "running", to: "ready", needsReason: true },
      { verb: "finish", from: "running", to: "done" },
      { verb: "fail", from: "running", to: "redo", needsReason: true },
      { verb: "redo", from: "done", to: "redo", needsReason: true },
      { verb: "block", from: "redo", to: "blocked" },
      { verb: "unblock", from: "redo", to: "ready" },
    ],
  },
  ski: {
    initial: "good",
    states: ["good", "held", "scrapped"],
    moves: [
      { verb: "hold", from: "good", to: "held", needsReason: true },
      { verb: "pass", from: "held", to: "good", needsReason: true },
      { verb: "scrap", from: "good", to: "scrapped", needsReason: true },
      { verb: "scrap", from: "held", to: "scrapped", needsReason: true },
    ],
  },
  proof: {
    initial: "none",
    states: ["none", "issued", "changes-asked", "approved", "locked"],
    moves: [
      { verb: "issue", from: "none", to: "issued" },
      { verb: "ask-changes", from: "issued", to: "changes-asked" },
      { verb: "issue", from: "changes-asked", to: "issued" },
      { verb: "approve", from: "issued", to: "approved" },
      { verb: "lock", from: "approved", to: "locked" },
      // An edited order voids its proof: a new one is issued for the new outline.
      { verb: "void", from: "issued", to: "none", needsReason: true },
      { verb: "void", from: "changes-asked", to: "none", needsReason: true },
      { verb: "void", from: "approved", to: "none", needsReason: true },
      { verb: "void", from: "locked", to: "none", needsReason: true },
    ],
  },
};
