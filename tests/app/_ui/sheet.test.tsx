// @vitest-environment happy-dom
/** The whole sheet: what it says in one line each, how it opens, and how it ends. */
import { describe, expect, it, vi } from "vitest";
import { Sheet, type SheetProps } from "#app/_ui/sheet/sheet.client.tsx";
import refusalWords from "#content/copy/refusals.json";
import words from "#content/copy/sheet.json";
import { assessSheet } from "#engine/assessment";
import type { Hazard } from "#engine/floor";
import { measure, shapeAtLength } from "#engine/geometry";
import { textForPeople } from "#engine/units";
import type { SheetView } from "#services/views";
import { catalog } from "../../engine/demo-catalog";
import { operate } from "../../support/browser";
import { answers, assessed, type Patch, shopOf, typed, viewOf } from "../../support/sheet";

const told = (id: string, onlyFor?: Hazard["onlyFor"]): Hazard => ({
  id,
  icon: "note",
  line: `Line of ${id}`,
  full: `Text of ${id}`,
  reference: `Source of ${id}`,
  stations: [],
  pages: ["sheet"],
  papers: [],
  labels: [],
  ...(onlyFor ? { onlyFor } : {}),
});
const cautions = {
  localRules: "Local rules come first",
  hazards: [told("advice"), told("slope", { offPisteFromPercent: 90 }), told("child", { belowAgeYears: 18 })],
};

async function sheetOf(start: SheetView = viewOf(), known: Partial<SheetProps> = {}) {
  const { patches, ...shop } = shopOf(start);
  const pictures = { uploadUrl: "/files/artwork/s-1", pictureBase: "/files/artwork/s-1", stateRights: vi.fn() };
  const page = await operate(
    <Sheet
      catalog={catalog}
      initial={start}
      words={words}
      refusalWords={refusalWords}
      actions={shop}
      cautions={cautions}
      pictures={pictures}
      dense
      {...known}
    />,
  );
  return { page, shop, sent: () => Object.assign({}, ...patches) as Patch };
}
const { spec } = assessed;
const model = catalog.build.models.find(({ id }) => id === spec?.model);
if (!model || !spec) throw new Error("no recommendation");
const shape = shapeAtLength(model.shape, spec.lengthCm);

