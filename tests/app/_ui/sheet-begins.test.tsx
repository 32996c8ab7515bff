/** What each section of the sheet shows before anybody touches it: what was answered, within which limits, at which price. */
import type { ReactNode } from "react";
import { describe, expect, it, vi } from "vitest";
import { CoreSection, ReinforcementSection } from "#app/_ui/sheet/build-sections.client.tsx";
import { useDrawnPair } from "#app/_ui/sheet/drawn-pair.client.ts";
import { GraphicSection } from "#app/_ui/sheet/graphic-section.client.tsx";
import { AxisPart, PairStrip } from "#app/_ui/sheet/pair-preview.client.tsx";
import { ContactFields, DateSection, PriceSection } from "#app/_ui/sheet/price-section.client.tsx";
import { SameFlexTable } from "#app/_ui/sheet/same-flex-table.tsx";
import { SkiSection } from "#app/_ui/sheet/ski-section.client.tsx";
import { SummaryBar } from "#app/_ui/sheet/summary-bar.client.tsx";
import { optionEffect, reinforcementOption } from "#app/_ui/sheet/use-option-effects.client.ts";
import type { SheetState } from "#app/_ui/sheet/use-sheet.client.ts";
import { WhyThisStiff } from "#app/_ui/sheet/why-this-stiff.client.tsx";
import { YouSection } from "#app/_ui/sheet/you-section.client.tsx";
import words from "#content/copy/sheet.json";
import { assessSheet, type SameFlexOption } from "#engine/assessment";
import { catalog } from "../../engine/demo-catalog";
import { partly } from "../../support/builders/views";
import { drawn } from "../../support/drawn";
import { answers, assessed, dates, stillSheet, viewOf } from "../../support/sheet";

const inForm = (element: ReactNode) => {
  const seen = drawn(<form>{element}</form>);
  const [form] = seen.forms;
  if (!form) throw new Error("no form");
  return { ...form, seen };
};
const still = (known: object = {}, state: Partial<SheetState> = {}) => stillSheet(viewOf(known), state);
const empty = still({ answers: {}, typed: {}, choices: {}, contact: {} });
const limits = (seen: ReturnType<typeof drawn>, id: string) =>
  ["min", "max", "step"].map((name) => Number(seen.one(`input[type=range][id=${id}]`).attribute(name)));
/** The unit that stands chosen beside height and mass. */
const units = (seen: ReturnType<typeof drawn>) =>
  seen
    .all("input[type=radio][checked]")
    .map((radio) => radio.attribute("value") ?? "")
    .filter((value) => ["cm", "ft-in", "kg", "lb"].includes(value));
const { spec } = assessed;
if (!spec) throw new Error("no recommendation");
const pictures = { uploadUrl: "/u", pictureBase: "/p", stateRights: vi.fn() };

const given = { catalog, words, pictureBase: "/p" } as const;
/** The pair beside its figures, and its stations, as the sheet hands it to them. */
function Strip({ sheet }: { readonly sheet: SheetState }) {
  return <PairStrip {...given} sheet={sheet} pair={useDrawnPair(sheet, catalog, words)} />;
}
function Axis({ sheet }: { readonly sheet: SheetState }) {
  return <AxisPart {...given} sheet={sheet} pair={useDrawnPair(sheet, catalog, words)} />;
}

