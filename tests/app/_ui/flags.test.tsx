// @vitest-environment happy-dom
/** What makes a person stop on the sheet: which flags hold, what they offer, and a number left with the owner. */
import { describe, expect, it, vi } from "vitest";
import { AskPerson, Conflicts, Flags, flagsThatHold, stopsSale } from "#app/_ui/sheet/flags.client.tsx";
import type { SheetState } from "#app/_ui/sheet/use-sheet.client.ts";
import words from "#content/copy/sheet.json";
import type { Conflict } from "#engine/assessment";
import type { FitFlag } from "#engine/fit";
import { operate } from "../../support/browser";
import { partly } from "../../support/builders/views";

const flag = (code: string, blocks: FitFlag["blocks"], known: object = {}) =>
  ({ code, blocks, message: `${code}.`, script: `Say ${code}.`, ...known }) as unknown as FitFlag;

const asked = { setTyped: vi.fn(), setAnswer: vi.fn(), setChoices: vi.fn(), setContact: vi.fn(), flush: vi.fn() };
const sheetWith = (flags: readonly FitFlag[], known: object = {}) => {
  for (const each of Object.values(asked)) each.mockReset();
  return {
    ...partly<SheetState>({ assessment: { spec: { model: "midlow-84" } } } as never),
    assessment: { recommendation: { flags }, spec: { model: "midlow-84" } },
    contact: { name: "Robin", phone: "303 555 0101" },
    errors: {},
    view: { review: null },
    ...asked,
    ...known,
  } as unknown as SheetState;
};

describe("flags", () => {
  it("hold for the skier and for the model on the sheet, not for others; one that stops the sale stops it", () => {
    const own = flag("own", "build", { model: "midlow-84" });
    const other = flag("other", "sale", { model: "midlow-95" });
    const all = flag("all", "nothing");
    expect(flagsThatHold(sheetWith([own, other, all])).map(({ code }) => code)).toEqual(["own", "all"]);
    expect(stopsSale(sheetWith([own, other, all]))).toBe(false);
    expect(stopsSale(sheetWith([all, flag("stop", "sale")]))).toBe(true);
    expect(flagsThatHold(sheetWith([], { assessment: { recommendation: null, spec: null } }))).toEqual([]);
  });

  it("say what they mean, and to staff what to say", async () => {
    const flags = [flag("stop", "sale"), flag("look", "build"), flag("mind", "nothing")];
    const skier = await operate(<Flags sheet={sheetWith(flags)} words={words} />);
    expect(skier.seen.all("[role=status]").map(({ text }) => text)).toEqual([
      `✕${words.flags.stop}stop.`,
      `!${words.flags.build}look.`,
      `!${words.flags.careful}mind.`,
    ]);
    const staff = await operate(<Flags sheet={sheetWith(flags.slice(0, 1))} words={words} staff />);
    expect(staff.seen.text).toContain("Say stop.");
    expect((await operate(<Flags sheet={sheetWith([])} words={words} />)).seen.text).toBe("");
  });

  it("offer what was meant: a measure as typed, or an answer", async () => {
    const height = { unit: "cm", cm: 182 };
    const mass = { unit: "kg", kg: 82 };
    const measures = flag("units", "sale", {
      suggestion: { label: "182 cm, 82 kg", path: "typed.height", typed: { height, mass } },
    });
    const typed = await operate(<Flags sheet={sheetWith([measures])} words={words} />);
    await typed.press("182 cm, 82 kg");
    expect(asked.setTyped.mock.calls).toEqual([
      ["height", height],
      ["mass", mass],
    ]);
    expect(asked.setAnswer).not.toHaveBeenCalled();
    const one = flag("mass", "sale", { suggestion: { label: "82 kg", path: "typed.mass", typed: { mass } } });
    const single = await operate(<Flags sheet={sheetWith([one])} words={words} />);
    await single.press("82 kg");
    expect(asked.setTyped.mock.calls).toEqual([["mass", mass]]);
    const share = flag("share", "sale", { suggestion: { label: "40 %", path: "answers.offPistePercent", value: 40 } });
    const answer = await operate(<Flags sheet={sheetWith([share])} words={words} />);
    await answer.press("40 %");
    expect(asked.setAnswer.mock.calls).toEqual([["offPistePercent", 40]]);
    expect(asked.setTyped).not.toHaveBeenCalled();
    expect((await operate(<Flags sheet={sheetWith([flag("bare", "sale")])} words={words} />)).seen.buttons).toEqual([]);
  });
});

