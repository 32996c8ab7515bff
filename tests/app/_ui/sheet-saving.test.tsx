// @vitest-environment happy-dom
/** How the sheet is saved from the browser: when, what of it, and what becomes of it without a connection. */
import { describe, expect, it } from "vitest";
import { SummaryBar } from "#app/_ui/sheet/summary-bar.client.tsx";
import { useSheet } from "#app/_ui/sheet/use-sheet.client.ts";
import { YouSection } from "#app/_ui/sheet/you-section.client.tsx";
import words from "#content/copy/sheet.json";
import { assessSheet } from "#engine/assessment";
import type { SheetView } from "#services/views";
import { catalog } from "../../engine/demo-catalog";
import { operate } from "../../support/browser";
import { answers, assessed, dates, type Patch, shopOf, viewOf } from "../../support/sheet";

/** The first section, the bar below, and what the sheet says of its saving. */
function Saved({ start, shop }: { start: SheetView; shop: ReturnType<typeof shopOf> }) {
  const sheet = useSheet(catalog, start, shop);
  return (
    <>
      <YouSection sheet={sheet} catalog={catalog} words={words} />
      <SummaryBar sheet={sheet} words={words} pair={null} pictureBase="/p" />
      <p id="save">{sheet.save}</p>
      <p id="trouble">{[sheet.errors.sheet, ...sheet.conflicts.map((each) => JSON.stringify(each))].join(" ")}</p>
      <p id="stale">{String(sheet.isOutOfDate)}</p>
      <button type="button" onClick={() => sheet.setChoices({ tipTailProtectors: true })}>
        protectors
      </button>
    </>
  );
}

async function sheetOf(start: SheetView = viewOf()) {
  const shop = shopOf(start);
  const page = await operate(<Saved start={start} shop={shop} />);
  return { page, shop, sent: () => Object.assign({}, ...shop.patches) as Patch };
}