describe("the skier", () => {
  const you = (sheet: SheetState, known: object = {}) =>
    inForm(<YouSection sheet={sheet} catalog={catalog} words={words} {...known} />);

  it("finds every answer as it was given", () => {
    const said = {
      ...answers,
      homeSnow: "icy",
      turnSize: "long",
      priorities: ["light", "quiet"],
      terrain: ["park"],
      touringPercent: 20,
      packKg: 12,
      daysTotal: 300,
      ageYears: 41,
      currentSki: {
        lengthCm: 176,
        waistMm: 88,
        length: "too long",
        flex: "right",
        flexClass: 3,
        newPairFor: "the same",
      },
      buyerIsSkier: false,
      stillGrowing: true,
      healthAdviceGiven: true,
    };
    const found = you(still({ answers: said }));
    expect(units(found.seen)).toEqual(["cm", "kg"]);
    expect(found.sent).toEqual({
      height: "182",
      heightUnit: "cm",
      mass: "82",
      massUnit: "kg",
      offPisteSlider: "40",
      ability: "confident",
      offPiste: "40",
      temperament: "steady",
      homeSnow: "icy",
      turnSize: "long",
      priorities: "quiet,light",
      terrain: "park",
      touringPercent: "20",
      packKg: "12",
      daysTotal: "300",
      ageYears: "41",
      currentLength: "176",
      currentWaist: "88",
      currentLengthVerdict: "too long",
      currentFlexVerdict: "right",
      currentFlexClass: "3",
      newPairFor: "the same",
      buyer: "on",
      growing: "on",
      health: "on",
    });
    const other = you(
      still({ answers: { ...answers, buyerIsSkier: true, stillGrowing: false, healthAdviceGiven: false } }),
    );
    for (const tick of ["buyer", "growing", "health"]) expect(other.fields[tick]?.value).toBe("");
  });

  it("is asked in the units of the last sheet, with a lead and the rest folded away; the desk sees it open", () => {
    const metric = you(empty);
    expect(units(metric.seen)).toEqual(["cm", "kg"]);
    expect(metric.seen.text).toContain(words.you.lead);
    expect(metric.seen.one("details").attribute("open")).toBeNull();
    const imperial = you(empty, { preferImperial: true, dense: true });
    expect(units(imperial.seen)).toEqual(["ft-in", "lb"]);
    expect(imperial.seen.text).not.toContain(words.you.lead);
    expect(imperial.seen.one("details").attribute("open")).toBe("");
    expect(limits(metric.seen, "offPiste")).toEqual([0, 100, 5]);
    expect(metric.fields.ability?.value).toBe("");
  });

  it("sees what was refused at its own field", () => {
    const { fields } = inForm(
      <ContactFields sheet={still({}, { errors: { "contact.email": "no address" } })} words={words} />,
    );
    expect([fields.name?.error, fields.email?.error, fields.phone?.error]).toEqual([null, "✕Error: no address", null]);
    expect([fields.name?.value, fields.email?.value, fields.phone?.value]).toEqual(["Robin Alder", "", "303 555 0101"]);
    const wrong = you(still({}, { errors: { "typed.mass": "too light" } }));
    expect(wrong.fields.mass?.error ?? wrong.seen.text).toContain("too light");
  });
});

