/**
 * What the pages that everybody meets first weigh as they go out, finished. The limits are what a slow phone reads at once:
 * 250 kB of HTML, 45 kB of it over the line.
 */
import { gzipSync } from "node:zlib";
import { describe, expect, it, vi } from "vitest";
import { finishedHtml } from "#app/_server/finished/finish.ts";
import { themeScript } from "#app/_ui/theme.ts";
import SiteLayout from "#app/(site)/layout.tsx";
import MethodPage from "#app/(site)/method/page.tsx";
import HomePage from "#app/(site)/page.tsx";
import RootLayout from "#app/layout.tsx";
import { catalog } from "../../engine/demo-catalog";
import { html } from "../../support/page-render";
import { tell } from "../../support/page-views";

vi.mock("#services", async (load) => (await import("../../support/page-views")).asTold(await load()));
vi.mock("#app/_server/request.ts", async (load) => (await import("../../support/page-views")).seenBy(await load()));
vi.mock("next/headers", () => import("../../support/page-requests"));
vi.mock("next/server", async (load) => ({ ...(await load<object>()), connection: async () => {} }));
// The framework makes the faces while it builds.
vi.mock("#app/fonts.ts", () => ({ fontClasses: "faces" }));

const around = (Page: () => unknown) => async () =>
  RootLayout({ children: await SiteLayout({ children: (await Page()) as never }) });

/** Three hundred measured skis, six times what the demo shop has. */
const points = Array.from({ length: 300 }, (_, i) => ({
  skiId: `TY-${String(i).padStart(4, "0")}-L-5`,
  measure: "springCentreNPerMm",
  measured: 4 + i / 100,
  predictedBefore: 4.1 + i / 100,
  predictedAfter: 4.05 + i / 100,
  leftOut: false,
}));

describe("the pages that everybody meets first", () => {
  it.each([
    ["home", HomePage, 7],
    ["method", MethodPage, 270],
  ])("%s weighs at most 250 kB, 45 kB on the way", async (_name, Page, rows) => {
    tell("activeCatalog", { engine: catalog, hash: "h" });
    tell("leadTimeToday", {
      p50: "2026-12-10",
      p90: "2026-12-17",
      workingDays: { p50: 20, p90: 25 },
      pairsAhead: 31,
    });
    tell("readPredictedVersusMeasured", { points, quality: [], skis: 300, pairs: 150, bookInForce: null });
    const drawn = await html(around(Page), {});
    // All of it is there: the seven models, the rows of content/method-checks.json.
    expect(drawn.match(/<li|<tr/g)?.length).toBeGreaterThanOrEqual(rows);
    const finished = finishedHtml(drawn, themeScript) ?? "";
    const bytes = Buffer.byteLength(finished);
    const zipped = gzipSync(finished).length;
    expect({ bytes, isLight: bytes <= 250_000 }).toEqual({ bytes, isLight: true });
    expect({ zipped, isLight: zipped <= 45_000 }).toEqual({ zipped, isLight: true });
  });
});
