/**
 * Who may do what: one table. A use case asks it before anything else.
 * A guest may "always", "never", or only with a link to one of the named kinds of subject. Somebody of the staff may what their
 * role may, and by short code only what is done on the floor.
 */
import { accept, type Outcome, refuse } from "#engine/units";
import type { Actor, Subject } from "./actor";

interface Row {
  readonly guest: "always" | "never" | readonly Subject["kind"][];
  readonly desk: boolean;
  readonly maker: boolean;
  readonly owner: boolean;
  readonly system: boolean;
  /** Also for somebody who came in by short code on a device of the floor, where their role allows it. */
  readonly byCode: boolean;
}

const office = { desk: true, maker: false, owner: true, system: true, byCode: false } as const;
const everyone = { desk: true, maker: true, owner: true, system: true, byCode: true } as const;
const ownerOnly = { desk: false, maker: false, owner: true, system: true, byCode: false } as const;
const floor = { desk: false, maker: true, owner: true, system: true, byCode: true } as const;

export const policy = {
  // Sheets
  "sheet.start": { guest: "always", ...office },
  "sheet.read": { guest: ["sheet"], ...office },
  "sheet.change": { guest: ["sheet"], ...office },
  "sheet.quote": { guest: ["sheet"], ...office },
  "sheet.list": { guest: "never", ...office },
  "artwork.upload": { guest: ["sheet", "order"], ...office },
  "artwork.read": { guest: ["sheet", "quote", "order"], ...everyone },

  // Quotes
  "quote.read": { guest: ["quote"], ...office },
  "quote.accept": { guest: ["quote"], ...office },
  "quote.reprice": { guest: ["quote"], ...office },
  "quote.list": { guest: "never", ...office },
  "quote.withdraw": { guest: "never", ...office },
  "quote.discount": { guest: "never", ...office },
  "quote.override": { guest: "never", ...ownerOnly },

  // Calls and customers
  "call.work": { guest: "never", ...office },
  "search.everything": { guest: "never", ...office },

  // Customers, and what is known of a person
  "customer.read": { guest: "never", ...office },
  "customer.merge": { guest: "never", ...office },
  "customer.correct": { guest: "never", ...office },
  "person.export": { guest: "never", ...ownerOnly },
  "person.erase": { guest: "never", ...ownerOnly },
  "retention.set": { guest: "never", ...ownerOnly },
  "doors.release": { guest: "never", ...office },

  // Clubs
  "club.work": { guest: "never", ...office },
  "club.read": { guest: ["club"], ...office },
  "club.accept": { guest: ["club"], ...office },

  // Orders
  "order.read": { guest: ["order"], ...office },
  "order.list": { guest: "never", ...office },
  "order.cancel": { guest: "never", ...office },
  "order.change": { guest: "never", ...office },
  "order.confirm": { guest: "never", ...office },
  "order.correct-buyer": { guest: "never", ...office },
  "contact.prove": { guest: ["order"], ...office },
  "deposit.choose": { guest: ["order"], ...office },
  "deposit.record": { guest: "never", ...office },
  "payment.record": { guest: "never", ...office },
  "payment.waive": { guest: "never", ...ownerOnly },
  "order.ship-unpaid": { guest: "never", ...ownerOnly },
  "proof.issue": { guest: "never", ...office },
  "proof.answer": { guest: ["order"], ...office },
  "rights.confirm": { guest: ["sheet", "quote", "order"], ...office },

  // The floor
  "pair.progress": { guest: ["order", "pair"], ...everyone },
  "pair.read": { guest: "never", ...everyone },
  "pair.work": { guest: "never", ...floor },
  "pair.rework": { guest: "never", ...floor },
  "strips.decide": { guest: "never", ...floor },
  "pair.override": { guest: "never", ...ownerOnly },
  "build-sheet.read": { guest: "never", ...everyone },
  "queue.read": { guest: ["wall"], ...everyone },
  "queue.order": { guest: "never", ...office },
  "queue.reorder": { guest: "never", ...ownerOnly },
  "promise.read": { guest: "never", ...office },
  "promise.change": { guest: "never", ...office },
  "promise.hard": { guest: "never", ...ownerOnly },
  "press-slot.release": { guest: "never", ...ownerOnly },
  "incident.report": { guest: "never", ...everyone },
  "incident.decide": { guest: "never", ...ownerOnly },
  "notice.send": { guest: "never", ...office },
  "what-if.ask": { guest: "never", ...office },
  "what-if.apply": { guest: "never", ...ownerOnly },

  // What measured pairs teach
  "bench.record": { guest: "never", ...floor },
  "learning.read": { guest: "never", ...office },
  "learning.decide": { guest: "never", ...ownerOnly },
  "learning.approve": { guest: "never", ...ownerOnly },
  "learning.show": { guest: "always", ...everyone },

  // Cautions
  "cautions.read": { guest: "never", ...everyone },
  "cautions.list": { guest: "never", ...ownerOnly },

  // The office
  "price.read": { guest: "never", ...office },

  // People and what lets them in
  "staff.manage": { guest: "never", ...ownerOnly },
  "account.own": { guest: "never", ...everyone, byCode: false },
  "device.enrol": { guest: "never", ...ownerOnly },
  "wall.open": { guest: "never", ...ownerOnly },
  "first-owner.make": { guest: "always", ...ownerOnly },
  "link.issue": { guest: "never", ...office },
  "link.revoke": { guest: "never", ...office },
} as const satisfies Readonly<Record<string, Row>>;

export type Action = keyof typeof policy;

/** The person is not allowed to do it; `signIn` says that signing in might help. */
export interface NotAllowed {
  readonly code: "not-allowed";
  readonly action: Action;
  readonly signIn: boolean;
  readonly [parameter: string]: unknown;
}

/**
 * Asks the table.
 * @param subject what is acted on; without it a guest is allowed only what guests may always do
 */
export function permit(actor: Actor, action: Action, subject?: Subject): Outcome<void, NotAllowed> {
  if (mayDo(actor, policy[action], subject)) return accept(undefined);
  return refuse({ code: "not-allowed", action, signIn: actor.kind === "guest" });
}

function mayDo(actor: Actor, row: Row, subject: Subject | undefined): boolean {
  switch (actor.kind) {
    case "system":
      return row.system;
    case "staff":
      return row[actor.role] && (actor.sessionKind !== "floor" || row.byCode);
    case "guest":
      if (row.guest === "always") return true;
      if (row.guest === "never" || !subject || !row.guest.includes(subject.kind)) return false;
      return actor.grants.some((grant) => grant.kind === subject.kind && grant.id === subject.id);
  }
}
