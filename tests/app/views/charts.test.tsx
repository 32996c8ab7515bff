/** Small charts drawn from figures made by hand: every mark at its place on its scale, every word where it is read. */
import { describe, expect, it, vi } from "vitest";
import { SameFlexChart } from "#app/_ui/sheet/same-flex-chart.tsx";
import { PredictedVersusMeasured } from "#app/(site)/method/predicted-versus-measured.tsx";
import { Paces } from "#app/shop/(staff)/floor-times/paces.tsx";
import { TwistBench } from "#app/shop/(staff)/pair/[code]/twist-bench.tsx";
import { Together } from "#app/shop/(staff)/promises/together.tsx";
import words from "#content/copy/sheet.json";
import type { SameFlexOption } from "#engine/assessment";
import type { BenchRow, FloorLearningView } from "#services";
import { partly } from "../../support/builders/views";
import { drawn } from "../../support/drawn";
import type { Reading } from "../../support/page-reading";
import { shown } from "../../support/page-render";
import { seeAs, tell } from "../../support/page-views";

vi.mock("#services", async (load) => (await import("../../support/page-views")).asTold(await load()));
vi.mock("#app/_server/request.ts", async (load) => (await import("../../support/page-views")).seenBy(await load()));

const round = (text: string | null) => Math.round(Number(text) * 10) / 10;
/** Each element's named attributes as numbers. */
const at = (seen: Reading, selector: string, names: readonly string[]) =>
  seen.all(selector).map((each) => names.map((name) => round(each.attribute(name))));
const wordsAt = (seen: Reading, selector = "text") =>
  seen.all(selector).map((each) => [each.text, round(each.attribute("x")), round(each.attribute("y"))]);

describe("what the floor took", () => {
  const station = (id: string, known: object) => ({
    station: id,
    visits: 3,
    assumedMeanMinutes: 60,
    learntMeanMinutes: 75,
    interval: { low: 66, high: 84 },
    ...known,
  });
  const view = (...stations: readonly object[]) =>
    partly<FloorLearningView>({
      learning: { stations: stations as never },
      stationNames: { edges: { number: 7, name: "Edges" }, print: { number: 8, name: "Print" } },
    });

  it("is shown in per cent of the setting, nine of ten as a line, what nobody worked at left out", () => {
    const seen = drawn(
      <Paces
        view={view(
          station("edges", {}),
          station("print", { visits: 0 }),
          station("print", { learntMeanMinutes: 48, interval: { low: 42, high: 57 } }),
        )}
      />,
    );
    // 70 to 140 over 24 to 336 px: 42 of 60 minutes is 70 %, 84 of 60 is 140 %.
    const x = (percent: number) => Math.round((24 + ((percent - 60) / 80) * 312) * 10) / 10;
    expect(at(seen, "circle", ["cx", "cy", "r"])).toEqual([
      [x(125), 43, 4.5],
      [x(80), 73, 4.5],
    ]);
    expect(
      seen
        .all("g > path")
        .map((path) => path.attribute("d"))
        .slice(-2),
    ).toEqual([
      `M${24 + (50 / 80) * 312} 43H${24 + (80 / 80) * 312}`,
      `M${24 + (10 / 80) * 312} 73H${24 + (35 / 80) * 312}`,
    ]);
    expect(wordsAt(seen)).toEqual([
      ["60 %", x(60), 12],
      ["80 %", x(80), 12],
      ["100 %", x(100), 12],
      ["120 %", x(120), 12],
      ["140 %", x(140), 12],
      ["7 Edges", 4, 33],
      ["8 Print", 4, 63],
    ]);
    expect(seen.one("svg").attribute("viewBox")).toBe("0 0 360 88");
    // The setting itself is the one strong line.
    expect(seen.all("path.stroke-ink")).toHaveLength(1);
    expect(seen.one("path.stroke-ink").attribute("d")).toBe(`M${24 + (40 / 80) * 312} 16V82`);
    expect(drawn(<Paces view={view(station("edges", { visits: 0 }))} />).text).toBe("");
  });
});

