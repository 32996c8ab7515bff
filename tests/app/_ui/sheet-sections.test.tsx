// @vitest-environment happy-dom
/** The sections of the sheet operated as a skier does: each field saves its own answer, in its own unit. */
import type { ReactNode } from "react";
import { describe, expect, it, vi } from "vitest";
import { CoreSection, ReinforcementSection } from "#app/_ui/sheet/build-sections.client.tsx";
import { GraphicSection } from "#app/_ui/sheet/graphic-section.client.tsx";
import { ContactFields, PriceSection } from "#app/_ui/sheet/price-section.client.tsx";
import { SkiSection } from "#app/_ui/sheet/ski-section.client.tsx";
import type { SheetState } from "#app/_ui/sheet/use-sheet.client.ts";
import { YouSection } from "#app/_ui/sheet/you-section.client.tsx";
import words from "#content/copy/sheet.json";
import {
  assessSheet,
  beginSameFlex,
  gatherSameFlex,
  judgeSameFlex,
  lighterBy,
  paretoSet,
  stiffnessStory,
} from "#engine/assessment";
import { fillingPlacement, printCanvas } from "#engine/configuration";
import { shapeAtLength } from "#engine/geometry";
import { textForPeople } from "#engine/units";
import type { SheetView } from "#services/views";
import { catalog } from "../../engine/demo-catalog";
import { operate } from "../../support/browser";
import { answers, assessed, type Patch, typed, useKeptSheet, viewOf } from "../../support/sheet";

const { spec } = assessed;
if (!spec) throw new Error("no recommendation");
const model = catalog.build.models.find(({ id }) => id === spec.model);
if (!model) throw new Error("no such model");
const shape = shapeAtLength(model.shape, spec.lengthCm);

function Kept(props: { start: SheetView; patches: Patch[]; draw: (sheet: SheetState) => ReactNode }) {
  return props.draw(useKeptSheet(props.start, props.patches));
}

async function sectionOf(draw: (sheet: SheetState) => ReactNode, start = viewOf()) {
  const patches: Patch[] = [];
  const page = await operate(<Kept start={start} patches={patches} draw={draw} />);
  return { page, sent: () => Object.assign({}, ...patches) as Patch };
}
const stateRights = vi.fn(async (): Promise<{ ok: boolean; message?: string }> => ({ ok: true }));
const pictures = { uploadUrl: "/files/artwork/s-1", pictureBase: "/files/artwork/s-1", stateRights };
const you = (sheet: SheetState) => <YouSection sheet={sheet} catalog={catalog} words={words} dense />;
const ski = (sheet: SheetState) => <SkiSection sheet={sheet} catalog={catalog} words={words} />;
const build = (sheet: SheetState) => (
  <>
    <CoreSection sheet={sheet} catalog={catalog} words={words} />
    <ReinforcementSection sheet={sheet} catalog={catalog} words={words} />
  </>
);
const graphics = (sheet: SheetState) => (
  <GraphicSection sheet={sheet} catalog={catalog} words={words} pictures={pictures} />
);