describe("what the sheet says", () => {
  it("tells what can hurt beside the end, by the skier as typed now", async () => {
    const told = (page: Awaited<ReturnType<typeof sheetOf>>["page"]) =>
      page.seen.all("[data-caution]").map((each) => each.attribute("data-caution"));
    const grown = await sheetOf();
    expect(told(grown.page)).toEqual(["advice"]);
    expect(grown.page.seen.one("[data-caution=advice]").text).toContain("Text of advice");
    const young = await sheetOf(viewOf({ answers: { ...answers, ageYears: 12, offPistePercent: 90 } }));
    expect(told(young.page)).toEqual(["advice", "slope", "child"]);
  });

  it("has a line for each section, with the engine's price and the shop's date", async () => {
    const { page, shop } = await sheetOf();
    const line = (title: string) =>
      page.seen.all("details > summary").find((each) => each.text.includes(`${title},`))?.text;
    expect(line("You")).toBe("✓You, answered182 cm, 82 kg, confident, 40 % off-piste");
    expect(line("Date")).toBe("○Date, to doA date appears once a ski is chosen");
    const bar = () =>
      page.seen
        .one("aside")
        .all("output")
        .map(({ text }) => text);
    const total = `$${((assessed.price?.totalCents ?? 0) / 100).toLocaleString("en-US", { minimumFractionDigits: 2 })}`;
    expect(bar()).toEqual([total, "—"]);
    expect(line("Price")).toBe(`✓Price, answered${total}`);
    await page.wait(699);
    expect(shop.assess).not.toHaveBeenCalled();
    await page.wait(1);
    expect(bar()).toEqual([total, "10–17 December"]);
    expect(line("Date")).toBe("✓Date, answered10–17 December 2026");
    expect(page.seen.part("Date, answered").text).toContain(
      "Ready 10–17 December 2026, nine times out of ten by the later date.",
    );
    expect(page.seen.part("Date, answered").text).toContain("From 200 runs of the whole queue");
    expect(line("Ski")).toContain(`${model.name}, ${spec.lengthCm} cm, class`);
    expect(line("Core")).toMatch(/^○Core, to do/);
    const strip = page.seen.one(".sheet-strip").text;
    expect(strip).toContain(`${model.name}, ${spec.lengthCm} cm`);
    expect(strip).toContain(`R ${textForPeople(measure(shape).sidecutRadiusM, 1)} m`);
    const grams = textForPeople((assessed.finishedFlex?.massKg ?? 0) * 1000, 0);
    expect(strip).toMatch(new RegExp(`, ${grams} ± \\d+ g a ski \\(± holds`));
    expect(page.seen.one("[role=status]").text).toContain("Saved");
    expect(page.seen.text).not.toContain(words.save.outOfDate);
  });

  it("opens section by section on a first visit, and leads on", async () => {
    const first = await sheetOf(viewOf({ version: 1, answers: {}, typed: {}, choices: {} }), { dense: false });
    const open = () => first.page.seen.all("details[open] > summary h2").map(({ text }) => text.split(",")[0]);
    expect(open()).toEqual(["You"]);
    await first.page.press("Next: Ski");
    expect(open()).toEqual(["Ski"]);
    await first.page.wait(50);
    expect(document.activeElement?.textContent).toContain("Ski");
    expect(first.page.seen.all("aside output").map(({ text }) => text)).toEqual(["—", "—"]);
    // Beside the sheet the pair's place is kept; there is nothing to raise over it yet.
    const place = () => first.page.seen.one(`aside[aria-label="${words.stand.title}"]`);
    expect(place().text).toBe(words.stand.waiting);
    expect(place().all(".border-dashed")).toHaveLength(1);
    expect(first.page.seen.all("aside button")).toEqual([]);
    expect(first.page.seen.buttons).not.toContain("Make my quote");
    const again = await sheetOf(viewOf(), { dense: false });
    expect(again.page.seen.all("details[open] > summary h2")).toEqual([]);
    // The pair stands in that place with its name and what it will feel like; from the bar it is raised over the page.
    const model = catalog.build.models.find(({ id }) => id === assessed.spec?.model);
    const title = `${model?.name}, ${assessed.spec?.lengthCm} cm`;
    const standing = again.page.seen.one(`aside[aria-label="${words.stand.title}"]`);
    expect(standing.text).toContain(`${title}`);
    expect(standing.text).toMatch(/Turns quickly and short|Likes medium turns|Runs calm, long turns/);
    expect(standing.all(".border-dashed")).toEqual([]);
    expect(standing.all("svg").map((svg) => svg.attribute("aria-label"))).toEqual([
      `${words.preview}: ${title}`,
      words.stand.side,
    ]);
    const named = again.page.seen.all("aside button").map((button) => button.attribute("aria-label"));
    expect(named).toContain(`${words.stand.show}: ${title}`);
    expect((await sheetOf()).page.seen.all("details[open] > summary h2")).toHaveLength(7);
  });

  it("is read and not changed once it is quoted", async () => {
    const { page } = await sheetOf(viewOf({ state: "quoted" }));
    expect(page.seen.one("fieldset fieldset").attribute("disabled")).toBe("");
    expect(page.seen.buttons).not.toContain("Make my quote");
    expect((await sheetOf()).page.seen.one("fieldset fieldset").attribute("disabled")).toBeNull();
  });

  it("lays the chosen build over the recommended one, and leads to the comparison", async () => {
    const plain = await sheetOf(viewOf(), { compareHref: "/compare" });
    expect(plain.page.seen.links[words.compare]).toBe("/compare");
    expect(plain.page.seen.all("ul[aria-label=Lines]")).toEqual([]);
    const changed = await sheetOf(viewOf({ choices: { flexRatio: 1.2 } }));
    expect(changed.page.seen.one("ul[aria-label=Lines]").text).toContain(words.asRecommended);
    expect(changed.page.seen.links[words.compare]).toBeUndefined();
    const [own, recommended] = changed.page.seen.all("table caption").filter(({ text }) => text.startsWith("Read"))
      .length
      ? (changed.page.seen
          .all("tbody tr")
          .filter(({ text }) => text.startsWith("Stiffness in bending"))
          .map((row) => row.all("td").map(({ text }) => Number.parseFloat(text)))[0] ?? [])
      : [];
    expect(own).toBeGreaterThan(recommended ?? Number.POSITIVE_INFINITY);
  });
});

