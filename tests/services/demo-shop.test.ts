import { describe, expect, it } from "vitest";
import { signIn } from "#auth";
import {
  deskOverview,
  listClubs,
  listIncidents,
  listNotices,
  listQuotes,
  queueBoard,
  readClub,
  search,
} from "#services";
import { seedDemo } from "../../prisma/seed";
import { must, shopNow } from "../support/builders/shop";
import { databaseForTests } from "../support/db";
import { countingIds } from "../support/ids";

const db = databaseForTests();

describe("the demo shop", () => {
  it("has a live queue of about thirty open pairs at all stages, whenever it is first started", async () => {
    const { signIns } = await seedDemo(shopNow, db());
    const desk = signIns.find((person) => person.role === "desk");
    const { actor } = must(
      await signIn({ email: desk?.email ?? "", password: desk?.password ?? "", address: "127.0.0.1" }, shopNow),
    );
    const ctx = { actor, now: shopNow, newId: countingIds(), db: db() };
    const board = must(await queueBoard(ctx, { days: 14 }));
    expect(board.pairs.length).toBeGreaterThanOrEqual(28);
    expect(board.pairs.length).toBeLessThanOrEqual(34);
    expect(board.stations.filter((station) => station.ready + station.running > 0).length).toBeGreaterThanOrEqual(10);
    expect(board.pressPlan.length).toBeGreaterThan(0);
    expect(board.waitingOn.length).toBeGreaterThanOrEqual(5);
    expect(board.days.some((day) => day.cells.length > 0)).toBe(true);
    const overview = must(await deskOverview(ctx));
    expect(overview.counts).toMatchObject({ callBacksDue: 1, reviewsAsked: 1 });
    expect(must(await listQuotes(ctx, { state: "expired" })).total).toBe(2);
    expect(must(await search(ctx, { text: "alder" })).length).toBeGreaterThan(0);
    // A club of four, three of them with a quote that can be accepted.
    const [club] = must(await listClubs(ctx));
    expect(club).toMatchObject({ skiers: 4, quoted: 3, ordered: 0 });
    expect(must(await readClub(ctx, { clubId: club?.clubId as never })).open?.quoteIds).toHaveLength(3);
    // One breakdown lies behind it, and one of its letters still waits for a person.
    expect(must(await listIncidents(ctx))).toMatchObject([{ state: "closed", input: { kind: "press-down" } }]);
    expect(must(await listNotices(ctx)).filter(({ state }) => state === "draft")).toHaveLength(1);
    const short = await db().event.count({
      where: { kind: "pair-made", data: { path: ["strips", "isMade"], equals: false } },
    });
    expect(short).toBe(1);
    // Nothing runs over a station's room, and one press takes one pair after the other, laid up before it is pressed.
    expect(board.stations.filter(({ running, capacity }) => running > capacity)).toEqual([]);
    const pairs = await db().pair.findMany({ where: { state: "building" }, include: { operations: true } });
    const visit = (pair: (typeof pairs)[number], station: string) =>
      pair.operations.find((each) => each.station === station && each.state === "done");
    const pressed = pairs.flatMap((pair) => {
      const [layUp, press] = [visit(pair, "lay-up"), visit(pair, "press")];
      return layUp === undefined || press === undefined ? [] : [{ layUp, press }];
    });
    expect(pressed.length).toBeGreaterThan(2);
    expect(pressed.every(({ layUp, press }) => Number(layUp.finishedAt) <= Number(press.startedAt))).toBe(true);
    const stays = pressed
      .map(({ press }) => ({ press: press.press, from: Number(press.startedAt), to: Number(press.finishedAt) }))
      .sort((a, b) => a.from - b.from);
    expect(stays.every(({ press }) => press === "press-1")).toBe(true);
    expect(stays.slice(1).every(({ from }, index) => from >= (stays[index]?.to ?? 0))).toBe(true);
  }, 300_000);
});