describe("each field of the sheet", () => {
  it("saves its own answer", async () => {
    const { page, sent } = await sectionOf((sheet) => (
      <>
        {you(sheet)}
        <PriceSection sheet={sheet} catalog={catalog} words={words} />
      </>
    ));
    await page.type("offPiste", "55");
    await page.choose("turnSize", "long");
    await page.choose("priorities", "light");
    await page.choose("terrain", "park");
    await page.type("touringPercent", "20");
    await page.type("packKg", "12");
    await page.type("daysTotal", "300");
    await page.type("ageYears", "41");
    await page.type("currentLength", "176");
    await page.type("currentWaist", "88");
    await page.choose("currentLengthVerdict", "too long");
    await page.choose("currentFlexVerdict", "right");
    await page.choose("currentFlexClass", "3");
    await page.choose("newPairFor", "the same");
    await page.press("buyer");
    await page.press("growing");
    await page.press("health");
    await page.choose("destination", "home");
    expect(sent()).toEqual({
      "answers.offPistePercent": 55,
      "answers.turnSize": "long",
      "answers.priorities": ["light"],
      "answers.terrain": ["park"],
      "answers.touringPercent": 20,
      "answers.packKg": 12,
      "answers.daysTotal": 300,
      "answers.ageYears": 41,
      "answers.currentSki": {
        lengthCm: 176,
        waistMm: 88,
        length: "too long",
        flex: "right",
        flexClass: 3,
        newPairFor: "the same",
      },
      "answers.buyerIsSkier": false,
      "answers.stillGrowing": true,
      "answers.healthAdviceGiven": true,
      "choices.destination": "home",
    });
    await page.press("buyer");
    await page.press("growing");
    await page.press("health");
    await page.choose("currentLengthVerdict", "");
    await page.choose("currentFlexVerdict", "");
    await page.choose("currentFlexClass", "");
    await page.choose("newPairFor", "");
    await page.type("currentWaist", "");
    await page.type("currentLength", "");
    expect(sent()).toMatchObject({
      "answers.buyerIsSkier": null,
      "answers.stillGrowing": null,
      "answers.healthAdviceGiven": null,
      "answers.currentSki": null,
    });
  });

  it("takes the share that the catalogue names while days off the piste are not answered, and says so", async () => {
    const unanswered = viewOf({ answers: { heightCm: 182, massKg: 82, ability: "confident" } });
    const { page } = await sectionOf(you, unanswered);
    const { offPisteUnansweredPercent: usual } = catalog.fit;
    expect(page.value("offPiste")).toBe(String(usual));
    expect(page.seen.text).toContain(`not answered yet; ${usual} % is taken`);
    const { wantedWaistMm } = assessSheet({ answers: unanswered.answers, choices: {} }, catalog).recommendation ?? {};
    const said = { ...unanswered.answers, offPistePercent: usual };
    expect(assessSheet({ answers: said, choices: {} }, catalog).recommendation?.wantedWaistMm).toBe(wantedWaistMm);
  });

  it("keeps contact as typed, and nothing where it was emptied", async () => {
    const { page, sent } = await sectionOf((sheet) => <ContactFields sheet={sheet} words={words} />);
    await page.type("name", "Kim");
    await page.type("email", "kim@birch.example");
    await page.type("phone", "");
    expect(sent()).toEqual({ "contact.name": "Kim", "contact.email": "kim@birch.example", "contact.phone": null });
  });

  it("chooses ski, length, flex and mount", async () => {
    const { page, sent } = await sectionOf(ski, viewOf({ choices: { flexRatio: 1.2 } }));
    const fit = assessed.recommendation?.choices.find((choice) => choice.model === model.id);
    const lengths = page.seen.part(words.ski.length);
    expect(lengths.all("label").map(({ text }) => text)).toEqual(
      model.lengths.map(
        ({ lengthCm }) =>
          `${lengthCm} cm${lengthCm === fit?.lengthCm ? " ◂ recommended" : ""}${lengthCm === fit?.neighbourLengthCm ? " or this" : ""}`,
      ),
    );
    expect(lengths.text).toContain(`Your answers ask for ${textForPeople(fit?.wantedLengthCm ?? 0, 1)} cm`);
    const slider = page.seen.one("input[type=range][id=flexRatio]");
    expect([slider.attribute("min"), slider.attribute("max")].map(Number)).toEqual([
      Math.min(...catalog.build.flexClasses.map(({ from }) => from)),
      Math.max(...catalog.build.flexClasses.map(({ below }) => below)) - 0.01,
    ]);
    await page.press(`Back to the recommended ${textForPeople(fit?.flexRatio ?? 0, 2)}`);
    expect(sent()).toEqual({ "choices.flexRatio": null });
    await page.type("flexRatio", "1.1");
    await page.type("bootSole", "315");
    await page.type("bindingTrack", "340");
    await page.type("mountOffset", "-10");
    const other = model.lengths.find(({ lengthCm }) => lengthCm !== spec.lengthCm)?.lengthCm ?? 0;
    await page.choose("length", String(other));
    expect(sent()).toMatchObject({
      "choices.flexRatio": 1.1,
      "choices.mount": { offsetMm: -10, bootSoleMm: 315, bindingTrackMm: 340 },
      "choices.lengthCm": other,
    });
    await page.type("mountOffset", "");
    expect(sent()).toMatchObject({ "choices.mount": { offsetMm: 0, bootSoleMm: 315, bindingTrackMm: 340 } });
    const shown = assessed.recommendation?.choices.map((choice) => choice.model) ?? [];
    const radios = page.seen.all("input[name=model]").map((input) => input.attribute("value"));
    expect(radios).toEqual(shown);
    expect(page.seen.all("input[name=otherModel]").map((input) => input.attribute("value"))).toEqual(
      catalog.build.models.filter(({ id, state }) => state === "active" && !shown.includes(id)).map(({ id }) => id),
    );
    expect(page.seen.part(words.ski.recommended).all("label")[0]?.text).toContain("◂ recommended");
    expect(page.seen.part(words.ski.recommended).all("label")[1]?.text).not.toContain("recommended");
    await page.choose("model", shown[1] ?? "");
    expect(sent()).toMatchObject({ "choices.model": shown[1], "choices.lengthCm": null, "choices.flexRatio": null });
  });

  it("chooses core and reinforcements, with what each one does", async () => {
    const { page, sent } = await sectionOf(build);
    const cores = catalog.build.blends.filter(({ forUses, id }) => forUses.includes(model.use) || id === spec.core);
    expect(page.seen.all("input[name=core]").map((input) => input.attribute("value"))).toEqual([
      ...cores.map(({ id }) => id),
      "own",
    ]);
    expect(
      page.seen
        .part(words.core.label)
        .all("label")
        .filter(({ text }) => text.includes("recommended"))[0]?.text,
    ).toContain(cores.find(({ id }) => id === model.core.blend)?.label);
    const option = catalog.build.reinforcements.find(
      ({ forUses, id, placement }) =>
        forUses.includes(model.use) &&
        !spec.reinforcements.includes(id) &&
        !(model.hasMetal && placement.kind === "metal-pair"),
    );
    const label = () =>
      page.seen
        .part(words.reinforcement.label)
        .all("label")
        .find(({ text }) => text.startsWith(option?.label ?? "?"));
    expect(label()?.text).not.toContain("g a pair");
    await page.wait(2000);
    const withIt = assessSheet(
      { answers, choices: { destination: "collect", reinforcements: [...spec.reinforcements, option?.id ?? ""] } },
      catalog,
    );
    const grams = Math.round(2000 * ((withIt.finishedFlex?.massKg ?? 0) - (assessed.finishedFlex?.massKg ?? 0)));
    expect(label()?.text).toContain(`${grams > 0 ? "+" : grams < 0 ? "−" : ""}${Math.abs(grams)} g a pair`);
    const cents = catalog.priceBook.optionCents[option?.priceCode ?? ""]?.cents ?? 0;
    expect(label()?.text).toContain(`+$${cents / 100}`);
    await page.choose("reinforcements", option?.id ?? "");
    await page.choose("core", cores.find(({ id }) => id !== spec.core)?.id ?? "");
    expect(sent()).toMatchObject({
      "choices.reinforcements": [...spec.reinforcements, option?.id],
      "choices.core": cores.find(({ id }) => id !== spec.core)?.id,
    });
  });

  it("takes a wood for each place of a core of one's own, starting from the core there is", async () => {
    const { page, sent } = await sectionOf(build);
    const strips = () => page.seen.all("figure button").map((strip) => strip.attribute("aria-label") ?? "");
    expect(strips()).toHaveLength(0);
    await page.choose("core", "own");
    expect(sent()["choices.core"]).toBeUndefined();
    // From one side to the other: seven strips, twins about the middle, each by its place and its wood.
    const { C, I, M, O } = words.core.own.places;
    expect(strips().map((name) => name.split(":")[0])).toEqual([O, M, I, C, I, M, O]);
    expect(strips()[3]).toBe(`${C}: Quaking aspen`);
    await page.send("figure button", new MouseEvent("click", { bubbles: true }));
    await page.send('figure fieldset input[value="cherry"]', new MouseEvent("click", { bubbles: true }));
    expect(sent()["choices.core"]).toBe("own:aspen.ash.aspen.cherry");
    expect(page.seen.text).toContain(words.core.own.legend);
    // Woods of the grade that may be seen through a window, and back.
    await page.press("core-window");
    expect(sent()["choices.core"]).toBe("own:aspen.ash.aspen.cherry:window");
    await page.press("core-window");
    expect(sent()["choices.core"]).toBe("own:aspen.ash.aspen.cherry");
  });

  it("takes pockets in the core and another plate, and gives them back", async () => {
    const { page, sent } = await sectionOf(build);
    await page.press("lightening");
    await page.choose("plate", "magnesium");
    await page.press("protectors");
    expect(sent()).toMatchObject({
      "choices.lightening": true,
      "choices.plate": "magnesium",
      "choices.tipTailProtectors": true,
    });
    await page.press("protectors");
    expect(sent()["choices.tipTailProtectors"]).toBe(false);
  });

  it("lays out the graphic, letters and bases", async () => {
    const { page, sent } = await sectionOf(graphics);
    const graphic = () => sent()["choices.graphic"] as Record<string, unknown>;
    await page.choose("layout", "mirrored");
    expect(graphic()).toMatchObject({ kind: "house", layout: "mirrored" });
    const house = catalog.build.houseGraphics.at(-1)?.id ?? "";
    await page.choose("house", house);
    await page.type("lettering", "ADA");
    expect(graphic()).toMatchObject({
      house,
      layout: "mirrored",
      text: { text: "ADA", xMm: Math.round(shape.tipLengthMm + 230), capHeightMm: 28 },
    });
    await page.type("textAt", "600");
    await page.type("textCap", "40");
    expect(graphic().text).toEqual({ text: "ADA", xMm: 600, capHeightMm: 40 });
    await page.type("lettering", " ");
    await page.press("window");
    expect(graphic()).not.toHaveProperty("text");
    const from = Math.round(shape.tipLengthMm + 120);
    const half = Math.min(22, Math.floor(shape.waistWidthMm / 2 - catalog.build.rules.print.windowFromEdgeMm));
    expect(graphic().windows).toEqual([{ fromXMm: from, toXMm: from + 300, halfWidthMm: half }]);
    const least = catalog.build.rules.print.windowLeastMm;
    await page.type("windowFrom", String(from + 300));
    expect(graphic().windows).toEqual([{ fromXMm: from + 300, toXMm: from + 300 + least, halfWidthMm: half }]);
    await page.type("windowTo", String(from));
    expect(graphic().windows).toEqual([{ fromXMm: from - least, toXMm: from, halfWidthMm: half }]);
    await page.type("windowHalf", String(Math.ceil(least / 2)));
    expect(graphic().windows).toEqual([{ fromXMm: from - least, toXMm: from, halfWidthMm: Math.ceil(least / 2) }]);
    await page.press("window");
    await page.choose("baseLeft", catalog.build.baseColours[1]?.id ?? "");
    await page.choose("baseRight", catalog.build.baseColours[2]?.id ?? "");
    // What is no longer sold cannot be chosen.
    await expect(page.choose("inlay", "complex")).rejects.toThrow();
    await page.choose("inlay", "counterchange");
    expect(graphic().windows).toEqual([]);
    expect(sent()["choices.base"]).toMatchObject({
      left: catalog.build.baseColours[1]?.id,
      right: catalog.build.baseColours[2]?.id,
      inlay: "counterchange",
    });
    await page.type("inlayText", " TY ");
    expect(sent()["choices.base"]).toMatchObject({ inlayText: "TY" });
    await page.type("inlayText", "");
    expect(sent()["choices.base"]).not.toHaveProperty("inlayText");
  });

  it("moves the skier's own picture with the pointer that holds it, and shows a piece of it in true size", async () => {
    const artwork = { id: "art-1", widthPx: 9000, heightPx: 1500, sha256: "x" };
    const placement = { centreXMm: 900, centreYMm: 0, mmPerPixel: 0.2, angleDeg: 0 };
    const own = { ...spec.graphic, kind: "own", layout: "same", artwork, placement };
    const start = viewOf({ choices: { destination: "collect", graphic: own }, artworks: [] });
    const { page, sent } = await sectionOf(graphics, start);
    const board = page.seen.one("[role=application]").element;
    // A screen of 2 px a mm, on which the ski's tip is at (10, 20); the ski's own axes go across and along.
    Object.assign(board.querySelector("[data-ski-axes]") ?? {}, { getScreenCTM: () => ({ inverse: () => 2 }) });
    Object.assign(board, { setPointerCapture: vi.fn() });
    vi.stubGlobal(
      "DOMPoint",
      class {
        constructor(
          readonly x: number,
          readonly y: number,
        ) {}
        matrixTransform = (scale: number) => ({ x: (this.x - 10) / scale, y: (this.y - 20) / scale });
      },
    );
    const pointer = (kind: string, clientX: number, clientY: number) =>
      page.send("[role=application]", new PointerEvent(kind, { clientX, clientY, pointerId: 4, bubbles: true }));
    const placed = () => (sent()["choices.graphic"] as { placement?: typeof placement } | undefined)?.placement;
    await pointer("pointermove", 500, 500);
    expect(placed()).toBeUndefined();
    await pointer("pointerdown", 30, 120);
    await pointer("pointermove", 50.5, 160);
    expect(placed()).toEqual({ ...placement, centreXMm: 920, centreYMm: 10.3 });
    await pointer("pointermove", 30, 100);
    expect(placed()).toEqual({ ...placement, centreXMm: 890, centreYMm: 0 });
    await pointer("pointerup", 30, 100);
    await pointer("pointermove", 500, 500);
    expect(placed()).toEqual({ ...placement, centreXMm: 890, centreYMm: 0 });
    vi.unstubAllGlobals();
    // As wide as the ski's shoulder, 110 mm of it, from where the tip ends.
    const closer = page.seen.one("#true-size").element as HTMLDetailsElement;
    closer.open = true;
    await page.send("#true-size", new Event("toggle"));
    const frame = page.seen.one("#true-size figure > section").element as HTMLElement;
    const piece = frame.firstElementChild as HTMLElement;
    const ski = piece.firstElementChild as HTMLElement;
    expect([frame.style.width, piece.style.width]).toEqual(Array(2).fill(`${shape.shoulderWidthMm}mm`));
    expect([piece.style.height, ski.style.height]).toEqual(["110mm", `${shape.lengthMm}mm`]);
    expect(Number.parseFloat(ski.style.top)).toBeCloseTo(-shape.tipLengthMm, 6);
  });

  it("places the skier's own picture by keys and numbers, and says how sharp it is", async () => {
    const artwork = { id: "art-1", widthPx: 9000, heightPx: 1500, sha256: "x" };
    const placement = { centreXMm: 900, centreYMm: 0, mmPerPixel: 0.2, angleDeg: 0 };
    const own = { ...spec.graphic, kind: "own", layout: "same", artwork, placement };
    const start = viewOf({ choices: { destination: "collect", graphic: own }, artworks: [] });
    const { page, sent } = await sectionOf(graphics, start);
    const placed = () => (sent()["choices.graphic"] as { placement: typeof placement }).placement;
    const board = "[role=application]";
    expect(page.seen.one(board).attribute("aria-label")).toBe(
      "Place the picture. 900 mm from the tip, 0 mm to the right",
    );
    // Lying, tips to the left: right is along the ski, up is to the skier's right.
    for (const [key, x, y] of [
      ["ArrowRight", 905, 0],
      ["ArrowUp", 905, 5],
      ["ArrowLeft", 900, 5],
      ["ArrowDown", 900, 0],
    ] as const) {
      await page.key(board, key);
      expect(placed()).toEqual({ ...placement, centreXMm: x, centreYMm: y });
    }
    await page.type("centreX", "800,5");
    expect(placed().centreXMm).toBe(800.5);
    await page.type("centreY", "-3");
    await page.type("pictureSize", "900");
    await page.type("pictureAngle", "30");
    expect(placed()).toEqual({ centreXMm: 800.5, centreYMm: -3, mmPerPixel: 0.1, angleDeg: 30 });
    // 25.4 mm over 0.1 mm a pixel.
    expect(page.seen.text).toContain("254 dpi: ");
    expect(page.seen.text).toContain(words.graphic.uncovered);
    await page.press("Turn a quarter");
    expect(placed().angleDeg).toBe(120);
    await page.press("Turn a quarter");
    expect(placed().angleDeg).toBe(-150);
    await page.press("Fill the skis");
    const canvas = printCanvas("same", shape, catalog.build.rules.print);
    expect(placed()).toEqual(fillingPlacement(artwork, canvas));
    expect(page.seen.text).not.toContain(words.graphic.uncovered);
    expect(page.seen.all("input[name=layout]").map((input) => input.attribute("value"))).toEqual([
      "same",
      "mirrored",
      "continuing",
    ]);
    await page.choose("layout", "continuing");
    expect(placed()).toEqual(fillingPlacement(artwork, printCanvas("continuing", shape, catalog.build.rules.print)));
    expect(page.seen.text).toContain(
      `The canvas is ${Math.round(printCanvas("continuing", shape, catalog.build.rules.print).lengthMm)} × ${Math.round(printCanvas("continuing", shape, catalog.build.rules.print).widthMm)} mm`,
    );
    // Whose it is: asked, stated, refused.
    await page.press("Confirm");
    expect(stateRights).not.toHaveBeenCalled();
    await page.choose("rights", "own");
    await page.type("rightsName", " Robin ");
    await page.press("Confirm");
    expect(stateRights).toHaveBeenCalledWith("art-1", "own", "Robin");
    expect(page.seen.text).toContain("Stated by Robin: I made it myself");
    stateRights.mockResolvedValueOnce({ ok: false, message: "not now" });
    await page.press("Confirm");
    expect(page.seen.text).toContain("not now");
    await page.choose("graphicKind", "house");
    expect(sent()["choices.graphic"]).toMatchObject({ kind: "house", house: spec.graphic.house });
  });
});

