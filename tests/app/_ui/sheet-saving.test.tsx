// @vitest-environment happy-dom
/** How the sheet is saved from the browser: when, what of it, and what becomes of it without a connection. */
import { describe, expect, it, vi } from "vitest";
import { Around } from "#app/_ui/sheet/sheet-context.client.ts";
import { SummaryBar } from "#app/_ui/sheet/summary-bar.client.tsx";
import { useSheet } from "#app/_ui/sheet/use-sheet.client.ts";
import { YouSection } from "#app/_ui/sheet/you-section.client.tsx";
import words from "#content/copy/sheet.json";
import { assessSheet } from "#engine/assessment";
import type { SheetView } from "#services/views";
import { catalog } from "../../engine/demo-catalog";
import { operate } from "../../support/browser";
import { answers, assessed, dates, type Patch, shopOf, viewOf } from "../../support/sheet";

const sources: FakeSource[] = [];
class FakeSource extends EventTarget {
  static readonly CLOSED = 2;
  readonly readyState = 1;
  readonly close = vi.fn();
  constructor(readonly url: string) {
    super();
    sources.push(this);
  }
}

/** A page that is told of versions. */
async function followed() {
  vi.stubGlobal("EventSource", FakeSource);
  sources.length = 0;
  const start = viewOf();
  const shop = { ...shopOf(start), liveUrl: "/live" };
  const page = await operate(<Saved start={start} shop={shop} />);
  return { page, shop, sources };
}

async function tell(page: Awaited<ReturnType<typeof operate>>, source: FakeSource | undefined, data: string) {
  source?.dispatchEvent(new MessageEvent("version", { data }));
  await page.wait(0);
}