describe("what is saved", () => {
  it("goes half a second after the last change, field by field", async () => {
    const { page, shop, sent } = await sheetOf();
    await page.type("height-cm", "180");
    await page.wait(400);
    await page.choose("ability", "expert");
    await page.wait(499);
    expect(shop.save).not.toHaveBeenCalled();
    expect(page.seen.one("aside [role=status]").text).toContain("Saving…");
    await page.wait(1);
    expect(shop.save.mock.calls).toEqual([
      [{ "typed.height": { unit: "cm", cm: 180 }, "answers.ability": "expert" }, 4],
    ]);
    expect(page.seen.one("aside [role=status]").text).toContain("Saved");
    await page.type("mass", "");
    await page.wait(500);
    expect(shop.save.mock.lastCall).toEqual([{ "typed.mass": null }, 5]);
    expect(localStorage.length).toBe(0);
    expect(document.cookie).toContain("units=metric");
    expect(Object.keys(sent())).toEqual(["typed.height", "answers.ability", "typed.mass"]);
  });

  it("is kept on the device without a connection, and sent again", async () => {
    const start = viewOf();
    const { page, shop } = await sheetOf(start);
    shop.save.mockRejectedValueOnce(new Error("offline"));
    await page.choose("temperament", "fast");
    await page.wait(500);
    expect(page.seen.one("#save").text).toBe("waiting");
    expect(JSON.parse(localStorage.getItem(`sheet:${start.sheetId}`) ?? "{}")).toEqual({
      "answers.temperament": "fast",
    });
    await page.wait(4999);
    expect(shop.save).toHaveBeenCalledTimes(1);
    await page.wait(1);
    expect(shop.save).toHaveBeenCalledTimes(2);
    expect(page.seen.one("#save").text).toBe("saved");
    expect(localStorage.getItem(`sheet:${start.sheetId}`)).toBeNull();
    // The connection is back: nobody waits out the five seconds.
    shop.save.mockRejectedValueOnce(new Error("offline"));
    await page.choose("temperament", "steady");
    await page.wait(500);
    expect(page.seen.one("#save").text).toBe("waiting");
    window.dispatchEvent(new Event("online"));
    await page.wait(0);
    expect(shop.save).toHaveBeenCalledTimes(4);
    expect(page.seen.one("#save").text).toBe("saved");
    // What a reload left behind is put back and sent.
    const left = viewOf();
    localStorage.setItem(`sheet:${left.sheetId}`, JSON.stringify({ "answers.homeSnow": "icy" }));
    const reloaded = await sheetOf(left);
    await reloaded.page.wait(500);
    expect(reloaded.sent()).toEqual({ "answers.homeSnow": "icy" });
    // Back online: at once.
    reloaded.shop.save.mockRejectedValueOnce(new Error("offline"));
    await reloaded.page.choose("homeSnow", "deep");
    await reloaded.page.wait(500);
    window.dispatchEvent(new Event("online"));
    await reloaded.page.wait(0);
    expect(reloaded.shop.save).toHaveBeenCalledTimes(3);
  });

  it("leaves out the one field that is refused, which keeps what was typed and its words", async () => {
    const { page, shop } = await sheetOf();
    shop.save.mockResolvedValueOnce({ ok: false, message: "Height 9000 cm is above 250 cm", path: "typed.height.cm" });
    await page.type("height-cm", "9000");
    await page.choose("temperament", "fast");
    await page.wait(500);
    expect(shop.save.mock.calls.map(([patch]) => Object.keys(patch))).toEqual([
      ["typed.height", "answers.temperament"],
      ["answers.temperament"],
    ]);
    expect(page.seen.one("#height-error").text).toContain("above 250 cm");
    shop.save.mockResolvedValueOnce({ ok: false, message: "This sheet is closed" });
    await page.choose("temperament", "calm");
    await page.wait(500);
    expect(page.seen.text).toContain("This sheet is closed");
    await page.type("height-cm", "181");
    await page.wait(500);
    expect(page.seen.all("#height-error")).toEqual([]);
    expect(page.seen.text).not.toContain("This sheet is closed");
  });

  it("tells what another desk changed, and shows the newer sheet when the page comes back", async () => {
    const { page, shop } = await sheetOf();
    const other = { path: "answers.temperament", yours: "fast", theirs: "calm", by: "Desk 2" };
    shop.save.mockResolvedValueOnce({
      ok: true,
      sheet: viewOf({ version: 9, answers: { ...answers, temperament: "calm" } }),
      conflicts: [other],
    });
    await page.choose("temperament", "fast");
    await page.wait(500);
    expect(page.seen.one("#trouble").text).toContain(JSON.stringify(other));
    expect(document.querySelector<HTMLInputElement>("input[name=temperament]:checked")?.value).toBe("calm");
    shop.reload.mockResolvedValueOnce(viewOf({ version: 8, answers: { ...answers, temperament: "steady" } }));
    document.dispatchEvent(new Event("visibilitychange"));
    await page.wait(0);
    expect(document.querySelector<HTMLInputElement>("input[name=temperament]:checked")?.value).toBe("calm");
    shop.reload.mockResolvedValueOnce(viewOf({ version: 10, answers: { ...answers, temperament: "steady" } }));
    document.dispatchEvent(new Event("visibilitychange"));
    await page.wait(0);
    expect(document.querySelector<HTMLInputElement>("input[name=temperament]:checked")?.value).toBe("steady");
    // While something waits, nothing is overtaken.
    const calls = shop.reload.mock.calls.length;
    await page.choose("temperament", "fast");
    document.dispatchEvent(new Event("visibilitychange"));
    expect(shop.reload.mock.calls.length).toBe(calls);
  });

  it("says when the shop's total is another one", async () => {
    const { page, shop } = await sheetOf();
    shop.assess.mockResolvedValueOnce({ ok: true, dateRange: null, totalCents: 1 });
    await page.wait(700);
    expect(page.seen.one("#stale").text).toBe("true");
    await page.choose("temperament", "fast");
    expect(page.seen.one("#stale").text).toBe("false");
    await page.wait(500);
    shop.assess.mockRejectedValueOnce(new Error("offline"));
    await page.wait(700);
    expect(page.seen.one("#stale").text).toBe("false");
  });

  it("names what the last change did to stiffness, mass, price before tax and date", async () => {
    const { page, shop } = await sheetOf();
    await page.wait(700);
    const change = () => page.seen.one("aside [role=status]").text;
    const unchanged = "same stiffness, same mass, same price";
    shop.assess.mockResolvedValue({
      ok: true,
      dateRange: { ...dates, p90: "2026-12-21" as never },
      totalCents: assessed.price?.totalCents ?? null,
    });
    await page.choose("homeSnow", "icy");
    await page.wait(500);
    await page.wait(700);
    // A Thursday to the Monday after.
    expect(change()).toBe(`${unchanged}, 4 days laterSaved`);
    shop.assess.mockResolvedValue({
      ok: true,
      dateRange: { ...dates, p90: "2026-12-23" as never },
      totalCents: assessed.price?.totalCents ?? null,
    });
    await page.choose("homeSnow", "firm");
    await page.wait(500);
    await page.wait(700);
    expect(change()).toBe(`${unchanged}, same weekSaved`);
    shop.assess.mockResolvedValue({
      ok: true,
      dateRange: { ...dates, p90: "2026-12-17" as never },
      totalCents: assessed.price?.totalCents ?? null,
    });
    await page.choose("homeSnow", "icy");
    await page.wait(500);
    await page.wait(700);
    expect(change()).toBe(`${unchanged}, 6 days earlierSaved`);
    shop.assess.mockResolvedValue({
      ok: true,
      dateRange: { ...dates, p90: "2026-12-17" as never },
      totalCents: assessed.price?.totalCents ?? null,
    });
    await page.choose("homeSnow", "firm");
    await page.wait(500);
    await page.wait(700);
    expect(change()).toBe(`${unchanged}, ${words.change.sameDate}Saved`);
    const cents = catalog.priceBook.optionCents["tip-tail-protectors"]?.cents ?? 0;
    const withEnds = assessSheet({ answers, choices: { destination: "collect", tipTailProtectors: true } }, catalog);
    await page.press("protectors");
    // Before tax, as beside the option itself; plastic at both ends weighs, and bends with the ski as before.
    const grams = Math.round(1000 * ((withEnds.finishedFlex?.massKg ?? 0) - (assessed.finishedFlex?.massKg ?? 0)));
    const mass = grams === 0 ? "same mass" : `\\+${grams} g a ski`;
    expect(change()).toMatch(
      new RegExp(`^same stiffness, ${mass}, \\+\\$${(cents / 100).toFixed(2).replace(/\.00$/, "")} before tax`),
    );
  });
});