describe("a photo", () => {
  const artwork = { id: "art-1", widthPx: 4032, heightPx: 3024, sha256: "x" };
  const own = { ...spec.graphic, kind: "own", layout: "mirrored", artwork };

  it("is offered in every way with its resolution, and laid out as it is chosen", async () => {
    const start = viewOf({ choices: { destination: "collect", graphic: own }, artworks: [] });
    const { page, sent } = await sectionOf(graphics, start);
    const graphic = () => sent()["choices.graphic"] as Record<string, unknown>;
    const offered = page.seen.all("input[name=arrangement]").map((input) => input.attribute("value"));
    expect(offered).toEqual(["fill", "ends", "fade", "tiles", "motif", "split"]);
    // 4,032 px over the ski's 1,740 mm; at 150 dpi 683 mm of them reach shovel and tail.
    expect(page.seen.text).toContain(`coarse: ${Math.floor((4032 / shape.lengthMm) * 25.4)} dpi`);
    expect(page.seen.text).toContain("sharp: 150 dpi");
    expect(page.seen.all("[role=application]").length).toBeGreaterThan(0);
    await page.choose("arrangement", "ends");
    expect(graphic()).toMatchObject({ arrangement: "ends", layout: "mirrored" });
    expect(page.seen.all("[role=application]")).toEqual([]);
    expect(page.seen.text).toContain(words.graphic.uncovered);
    await page.press("Turn a quarter");
    expect(graphic()).toMatchObject({ quarterTurns: 1 });
    await page.choose("arrangement", "split");
    expect(graphic()).toMatchObject({ arrangement: "split", layout: "continuing" });
    await page.choose("layout", "same");
    expect(graphic()).toMatchObject({ arrangement: "ends", layout: "same" });
  });

  it("says that words in it flip, and keeps a part as it reads", async () => {
    const start = viewOf({ choices: { destination: "collect", graphic: own }, artworks: [] });
    const { page, sent } = await sectionOf(graphics, start);
    const graphic = () => sent()["choices.graphic"] as Record<string, unknown>;
    expect(page.seen.text).toContain(words.graphic.wordsFlip);
    await page.press(words.graphic.keepPart);
    expect(graphic()).toMatchObject({ unmirrored: { x: 0.25, y: 0.4, width: 0.5, height: 0.2 } });
    await page.type("part-x", "60");
    // A box 50 % wide that begins at 60 % ends with the picture.
    expect(graphic()).toMatchObject({ unmirrored: { x: 0.6, y: 0.4, width: 0.4, height: 0.2 } });
    await page.press(words.graphic.dropPart);
    expect(graphic()).not.toHaveProperty("unmirrored");
    await page.choose("layout", "same");
    expect(page.seen.text).not.toContain(words.graphic.wordsFlip);
  });
});

