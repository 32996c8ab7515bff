/**
 * Every permission against everybody who may ask, as one explicit table: G = a link to one of these opens it, "always" for any
 * passer-by; then desk, maker, owner by password, and +code where those may do it by short code on a device of the floor too. Complete by type: an action without a row does not compile. The shop's rule, no source:
 * makers see no price and no customer, the skier only their own, money given away and other people's promises are the owner's.
 */
import { describe, expect, it } from "vitest";
import { type Action, permit, policy, type Subject, systemActor, visitor } from "#auth";
import { mintGuest, mintStaff } from "#auth/actor";

const table: Readonly<Record<Action, string>> = {
  "sheet.start": "always        | desk       owner",
  "sheet.read": "sheet          | desk       owner",
  "sheet.change": "sheet        | desk       owner",
  "sheet.quote": "sheet         | desk       owner",
  "sheet.list": "               | desk       owner",
  "artwork.upload": "sheet order | desk      owner",
  "artwork.read": "sheet quote order | desk maker owner +code",
  "quote.read": "quote          | desk       owner",
  "quote.accept": "quote        | desk       owner",
  "quote.reprice": "quote       | desk       owner",
  "quote.list": "               | desk       owner",
  "quote.withdraw": "           | desk       owner",
  "quote.discount": "           | desk       owner",
  "quote.override": "           |            owner",
  "call.work": "                | desk       owner",
  "search.everything": "        | desk       owner",
  "club.work": "                | desk       owner",
  "club.read": "club            | desk       owner",
  "club.accept": "club          | desk       owner",
  "order.read": "order          | desk       owner",
  "order.list": "               | desk       owner",
  "order.cancel": "             | desk       owner",
  "order.change": "             | desk       owner",
  "order.confirm": "            | desk       owner",
  "order.correct-buyer": "      | desk       owner",
  "contact.prove": "order       | desk       owner",
  "customer.read": "            | desk       owner",
  "customer.merge": "           | desk       owner",
  "customer.correct": "         | desk       owner",
  "person.export": "            |            owner",
  "person.erase": "             |            owner",
  "retention.set": "            |            owner",
  "doors.release": "            | desk       owner",
  "deposit.choose": "order      | desk       owner",
  "deposit.record": "           | desk       owner",
  "payment.record": "           | desk       owner",
  "payment.waive": "            |            owner",
  "order.ship-unpaid": "        |            owner",
  "proof.issue": "              | desk       owner",
  "proof.answer": "order        | desk       owner",
  "rights.confirm": "sheet quote order | desk owner",
  "pair.progress": "order pair  | desk maker owner +code",
  "pair.read": "                | desk maker owner +code",
  "pair.work": "                |      maker owner +code",
  "pair.rework": "              |      maker owner +code",
  "strips.decide": "            |      maker owner +code",
  "pair.override": "            |            owner",
  "build-sheet.read": "         | desk maker owner +code",
  "queue.read": "wall           | desk maker owner +code",
  "queue.order": "              | desk       owner",
  "queue.reorder": "            |            owner",
  "promise.read": "             | desk       owner",
  "promise.change": "           | desk       owner",
  "promise.hard": "             |            owner",
  "press-slot.release": "       |            owner",
  "incident.report": "          | desk maker owner +code",
  "incident.decide": "          |            owner",
  "notice.send": "              | desk       owner",
  "what-if.ask": "              | desk       owner",
  "what-if.apply": "            |            owner",
  "bench.record": "             |      maker owner +code",
  "learning.read": "            | desk       owner",
  "learning.decide": "          |            owner",
  "learning.approve": "         |            owner",
  "learning.show": "always      | desk maker owner +code",
  "price.read": "               | desk       owner",
  "cautions.read": "            | desk maker owner +code",
  "cautions.list": "            |            owner",
  "staff.manage": "             |            owner",
  "account.own": "              | desk maker owner",
  "device.enrol": "             |            owner",
  "wall.open": "                |            owner",
  "first-owner.make": "always   |            owner",
  "link.issue": "               | desk       owner",
  "link.revoke": "              | desk       owner",
};

const kinds: readonly Subject["kind"][] = ["sheet", "quote", "club", "order", "pair", "wall"];
const byPassword = { id: "session-1", kind: "full" } as const;
const byCode = { id: "session-2", kind: "floor" } as const;
const roles = ["desk", "maker", "owner"] as const;

const rows = Object.entries(table).map(([action, row]) => {
  const [links = "", people = ""] = row.split("|").map((part) => part.trim());
  return { action: action as Action, links: links.split(" "), people: people.split(/ +/) };
});

describe("who may do what", () => {
  it("is this table, no row more", () => {
    expect(Object.keys(policy).sort()).toEqual(Object.keys(table).sort());
  });

  it.each(rows)("$action: $people", ({ action, people }) => {
    for (const role of roles) {
      const actor = mintStaff({ id: "s-1", name: "Ada", role }, byPassword);
      const answer = permit(actor, action, { kind: "order", id: "o-1" });
      expect([role, answer.ok]).toEqual([role, people.includes(role)]);
      expect(permit(actor, action).ok).toBe(answer.ok);
      if (!answer.ok) expect(answer.refusal).toEqual({ code: "not-allowed", action, signIn: false });
      const onFloor = permit(mintStaff({ id: "s-1", name: "Ada", role }, byCode), action);
      expect([role, onFloor.ok]).toEqual([role, people.includes(role) && people.includes("+code")]);
    }
    expect(permit(systemActor("test"), action).ok).toBe(true);
  });

  it.each(rows)("$action by link: $links", ({ action, links }) => {
    const isAlways = links.includes("always");
    for (const kind of kinds) {
      const subject: Subject = { kind, id: "mine" };
      const other: Subject = { kind, id: "another" };
      const holder = mintGuest([subject]);
      expect([kind, permit(holder, action, subject).ok]).toEqual([kind, isAlways || links.includes(kind)]);
      // The link of one thing opens no other of its kind, nothing of another kind, and nothing at large.
      expect([kind, permit(holder, action, other).ok]).toEqual([kind, isAlways]);
      expect(permit(holder, action).ok).toBe(isAlways);
      const elsewhere = kinds.filter((each) => each !== kind);
      expect(elsewhere.filter((each) => permit(holder, action, { kind: each, id: "mine" }).ok)).toEqual(
        isAlways ? elsewhere : [],
      );
      expect(permit(visitor(), action, subject).ok).toBe(isAlways);
    }
    const answer = permit(visitor(), action);
    if (!answer.ok) expect(answer.refusal).toEqual({ code: "not-allowed", action, signIn: true });
  });
});
