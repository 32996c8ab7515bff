/** A proxy that the settings do not name: noted once a day, told for a week after it was seen. Shop practice, no source. */
import { describe, expect, it } from "vitest";
import { visitor } from "#auth";
import { noteUnnamedProxy, unnamedProxySeen } from "#services/doors/unnamed-proxy";
import { minutesAfter } from "../support/clock";
import { databaseForTests } from "../support/db";
import { countingIds } from "../support/ids";

const db = databaseForTests();
const newId = countingIds("proxy");
/** Later than any other test's day: what a process has noted it remembers. */
const first = new Date("2040-05-01T08:00:00.000Z");
const at = (hours: number) => ({ actor: visitor(), db: db(), newId, now: minutesAfter(first, hours * 60) });
const noted = async () =>
  (await db().event.findMany({ orderBy: { seq: "asc" } })).map(({ at: when, actorKind }) => [
    when.toISOString(),
    actorKind,
  ]);

describe("a proxy nobody has named", () => {
  it("is noted at most once in a day, by the house and not by the visitor who came through it", async () => {
    expect(await unnamedProxySeen(at(0))).toBeNull();
    for (const hours of [0, 1, 23.9, 24.5, 30, 48.4, 49]) await noteUnnamedProxy(at(hours));
    expect(await noted()).toEqual([
      ["2040-05-01T08:00:00.000Z", "system"],
      ["2040-05-02T08:30:00.000Z", "system"],
      ["2040-05-03T09:00:00.000Z", "system"],
    ]);
  });

  it("is not noted again by a process that finds it noted by another", async () => {
    await noteUnnamedProxy(at(100));
    const [mine] = await db().event.findMany();
    if (mine === undefined) throw new Error("nothing was noted");
    await db().event.update({ where: { seq: mine.seq }, data: { at: at(130).now } });
    await noteUnnamedProxy(at(131));
    expect(await noted()).toEqual([[at(130).now.toISOString(), "system"]]);
  });

  it("is told with the instant it was last seen, until a week later", async () => {
    await noteUnnamedProxy(at(200));
    await noteUnnamedProxy(at(225));
    const last = at(225).now.toISOString();
    expect(await unnamedProxySeen(at(225))).toBe(last);
    expect(await unnamedProxySeen(at(225 + 7 * 24))).toBe(last);
    expect(await unnamedProxySeen(at(225 + 7 * 24 + 0.1))).toBeNull();
  });
});