describe("options that clash", () => {
  const way = (code: string, choices: object, effect?: object) => ({
    code,
    label: `way ${code}`,
    choices,
    ...(effect ? { effect } : {}),
  });
  const clash = (code: string, ways: readonly object[]) =>
    ({ code, path: "choices.core", ways }) as unknown as Conflict;

  it("say so with every way out, what it costs, and a button where one press is enough", async () => {
    const effect = { priceCents: 6000, massG: -120.4, stiffnessPercent: 3.2 };
    const conflicts = [clash("a", [way("x", { core: "aspen" }, effect), way("y", {})]), clash("b", [])];
    const page = await operate(
      <Conflicts
        sheet={sheetWith([])}
        words={words}
        conflicts={conflicts}
        text={({ code }) => `clash ${code}`}
        tone="iron"
      />,
    );
    const [first, second] = page.seen.all("[role=status]");
    expect(first?.text).toContain(`${words.flags.conflict}clash a`);
    expect(first?.items).toEqual(["way x+$60, −120 g a pair, +3 % stiffness", "way y"]);
    expect(first?.buttons).toEqual(["way x"]);
    expect(second?.all("ul")).toEqual([]);
    await page.press("way x");
    expect(asked.setChoices).toHaveBeenCalledWith({ core: "aspen" });
    const careful = await operate(
      <Conflicts sheet={sheetWith([])} words={words} conflicts={conflicts} text={() => "clash"} tone="amber" />,
    );
    expect(careful.seen.text).toContain(words.flags.careful);
    expect(careful.seen.text).not.toContain(words.flags.conflict);
  });
});

describe("a number left with the owner", () => {
  const person = async (
    known: object = {},
    reply: () => Promise<{ ok: boolean; message?: string }> = async () => ({ ok: true }),
  ) => {
    const ask = vi.fn(reply);
    const page = await operate(<AskPerson sheet={sheetWith([], known)} words={words} ask={ask} title="Ask a person" />);
    return { page, ask };
  };

  it("is sent with a word or the usual one, after what waits is saved, and says on which number they call", async () => {
    const { page, ask } = await person();
    expect(page.seen.one("section").attribute("aria-label")).toBe("Ask a person");
    expect([page.value("name"), page.value("phone"), page.value("note")]).toEqual(["Robin", "303 555 0101", ""]);
    expect(page.seen.one("label[for=ask-note]").text).toMatch(/optional$/);
    await page.press(words.flags.callSend);
    expect(asked.flush).toHaveBeenCalledTimes(1);
    expect(ask).toHaveBeenLastCalledWith(words.flags.callDefault);
    expect(page.seen.one("[role=status]").text).toBe("✓Asked. The owner sees your sheet and calls 303 555 0101.");
    await page.type("note", " blue ");
    await page.press(words.flags.callSend);
    expect(ask).toHaveBeenLastCalledWith("blue");
  });

  it("is answered by mail where an address and no number is left", async () => {
    const { page } = await person({ contact: { name: "Robin", email: "robin@alder.example" } });
    expect(page.value("email")).toBe("robin@alder.example");
    await page.press(words.flags.callSend);
    expect(page.seen.one("[role=status]").text).toBe(
      "✓Asked. The owner sees your sheet and writes to robin@alder.example.",
    );
  });

  it("saves name and number as they are typed, nothing where they were emptied, and names a wrong number", async () => {
    const { page } = await person({ errors: { "contact.phone": "Telephone: no number" } });
    expect(page.seen.one("#ask-phone-error").text).toContain("no number");
    await page.type("name", "Kim");
    await page.type("phone", "");
    await page.type("name", "");
    expect(asked.setContact.mock.calls).toEqual([
      ["name", "Kim"],
      ["phone", undefined],
      ["name", undefined],
    ]);
  });

  it("stays typed where it could not be sent, and is not asked twice", async () => {
    const refused = await person({}, async () => ({ ok: false, message: "No telephone." }));
    await refused.page.press(words.flags.callSend);
    expect(refused.page.seen.one("[role=status]").text).toBe("✕No telephone.");
    expect(refused.page.seen.one("button").attribute("aria-disabled")).toBe("false");
    const offline = await person({}, () => Promise.reject(new Error("offline")));
    await offline.page.press(words.flags.callSend);
    expect(offline.page.seen.one("[role=status]").text).toContain(words.save.waiting);
    const review = { askedAt: "2026-11-10T17:00:00.000Z", note: "x" };
    const before = await person({ view: { review } });
    expect(before.page.seen.text).toBe("✓Asked. The owner sees your sheet and calls 303 555 0101.");
    const nameless = await person({ view: { review }, contact: {} });
    expect(nameless.page.seen.text).toContain("calls you.");
  });
});