describe("why, and what else", () => {
  it("tells in the skier's own numbers why the ski is this stiff", async () => {
    const story = stiffnessStory(answers, spec, catalog, null);
    if (!story) throw new Error("no story");
    const { page } = await sectionOf(ski);
    expect(page.seen.text).not.toContain("Held at shoulder and heel");
    await page.open("Why this stiff?");
    const text = page.seen.text;
    expect(text).toContain(
      `one ski bends ${Math.round(story.now.bendMm)} mm: ${textForPeople(story.now.bendPercent, 1)} % of the ${Math.round(story.spanMm)} mm between. Under 10 kg it bends ${textForPeople(story.bendUnderTenKgMm, 1)} mm.`,
    );
    const rows = page.seen.table("What would change it");
    expect(rows).toHaveLength(1 + story.whatIfs.length);
    expect(rows[0]).toMatchObject({
      If: "As it stands",
      "Length, cm": String(spec.lengthCm),
      "Bends, mm": textForPeople(story.now.bendMm, 0),
    });
    // Every row: its value and the difference to the first, with a sign, and "=" where nothing is left of it.
    const apart = (value: number, now: number, decimals: number) => {
      const size = textForPeople(Math.abs(value - now), decimals);
      return `${textForPeople(value, decimals)}${Number(size) === 0 ? "=" : `${value < now ? "−" : "+"}${size}`}`;
    };
    const names = { "mass-up": "5 kg more", "mass-down": "5 kg less" } as Readonly<Record<string, string>>;
    for (const [index, each] of story.whatIfs.entries()) {
      const row = rows[index + 1];
      expect(row?.If).toBe(names[each.change] ?? words.ski.stiff.changes[each.change]);
      const spring = apart(10 * each.springCentreNPerMm, 10 * story.now.springCentreNPerMm, 1);
      expect(row?.["Spring between its own supports, N/cm"]).toBe(spring);
      expect(row?.["Length, cm"]).toBe(apart(each.lengthCm, story.now.lengthCm, 0));
      expect(row?.["Bends, mm"]).toBe(apart(each.bendMm, story.now.bendMm, 0));
      expect(row?.["% of span"]).toBe(apart(each.bendPercent, story.now.bendPercent, 1));
      expect(
        row?.["Flex k, class"]?.endsWith(apart(each.flexRatio, story.now.flexRatio, 2).replace(/^[\d.]+/, "")),
      ).toBe(true);
    }
    const imperial = await sectionOf(ski, viewOf({ typed: { ...typed, mass: { unit: "lb", lb: 180 } } }));
    await imperial.page.open("Why this stiff?");
    // 5 kg are 11 lb; bends in inches beside the millimetres.
    expect(imperial.page.seen.table("What would change it").map((each) => each.If)).toContain("11 lb more");
    expect(imperial.page.seen.text).toContain(
      `${Math.round(story.now.bendMm)} mm (${textForPeople(story.now.bendMm / 25.4, 1)} in)`,
    );
  });

  it("finds other builds of the same flex, and takes one", async () => {
    // A shop of three woods and three reinforcements: the engine's own tests search the whole catalogue.
    const few = {
      ...catalog,
      build: {
        ...catalog.build,
        blends: catalog.build.blends
          .filter(({ id, forUses }) => id === spec.core || forUses.includes(model.use))
          .toSorted((a, b) => Number(b.id === spec.core) - Number(a.id === spec.core))
          .slice(0, 3),
        reinforcements: catalog.build.reinforcements.filter(({ forUses }) => forUses.includes(model.use)).slice(0, 3),
      },
    };
    const search = beginSameFlex({ answers, choices: { destination: "collect" } }, few);
    if (!search.ok) throw new Error("no search");
    expect(search.value.candidates.length).toBeGreaterThan(8);
    const found = gatherSameFlex(
      search.value,
      search.value.candidates.map((candidate) => judgeSameFlex(search.value, candidate, few)),
    );
    const { page, sent } = await sectionOf((sheet) => (
      <>
        <CoreSection sheet={sheet} catalog={few} words={words} />
        <ReinforcementSection sheet={sheet} catalog={few} words={words} />
      </>
    ));
    await page.open("Same flex, other build");
    await page.wait(399);
    expect(page.seen.text).toContain("Working out the builds");
    for (let turn = 0; turn < 900 && page.seen.text.includes("Working out the builds"); turn++) await page.wait(5);
    expect(page.seen.text).toContain(`${found.options.length} builds come to this flex.`);
    const table = page.seen.table(words.sameFlex.caption);
    const unbeaten = new Set(paretoSet(found.options));
    const rows = found.options
      .filter((each) => unbeaten.has(each) || each.isCurrent)
      .toSorted((a, b) => a.massG - b.massG || a.priceCents - b.priceCents);
    expect(table).toHaveLength(rows.length);
    expect(table.map((row) => row["Mass of the pair"])).toEqual(
      rows.map(({ change }) => {
        const grams = Math.round(change.massG);
        return `${grams > 0 ? "+" : grams < 0 ? "−" : ""}${Math.abs(grams)} g`;
      }),
    );
    expect(table.filter((row) => row.Build?.includes("On the sheet now"))).toHaveLength(1);
    expect(page.value("lighter-by")).toBe("150");
    const answer = lighterBy(found.options, 150);
    const option = answer.kind === "found" ? answer.option : "lightest" in answer ? answer.lightest : null;
    await page.type("lighter-by", "0");
    expect(page.seen.text).toContain(words.sameFlex.lighterBad);
    await page.type("lighter-by", "5001");
    expect(page.seen.text).toContain(words.sameFlex.lighterBad);
    await page.type("lighter-by", "150");
    if (option) {
      const button = page.seen.all("p[role=status] + button").map(({ text }) => text)[0] ?? "";
      await page.press(button);
      expect(sent()).toMatchObject({ "choices.core": option.core, "choices.reinforcements": option.reinforcements });
    }
  });
});