describe("the ski", () => {
  const ski = (sheet: SheetState) => inForm(<SkiSection sheet={sheet} catalog={catalog} words={words} />);

  it("has nothing but the models to choose from before the first answers", () => {
    const none = ski(empty);
    expect(none.fields.model).toBeUndefined();
    expect(none.fields.length).toBeUndefined();
    expect(Object.keys(none.fields.otherModel?.choices ?? {})).toEqual(
      catalog.build.models.filter(({ state }) => state === "active").map(({ id }) => id),
    );
    expect(none.seen.one("details").attribute("open")).toBe("");
    expect(drawn(<WhyThisStiff sheet={empty} spec={spec} catalog={catalog} words={words} />).text).toBe("");
  });

  it("stands at the recommended model, length and flex, and the first recommended is marked", () => {
    const { sent, seen } = ski(still());
    expect(sent).toMatchObject({
      model: spec.model,
      length: String(spec.lengthCm),
      bootSole: "",
      bindingTrack: "",
      mountOffset: "0",
    });
    expect(Number(sent.flexRatio)).toBeCloseTo(spec.flexRatio, 2);
    expect(limits(seen, "flexRatio")[2]).toBe(0.01);
    expect(seen.text.split("◂ recommended")).toHaveLength(3);
    // Outlines share one scale, a little longer than the longest ski.
    expect(new Set(seen.all("label svg").map((svg) => svg.attribute("viewBox")?.split(" ")[2]))).toEqual(
      new Set(["1980"]),
    );
    expect(seen.one("details").attribute("open")).toBeNull();
    expect(seen.buttons).toEqual([]);
    const fit = assessed.recommendation?.choices[0];
    const why = seen.part(words.ski.why);
    expect(why.text).toContain(`cm, on offer ${fit?.lengthCm} cm`);
    expect(why.text).toContain(`k ${fit?.flexRatio.toFixed(2)}`);
    expect(why.text).toContain(String(fit?.score.toFixed(2)));
  });

  it("keeps boot and binding as measured, here or before", () => {
    const mount = { offsetMm: -10, bootSoleMm: 315, bindingTrackMm: 340 };
    expect(ski(still({ choices: { mount } })).sent).toMatchObject({
      bootSole: "315",
      bindingTrack: "340",
      mountOffset: "-10",
    });
    const before = ski(still({ answers: { ...answers, bootSoleMm: 305, bindingTrackMm: 330 } })).sent;
    expect(before).toMatchObject({ bootSole: "305", bindingTrack: "330", mountOffset: "0" });
    const chosen = ski(still({ choices: { flexRatio: 1.2 } }));
    expect(chosen.sent.flexRatio).toBe("1.20");
    expect(chosen.buttons).toHaveLength(1);
  });

  it("is drawn with its figures, or kept a place for", () => {
    const strip = (sheet: SheetState) => drawn(<Strip sheet={sheet} />);
    expect(strip(empty).text).toContain(words.previewEmpty);
    expect(strip(empty).all("svg")).toEqual([]);
    const drawing = strip(still());
    expect(drawing.text).not.toContain(words.previewEmpty);
    const named = `${catalog.build.models.find(({ id }) => id === spec.model)?.name}, ${spec.lengthCm} cm`;
    expect(drawing.one("svg").attribute("aria-label")).toBe(`${words.preview}: ${named}`);
    expect(drawing.text).toContain("g a ski");
    expect(drawing.one("div").attribute("class")).not.toContain("opacity-70");
    expect(
      strip(still({}, { isComputing: true }))
        .one("div")
        .attribute("class"),
    ).toContain("opacity-70");
    const bare = {
      ...assessed,
      spread: undefined,
      flex: null,
      finishedFlex: null,
    } as unknown as SheetState["assessment"];
    expect(strip(still({}, { assessment: bare })).text).not.toContain("g a ski");
    const axis = (sheet: SheetState) => drawn(<Axis sheet={sheet} />);
    expect(axis(empty).text).toBe("");
    expect(axis(still({}, { assessment: bare })).text).toBe("");
  });
});

