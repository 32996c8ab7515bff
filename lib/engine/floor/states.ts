/**
 * The states of everything that moves through the shop, and the only moves between them, as data. A move has a name (the verb
 * a person would use), so that pages can offer it and events can record it. Nothing here reads a clock or a database: one
 * function of the use cases asks this table before a state is written.
 */

/** Which states each kind of thing may have; its first one first. Words of the pages are keyed by these. */
export const states = {
  sheet: ["open", "quoted", "turned-down"],
  /** What is stored; that one has expired or was replaced is read from its days and its successor. */
  quote: ["open", "accepted", "withdrawn"],
  order: ["waiting", "released", "building", "ready", "shipped", "delivered", "cancelled"],
  pair: ["waiting", "released", "building", "ready", "shipped", "delivered", "cancelled"],
  /** A station's work on a pair. `redo`: it failed and its next visit does it again. */
  operation: ["blocked", "ready", "running", "done", "redo"],
  ski: ["good", "held", "scrapped"],
  /** What the pair's proof has come to. */
  proof: ["none", "issued", "changes-asked", "approved"],
  /** One issue of a proof; the next has a row of its own. */
  "proof-issue": ["issued", "changes-asked", "approved", "void"],
  payment: ["requested", "received", "waived"],
  strip: ["free", "reserved", "used"],
  incident: ["open", "decided", "closed"],
  notice: ["draft", "sent", "dropped"],
  /** A letter under way. `dead`: every try failed and a person must look at it. */
  letter: ["waiting", "sent", "dead"],
} as const;

export type StatefulKind = keyof typeof states;
export type StatesByKind = { readonly [K in StatefulKind]: (typeof states)[K][number] };

export type SheetState = StatesByKind["sheet"];
export type QuoteState = StatesByKind["quote"];
export type OrderState = StatesByKind["order"];
export type OperationState = StatesByKind["operation"];
export type SkiState = StatesByKind["ski"];
export type ProofState = StatesByKind["proof"];
export type ProofIssueState = StatesByKind["proof-issue"];
export type PaymentState = StatesByKind["payment"];
export type IncidentState = StatesByKind["incident"];
export type NoticeState = StatesByKind["notice"];
export type LetterState = StatesByKind["letter"];

/** A quote as it is shown: what is stored, or what its days and its successor make of an open or withdrawn one. */
export const shownQuoteStates = [...states.quote, "expired", "replaced"] as const;
export type ShownQuoteState = (typeof shownQuoteStates)[number];

/** How binding a day is, weakest first. */
export const promiseClasses = ["estimate", "promise", "hard-date"] as const;
export type PromiseClass = (typeof promiseClasses)[number];

export interface Move<State extends string> {
  readonly verb: string;
  readonly from: State;
  readonly to: State;
  /** The move is an exception to the normal course: who does it must say why. */
  readonly needsReason?: true;
}

const order = [
  { verb: "release", from: "waiting", to: "released" },
  { verb: "start", from: "released", to: "building" },
  { verb: "finish", from: "building", to: "ready" },
  // The last tick is taken back, or a ski is built again.
  { verb: "reopen", from: "ready", to: "building", needsReason: true },
  { verb: "ship", from: "ready", to: "shipped" },
  { verb: "deliver", from: "shipped", to: "delivered" },
  { verb: "cancel", from: "waiting", to: "cancelled", needsReason: true },
  { verb: "cancel", from: "released", to: "cancelled", needsReason: true },
  { verb: "cancel", from: "building", to: "cancelled", needsReason: true },
  { verb: "cancel", from: "ready", to: "cancelled", needsReason: true },
] as const satisfies readonly Move<OrderState>[];

/** Every move of the shop. What leaves the normal course needs a reason. */
export const moves: { readonly [K in StatefulKind]: readonly Move<StatesByKind[K]>[] } = {
  sheet: [
    // A quoted sheet stays quoted; changing it opens a new sheet, so that the quote keeps what it was made from.
    { verb: "quote", from: "open", to: "quoted" },
    { verb: "turn-down", from: "open", to: "turned-down", needsReason: true },
  ],
  quote: [
    { verb: "accept", from: "open", to: "accepted" },
    // By somebody, or because a new revision takes its place.
    { verb: "withdraw", from: "open", to: "withdrawn", needsReason: true },
  ],
  order,
  /** A pair goes the way of its order. */
  pair: order,
  operation: [
    { verb: "unblock", from: "blocked", to: "ready" },
    { verb: "block", from: "ready", to: "blocked", needsReason: true },
    { verb: "start", from: "ready", to: "running" },
    { verb: "finish", from: "running", to: "done" },
    { verb: "undo", from: "running", to: "ready", needsReason: true },
    { verb: "undo", from: "done", to: "running", needsReason: true },
    { verb: "fail", from: "running", to: "redo", needsReason: true },
    // What was made is scrap or spare: the branch begins again.
    { verb: "reset", from: "running", to: "blocked", needsReason: true },
    { verb: "reset", from: "done", to: "blocked", needsReason: true },
    { verb: "reset", from: "redo", to: "blocked", needsReason: true },
  ],
  ski: [
    // Parked while the other one is built again, and back when both are worked on together.
    { verb: "hold", from: "good", to: "held", needsReason: true },
    { verb: "join", from: "held", to: "good" },
    { verb: "scrap", from: "good", to: "scrapped", needsReason: true },
  ],
  proof: [
    { verb: "issue", from: "none", to: "issued" },
    { verb: "ask-changes", from: "issued", to: "changes-asked" },
    { verb: "issue", from: "changes-asked", to: "issued" },
    { verb: "approve", from: "issued", to: "approved" },
    // An edit of what is printed voids the proof: a new one is issued for the new outline.
    { verb: "void", from: "issued", to: "none", needsReason: true },
    { verb: "void", from: "changes-asked", to: "none", needsReason: true },
    { verb: "void", from: "approved", to: "none", needsReason: true },
  ],
  "proof-issue": [
    { verb: "ask-changes", from: "issued", to: "changes-asked" },
    { verb: "approve", from: "issued", to: "approved" },
    { verb: "void", from: "issued", to: "void", needsReason: true },
    { verb: "void", from: "changes-asked", to: "void", needsReason: true },
    { verb: "void", from: "approved", to: "void", needsReason: true },
  ],
  payment: [
    { verb: "receive", from: "requested", to: "received" },
    { verb: "waive", from: "requested", to: "waived", needsReason: true },
  ],
  strip: [
    { verb: "reserve", from: "free", to: "reserved" },
    { verb: "release", from: "reserved", to: "free" },
    { verb: "use", from: "reserved", to: "used" },
  ],
  incident: [
    { verb: "decide", from: "open", to: "decided" },
    { verb: "close", from: "open", to: "closed" },
    { verb: "close", from: "decided", to: "closed" },
  ],
  notice: [
    { verb: "send", from: "draft", to: "sent" },
    { verb: "drop", from: "draft", to: "dropped" },
  ],
  letter: [
    { verb: "send", from: "waiting", to: "sent" },
    { verb: "give-up", from: "waiting", to: "dead" },
    { verb: "send-again", from: "dead", to: "waiting" },
  ],
};
