/** The sheet's sections as forms: what is sent without scripts, and what of it is a change. */
import { describe, expect, it } from "vitest";
import { changesOf, type Sent, type SheetNow, sectionKeys, shownFields } from "#app/_ui/sheet/section-fields.ts";
import { valuesOf } from "#app/_ui/sheet/sheet-values.ts";
import { assessSheet } from "#engine/assessment";
import type { SheetView } from "#services/views";
import { catalog } from "../../engine/demo-catalog";
import { viewOf } from "../../support/sheet";

function nowOf(view: SheetView): SheetNow {
  const { spec, price } = assessSheet({ answers: view.answers, choices: view.choices }, catalog);
  return {
    values: valuesOf(view),
    spec,
    totalCents: price?.totalCents ?? null,
    catalog,
    units: { height: "cm", mass: "kg" },
  };
}

const now = nowOf(viewOf({ said: { height: "182", mass: "82" } }));
const shown = Object.fromEntries(sectionKeys.map((key) => [key, shownFields(key, now)]));
const sent = (section: string, known: Sent): Sent => ({ ...shown[section], ...known });

describe("a section that was sent as it was drawn", () => {
  it.each(sectionKeys)("%s changes nothing", (section) => {
    expect(changesOf(section, shown[section] ?? {}, shown[section] ?? {}, now)).toEqual({
      patches: {},
      unread: [],
      overtaken: [],
    });
  });

  it("leaves an answer that nobody gave as it is, though its slider stands somewhere", () => {
    const unanswered = nowOf(viewOf({ answers: {}, typed: {} }));
    const you = shownFields("you", unanswered);
    // fit.json: the usual share off the piste of who does not say.
    expect(you.offPiste).toBe(String(catalog.fit.offPisteUnansweredPercent));
    expect(changesOf("you", you, you, unanswered).patches).toEqual({});
    const moved = { ...you, offPisteSlider: "65" };
    expect(changesOf("you", moved, you, unanswered).patches).toEqual({
      offPiste: { "answers.offPistePercent": 65 },
    });
  });
});

describe("what was changed", () => {
  const patchesOf = (section: (typeof sectionKeys)[number], known: Sent) =>
    changesOf(section, sent(section, known), shown[section] ?? {}, now).patches;

  it("is saved by path, in any way of writing a measure", () => {
    // 5 × 12 + 10 = 70 in.
    expect(patchesOf("you", { height: "5'10", ability: "expert", priorities: ["quiet", "light"] })).toEqual({
      height: { "typed.height": { unit: "ft-in", feet: 5, inches: 10 }, "said.height": "5'10" },
      ability: { "answers.ability": "expert" },
      priorities: { "answers.priorities": ["quiet", "light"] },
    });
    expect(patchesOf("you", { mass: "20 stone x" })).toEqual({ mass: { "said.mass": "20 stone x" } });
    expect(patchesOf("you", { mass: "" })).toEqual({ mass: { "typed.mass": null, "said.mass": null } });
    expect(patchesOf("you", { buyer: "on" })).toEqual({ buyer: { "answers.buyerIsSkier": false } });
    expect(patchesOf("you", { currentLength: "176,5", currentFlexVerdict: "right" })).toEqual({
      currentLength: { "answers.currentSki": { lengthCm: 176.5, flex: "right" } },
    });
    expect(patchesOf("contact", { phone: "" })).toEqual({ phone: { "contact.phone": null } });
  });

  it("takes length and flex along with the model, and letters with their place", () => {
    expect(patchesOf("ski", { otherModel: "kerfline-68" })).toEqual({
      otherModel: { "choices.model": "kerfline-68", "choices.lengthCm": null, "choices.flexRatio": null },
    });
    const graphic = patchesOf("graphic", { lettering: "ROBIN", inlay: "counterchange" });
    expect(graphic.lettering?.["choices.graphic"]).toMatchObject({ text: { text: "ROBIN", capHeightMm: 28 } });
    expect(graphic.inlay?.["choices.base"]).toMatchObject({ inlay: "counterchange" });
    expect(patchesOf("core", { core: "own" })).toEqual({ core: {} });
    expect(patchesOf("reinforcement", { protectors: "on", reinforcements: [] })).toMatchObject({
      protectors: { "choices.tipTailProtectors": true },
    });
  });

  it("keeps the words that are no number, and does not touch what another device changed since", () => {
    const wrong = changesOf("you", sent("you", { packKg: "a lot", ageYears: "44" }), shown.you ?? {}, now);
    expect(wrong.unread).toEqual(["packKg"]);
    expect(wrong.patches).toEqual({ ageYears: { "answers.ageYears": 44 } });
    const later = nowOf(viewOf({ answers: { ...now.values.answers, ability: "learning", homeSnow: "icy" } }));
    const stale = changesOf("you", sent("you", { ability: "expert", turnSize: "long" }), shown.you ?? {}, later);
    expect(stale.overtaken).toEqual(["ability"]);
    // The snow that the other device said stands.
    expect(stale.patches).toEqual({ turnSize: { "answers.turnSize": "long" } });
  });
});
