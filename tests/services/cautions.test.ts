/** The yes to the cautions: by whom, for which season, to which texts. */
import { afterEach, describe, expect, it, vi } from "vitest";
import { systemActor } from "#auth";
import { eventsOf } from "#data/events";
import { isoDate } from "#engine/units";
import { listCautionAnswers, readMyCautions, sayCautionsRead } from "#services";
import * as current from "#shop/catalogue/current";
import { seasonLabel, seasonOf } from "#shop/time/season";
import { must, openShop, shopNow } from "../support/builders/shop";
import { databaseForTests } from "../support/db";

const db = databaseForTests();
const denied = { ok: false, refusal: { code: "not-allowed" } };

afterEach(() => vi.restoreAllMocks());

describe("the season", () => {
  it("lasts from its first day to the day before it, a year later", () => {
    const of = (day: string) => seasonOf(isoDate(day), "09-01");
    expect([of("2026-08-31"), of("2026-09-01"), of("2026-12-31"), of("2027-01-01"), of("2027-08-31")]).toEqual([
      2025, 2026, 2026, 2026, 2026,
    ]);
    expect([seasonLabel(2026, "09-01"), seasonLabel(2099, "09-01"), seasonLabel(2026, "01-01")]).toEqual([
      "2026/27",
      "2099/00",
      "2026",
    ]);
    expect(seasonOf(isoDate("2026-01-01"), "01-01")).toBe(2026);
  });
});

describe("the yes to the cautions", () => {
  it("is said once a season, kept with the mark of the texts, and stands in the record", async () => {
    const shop = await openShop(db());
    const maker = shop.as(shop.maker);
    const before = must(await readMyCautions(maker));
    expect(before).toMatchObject({ name: "Mo Maker", season: "2026/27", state: "never", saidAt: null });
    const { textsHash } = before;
    expect(must(await sayCautionsRead(maker, { textsHash }))).toEqual({ season: "2026/27" });
    const after = must(await readMyCautions(shop.as(shop.maker, new Date("2027-08-31T18:00:00Z"))));
    expect(after).toMatchObject({ state: "said", saidAt: shopNow.toISOString(), textsHash });
    // Said twice is kept once.
    must(await sayCautionsRead(maker, { textsHash }));
    const staffId = shop.maker.kind === "staff" ? shop.maker.staffId : "";
    const said = await eventsOf(db(), "staff", [staffId]);
    expect(said.map(({ facts, actorName }) => [facts, actorName])).toEqual([
      [{ kind: "cautions-read", data: { season: 2026, textsHash } }, "Mo Maker"],
    ]);
    expect(await db().cautionYes.count()).toBe(1);
    const next = must(await readMyCautions(shop.as(shop.maker, new Date("2027-09-01T18:00:00Z"))));
    expect(next).toMatchObject({ state: "new-season", season: "2027/28", saidAt: shopNow.toISOString() });
  });

  it("is asked again when a text changes, and holds again when the text is put back", async () => {
    const shop = await openShop(db());
    const owner = shop.as(shop.owner);
    const { textsHash } = must(await readMyCautions(owner));
    must(await sayCautionsRead(owner, { textsHash }));
    const catalog = current.currentCatalog();
    const [first, ...others] = catalog.safety.hazards;
    if (first === undefined) throw new Error("no hazard");
    const changed = { ...catalog.safety, hazards: [{ ...first, full: `${first.full} And more.` }, ...others] };
    vi.spyOn(current, "currentCatalog").mockReturnValue({ ...catalog, safety: changed });
    const again = must(await readMyCautions(owner));
    expect(again).toMatchObject({ state: "texts-changed", saidAt: shopNow.toISOString() });
    expect(again.textsHash).not.toBe(textsHash);
    // What was on the screen is not what stands there now.
    expect(await sayCautionsRead(owner, { textsHash })).toMatchObject({
      ok: false,
      refusal: { code: "cautions-changed" },
    });
    must(
      await sayCautionsRead(shop.as(shop.owner, new Date(shopNow.getTime() + 1000)), { textsHash: again.textsHash }),
    );
    expect(must(await readMyCautions(owner)).state).toBe("said");
    vi.restoreAllMocks();
    expect(must(await readMyCautions(owner)).state).toBe("said");
  });

  it("concerns makers with the floor, the desk with what leaves it, owners with everything", async () => {
    const shop = await openShop(db());
    const idsFor = async (actor: typeof shop.desk) => {
      const { stations, general } = must(await readMyCautions(shop.as(actor)));
      return new Set([...stations.flatMap(({ cautions }) => cautions), ...general].map(({ id }) => id));
    };
    const [desk, maker, owner] = [await idsFor(shop.desk), await idsFor(shop.maker), await idsFor(shop.owner)];
    const all = current.currentCatalog().safety.hazards.map(({ id }) => id);
    expect([...owner].sort()).toEqual([...all].sort());
    expect(new Set([...desk, ...maker])).toEqual(new Set(all));
    expect(maker.has("press-force")).toBe(true);
    expect(maker.has("avalanche")).toBe(false);
    expect(desk.has("avalanche")).toBe(true);
    expect(desk.has("press-force")).toBe(false);
    expect(must(await readMyCautions(shop.as(shop.maker))).stations.map(({ number }) => number)).toEqual(
      current.currentCatalog().floor.stations.map(({ number }) => number),
    );
  });

  it("is seen by the owner, who owes it first, without those who have left; skiers have none", async () => {
    const shop = await openShop(db());
    const desk = shop.as(shop.desk);
    const { textsHash } = must(await readMyCautions(desk));
    must(await sayCautionsRead(desk, { textsHash }));
    await db().staff.updateMany({ where: { name: "Desk 2" }, data: { closedAt: shopNow } });
    const seen = must(await listCautionAnswers(shop.as(shop.owner)));
    expect(seen.map(({ name, role, state, saidAt }) => [name, role, state, saidAt])).toEqual([
      ["Mo Maker", "maker", "never", null],
      ["Ola Owner", "owner", "never", null],
      ["Desk 1", "desk", "said", shopNow.toISOString()],
    ]);
    for (const actor of [shop.desk, shop.maker]) expect(await listCautionAnswers(shop.as(actor))).toMatchObject(denied);
    expect(await listCautionAnswers(shop.visitor)).toMatchObject(denied);
    // Nor can a visitor or the program itself say yes for anybody.
    for (const ctx of [shop.visitor, shop.as(systemActor("sweep"))]) {
      expect(await readMyCautions(ctx)).toMatchObject(denied);
      expect(await sayCautionsRead(ctx, { textsHash })).toMatchObject(denied);
    }
    expect(await db().cautionYes.count()).toBe(1);
  });
});