describe("core, reinforcement and graphic", () => {
  it("ask for a ski first", () => {
    for (const Section of [CoreSection, ReinforcementSection])
      expect(drawn(<Section sheet={empty} catalog={catalog} words={words} />).text).toBe(words.ski.empty);
    expect(drawn(<GraphicSection sheet={empty} catalog={catalog} words={words} pictures={pictures} />).text).toBe(
      words.ski.empty,
    );
  });

  it("stand at what is on the sheet, each choice with its price", () => {
    const build = inForm(
      <>
        <CoreSection sheet={still()} catalog={catalog} words={words} />
        <ReinforcementSection sheet={still()} catalog={catalog} words={words} />
      </>,
    );
    expect(build.sent).toMatchObject({ core: spec.core, plate: "own" });
    expect(build.sent.protectors).toBeUndefined();
    expect(build.sent.lightening).toBeUndefined();
    const price = (code: string) => `+$${(catalog.priceBook.optionCents[code]?.cents ?? 0) / 100}`;
    expect(build.fields.protectors?.label).toContain(price("tip-tail-protectors"));
    const own = catalog.build.ownCore?.priceCode ?? "";
    expect(build.fields.core?.choices.own).toContain(price(own));
    const rich = inForm(
      <ReinforcementSection
        sheet={still({ choices: { tipTailProtectors: true, lightening: true, plate: "magnesium" } })}
        catalog={catalog}
        words={words}
      />,
    );
    expect(rich.sent).toMatchObject({ protectors: "on", lightening: "on", plate: "magnesium" });
  });

  it("hold letters, window and pictures within what can be made", () => {
    const text = { text: "ADA", xMm: 600, capHeightMm: 40 };
    const windows = [{ fromXMm: 300, toXMm: 500, halfWidthMm: 20 }];
    const base = {
      left: catalog.build.baseColours[0]?.id,
      right: catalog.build.baseColours[1]?.id,
      inlay: "counterchange",
      inlayText: "TY",
    };
    const graphic = (known: object) =>
      inForm(
        <GraphicSection
          sheet={still({ choices: { graphic: { ...spec.graphic, ...known }, base } })}
          catalog={catalog}
          words={words}
          pictures={pictures}
        />,
      );
    const house = graphic({ text, windows });
    expect(house.sent).toMatchObject({
      graphicKind: "house",
      house: spec.graphic.house,
      lettering: "ADA",
      textAt: "600",
      textCap: "40",
      window: "on",
      windowFrom: "300",
      windowTo: "500",
      windowHalf: "20",
      baseLeft: base.left,
      baseRight: base.right,
      inlay: "counterchange",
      inlayText: "TY",
    });
    expect(Object.values(house.fields).map(({ name, label }) => [name, label])).toEqual(
      expect.arrayContaining([
        ["house", "House graphics"],
        ["layout", "How it lies on the pair"],
        ["baseLeft", "Left ski"],
        ["baseRight", "Right ski"],
        ["inlay", "Letters in the base"],
        ["inlayText", "The letters"],
      ]),
    );
    const length = Math.round(10 * spec.lengthCm);
    expect(limits(house.seen, "textAt")[0]).toBe(0);
    expect(limits(house.seen, "textAt")[2]).toBe(5);
    expect(Math.abs((limits(house.seen, "textAt")[1] ?? 0) - length)).toBeLessThan(30);
    expect(limits(house.seen, "textCap")).toEqual([8, 60, 1]);
    expect(limits(house.seen, "windowFrom")[2]).toBe(5);
    expect(limits(house.seen, "windowTo")[2]).toBe(5);
    expect(limits(house.seen, "windowHalf")[2]).toBe(1);
    expect(house.seen.one("input[name=lettering]").attribute("maxlength")).toBe("60");
    expect(house.seen.one("input[name=inlayText]").attribute("maxlength")).toBe("24");
    const plain = inForm(<GraphicSection sheet={still()} catalog={catalog} words={words} pictures={pictures} />);
    expect(plain.fields.textAt).toBeUndefined();
    expect(plain.fields.windowFrom).toBeUndefined();
    expect(plain.fields.inlayText).toBeUndefined();
    // Each house graphic beside its name, from its own file, whose address says how this release draws it.
    const swatches = plain.seen.all("img").map((each) => each.attribute("src"));
    expect(swatches).toEqual(
      catalog.build.houseGraphics.map(
        ({ id, pattern, colours }) => `/files/house/${id}?as=${[pattern, ...colours].join("-").replaceAll("#", "")}`,
      ),
    );
    // A picture of one's own costs more over both skis, and is not laid out in turns.
    const own = graphic({ kind: "own" });
    const pair = `+$${(catalog.priceBook.optionCents["graphic-own-pair"]?.cents ?? 0) / 100}`;
    expect(own.fields.layout?.choices.continuing).toContain(pair);
    expect(own.fields.layout?.choices.mirrored).not.toContain("+$");
    expect(Object.keys(own.fields.layout?.choices ?? {})).not.toContain("alternate");
    expect(house.fields.layout?.choices.continuing).not.toContain("+$");
    expect(own.seen.hasPart(words.graphic.rightsTitle)).toBe(false);
  });
});

describe("what one reinforcement does", () => {
  const input = { answers, choices: { destination: "collect" } } as const;
  const finished = (reinforcements: readonly string[]) =>
    1000 *
    (assessSheet({ ...input, choices: { ...input.choices, reinforcements } }, catalog).finishedFlex?.massKg ?? 0);

  it("is the same whether it is on the sheet or not: grams of both skis, twist against the pair without it", () => {
    const [one, other] = ["carbon-biax", "flax"];
    const effect = optionEffect(reinforcementOption(one, [other]), input, catalog);
    expect(effect?.massG).toBeCloseTo(2 * (finished([other, one]) - finished([other])), 6);
    // Cloth at ±45° is laid for its stiffness in twist.
    expect(effect?.twistPercent).toBeGreaterThan(1);
    expect(effect?.twistPercent).toBeLessThan(200);
    const taken = optionEffect(reinforcementOption(one, [other, one]), input, catalog);
    expect(taken?.massG).toBeCloseTo(effect?.massG ?? 0, 6);
    expect(taken?.twistPercent).toBeCloseTo(effect?.twistPercent ?? 0, 6);
    expect(optionEffect(reinforcementOption(one, []), { answers: {}, choices: {} }, catalog)).toBeNull();
  });
});