describe("promises that fail together", () => {
  it("are told in shares and drawn as futures by the share that fails", () => {
    const risk = {
      promises: 30,
      runs: 200,
      mean: 0.104,
      oneOfTen: 0.2,
      oneOfTwenty: 0.316,
      oneOfTwentyAlone: 0.17,
      histogram: [150, 30, 0, 20],
    };
    const seen = drawn(<Together risk={risk} />);
    for (const share of ["10 %", "20 %", "32 %", "17 %"]) expect(seen.text).toContain(share);
    // Four bands over 12 to 348 px, 15 % of a step between them; counts from 130 at none to 18 at 150.
    const step = 336 / (4 - 0.15);
    const left = (index: number) => 12 + index * step;
    const y = (runs: number) => 130 - (runs / 150) * 112;
    const rounded = (value: number) => Math.round(value * 10) / 10;
    expect(at(seen, "rect", ["x", "y", "width", "height"])).toEqual(
      risk.histogram.map((runs, index) => [left(index), y(runs), 0.85 * step, 130 - y(runs)].map(rounded)),
    );
    const middle = (index: number) => rounded(left(index) + 0.425 * step);
    expect(wordsAt(seen)).toEqual([
      ["150", middle(0), 14],
      ["0", 12, 144],
      ["30", middle(1), rounded(y(30) - 4)],
      ["25", rounded(left(1)), 144],
      ["50", rounded(left(2)), 144],
      ["20", middle(3), rounded(y(20) - 4)],
      ["75", rounded(left(3)), 144],
      [expect.any(String), 180, 164],
    ]);
    expect(seen.one("svg > path").attribute("d")).toBe("M12 130H348");
    expect(drawn(<Together risk={null} />).all("svg")).toEqual([]);
  });
});

describe("builds of one flex", () => {
  it("stand on scales with round steps, money at the side, mass below", () => {
    const option = (massG: number, priceCents: number) =>
      partly<SameFlexOption>({ core: String(massG), reinforcements: [], massG, priceCents, isCurrent: false });
    const options = [option(3000, 100_000), option(3400, 180_000)];
    const seen = drawn(<SameFlexChart options={options} unbeaten={new Set(options)} words={words} />);
    // Mass: 400 g over 64 to 348 px. Price: $800 over 162 to 10 px.
    expect(wordsAt(seen)).toEqual([
      ["$1,000", 50, 162],
      ["$1,200", 50, 124],
      ["$1,400", 50, 86],
      ["$1,600", 50, 48],
      ["$1,800", 50, 10],
      ["3000", 64, 186],
      ["3100", 135, 186],
      ["3200", 206, 186],
      ["3300", 277, 186],
      ["3400", 348, 186],
      [words.sameFlex.chartMass, 348, 204],
    ]);
    expect(seen.all("g > path").map((path) => path.attribute("d"))).toEqual([
      ...[162, 124, 86, 48, 10].map((y) => `M56 ${y}H348`),
      ...[64, 135, 206, 277, 348].map((x) => `M${x} 170v5`),
    ]);
    expect(seen.one("svg").attribute("aria-label")).toContain("2");
  });
});

