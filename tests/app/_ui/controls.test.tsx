// @vitest-environment happy-dom
/** Fields and drawings operated as a person does: what is passed on, what is kept as typed, where the focus goes. */
import { useState } from "react";
import { describe, expect, it, vi } from "vitest";
import { ActionForm, type FormState } from "#app/_ui/action-form.client.tsx";
import { CheckGroup } from "#app/_ui/choice-group.tsx";
import { HeightField, MassField } from "#app/_ui/measure-fields.client.tsx";
import { DraftNumber } from "#app/_ui/sheet/draft-number.client.tsx";
import { SliderField } from "#app/_ui/slider-field.client.tsx";
import { ThemeSwitch } from "#app/_ui/theme-switch.client.tsx";
import type { AxisBuild } from "#app/_visuals/axis-builds.ts";
import { AxisChart } from "#app/_visuals/axis-chart.client.tsx";
import sheetWords from "#content/copy/sheet.json";
import { shapeAtLength } from "#engine/geometry";
import { pairLook } from "#engine/scene";
import type { TypedHeight, TypedMass } from "#engine/units";
import { catalog, solved, specOf } from "../../engine/demo-catalog";
import { operate } from "../../support/browser";

interface Said<Typed> {
  readonly text: string | null;
  readonly value: Typed | undefined;
}

/** Keeps what was said as the sheet does: a value stays beside words that nobody can read. */
function useSaid<Typed>(told: (said: Said<Typed>) => void, start: Typed | undefined) {
  const [kept, setKept] = useState<{ value: Typed | undefined; said: string | undefined }>({
    value: start,
    said: undefined,
  });
  const onSay = ({ text, value }: Said<Typed>) => {
    told({ text, value });
    const isEmpty = text !== null && text.trim() === "";
    setKept((before) => ({
      value: isEmpty ? undefined : (value ?? before.value),
      said: (isEmpty ? null : text) ?? undefined,
    }));
  };
  return { ...kept, onSay, put: (value: Typed) => setKept({ value, said: undefined }) };
}

function Height({
  told,
  start,
  preferred,
}: {
  told: (said: Said<TypedHeight>) => void;
  start?: TypedHeight;
  preferred?: "ft-in";
}) {
  const { put, ...kept } = useSaid(told, start);
  return (
    <>
      <HeightField
        name="height"
        label="Height"
        words={sheetWords.you.measures}
        {...(preferred ? { preferred } : {})}
        {...kept}
      />
      <button type="button" onClick={() => put({ unit: "ft-in", feet: 5, inches: 7 })}>
        outside
      </button>
    </>
  );
}

function Mass({ told, start }: { told: (said: Said<TypedMass>) => void; start?: TypedMass }) {
  const { put, ...kept } = useSaid(told, start);
  return (
    <>
      <MassField
        name="mass"
        label="Weight"
        hint="in clothes"
        error="too much"
        words={sheetWords.you.measures}
        {...kept}
      />
      <button type="button" onClick={() => put({ unit: "lb", lb: 150 })}>
        outside
      </button>
    </>
  );
}

function Some({ told }: { told: (value: unknown) => void }) {
  const [values, setValues] = useState<readonly string[]>(["a"]);
  return (
    <CheckGroup
      name="some"
      label="Some"
      values={values}
      choices={["a", "b"].map((value) => ({ value, label: value }))}
      onChange={(next) => {
        told(next);
        setValues(next);
      }}
    />
  );
}

