/** What stands around every page, the home page, and what is shown when something goes wrong. */
import { beforeEach, describe, expect, it, vi } from "vitest";
import SiteLayout from "#app/(site)/layout.tsx";
import HomePage from "#app/(site)/page.tsx";
import SkierLayout from "#app/(skier)/layout.tsx";
import ErrorPage from "#app/error.tsx";
import RootLayout, { metadata, viewport } from "#app/layout.tsx";
import NotFoundPage from "#app/not-found.tsx";
import { catalog } from "../../engine/demo-catalog";
import { drawn } from "../../support/drawn";
import { framed, shown } from "../../support/page-render";
import { browser, cookies } from "../../support/page-requests";
import { refusal, tell } from "../../support/page-views";

vi.mock("#services", async (load) => (await import("../../support/page-views")).asTold(await load()));
vi.mock("#app/_server/request.ts", async (load) => (await import("../../support/page-views")).seenBy(await load()));
vi.mock("next/headers", () => import("../../support/page-requests"));
// The framework makes the faces while it builds.
vi.mock("#app/fonts.ts", () => ({ fontClasses: "faces" }));
const connection = vi.hoisted(() => vi.fn(async () => {}));
vi.mock("next/server", async (load) => ({ ...(await load<object>()), connection }));

const lead = { p50: "2026-12-10", p90: "2026-12-17", workingDays: { p50: 20, p90: 25 }, pairsAhead: 31 };

beforeEach(async () => {
  tell("activeCatalog", { engine: catalog, hash: "h" });
  tell("leadTimeToday", lead);
  (await cookies()).delete("theme");
});

describe("the frame of the public pages", () => {
  it("says whose it is, leads to sheet, method and staff, and holds the page as its one main part", async () => {
    for (const layout of [SiteLayout, SkierLayout]) {
      const frame = await framed(layout, "/");
      expect(frame.links).toEqual({
        "Thistle YardLower Fennick": "/",
        "Start a sheet": "/sheet",
        "How we compute": "/method",
        "Staff sign-in": "/shop",
      });
      expect(frame.all("main").map((main) => [main.attribute("id"), main.attribute("tabindex"), main.text])).toEqual([
        ["main", "-1", "what is inside"],
      ]);
      expect(frame.text).toContain("ISO 11088");
    }
    expect((await shown(NotFoundPage)).headings).toEqual(["There is nothing here"]);
  });

  it("keeps the paper that was chosen in this browser", async () => {
    const paper = async (theme: string | null) => {
      if (theme !== null) (await cookies()).set("theme", theme);
      const root = await RootLayout({ children: "page" });
      const html = drawn(root).element;
      return [html.getAttribute("data-theme"), (await framed(SiteLayout, "/")).buttons[0]];
    };
    expect(await paper(null)).toEqual([null, "Paper: as your device"]);
    expect(await paper("dark")).toEqual(["dark", "Paper: dark"]);
    expect(await paper("light")).toEqual(["light", "Paper: light"]);
    expect(await paper("pink")).toEqual([null, "Paper: as your device"]);
    expect(browser.cookies.get("theme")?.value).toBe("pink");
  });

  it("begins with a way past what is on every page, is made for each request, and fits the screen", async () => {
    connection.mockClear();
    const root = drawn(await RootLayout({ children: "page" }));
    expect(connection).toHaveBeenCalledTimes(1);
    expect(root.links).toEqual({ "Skip to the content": "#main" });
    expect(root.element.getAttribute("lang")).toBe("en");
    expect(root.element.getAttribute("class")).toBe("faces");
    expect(viewport).toMatchObject({ width: "device-width", initialScale: 1 });
    expect(metadata.title).toEqual({
      default: "Thistle Yard: skis built to order, in pairs",
      template: "%s · Thistle Yard",
    });
  });

  it("says which reference a fault has, and tries again as it can", () => {
    const fault = Object.assign(new Error("x"), { digest: "2118473301" });
    expect(drawn(<ErrorPage error={fault} />).text).toContain("tell us the reference 2118473301.");
    expect(drawn(<ErrorPage error={new Error("x")} />).text).toContain("the reference none.");
    const press = (known: object) => {
      const page = ErrorPage({ error: fault, ...known });
      const buttons: { props: { onClick: () => void } }[] = [];
      JSON.stringify(page, (_, value) => {
        if (typeof value?.props?.onClick === "function") buttons.push(value);
        return value;
      });
      buttons[0]?.props.onClick();
    };
    const [retry, reset] = [vi.fn(), vi.fn()];
    press({ retry, reset });
    expect([retry.mock.calls.length, reset.mock.calls.length]).toEqual([1, 0]);
    press({ reset });
    expect(reset).toHaveBeenCalledTimes(1);
  });
});

describe("the home page", () => {
  it("says what is built, where, and when an ordinary pair would be ready", async () => {
    const home = await shown(HomePage);
    expect(home.text).toContain("Thistle Yard is a small workshop in Lower Fennick.");
    expect(home.text).toContain("Ready 10–17 December 2026, nine times out of ten by the later date.");
    expect(home.text).toContain(
      "Pairs ahead of yours: 31. Worked out from all of them this minute: 20 working days in the middle, 25 or fewer nine times out of ten.",
    );
    expect(home.links["Start a sheet"]).toBe("/sheet");
    // The widest of the all-mountain skis, in the larch; its side view beside it needs no words of its own.
    const hero = home.all("svg[role=img]").map((svg) => svg.attribute("aria-label"));
    expect(hero).toEqual(["Midlow 95, 178 cm, in the house graphic Autumn larch, drawn to scale"]);
    const models = home.all("#models li");
    expect(models.map((model) => model.one("h3").text)).toEqual([
      "Kerfline 68",
      "Pathwick 75",
      "Midlow 84",
      "Midlow 95",
      "Ridgefold 106",
      "Drifthold 117",
      "Upleigh 92",
    ]);
    // All drawn to the scale of the longest, 188 cm.
    expect(new Set(models.map((model) => model.one("svg").attribute("viewBox")?.split(" ")[2]))).toEqual(
      new Set(["1880"]),
    );
    // content/catalog/models.json.
    expect(models[0]?.one("p .measure").text).toMatch(/^121-68-103 mm, R [\d.]+ m, 150 156 162 168 174 180 cm$/);
    expect(models[3]?.one("p .measure").text).toMatch(/^132-95-119 mm, R [\d.]+ m, 162 170 178 186 cm$/);
    expect(home.all("#how ol li > span, ol li > span").map(({ text }) => text)).toEqual(["1", "2", "3", "4"]);
    expect(home.one("ul[aria-label='House graphics']").items).toEqual([
      "Plain",
      "Contour lines",
      "Autumn larch",
      "Rock strata",
      "Ice facets",
    ]);
    expect(home.one("ul[aria-label='House graphics'] img").attribute("src")).toBe("/files/house/plain?as=plain-2b2f33");
  });

  it("stays of use without the queue or the catalogue", async () => {
    tell("leadTimeToday", refusal("not-allowed"));
    const unknown = await shown(HomePage);
    expect(unknown.text).toContain("We cannot read the queue just now.");
    expect(unknown.all("#models li")).toHaveLength(7);
    tell("activeCatalog", refusal("not-allowed"));
    const bare = await shown(HomePage);
    expect(bare.all("svg")).toEqual([]);
    expect(bare.all("ul[aria-label='House graphics']")).toEqual([]);
    expect(bare.all("#models li")).toEqual([]);
    expect(bare.links["Start a sheet"]).toBe("/sheet");
  });
});
