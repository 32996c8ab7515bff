// @vitest-environment happy-dom
/** What was typed into the page that the server drew, before its scripts were there, is the sheet's once they are. */
import { act, useRef } from "react";
import { hydrateRoot } from "react-dom/client";
import { renderToString } from "react-dom/server";
import { describe, expect, it, onTestFinished, vi } from "vitest";
import { useSheet } from "#app/_ui/sheet/use-sheet.client.ts";
import { useTypedBefore } from "#app/_ui/sheet/use-typed-before.client.ts";
import { YouSection } from "#app/_ui/sheet/you-section.client.tsx";
import words from "#content/copy/sheet.json";
import type { SheetView } from "#services/views";
import { catalog } from "../../engine/demo-catalog";
import { type Patch, shopOf, viewOf } from "../../support/sheet";

function You({ start, shop }: { start: SheetView; shop: ReturnType<typeof shopOf> }) {
  const sheet = useSheet(catalog, start, shop);
  const place = useRef<HTMLDivElement>(null);
  useTypedBefore(place);
  return (
    <div ref={place}>
      <YouSection sheet={sheet} catalog={catalog} words={words} dense />
      <p id="save">{sheet.save}</p>
    </div>
  );
}

/** The page as the server drew it, typed into by `before`; then its scripts. */
async function arrived(start: SheetView, before: (page: HTMLElement) => void) {
  globalThis.IS_REACT_ACT_ENVIRONMENT = true;
  vi.useFakeTimers({ toFake: ["setTimeout", "clearTimeout"] });
  const shop = shopOf(start);
  const page = document.body.appendChild(document.createElement("div"));
  page.innerHTML = renderToString(<You start={start} shop={shop} />);
  expect(page.querySelector("#save")?.textContent).toBe("arriving");
  before(page);
  const root = await act(async () => hydrateRoot(page, <You start={start} shop={shop} />));
  onTestFinished(async () => {
    await act(async () => root.unmount());
    page.remove();
    vi.useRealTimers();
  });
  await act(async () => void (await vi.advanceTimersByTimeAsync(500)));
  return { page, shop, saved: Object.assign({}, ...shop.patches) as Patch };
}

const control = (page: HTMLElement, selector: string) => page.querySelector(selector) as HTMLInputElement;

describe("before the scripts", () => {
  it("boxes, ticks, choices and lists are taken as they stand, and saved", async () => {
    const empty = viewOf({ answers: {}, typed: {}, choices: {} });
    const { page, saved } = await arrived(empty, (drawn) => {
      control(drawn, "[name=height]").value = "5'10";
      control(drawn, "[name=mass]").value = "20 stone x";
      control(drawn, "[name=ability][value=expert]").checked = true;
      control(drawn, "[name=priorities][value=quiet]").checked = true;
      control(drawn, "[name=priorities][value=light]").checked = true;
      control(drawn, "[name=offPisteSlider]").value = "65";
      control(drawn, "[name=ageYears]").value = "44";
      control(drawn, "[name=buyer]").checked = true;
      control(drawn, "select[name=currentFlexVerdict]").value = "right";
    });
    expect(saved).toEqual({
      "typed.height": { unit: "ft-in", feet: 5, inches: 10 },
      "said.height": "5'10",
      "said.mass": "20 stone x",
      "answers.ability": "expert",
      "answers.priorities": ["quiet", "light"],
      "answers.offPistePercent": 65,
      "answers.ageYears": 44,
      "answers.buyerIsSkier": false,
      "answers.currentSki": { flex: "right" },
    });
    expect(control(page, "[name=height]").value).toBe("5'10");
    expect(control(page, "[name=mass]").value).toBe("20 stone x");
    expect(control(page, "[name=priorities][value=light]").checked).toBe(true);
    expect(control(page, "select[name=currentFlexVerdict]").value).toBe("right");
    expect(page.querySelector("#save")?.textContent).toBe("saved");
  });

  it("what was changed over an answer counts, and nothing that was left alone", async () => {
    const { page, saved, shop } = await arrived(viewOf(), (drawn) => {
      control(drawn, "[name=temperament][value=fast]").checked = true;
    });
    expect(saved).toEqual({ "answers.temperament": "fast" });
    expect(control(page, "[name=temperament][value=fast]").checked).toBe(true);
    expect(shop.save).toHaveBeenCalledTimes(1);
    const still = await arrived(viewOf(), () => {});
    expect(still.shop.save).not.toHaveBeenCalled();
  });
});