describe("height and mass", () => {
  const unit = (page: Awaited<ReturnType<typeof operate>>, value: string) =>
    page.send(`input[type=radio][value="${value}"]`, new MouseEvent("click", { bubbles: true }));

  it("pass on what is typed in any box, say what it was read as, and ask about what cannot be read", async () => {
    const told = vi.fn();
    const page = await operate(<Height told={told} />);
    await page.type("height", "182,5");
    expect(told).toHaveBeenLastCalledWith({ text: "182,5", value: { unit: "cm", cm: 182.5 } });
    expect(page.seen.one("#height-other").text).toBe("182.5 cm = 5 ft 11.9 in");
    // 5 × 12 + 10 = 70 in, and 70 × 2.54 = 177.8 cm.
    await page.type("height", "5'10\"");
    expect(told).toHaveBeenLastCalledWith({ text: "5'10\"", value: { unit: "ft-in", feet: 5, inches: 10 } });
    expect(page.seen.one("#height-other").text).toBe("5 ft 10 in = 177.8 cm");
    expect(page.value("height")).toBe("5'10\"");
    for (const wrong of ["tall", "-5", "17"]) {
      await page.type("height", wrong);
      expect(told).toHaveBeenLastCalledWith({ text: wrong, value: undefined });
      expect(page.value("height")).toBe(wrong);
      // Not in the middle of a word.
      expect(page.seen.all("#height-error")).toEqual([]);
      await page.wait(1200);
      expect(page.seen.one("#height-error").text).toContain(wrong);
      expect(page.seen.one("#height-error").text).toContain("5 ft 10 in counts");
      expect(page.seen.one("#height-other").text).toBe("");
    }
    await page.type("height", " ");
    expect(page.seen.all("#height-error")).toEqual([]);
    expect(page.seen.one("input[name=height]").attribute("aria-label")).toBe("Height, centimetres");
  });

  it("convert once when the unit is changed, and take a value from outside", async () => {
    const told = vi.fn();
    const page = await operate(<Height told={told} start={{ unit: "cm", cm: 180 }} />);
    expect(page.value("height")).toBe("180");
    await unit(page, "ft-in");
    // 180 cm is 70.866 in: 5 ft 10.87 in.
    expect(page.value("height")).toBe("5 ft 10.87 in");
    const converted = told.mock.lastCall?.[0].value as TypedHeight;
    expect(told.mock.lastCall?.[0].text).toBeNull();
    expect(converted.unit === "ft-in" && converted.feet * 30.48 + converted.inches * 2.54).toBeCloseTo(180, 9);
    // Back without typing: the words that were there.
    await unit(page, "cm");
    expect(told).toHaveBeenLastCalledWith({ text: "180", value: { unit: "cm", cm: 180 } });
    await unit(page, "ft-in");
    await page.type("height", "5 6");
    await unit(page, "cm");
    expect(page.value("height")).toBe("167.64");
    await page.press("outside");
    expect(page.value("height")).toBe("5 ft 7 in");
    const calls = told.mock.calls.length;
    await unit(page, "ft-in");
    expect(told.mock.calls.length).toBe(calls);
    const empty = await operate(<Height told={told} preferred="ft-in" />);
    expect(empty.seen.one("input[name=height]").attribute("inputmode")).toBe("text");
    await unit(empty, "cm");
    expect(empty.value("height")).toBe("");
    expect(told.mock.calls.length).toBe(calls);
  });

  it("do the same for weight, with their hint and error beside them", async () => {
    const told = vi.fn();
    const page = await operate(<Mass told={told} start={{ unit: "kg", kg: 80 }} />);
    await page.type("mass", "82");
    expect(told).toHaveBeenLastCalledWith({ text: "82", value: { unit: "kg", kg: 82 } });
    expect(page.seen.one("#mass-other").text).toBe("82 kg = 180.8 lb");
    await unit(page, "lb");
    expect(page.value("mass")).toBe("180.78");
    const pounds = told.mock.lastCall?.[0].value as TypedMass;
    expect(pounds.unit === "lb" && pounds.lb * 0.45359237).toBeCloseTo(82, 9);
    await page.type("mass", "150");
    expect(told).toHaveBeenLastCalledWith({ text: "150", value: { unit: "lb", lb: 150 } });
    await unit(page, "kg");
    expect(page.value("mass")).toBe("68.04");
    // 12 × 14 + 3 = 171 lb.
    await page.type("mass", "12 st 3");
    expect(page.seen.one("#mass-other").text).toBe("171 lb = 77.6 kg");
    await page.press("outside");
    expect(page.value("mass")).toBe("150");
    // The same figure in the other unit is another mass: 150 lb, not 150 kg.
    await page.type("mass", "150 kg");
    await page.type("mass", "150");
    await unit(page, "kg");
    await page.type("mass", "150");
    expect(page.seen.one("#mass-other").text).toBe("150 kg = 330.7 lb");
    await page.press("outside");
    expect(page.seen.one("#mass-other").text).toBe("150 lb = 68.0 kg");
    await page.type("mass", "");
    expect(told).toHaveBeenLastCalledWith({ text: "", value: undefined });
    const input = page.seen.one("#mass");
    expect([input.attribute("aria-invalid"), input.attribute("aria-describedby")]).toEqual([
      "true",
      "mass-error mass-other",
    ]);
    expect(page.seen.text).toContain("in clothes");
    expect(page.seen.text).toContain("too much");
  });
});

