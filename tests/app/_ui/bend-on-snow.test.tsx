// @vitest-environment happy-dom
/** The ski that bends under its skier: what is drawn is the engine's solution, and every control moves it. */
import { act } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, it } from "vitest";
import { BendUnderYou } from "#app/_ui/sheet/bend-on-snow.client.tsx";
import { HEIGHTS_TIMES, SkiOnSnowDrawing, SnowPressure } from "#app/_visuals/ski-on-snow.tsx";
import words from "#content/copy/sheet.json";
import { type BendInput, bendOnSnow } from "#engine/assessment";
import { textForPeople } from "#engine/units";
import { catalog } from "../../engine/demo-catalog";
import { operate } from "../../support/browser";
import { assessed, stillSheet, viewOf } from "../../support/sheet";

const { spec } = assessed;
if (!spec) throw new Error("no recommendation");
const base: BendInput = {
  answers: {},
  spec,
  massKg: 82,
  flexRatio: spec.flexRatio,
  edgeDeg: 40,
  snow: "packed",
};
const bendOf = (changes: Partial<BendInput> = {}) =>
  bendOnSnow({ ...base, ...changes }, catalog) ?? expect.fail("no bend");
const bend = (known: object = {}) => (
  <BendUnderYou sheet={stillSheet(viewOf(known))} spec={spec} catalog={catalog} words={words} />
);

/** Points of a path: x and y by turns, whatever the pen does between them. */
function pointsOf(path: string): readonly { readonly x: number; readonly y: number }[] {
  return [...path.matchAll(/(-?[\d.]+),(-?[\d.]+)/g)].map(([, x, y]) => ({ x: Number(x), y: Number(y) }));
}
/** Markup with its apostrophes as they are read. */
const markupOf = (element: Parameters<typeof renderToStaticMarkup>[0]) =>
  renderToStaticMarkup(element).replaceAll("&#x27;", "'");
const pathsOf = (markup: string) =>
  [...markup.matchAll(/<path d="([^"]*)"([^>]*)>/g)].map(([, d = "", rest = ""]) => ({ d, rest }));

describe("the drawing", () => {
  it("is the solution, station by station, heights by the stated factor", () => {
    const found = bendOf();
    const paths = pathsOf(renderToStaticMarkup(<SkiOnSnowDrawing bend={found} description="x" />));
    const ghost = pointsOf(paths.find(({ rest }) => rest.includes("5 4"))?.d ?? "");
    expect(ghost).toHaveLength(found.most.stations.length);
    found.most.stations.forEach(({ xMm, heightMm }, i) => {
      expect(ghost[i]?.x).toBeCloseTo(xMm, 2);
      expect(Math.abs((ghost[i]?.y ?? 0) + HEIGHTS_TIMES * heightMm)).toBeLessThan(0.06);
    });
    // A band from the running surface to the top and back.
    const ski = pointsOf(paths.find(({ rest }) => rest.includes("--wood"))?.d ?? "");
    expect(ski).toHaveLength(2 * found.own.stations.length);
    const under = ski.filter((point) => point.x === 0).map((point) => point.y);
    const tip = found.own.stations[0]?.heightMm ?? Number.NaN;
    expect(Math.max(...under)).toBeCloseTo(-HEIGHTS_TIMES * tip, 0);
  });

  it("hangs as much pressure under the ski as stands on it", () => {
    const found = bendOf({ edgeDeg: 0 });
    const markup = renderToStaticMarkup(<SnowPressure bend={found} unit="N/cm" />);
    const line = pointsOf(
      pathsOf(markup).find(({ rest }) => rest.includes("--tarn") && rest.includes("stroke"))?.d ?? "",
    );
    const [, top, per] = /top:calc\(([\d.]+)% - 0\.5em\)">([\d.]+)/.exec(markup) ?? [];
    const perUnit = Number(per) / Number(top);
    const carried = line.slice(1).reduce((sum, right, i) => {
      const left = line[i] ?? right;
      return sum + ((right.x - left.x) * perUnit * (left.y + right.y)) / 2 / 10;
    }, 0);
    expect(Math.abs(carried / found.own.loadN - 1)).toBeLessThan(0.01);
  });
});

describe("on the sheet", () => {
  it("stands in the server's page as the sheet has it, with its sentence and numbers", () => {
    const markup = markupOf(bend());
    const { own, feel } = bendOf();
    expect(markup).toContain(words.ski.snow.feels[feel]);
    expect(markup).toContain(`${textForPeople(own.turnRadiusM, 1)} m`);
    expect(markup).toContain("82 kg, as on your sheet");
    expect(pathsOf(markup).some(({ rest }) => rest.includes("--wood"))).toBe(true);
  });

  it("follows edge, weight, flex and snow, and goes back", async () => {
    const page = await operate(bend());
    const text = () => document.querySelector("section")?.textContent ?? "";
    const drag = async (label: string, value: number) => {
      const id = [...document.querySelectorAll("label")].find((each) => each.textContent === label)?.htmlFor;
      const slider = document.getElementById(id ?? "") as HTMLInputElement;
      Object.getOwnPropertyDescriptor(Object.getPrototypeOf(slider), "value")?.set?.call(slider, String(value));
      await act(async () => void slider.dispatchEvent(new Event("input", { bubbles: true })));
      return slider;
    };
    const shows = (changes: Partial<BendInput>) => {
      const { own, feel } = bendOf(changes);
      expect(text()).toContain(words.ski.snow.feels[feel]);
      expect(text()).toContain(`${textForPeople(own.turnRadiusM, 1)} m`);
      expect(text()).toContain(`${textForPeople(own.sinkMm, 1)} mm`);
    };
    const edge = await drag("Tipped on edge", 55);
    expect(text()).toContain("Tipped to 55°");
    expect(edge.getAttribute("aria-valuetext")).toMatch(/^55°, \d+\.\d m$/);
    shows({ edgeDeg: 55 });
    await drag("Weight on it", 102);
    expect(text()).toContain("102 kg, 20 kg heavier");
    shows({ edgeDeg: 55, massKg: 102 });
    await drag("Flex to try", 1);
    expect(text()).toContain("class 1, supple");
    shows({ edgeDeg: 55, massKg: 102, flexRatio: 0.7 });
    await page.choose("bendSnow", "soft");
    shows({ edgeDeg: 55, massKg: 102, flexRatio: 0.7, snow: "soft" });
    await page.press(words.ski.snow.reset);
    shows({});
    expect(text()).not.toContain(words.ski.snow.reset);
  });

  it("speaks pounds to who typed pounds, and is silent without a weight", async () => {
    const pounds = renderToStaticMarkup(bend({ typed: { mass: { unit: "lb", lb: 181 } } }));
    expect(pounds).toContain("181 lb, as on your sheet");
    expect(pounds).toContain("most skiers: 165 lb, class 3");
    expect(renderToStaticMarkup(bend({ answers: { heightCm: 182 } }))).toBe("");
    const { snow: _, ...none } = catalog;
    const without = <BendUnderYou sheet={stillSheet(viewOf())} spec={spec} catalog={none} words={words} />;
    expect(renderToStaticMarkup(without)).toBe("");
  });
});