/** The first section, the bar below, and what the sheet says of its saving. */
function Saved({ start, shop }: { start: SheetView; shop: ReturnType<typeof shopOf> }) {
  const sheet = useSheet(catalog, start, shop);
  return (
    <Around value={{ sheet, catalog, words }}>
      <YouSection sheet={sheet} catalog={catalog} words={words} />
      <SummaryBar sheet={sheet} words={words} pair={null} pictureBase="/p" />
      <p id="save">{sheet.save}</p>
      <p id="trouble">{[sheet.errors.sheet, ...sheet.conflicts.map((each) => JSON.stringify(each))].join(" ")}</p>
      <p id="stale">{String(sheet.isOutOfDate)}</p>
      <button type="button" onClick={() => sheet.setChoices({ tipTailProtectors: true })}>
        protectors
      </button>
      <button type="button" onClick={() => sheet.setTyped("mass", { unit: "lb", lb: 180 })}>
        180 lb?
      </button>
    </Around>
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
    await page.type("height", "180");
    await page.wait(400);
    await page.choose("ability", "expert");
    await page.wait(499);
    expect(shop.save).not.toHaveBeenCalled();
    expect(page.seen.one("aside [role=status]").text).toContain("Saving…");
    await page.wait(1);
    expect(shop.save.mock.calls).toEqual([
      [{ "typed.height": { unit: "cm", cm: 180 }, "said.height": "180", "answers.ability": "expert" }, 4],
    ]);
    expect(page.seen.one("aside [role=status]").text).toContain("Saved");
    await page.type("mass", "");
    await page.wait(500);
    expect(shop.save.mock.lastCall).toEqual([{ "typed.mass": null, "said.mass": null }, 5]);
    expect(localStorage.length).toBe(0);
    expect(document.cookie).toContain("units=metric");
    expect(Object.keys(sent())).toEqual(["typed.height", "said.height", "answers.ability", "typed.mass", "said.mass"]);
  });

  it("is kept on the device without a connection, and sent again", async () => {
    const start = viewOf();
    const { page, shop } = await sheetOf(start);
    shop.save.mockRejectedValueOnce(new Error("offline"));
    await page.choose("temperament", "fast");
    await page.wait(500);
    expect(page.seen.one("#save").text).toBe("waiting");
    expect(JSON.parse(localStorage.getItem(`sheet:${start.sheetId}`) ?? "{}")).toEqual({
      version: 4,
      fields: { "answers.temperament": "fast" },
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
    // What a reload left behind is put back and sent, also as an earlier version of the page kept it.
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
    const start = viewOf();
    const { page, shop } = await sheetOf(start);
    shop.save.mockResolvedValueOnce({
      ok: false,
      message: "Usual pack 99 kg is above 40 kg",
      path: "answers.packKg",
    });
    await page.type("packKg", "99");
    await page.choose("temperament", "fast");
    await page.wait(500);
    expect(shop.save.mock.calls.map(([patch]) => Object.keys(patch))).toEqual([
      ["answers.packKg", "answers.temperament"],
      ["answers.temperament"],
    ]);
    expect(page.seen.one("#packKg-error").text).toContain("above 40 kg");
    // Nothing says "Saved" while something is not, and the words stay, on this device too.
    expect(page.seen.one("aside [role=status]").text).toContain(words.save.undecided);
    await page.leave("packKg");
    expect(page.value("packKg")).toBe("99");
    expect(JSON.parse(localStorage.getItem(`sheet:${start.sheetId}`) ?? "{}").fields).toEqual({ "answers.packKg": 99 });
    shop.save.mockResolvedValueOnce({ ok: false, message: "This sheet is closed" });
    await page.choose("temperament", "calm");
    await page.wait(500);
    expect(page.seen.text).toContain("This sheet is closed");
    await page.type("packKg", "9");
    await page.wait(500);
    expect(page.seen.all("#packKg-error")).toEqual([]);
    expect(page.seen.text).not.toContain("This sheet is closed");
  });

  it("keeps words that nobody can read beside the measure that was there", async () => {
    const { page, shop } = await sheetOf();
    await page.type("mass", "20 stone x");
    await page.wait(500);
    expect(shop.save.mock.lastCall).toEqual([{ "said.mass": "20 stone x" }, 4]);
    expect(page.value("mass")).toBe("20 stone x");
    await page.wait(1200);
    expect(page.seen.one("#mass-error").text).toContain("What is “20 stone x”?");
    expect(page.seen.one("#mass-error").text).toContain("82 kg counts");
    // Another page of the same sheet shows the same words and the same measure.
    const again = await sheetOf((await shop.reload()) ?? viewOf());
    expect(again.page.value("mass")).toBe("20 stone x");
    expect(again.page.seen.one("#mass-error").text).toContain("82 kg counts");
    // 20 × 14 = 280 lb.
    await page.type("mass", "20 stone");
    await page.wait(500);
    expect(shop.save.mock.lastCall?.[0]).toEqual({
      "typed.mass": { unit: "lb", lb: 280 },
      "said.mass": "20 stone",
    });
  });

  it("takes a correction by one tap for the measure and its unit, though its words are not sent yet", async () => {
    const { page, sent } = await sheetOf();
    await page.type("mass", "180");
    await page.press("180 lb?");
    // 180 × 0.45359237 = 81.6 kg.
    expect(page.seen.one("#mass-other").text).toBe("180 lb = 81.6 kg");
    await page.wait(500);
    expect(sent()).toEqual({ "typed.mass": { unit: "lb", lb: 180 }, "said.mass": null });
  });

  it("leaves a field that two devices changed as it was typed, until somebody decides", async () => {
    const { page, shop } = await sheetOf();
    const other = { path: "answers.temperament", yours: "fast", theirs: "calm", by: "Desk 2" };
    const theirs = viewOf({ version: 9, answers: { ...answers, temperament: "calm" } });
    shop.save.mockResolvedValueOnce({ ok: true, sheet: theirs, savedPaths: [], conflicts: [other] });
    const chosen = () => document.querySelector<HTMLInputElement>("input[name=temperament]:checked")?.value;
    await page.choose("temperament", "fast");
    await page.wait(500);
    expect(page.seen.one("#trouble").text).toContain(JSON.stringify(other));
    expect(chosen()).toBe("fast");
    expect(page.seen.one("aside [role=status]").text).toContain(words.save.undecided);
    const told = page.seen.one('[data-conflict="answers.temperament"]').text;
    expect(told).toContain("You have fast. Saved is calm, changed by Desk 2");
    await page.press("Take theirs: calm");
    expect(chosen()).toBe("calm");
    expect(page.seen.one("aside [role=status]").text).toContain("Saved");
    const calls = shop.save.mock.calls.length;
    shop.save.mockResolvedValueOnce({
      ok: true,
      sheet: { ...theirs, version: 11 },
      savedPaths: [],
      conflicts: [other],
    });
    await page.choose("temperament", "fast");
    await page.wait(500);
    await page.press("Keep mine: fast");
    await page.wait(500);
    expect(shop.save.mock.calls.length).toBe(calls + 2);
    expect(shop.save.mock.lastCall).toEqual([{ "answers.temperament": "fast" }, 11]);
  });

  it("follows the other devices, and asks only about what is being changed here", async () => {
    const { page, shop, sources } = await followed();
    const [source] = sources;
    const chosen = (name: string) => document.querySelector<HTMLInputElement>(`input[name=${name}]:checked`)?.value;
    const changed = (version: number, known: Readonly<Record<string, string>>) => {
      const fields = Object.fromEntries(
        Object.entries(known).map(([key, value]) => [
          `answers.${key}`,
          { value, version, by: "Desk 2", at: "2026-11-30T08:00:00.000Z" },
        ]),
      );
      shop.reload.mockResolvedValueOnce(viewOf({ version, fields, answers: { ...answers, ...known } }));
    };
    changed(5, { temperament: "calm" });
    await tell(page, source, "5");
    expect(chosen("temperament")).toBe("calm");
    // Its own version is no news.
    const calls = shop.reload.mock.calls.length;
    await tell(page, source, "5");
    expect(shop.reload.mock.calls.length).toBe(calls);
    // Changed here a moment ago, and not sent yet.
    await page.choose("temperament", "fast");
    changed(6, { temperament: "steady", homeSnow: "icy" });
    await tell(page, source, "6");
    expect(chosen("homeSnow")).toBe("icy");
    expect(chosen("temperament")).toBe("fast");
    expect(page.seen.one("[data-conflict]").text).toContain("Saved is steady, changed by Desk 2");
    await page.wait(2000);
    expect(shop.save).not.toHaveBeenCalled();
    await page.press("Keep mine: fast");
    await page.wait(500);
    expect(shop.save.mock.lastCall).toEqual([{ "answers.temperament": "fast" }, 6]);
    // Out of sight nothing is followed.
    expect(source?.close).not.toHaveBeenCalled();
    await page.draw(null);
    expect(source?.close).toHaveBeenCalled();
  });

  it("asks about what another device changed while this one was away", async () => {
    const start = viewOf({
      version: 8,
      fields: {
        "answers.temperament": { value: "steady", version: 7, by: "Desk 2", at: "2026-11-30T08:00:00.000Z" },
        "answers.homeSnow": { value: "icy", version: 3, by: "Desk 2", at: "2026-11-30T08:00:00.000Z" },
      },
    });
    localStorage.setItem(
      `sheet:${start.sheetId}`,
      JSON.stringify({ version: 5, fields: { "answers.temperament": "fast", "answers.homeSnow": "deep" } }),
    );
    const { page, sent } = await sheetOf(start);
    await page.wait(500);
    expect(sent()).toEqual({ "answers.homeSnow": "deep" });
    const question = "You have fast. Saved is steady, changed by Desk 2";
    expect(page.seen.one("[data-conflict]").text).toContain(question);
    // Not decided yet, a reload asks again.
    const again = await sheetOf(start);
    await again.page.wait(500);
    expect(again.page.seen.one("[data-conflict]").text).toContain(question);
    expect(again.sent()).toEqual({});
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