describe("numbers", () => {
  it("on a slider stay within their range, and a wrong one is named and kept", async () => {
    const told = vi.fn();
    const field = (value: number) => (
      <SliderField
        name="flex"
        label="Flex"
        min={0.7}
        max={1.39}
        step={0.01}
        decimals={2}
        unit="×"
        value={value}
        meaning="class 3"
        ends={["softer", "stiffer"]}
        hint="h"
        onChange={told}
      />
    );
    const page = await operate(field(1));
    const range = page.seen.one("input[type=range]");
    expect(["min", "max", "step", "aria-valuetext", "aria-describedby"].map((name) => range.attribute(name))).toEqual([
      "0.7",
      "1.39",
      "0.01",
      "1.00 ×, class 3",
      "flex-hint",
    ]);
    expect(page.value("flex")).toBe("1.00");
    await page.type("flex", "1,2");
    expect(told).toHaveBeenLastCalledWith(1.2);
    expect(page.value("flex")).toBe("1,2");
    for (const wrong of ["1.4", "0.69", "x", " "]) {
      told.mockClear();
      await page.type("flex", wrong);
      expect(told).not.toHaveBeenCalled();
      expect(page.seen.one("input[name=flex]").attribute("aria-invalid")).toBe("true");
      expect(page.seen.one("#flex-error").text).toContain("Between 0.70 and 1.39 ×.");
      await page.leave("flex");
      expect(page.value("flex")).toBe(wrong);
    }
    for (const edge of ["0.7", "1.39"]) {
      await page.type("flex", edge);
      expect(told).toHaveBeenLastCalledWith(Number(edge));
      expect(page.seen.all("#flex-error")).toEqual([]);
    }
    await page.leave("flex");
    expect(page.value("flex")).toBe("1.00");
    const slider = document.querySelector<HTMLInputElement>("input[type=range]");
    Object.getOwnPropertyDescriptor(Object.getPrototypeOf(slider), "value")?.set?.call(slider, "1.1");
    await page.send("input[type=range]", new Event("input", { bubbles: true }));
    expect(told).toHaveBeenLastCalledWith(1.1);
    expect(page.seen.text).toContain("softerstiffer");
  });

  it("in a box are passed on as numbers, emptied as nothing, and kept when they are none", async () => {
    const told = vi.fn();
    const page = await operate(
      <DraftNumber name="age" label="Age" unit="years" value={41.256} error="from outside" onChange={told} />,
    );
    expect(page.value("age")).toBe("41.26");
    expect(page.seen.text).toContain("from outside");
    await page.type("age", "42,5");
    expect(told).toHaveBeenLastCalledWith(42.5);
    await page.type("age", "many");
    expect(told).toHaveBeenCalledTimes(1);
    expect(page.seen.text).toContain("“many” is not a number. It is kept here until you change it.");
    expect(page.seen.text).not.toContain("from outside");
    await page.leave("age");
    expect(page.value("age")).toBe("many");
    await page.type("age", "");
    expect(told).toHaveBeenLastCalledWith(undefined);
    await page.leave("age");
    expect(page.value("age")).toBe("41.26");
    const empty = await operate(
      <DraftNumber name="days" label="Days" unit="days" value={undefined} decimals={0} onChange={told} />,
    );
    expect(empty.value("days")).toBe("");
  });
});