describe("computed against measured", () => {
  it("lies on the diagonal where both are one, on steps of 5 N/cm", async () => {
    seeAs(null);
    const point = (skiId: string, measured: number, predictedBefore: number, predictedAfter: number) => ({
      skiId,
      pair: skiId,
      measure: "springCentreNPerMm",
      measured,
      predictedBefore,
      predictedAfter,
      leftOut: false,
    });
    const quality = [
      { measure: "massKg", readings: 42, rmsBefore: 3.26, rmsAfter: 1.05 },
      { measure: "camberMm", readings: 40, rmsBefore: 0.404, rmsAfter: 0.152 },
    ];
    const told = (known: object) =>
      tell("readPredictedVersusMeasured", {
        pairs: 1,
        skis: 2,
        leastPairs: 20,
        bookInForce: null,
        quality,
        points: [],
        ...known,
      });
    told({
      points: [point("a", 3, 2.2, 3), point("b", 4, 3.6, 3.8), { ...point("m", 1.8, 1.7, 1.7), measure: "massKg" }],
    });
    const seen = await shown(PredictedVersusMeasured);
    // From 20 to 40 N/cm over 44 to 392 px, upright from below.
    const x = (nPerCm: number) => 44 + ((nPerCm - 20) / 20) * 348;
    const rounded = (value: number) => Math.round(value * 10) / 10;
    expect(at(seen, "circle", ["cx", "cy", "r"])).toEqual([
      [rounded(x(22)), rounded(400 - x(30)), 3.5],
      [rounded(x(30)), rounded(400 - x(30)), 3.5],
      [rounded(x(36)), rounded(400 - x(40)), 3.5],
      [rounded(x(38)), rounded(400 - x(40)), 3.5],
    ]);
    expect(at(seen, "svg > line", ["x1", "y1", "x2", "y2"])).toEqual([[44, 356, 392, 8]]);
    const ticks = [20, 25, 30, 35, 40];
    expect(wordsAt(seen, "g text")).toEqual(
      ticks.flatMap((tick) => [
        [String(tick), rounded(x(tick)), 372],
        [String(tick), 38, rounded(400 - x(tick) + 4)],
      ]),
    );
    expect(at(seen, "g > line", ["x1", "x2", "y1", "y2"])).toEqual(
      ticks.flatMap((tick) => [
        [x(tick), x(tick), 8, 356].map(rounded),
        [44, 392, 400 - x(tick), 400 - x(tick)].map(rounded),
      ]),
    );
    expect(at(seen, "figure > svg > text", ["x", "y"])).toEqual([
      [392, 392],
      [50, 24],
    ]);
    expect(seen.all("figure > p > span").map(({ text }) => text)).toEqual(["○ By the handbook", "● With factors"]);
    // Of many steps every second is named.
    told({ points: [point("a", 1, 1, 1), point("b", 6, 6, 6)] });
    expect(
      (await shown(PredictedVersusMeasured))
        .all("g text")
        .map(({ text }) => text)
        .filter((_, index) => index % 2 === 0),
    ).toEqual(["10", "20", "30", "40", "50", "60"]);
    const rows = seen.table("How far computed was from measured").map((row) => Object.values(row));
    expect(rows).toEqual([
      ["Mass", "42", "3.3 %", "1.1 %"],
      ["Camber", "40", "0.40 mm", "0.15 mm"],
    ]);
    expect(seen.text).toContain("No book");
    told({ points: [{ ...point("a", 3, 3, 3), leftOut: true }] });
    expect((await shown(PredictedVersusMeasured)).all("svg")).toEqual([]);
  });
});

describe("how twist is read", () => {
  const test = { torqueNm: 8, armMm: 300, clampMm: 500, armAtMm: 900 };
  const rows = [
    partly<BenchRow>({ measure: "massKg", target: 1.75 }),
    partly<BenchRow>({ measure: "twistNmPerDeg", target: 4 }),
  ];
  const bench = (known: object = {}, targets: readonly BenchRow[] = rows) =>
    drawn(<TwistBench test={{ ...test, ...known }} lengthMm={1480} rows={targets} />);

  it("is told with the weight that gives the torque, and the angle that gives the target", () => {
    // 8 N·m on 0.3 m is 26.7 N; at 4 N·m/° they turn the arm by 2°.
    expect(bench().one("p").text).toBe(
      "Clamp the ski 500 mm behind its tip, lay the arm across it at 900 mm and hang 26.7 N on the arm, 300 mm from the ski's middle: 8.0 N·m. The twist to write down is 8.0 divided by the angle that the arm turns; at 2.0° it is 4.00 N·m/°.",
    );
    expect(bench({}, rows.slice(0, 1)).all("p")).toHaveLength(1);
  });

  it("is drawn to scale: the ski, the clamp, the arm and the weight on its end", () => {
    // 1,480 mm over 296 px: a fifth of a px a mm, from 12 px on.
    const seen = bench();
    expect(at(seen, "rect", ["x", "y", "width", "height"])).toEqual([
      [12, 40, 296, 18],
      [105, 35, 14, 28],
    ]);
    const lines = (drawing: Reading) => drawing.all("path").map((path) => path.attribute("d"));
    expect(lines(seen)).toEqual([
      "M192 35 V109",
      "M192 109 v14 m-4 -5 l4 5 l4 -5",
      "M112 24 H192 M192 19 v10 M112 19 v10",
    ]);
    expect(wordsAt(seen)).toEqual([
      ["400 mm", 152, 18],
      ["clamp", 112, 78],
      ["300 mm", 200, 87.5],
      ["26.7 N", 202, 121],
    ]);
    // The arm on the other side of the clamp; one too short to see, and one too long for the drawing.
    expect(lines(bench({ clampMm: 900, armAtMm: 500 }))[2]).toBe("M112 24 H192 M112 19 v10 M192 19 v10");
    expect(lines(bench({ armMm: 100 }))[0]).toBe("M192 35 V79");
    expect(lines(bench({ armMm: 1000 }))[0]).toBe("M192 35 V128");
  });
});
