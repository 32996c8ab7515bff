import { describe, expect, it } from "vitest";
import { openSheet, readSheet, releaseSheet, saveSheet, search, takeOverSheet, turnDown } from "#services";
import { must, openShop, shopNow } from "../support/builders/shop";
import { databaseForTests } from "../support/db";

const db = databaseForTests();

describe("saveSheet", () => {
  it("keeps two fields that two desks saved over the same version", async () => {
    const shop = await openShop(db());
    const { sheet } = must(await openSheet(shop.as(shop.desk), { channel: "phone", phone: "303 555 0101" }));
    const { sheetId, version } = sheet;
    must(
      await saveSheet(shop.as(shop.desk), { sheetId, patch: { "answers.ability": "expert" }, baseVersion: version }),
    );
    const second = must(
      await saveSheet(shop.as(shop.secondDesk), {
        sheetId,
        patch: { "answers.homeSnow": "icy" },
        baseVersion: version,
      }),
    );
    expect(second.conflicts).toEqual([]);
    expect(second.sheet.answers).toMatchObject({ ability: "expert", homeSnow: "icy" });
  });

  it("tells a desk that the same field changed meanwhile and keeps the first value", async () => {
    const shop = await openShop(db());
    const { sheet } = must(await openSheet(shop.as(shop.desk), { channel: "phone" }));
    const { sheetId, version } = sheet;
    must(
      await saveSheet(shop.as(shop.desk), { sheetId, patch: { "answers.ability": "expert" }, baseVersion: version }),
    );
    const second = must(
      await saveSheet(shop.as(shop.secondDesk), {
        sheetId,
        patch: { "answers.ability": "learning" },
        baseVersion: version,
      }),
    );
    expect(second.conflicts).toEqual([{ path: "answers.ability", yours: "learning", theirs: "expert", by: "Desk 1" }]);
    expect(second.sheet.answers.ability).toBe("expert");
  });

  it("loses no field when ten saves of different fields meet", async () => {
    const shop = await openShop(db());
    const { sheet } = must(await openSheet(shop.as(shop.desk), { channel: "phone" }));
    const fields: Readonly<Record<string, unknown>> = {
      "answers.ability": "expert",
      "answers.homeSnow": "icy",
      "answers.turnSize": "short",
      "answers.temperament": "fast",
      "answers.offPistePercent": 10,
      "answers.packKg": 3,
      "answers.ageYears": 40,
      "answers.daysTotal": 300,
      "answers.touringPercent": 0,
      "contact.name": "Robin Alder",
    };
    await Promise.all(
      Object.entries(fields).map(([path, value]) =>
        saveSheet(shop.as(shop.desk), { sheetId: sheet.sheetId, patch: { [path]: value }, baseVersion: sheet.version }),
      ),
    );
    const read = must(await readSheet(shop.as(shop.desk), { sheetId: sheet.sheetId }));
    for (const [path, value] of Object.entries(fields)) expect(read.fields[path]?.value).toEqual(value);
  });

  it("cannot keep a value outside its limits, and names field and value", async () => {
    const shop = await openShop(db());
    const { sheet } = must(await openSheet(shop.as(shop.desk), { channel: "phone" }));
    const patch = { "answers.ability": "expert", "answers.massKg": 4000 };
    const refused = await saveSheet(shop.as(shop.desk), { sheetId: sheet.sheetId, patch, baseVersion: sheet.version });
    expect(refused).toMatchObject({
      ok: false,
      refusal: { code: "invalid-field", path: "answers.massKg", value: 4000 },
    });
    expect(must(await readSheet(shop.as(shop.desk), { sheetId: sheet.sheetId })).answers).toEqual({});
  });

  it("cannot be done by a stranger, nor by a maker", async () => {
    const shop = await openShop(db());
    const { sheet } = must(await openSheet(shop.as(shop.desk), { channel: "phone" }));
    const input = { sheetId: sheet.sheetId, patch: { "answers.ability": "expert" }, baseVersion: 1 };
    expect(await saveSheet(shop.visitor, input)).toMatchObject({ ok: false, refusal: { code: "not-allowed" } });
    expect(await saveSheet(shop.as(shop.maker), input)).toMatchObject({ ok: false, refusal: { code: "not-allowed" } });
  });

  it("cannot change a sheet that was turned down", async () => {
    const shop = await openShop(db());
    const { sheet } = must(await openSheet(shop.as(shop.desk), { channel: "phone" }));
    must(await turnDown(shop.as(shop.desk), { sheetId: sheet.sheetId, reason: "wants a snowboard" }));
    const save = { sheetId: sheet.sheetId, patch: { "answers.ability": "expert" }, baseVersion: 2 };
    expect(await saveSheet(shop.as(shop.desk), save)).toMatchObject({ ok: false, refusal: { code: "sheet-closed" } });
  });

  it("keeps nothing medical in the notes and names the words", async () => {
    const shop = await openShop(db());
    const { sheet } = must(await openSheet(shop.as(shop.desk), { channel: "phone" }));
    const save = { sheetId: sheet.sheetId, patch: { notes: "had knee surgery in spring" }, baseVersion: 1 };
    expect(await saveSheet(shop.as(shop.desk), save)).toMatchObject({
      ok: false,
      refusal: { code: "health-words", path: "notes" },
    });
  });
});

describe("takeOverSheet", () => {
  it("moves the lease, and the first desk's save still counts", async () => {
    const shop = await openShop(db());
    const { sheet } = must(await openSheet(shop.as(shop.desk), { channel: "phone" }));
    expect(sheet.lease).toMatchObject({ holder: "Desk 1", isMine: true });
    const taken = must(await takeOverSheet(shop.as(shop.secondDesk), { sheetId: sheet.sheetId }));
    expect(taken.lease).toMatchObject({ holder: "Desk 2", isMine: true });
    const late = { sheetId: sheet.sheetId, patch: { "answers.ability": "expert" }, baseVersion: sheet.version };
    const saved = must(await saveSheet(shop.as(shop.desk), late));
    expect(saved.sheet.answers.ability).toBe("expert");
    expect(saved.sheet.lease).toMatchObject({ holder: "Desk 2", isMine: false });
  });

  it("lets a desk put a draft down", async () => {
    const shop = await openShop(db());
    const { sheet } = must(await openSheet(shop.as(shop.desk), { channel: "phone" }));
    expect(must(await releaseSheet(shop.as(shop.desk), { sheetId: sheet.sheetId })).lease).toBeNull();
  });
});

describe("search", () => {
  it("finds a draft by a name or by part of a number", async () => {
    const shop = await openShop(db());
    must(
      await openSheet(shop.as(shop.desk, shopNow), { channel: "phone", phone: "303 555 0177", name: "Wren Sorrel" }),
    );
    const byName = must(await search(shop.as(shop.desk), { text: "sorrel" }));
    const byPhone = must(await search(shop.as(shop.desk), { text: "5550177" }));
    expect(byName.map((hit) => hit.title)).toContain("Wren Sorrel");
    expect(byPhone.map((hit) => hit.title)).toContain("Wren Sorrel");
  });
});