describe("choices and paper", () => {
  it("tick some of several, in the order they were ticked", async () => {
    const told = vi.fn();
    const page = await operate(<Some told={told} />);
    await page.choose("some", "b");
    expect(told).toHaveBeenLastCalledWith(["a", "b"]);
    await page.choose("some", "a");
    expect(told).toHaveBeenLastCalledWith(["b"]);
  });

  it("goes from the device's own to dark, light and back, and is remembered", async () => {
    const page = await operate(<ThemeSwitch initial="system" />);
    const seen: (string | undefined)[] = [];
    for (const words of ["as your device", "dark", "light"]) {
      expect(page.seen.text).toBe(`Paper: ${words}`);
      await page.press(`Paper: ${words}`);
      seen.push(document.documentElement.dataset.theme);
      expect(document.cookie).toContain(`theme=${seen.at(-1) ?? "system"}`);
    }
    expect(seen).toEqual(["dark", "light", undefined]);
  });
});

describe("a form", () => {
  const start: FormState = { status: "new", values: {}, refusals: {} };
  const answer = (state: Partial<FormState>) => async (): Promise<FormState> => ({ ...start, ...state });
  const fields = [
    { kind: "hidden", name: "id", value: "7" },
    { kind: "text", name: "name", label: "Name", value: "Robin" },
    { kind: "checkbox", name: "agreed", label: "Agreed" },
    {
      kind: "checks",
      name: "some",
      label: "Some",
      value: "a",
      choices: [
        { value: "a", label: "A" },
        { value: "b", label: "B" },
      ],
    },
    {
      kind: "radio",
      name: "how",
      label: "How",
      value: "x",
      choices: [
        { value: "x", label: "X" },
        { value: "y", label: "Y" },
      ],
    },
    { kind: "select", name: "wood", label: "Wood", empty: "choose", options: [{ value: "ash", label: "Ash" }] },
    { kind: "number", name: "length", label: "Length", unit: "cm", hint: "whole" },
    { kind: "textarea", name: "note", label: "Note", optional: true },
    { kind: "password", name: "secret", label: "Secret", value: "never shown" },
  ] as const;

  it("comes back with what was typed and the words beside their fields, the summary with the focus", async () => {
    const values = { name: "Kim", some: "b", how: "y", wood: "ash", length: "18O", note: "asap", secret: "x" };
    const refusals = {
      name: "Name is too short",
      "length.cm": "Length is no number",
      id: "gone meanwhile",
      "": "Not now",
    };
    const page = await operate(
      <ActionForm
        action={answer({ status: "refused", values, refusals })}
        fields={fields}
        submit="Send"
        idPrefix="f-"
        done="Sent."
      />,
    );
    expect(page.seen.forms[0]?.sent).toEqual({
      id: "7",
      name: "Robin",
      some: "a",
      how: "x",
      wood: "",
      length: "",
      note: "",
      secret: "",
    });
    await page.press("Send");
    await page.wait(0);
    const form = page.seen.forms[0];
    expect(page.value("name")).toBe("Kim");
    expect(page.value("length")).toBe("18O");
    expect(page.value("secret")).toBe("");
    expect(form?.fields.name?.error).toContain("Name is too short");
    expect(form?.fields.length?.error).toContain("Length is no number");
    expect(form?.fields.note?.error).toBeNull();
    expect(page.seen.links).toEqual({ "Name is too short": "#f-name", "Length is no number": "#f-length" });
    expect(page.seen.one("[role=alert]").text).toContain("4 things to put right");
    expect(document.activeElement?.getAttribute("role")).toBe("alert");
    expect(page.seen.text).not.toContain("Sent.");
    const ticked = [...document.querySelectorAll<HTMLInputElement>("input:checked")].map(
      ({ name, value }) => `${name} ${value}`,
    );
    expect(ticked).toEqual(["some b", "how y"]);
  });

  it("says that it is done and begins anew; a second button has its own name", async () => {
    const asked: string[] = [];
    const action = async (_: FormState, form: FormData): Promise<FormState> => {
      asked.push([...form.keys()].join(" "));
      return { status: "done", values: { name: "Kim" }, refusals: {} };
    };
    const withAsk = [
      fields[0],
      fields[1],
      { kind: "ask", name: "ask", label: "Price first", busy: "…", answer: "the answer" },
    ] as const;
    const page = await operate(<ActionForm action={action} fields={withAsk} submit="Send" done="Sent." />);
    expect(page.seen.text).toContain("the answer");
    expect(
      page.seen.all("button").map((button) => [button.text, button.attribute("name"), button.attribute("aria-hidden")]),
    ).toEqual([
      ["", null, "true"],
      ["Price first", "ask", null],
      ["Send", null, null],
    ]);
    await page.press("Send");
    await page.wait(0);
    expect(page.seen.one("[role=status]").text).toContain("Sent.");
    expect(page.value("name")).toBe("Robin");
    await page.press("Price first");
    await page.wait(0);
    expect(asked).toEqual(["id name", "id name ask"]);
    const plain = await operate(<ActionForm action={answer({ status: "done" })} fields={[fields[1]]} submit="Go" />);
    expect(plain.seen.all("button")).toHaveLength(1);
    await plain.press("Go");
    await plain.wait(0);
    expect(plain.seen.all("[role=status]")).toEqual([]);
  });

  it("says what it is doing while it does it, and can be pressed again when it is done", async () => {
    const waiting: (() => void)[] = [];
    const action = () => new Promise<FormState>((resolve) => waiting.push(() => resolve({ ...start, status: "done" })));
    for (const [busy, told] of [
      ["Sending …", "Sending …"],
      [undefined, "One moment…"],
    ] as const) {
      const page = await operate(
        <ActionForm action={action} fields={[fields[1]]} submit="Send" {...(busy ? { busy } : {})} />,
      );
      const button = () => [page.seen.buttons, page.seen.one("button").attribute("aria-disabled")];
      expect(button()).toEqual([["Send"], "false"]);
      await page.press("Send");
      expect(button()).toEqual([[told], "true"]);
      waiting.shift()?.();
      await page.wait(0);
      expect(button()).toEqual([["Send"], "false"]);
    }
  });

  it("shows what the page came back with", async () => {
    const back: FormState = {
      status: "refused",
      values: { agreed: "on" },
      refusals: { agreed: "Agreed: please tick" },
    };
    const page = await operate(<ActionForm action={answer({})} fields={fields} submit="Send" start={back} />);
    expect(page.seen.forms[0]?.fields.agreed).toMatchObject({
      value: "on",
      error: expect.stringContaining("please tick"),
    });
    // Of what was sent, no tick means none.
    expect(document.querySelectorAll("input[name=some]:checked")).toHaveLength(0);
    const fresh = await operate(
      <ActionForm
        action={answer({})}
        fields={[
          { kind: "checkbox", name: "on", label: "On", value: "on" },
          { kind: "checkbox", name: "off", label: "Off" },
        ]}
        submit="Go"
      />,
    );
    expect(
      [...document.querySelectorAll<HTMLInputElement>("input[name=on], input[name=off]")].map(({ checked }) => checked),
    ).toEqual([true, false]);
    expect(fresh.seen.forms[0]?.sent).toEqual({ on: "on" });
  });
});

