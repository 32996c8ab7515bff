/** Actors, contexts and stock for services tests. Staff sign in through lib/auth, as the people of the shop do. */
import { type Actor, signIn, systemActor, takeOnStaff, visitor } from "#auth";
import type { Db } from "#data/client";
import { insertStrips, type NewStrip } from "#data/strips";
import type { Outcome } from "#engine/units";
import type { Context } from "#services";
import { countingIds } from "../ids";

/** Tuesday 10 November 2026, 10:00 in Denver: PB-3 is in force. */
export const shopNow = new Date("2026-11-10T17:00:00.000Z");

export function daysAfter(start: Date, days: number): Date {
  return new Date(start.getTime() + days * 86_400_000);
}

/** The value of an outcome that must have succeeded. */
export function must<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(`refused: ${JSON.stringify(outcome.refusal)}`);
  return outcome.value;
}

export interface TestShop {
  readonly desk: Actor;
  readonly secondDesk: Actor;
  readonly maker: Actor;
  readonly owner: Actor;
  /** A context of this actor at this instant. */
  readonly as: (actor: Actor, now?: Date) => Context;
  readonly visitor: Context;
}

/** A shop with four people in it. */
export async function openShop(db: Db): Promise<TestShop> {
  const newId = countingIds("id");
  const as = (actor: Actor, now: Date = shopNow): Context => ({ actor, now, newId, db });
  const [desk, secondDesk, maker, owner] = await peopleIn(db);
  return { desk, secondDesk, maker, owner, as, visitor: as(visitor()) };
}

type People = readonly [desk: Actor, secondDesk: Actor, maker: Actor, owner: Actor];

let taken: { readonly rows: Awaited<ReturnType<Db["staff"]["findMany"]>>; readonly people: People } | undefined;

/** Taken on and signed in once a worker; later shops have the same people, as a password costs a while on purpose. */
async function peopleIn(db: Db): Promise<People> {
  if (taken === undefined) {
    const people = await takeOnPeople();
    taken = { rows: await db.staff.findMany(), people };
  } else {
    await db.staff.createMany({ data: [...taken.rows] });
  }
  return taken.people;
}

async function takeOnPeople(): Promise<People> {
  const people = [
    { name: "Desk 1", role: "desk", email: "desk1@thistle-yard.example" },
    { name: "Desk 2", role: "desk", email: "desk2@thistle-yard.example" },
    { name: "Mo Maker", role: "maker", email: "maker@thistle-yard.example" },
    { name: "Ola Owner", role: "owner", email: "owner@thistle-yard.example" },
  ] as const;
  const actors: Actor[] = [];
  for (const person of people) {
    const password = "larch-board-seven";
    must(await takeOnStaff(systemActor("test"), { ...person, password }, shopNow));
    actors.push(must(await signIn({ email: person.email, password, address: "127.0.0.1" }, shopNow)).actor);
  }
  return actors as unknown as People;
}

/** Alike strips of a species, two from each board, so that every match succeeds. */
export function strips(species: string, count: number, modulusMpa: number, densityKgM3: number): readonly NewStrip[] {
  return Array.from({ length: count }, (_, index) => ({
    id: `${species}-${String(index + 1).padStart(3, "0")}`,
    species,
    board: `${species}-board-${Math.floor(index / 2)}`,
    modulusMpa: modulusMpa + (index % 5) * 20,
    densityKgM3,
    // Large enough for every model of the demo.
    widthMm: 22.5,
    heightMm: 17,
    lengthMm: 1750,
    grade: "W",
    location: `rack ${1 + (index % 4)}`,
    measuredAt: daysAfter(shopNow, -60 + (index % 30)),
  }));
}

/** Aspen and ash for some pairs of the models' usual blend. */
export async function stockWood(db: Db, count = 160): Promise<void> {
  await insertStrips(db, [...strips("aspen", count, 8910, 426), ...strips("ash", count, 13_200, 670)]);
}
