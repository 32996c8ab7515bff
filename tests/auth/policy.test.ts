import { describe, expect, it } from "vitest";
import { type Action, type Actor, permit, policy, type Subject, systemActor, visitor } from "#auth";
import { mintGuest, mintStaff } from "#auth/actor";

const kinds = ["sheet", "quote", "club", "order", "pair"] as const;
const byPassword = { id: "session-1", kind: "full" } as const;
const subjects: readonly Subject[] = kinds.map((kind) => ({ kind, id: `${kind}-1` }));
const desk = mintStaff({ id: "d", name: "Desk", role: "desk" }, byPassword);
const maker = mintStaff({ id: "m", name: "Maker", role: "maker" }, byPassword);
const owner = mintStaff({ id: "o", name: "Owner", role: "owner" }, byPassword);

/** What each person may do at all, with every link in hand. */
function allowedTo(actor: Actor): readonly Action[] {
  const actions = Object.keys(policy) as Action[];
  return actions
    .filter((action) => [undefined, ...subjects].some((subject) => permit(actor, action, subject).ok))
    .sort();
}

// Written down from the roles, not copied from the table: makers see no prices or addresses, the skier only their own.
const skierMay: readonly Action[] = [
  "artwork.read",
  "artwork.upload",
  "club.accept",
  "club.read",
  "contact.prove",
  "deposit.choose",
  "first-owner.make",
  "learning.show",
  "order.read",
  "pair.progress",
  "proof.answer",
  "quote.accept",
  "quote.read",
  "quote.reprice",
  "rights.confirm",
  "sheet.change",
  "sheet.quote",
  "sheet.read",
  "sheet.start",
];
const makerMay: readonly Action[] = [
  "account.own",
  "artwork.read",
  "bench.record",
  "build-sheet.read",
  "cautions.read",
  "incident.report",
  "learning.show",
  "pair.progress",
  "pair.read",
  "pair.rework",
  "pair.work",
  "queue.read",
  "strips.decide",
];
const deskMayNot: readonly Action[] = [
  "bench.record",
  "cautions.list",
  "device.enrol",
  "first-owner.make",
  "incident.decide",
  "learning.approve",
  "learning.decide",
  "order.ship-unpaid",
  "pair.override",
  "pair.rework",
  "pair.work",
  "payment.waive",
  "person.erase",
  "person.export",
  "press-slot.release",
  "promise.hard",
  "queue.reorder",
  "quote.override",
  "retention.set",
  "staff.manage",
  "strips.decide",
  "wall.open",
  "what-if.apply",
];

describe("permit", () => {
  it("lets a passer-by start a sheet, see how far off computed is from measured, type a first owner's code, and nothing else", () => {
    expect(allowedTo(visitor())).toEqual(["first-owner.make", "learning.show", "sheet.start"]);
  });

  it("lets a skier do exactly what their links open", () => {
    expect(allowedTo(mintGuest(subjects))).toEqual(skierMay);
  });

  it("cannot be stretched from one sheet to another, or from one kind of link to another", () => {
    const holder = mintGuest([{ kind: "sheet", id: "sheet-1" }]);
    expect(permit(holder, "sheet.read", { kind: "sheet", id: "sheet-1" }).ok).toBe(true);
    for (const subject of [
      { kind: "sheet", id: "sheet-2" },
      { kind: "quote", id: "sheet-1" },
    ] as const) {
      expect(permit(holder, "sheet.read", subject).ok).toBe(false);
    }
    expect(permit(mintGuest([{ kind: "pair", id: "pair-1" }]), "order.read", { kind: "order", id: "pair-1" }).ok).toBe(
      false,
    );
  });

  it("lets a maker work on the floor and see no prices, quotes or customers", () => {
    expect(allowedTo(maker)).toEqual(makerMay);
  });

  it("lets the desk do everything but the floor's work and the owner's decisions", () => {
    const all = (Object.keys(policy) as Action[]).sort();
    expect(allowedTo(desk)).toEqual(all.filter((action) => !deskMayNot.includes(action)));
  });

  it("lets the owner and the program itself do everything in the table", () => {
    const all = (Object.keys(policy) as Action[]).sort();
    expect(allowedTo(owner)).toEqual(all);
    expect(allowedTo(systemActor("test"))).toEqual(all);
  });

  it("lets a maker with a short code do the floor's work and not mind their account", () => {
    const onFloor = mintStaff({ id: "m", name: "Maker", role: "maker" }, { id: "session-2", kind: "floor" });
    expect(allowedTo(onFloor)).toEqual(makerMay.filter((action) => action !== "account.own"));
  });

  it("lets an owner with a short code decide nothing that is an owner's", () => {
    const onFloor = mintStaff({ id: "o", name: "Owner", role: "owner" }, { id: "session-2", kind: "floor" });
    expect(allowedTo(onFloor)).toEqual(makerMay.filter((action) => action !== "account.own"));
  });

  it("lets a screen on the wall read the queue and no more than a passer-by beside", () => {
    const wall: Subject = { kind: "wall", id: "wall-1" };
    const screen = mintGuest([wall]);
    expect((Object.keys(policy) as Action[]).filter((action) => permit(screen, action, wall).ok).sort()).toEqual([
      "first-owner.make",
      "learning.show",
      "queue.read",
      "sheet.start",
    ]);
  });

  it("says to a guest that signing in might help", () => {
    expect(permit(visitor(), "queue.read")).toEqual({
      ok: false,
      refusal: { code: "not-allowed", action: "queue.read", signIn: true },
    });
    expect(permit(maker, "price.read")).toMatchObject({ ok: false, refusal: { signIn: false } });
  });
});

describe("Actor", () => {
  it("cannot be written by hand", () => {
    // @ts-expect-error an actor is minted in lib/auth, never written as a literal
    const forged: Actor = { kind: "staff", staffId: "x", name: "X", role: "owner" };
    expect(forged.kind).toBe("staff");
  });
});