describe("the end of the sheet", () => {
  it("makes a quote of what is saved, or says why not", async () => {
    const { page, shop } = await sheetOf(viewOf(), { dense: false });
    expect(page.seen.text).toContain(`Free and binding on us for ${catalog.priceBook.quoteValidDays} days`);
    await page.choose("temperament", "fast");
    await page.press("Make my quote");
    expect(shop.save).toHaveBeenCalledTimes(1);
    expect(shop.quote).toHaveBeenCalledTimes(1);
    shop.quote.mockResolvedValueOnce({ ok: false, message: "Name is missing" });
    await page.press("Make my quote");
    expect(page.seen.one("[role=alert]").text).toContain("Name is missing");
    shop.save.mockRejectedValueOnce(new Error("offline"));
    await page.choose("temperament", "calm");
    await page.press("Make my quote");
    expect(shop.quote).toHaveBeenCalledTimes(2);
    expect(page.seen.one("[role=alert]").text).toContain("Not saved yet");
    await page.press("Ask a person instead");
    await page.type("note", " blue please ");
    await page.press("Ask for a call");
    expect(shop.ask).toHaveBeenCalledWith("blue please");
    expect(page.seen.text).toContain("Asked. The owner sees your sheet and calls 303 555 0101.");
    expect((await sheetOf()).page.seen.buttons).not.toContain("Ask a person instead");
  });

  it("stops the sale of an unlikely skier before a price, and offers what was meant", async () => {
    // 820 kg: the comma was forgotten.
    const start = viewOf({ answers: { ...answers, massKg: 820 }, typed: { ...typed, mass: { unit: "kg", kg: 820 } } });
    const { page, shop } = await sheetOf(start, { dense: false });
    const flags =
      assessSheet({ answers: { ...answers, massKg: 820 }, choices: {} }, catalog).recommendation?.flags ?? [];
    const stop = flags.find(({ blocks }) => blocks === "sale");
    expect(page.seen.text).toContain("Let us talk before a price");
    expect(page.seen.text).toContain(stop?.message ?? "?");
    expect(page.seen.text).not.toContain(stop?.script ?? "?");
    expect(page.seen.buttons).not.toContain("Make my quote");
    await page.press("Ask for a call");
    expect(shop.ask).toHaveBeenCalledWith("Please call me about this sheet.");
    shop.ask.mockResolvedValueOnce({ ok: false, message: "no telephone" });
    await page.press("Ask for a call");
    expect(page.seen.text).toContain("no telephone");
    const asked = await sheetOf({ ...start, review: { askedAt: "2026-11-10T17:00:00.000Z", note: "x" } } as SheetView, {
      dense: false,
    });
    expect(asked.page.seen.buttons).not.toContain("Ask for a call");
    const desk = await sheetOf(start);
    expect(desk.page.seen.text).toContain(stop?.script ?? "?");
    expect(desk.page.seen.all("summary").find(({ text }) => text.includes("You,"))?.text).toMatch(
      /^!You, needs a word/,
    );
    if (stop?.suggestion) {
      await desk.page.press(stop.suggestion.label);
      await desk.page.wait(500);
      expect(Object.keys(desk.sent())[0]).toMatch(/^(typed|answers)\./);
    }
  });
});