describe("what a plate and pockets in the core do", () => {
  const input = { answers, choices: { destination: "collect" } } as const;
  const massG = (choices: object) =>
    2000 * (assessSheet({ ...input, choices: { ...input.choices, ...choices } }, catalog).finishedFlex?.massKg ?? 0);

  it.each([
    ["lightening", { lightening: true }],
    ["plate", { plate: "magnesium" }],
  ])("is told in grams of both skis, whether chosen or not: %s", (name, choice) => {
    const option = { id: name, without: { [name]: undefined }, withIt: choice };
    const effect = optionEffect(option, input, catalog);
    expect(effect?.massG).toBeLessThan(-10);
    expect(effect?.massG).toBeCloseTo(massG(choice) - massG({}), 6);
    const chosen = { ...input, choices: { ...input.choices, ...choice } };
    expect(optionEffect(option, chosen, catalog)?.massG).toBeCloseTo(effect?.massG ?? 0, 6);
  });
});

describe("price and date", () => {
  it("wait for a ski, and then say what each way of delivery costs", () => {
    expect(drawn(<PriceSection sheet={empty} catalog={catalog} words={words} />).text).toBe(words.price.pending);
    expect(drawn(<DateSection dateRange={null} words={words} />).text).toBe(words.date.pending);
    const { sent, fields, seen } = inForm(
      <PriceSection sheet={still({ choices: { destination: "abroad" } })} catalog={catalog} words={words} />,
    );
    expect(sent.destination).toBe("abroad");
    const shipping = catalog.priceBook.shippingCents;
    expect(
      Object.entries(fields.destination?.choices ?? {}).map(([to, label]) => [to, label.replace(/^[^$]*/, "")]),
    ).toEqual(
      Object.keys(words.price.destinations).map((to) => [to, `$${shipping[to as keyof typeof shipping] / 100}`]),
    );
    expect(seen.text).toContain("Price book PB-3.");
    const day = drawn(<DateSection dateRange={dates} words={words} />);
    expect(day.text).toContain("Ready 10–17 December 2026");
    expect(day.text).toContain("From 200 runs of the whole queue");
  });

  it("stand in the bar below, with how saving stands", () => {
    const bar = (state: Partial<SheetState>, sheet = still({}, state)) =>
      drawn(<SummaryBar sheet={sheet} words={words} pair={null} pictureBase="/p" />);
    const saved = (["saved", "saving", "waiting"] as const).map((save) => bar({ save }).one("[role=status]").text);
    expect(saved).toEqual([words.save.saved, words.save.saving, words.save.waiting]);
    const [price, date] = bar({ dateRange: dates }).all("output");
    expect(price?.text).toMatch(/^\$[\d,]+\.\d\d$/);
    expect(price?.attribute("class")).not.toContain("opacity");
    expect(date?.text).toBe("10–17 December");
    expect(bar({ isComputing: true }).one("output").attribute("class")).toContain("opacity-60");
    expect(
      bar({}, empty)
        .all("output")
        .map(({ text }) => text),
    ).toEqual(["—", "—"]);
  });
});

describe("other builds of the same flex", () => {
  it("are set against the one on the sheet, which cannot be taken again", () => {
    const option = (core: string, isCurrent: boolean, change: object) =>
      partly<SameFlexOption>({ core, reinforcements: [], isCurrent, coreMidMm: 12.345, change } as never);
    const rows = [
      option("paulownia", false, { massG: -240.4, priceCents: 6000, twistPercent: 3.2, leadDays: 5 }),
      option("ash", true, { massG: 0, priceCents: 0, twistPercent: 0, leadDays: 0 }),
    ];
    const seen = drawn(
      <SameFlexTable rows={rows} words={words} nameOf={({ core }) => `all ${core}`} onTake={() => {}} />,
    );
    expect(seen.table(words.sameFlex.caption).map((row) => Object.values(row))).toEqual([
      ["all paulowniaTake this: all paulownia", "−240 g", "+$60", "+3 %", "+5", "12.3 mm"],
      ["all ashOn the sheet now: all ash", "0 g", "same price", "0 %", "0", "12.3 mm"],
    ]);
    expect(seen.all("button").map((button) => button.attribute("aria-disabled"))).toEqual(["false", "true"]);
    expect(seen.numbersOf(words.sameFlex.caption)).toHaveLength(5);
  });
});