describe("the line across the axis", () => {
  const spec = specOf();
  const model = catalog.build.models.find(({ id }) => id === "midlow-95");
  const shape = model ? shapeAtLength(model.shape, 178) : null;
  if (!shape) throw new Error("no midlow-95");
  const flex = solved(spec).flex;
  const look = pairLook(spec, catalog.build);
  if (!look) throw new Error("no drawing of it");
  const build: AxisBuild = { label: "A ski", shape, flex, mountMm: 965 };
  const slider = "[role=slider]";
  const now = (page: Awaited<ReturnType<typeof operate>>) => Number(page.seen.one(slider).attribute("aria-valuenow"));

  it("moves by keys from end to end, counted from the tip", async () => {
    const page = await operate(<AxisChart title="A ski" builds={[build]} />);
    expect(
      ["aria-valuemin", "aria-valuemax", "aria-valuenow", "aria-orientation", "aria-label"].map((name) =>
        page.seen.one(slider).attribute(name),
      ),
    ).toEqual(["0", "1780", "965", "horizontal", "Station along the ski"]);
    for (const [key, at] of [
      ["ArrowRight", 975],
      ["ArrowDown", 985],
      ["ArrowLeft", 975],
      ["ArrowUp", 965],
      ["PageDown", 1065],
      ["PageUp", 965],
      ["Home", 0],
      ["ArrowLeft", 0],
      ["End", 1780],
      ["PageDown", 1780],
      ["x", 1780],
    ] as const) {
      await page.key(slider, key);
      expect(now(page)).toBe(at);
    }
    await page.key(slider, "Home");
    expect(page.seen.facts["From the tip"]).toBe("0 mm");
    expect(page.seen.facts["From the mount line"]).toBe("−965 mm");
    expect(page.seen.one(`${slider} > span[style]`).attribute("style")).toContain("left: 0%");
    expect(page.seen.all(slider).map((each) => each.attribute("aria-orientation"))).toEqual(["horizontal", "vertical"]);
  });

  it("follows the pointer to the millimetre under it", async () => {
    const page = await operate(<AxisChart title="A ski" builds={[build]} />);
    const element = document.querySelector<HTMLElement>(slider);
    if (element) element.getBoundingClientRect = () => ({ left: 100, top: 0, width: 890, height: 300 }) as DOMRect;
    const point = (type: string, clientX: number, known: object = {}) =>
      page.send(slider, new PointerEvent(type, { clientX, bubbles: true, pointerType: "mouse", ...known }));
    await point("pointerdown", 345);
    // 245 of 890 px of 1,780 mm.
    expect(now(page)).toBe(490);
    await point("pointermove", 50);
    expect(now(page)).toBe(0);
    await point("pointermove", 500, { pointerType: "touch", buttons: 0 });
    expect(now(page)).toBe(0);
    await point("pointermove", 500, { pointerType: "touch", buttons: 1 });
    expect(now(page)).toBe(800);
    const upright = document.querySelectorAll<HTMLElement>(slider)[1];
    if (upright) {
      upright.getBoundingClientRect = () => ({ left: 0, top: 10, width: 10, height: 178 }) as DOMRect;
      upright.id = "upright";
    }
    await page.send("#upright", new PointerEvent("pointerdown", { clientY: 20, bubbles: true, pointerType: "mouse" }));
    expect(now(page)).toBe(100);
  });

  it("reads several builds from their mount lines, three at the most", async () => {
    const other = { ...build, label: "B ski", mountMm: 900 };
    const page = await operate(
      <AxisChart title="Both" builds={[build, other, { ...build, label: "C ski" }, { ...build, label: "D ski" }]} />,
    );
    expect(
      ["aria-valuemin", "aria-valuemax", "aria-valuenow", "aria-label"].map((name) =>
        page.seen.one(slider).attribute(name),
      ),
    ).toEqual(["-965", "880", "0", "Station along the skis"]);
    expect(page.seen.one("ul[aria-label=Lines]").items).toEqual([
      "AA ski",
      "BB ski",
      "CC ski",
      "laid over one another at the mount line",
    ]);
    await page.key(slider, "Home");
    expect(now(page)).toBe(-965);
    const beside = page.seen.all("[aria-hidden=true] span.grid").map(({ text }) => text);
    expect(beside[0]).toMatch(/^A [\d.]+ mm wideB –C [\d.]+ mm wide$/);
    expect(beside[1]).toMatch(/mm high/);
    expect(beside).toHaveLength(6);
    const one = await operate(<AxisChart title="One" builds={[build]} pair={{ look, pictureBase: "/p" }} />);
    expect(one.seen.text).toContain("left ski below, right above");
    expect(page.seen.text).toContain("one ski of each pair");
    const none = await operate(<AxisChart title="None" builds={[{ ...build, flex: { ...flex, stations: [] } }]} />);
    expect(none.seen.text).toBe("");
  });
});
