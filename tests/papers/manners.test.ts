/**
 * Manners of everything that is printed: weights that the faces have, sizes that are read at arm's length and copied, lines
 * that a copier keeps, air that leaves room for what is to be read, columns that fit their paper. Common practice, no source.
 */
import { Font } from "@react-pdf/renderer";
import { describe, expect, it, vi } from "vitest";
import { composeBuildSheet, composeKitList, composeLabels, type Paper } from "#papers";
import { registerFonts } from "#papers/parts/fonts";
import { pageBox } from "#papers/parts/theme";
import { BuildSheetPages } from "../../lib/papers/build-sheet/page";
import { ClubQuotePages } from "../../lib/papers/club/page";
import { OrderConfirmationPages } from "../../lib/papers/confirmation/page";
import { KitListPages } from "../../lib/papers/kit-list/page";
import { LabelsPages } from "../../lib/papers/labels/page";
import { Rows, Table, TickLine, WriteBox } from "../../lib/papers/parts/table";
import { ProofPages } from "../../lib/papers/proof/page";
import { QuotePages } from "../../lib/papers/quote/page";
import { drawn, ofType, type Shape } from "./drawn";
import { clubQuote, confirmation, facts, proof, quote } from "./sample";

const sheet = composeBuildSheet(facts);
const pages = {
  "build sheet": (paper: Paper) => BuildSheetPages({ data: sheet, paper }),
  "kit list": (paper: Paper) => KitListPages({ data: composeKitList(facts), paper }),
  labels: (paper: Paper) => LabelsPages({ data: composeLabels(facts), paper }),
  quote: (paper: Paper) => QuotePages({ data: quote, paper }),
  offer: (paper: Paper) => ClubQuotePages({ data: clubQuote, paper }),
  confirmation: (paper: Paper) => OrderConfirmationPages({ data: confirmation, paper }),
  proof: (paper: Paper) => ProofPages({ data: proof, paper }),
};

type Style = Readonly<Record<string, unknown>>;
function styleOf({ props }: Shape): Style {
  const style = props.style as Style | readonly Style[] | undefined;
  return Array.isArray(style) ? Object.assign({}, ...style.flat()) : ((style ?? {}) as Style);
}

/** Points to a unit of a drawing: its width on paper over that of its viewBox. */
function unitPt({ props }: Shape): number {
  const inUnits = Number(String(props.viewBox ?? "").split(" ")[2]);
  return Number.isFinite(inUnits) && inUnits > 0 ? Number(props.width) / inUnits : 1;
}

/** The least and the most, in points or as a factor. */
const manners: readonly (readonly [RegExp, number, number])[] = [
  [/^fontSize$/, 5.5, 24],
  [/^lineHeight$/, 1, 1.35],
  [/^border\w*Width$|^strokeWidth$/, 0, 2],
  [/^(margin|padding)\w*$/, -4, 18],
  [/^fillOpacity$|^strokeOpacity$/, 0, 1],
  [/^(minH|h)eight$/, 5, 200],
  [/^minPresenceAhead$/, 0, 72],
  [/^flexGrow$/, 0, 4],
  [/^flexShrink$/, 0, 1],
];

describe.each(Object.entries(pages))("%s", (_, draw) => {
  const { shapes } = drawn(draw("A4"));
  const sheetSized = new Set(["PAGE", "SVG", "IMAGE"]);

  it("keeps type, lines and air within bounds", () => {
    let svgPt = 1;
    let ptPerUnit = 1;
    const breaches = shapes.flatMap((shape) => {
      // A drawing counts in units of its own, as those of the ski's millimetres.
      if (shape.type === "SVG") svgPt = unitPt(shape);
      if (shape.type === "SVG") ptPerUnit = svgPt;
      // Axes that lie: matrix(0, −points to a millimetre, …).
      const lying = shape.type === "G" ? /^matrix\(0, -?([\d.]+)/.exec(String(shape.props.transform)) : null;
      if (lying) ptPerUnit = svgPt * Number(lying[1]);
      const isDrawn = shape.type === "PATH" || "x" in shape.props;
      const style = { ...shape.props, ...styleOf(shape) };
      return Object.entries(style).flatMap(([name, value]) => {
        if (typeof value !== "number") return [];
        const rule = manners.find(([names]) => names.test(name));
        const inPt = isDrawn && /^(fontSize|strokeWidth)$/.test(name) ? value * ptPerUnit : value;
        if (!rule || sheetSized.has(shape.type) || (shape.type === "RECT" && /eight$/.test(name))) return [];
        return inPt >= rule[1] && inPt <= rule[2] ? [] : [`${shape.type} “${shape.text.slice(0, 30)}” ${name} ${inPt}`];
      });
    });
    expect(breaches).toEqual([]);
  });

  it("uses the two weights of its faces", () => {
    const weights = new Set(shapes.map((shape) => styleOf(shape).fontWeight).filter((weight) => weight !== undefined));
    expect([...weights].filter((weight) => weight !== 400 && weight !== 600)).toEqual([]);
  });

  it.each(["A4", "LETTER"] as const)("has nothing wider than its %s", (paper) => {
    const all = drawn(draw(paper)).shapes;
    let innerPt = 0;
    let heightPt = 0;
    for (const shape of all) {
      if (shape.type === "PAGE") {
        const [widthPt = 0, tall = 0] = shape.props.size as readonly number[];
        innerPt = pageBox(paper, widthPt > tall ? "landscape" : "portrait").innerPt;
        heightPt = tall;
        // Margins of 11 mm at the sides; head and foot leave at least nine tenths of the paper.
        const { paddingTop, paddingHorizontal, paddingBottom } = styleOf(shape);
        expect(Number(paddingHorizontal)).toBeCloseTo((widthPt - innerPt) / 2, 6);
        expect(Number(paddingTop) + Number(paddingBottom)).toBeLessThan(heightPt / 8);
        continue;
      }
      const { width, height } = { ...shape.props, ...styleOf(shape) };
      if (typeof width === "number") expect(width).toBeLessThanOrEqual(innerPt + 1e-6);
      if (typeof height === "number") expect(height).toBeLessThanOrEqual(heightPt / 2);
    }
  });
});

describe("what can be longer than a page", () => {
  const many = <T>(one: T | undefined, count: number, change: (each: T, index: number) => T): readonly T[] => {
    if (one === undefined) throw new Error("the sample has one");
    return Array.from({ length: count }, (_, index) => change(one, index));
  };
  const lines = many(quote.price.lines[0], 80, (line, index) => ({ ...line, label: `line ${index}` }));
  const price = { ...quote.price, lines };
  const members = many(clubQuote.members[0], 80, (member, index) => ({ ...member, quoteNumber: `line ${index}` }));
  const cuts = many(sheet.cuts[0], 80, (cut, index) => ({ ...cut, line: index, part: `line ${index}` }));
  const stack = many(sheet.stack[0], 80, (layer, index) => ({ ...layer, name: `line ${index}` }));
  const qc = many(sheet.qc[0], 80, (row, index) => ({ ...row, measure: `line ${index}` }));
  const stations = many(sheet.stations[0], 80, (station, index) => ({
    ...station,
    number: index,
    name: `line ${index}`,
  }));
  const list = composeKitList(facts);
  const rows = many(list.rows[0], 80, (row, index) => ({ ...row, line: index, part: `line ${index}` }));
  const money = confirmation.money && { ...confirmation.money, price };

  it.each([
    ["a quote's lines", QuotePages({ data: { ...quote, price }, paper: "A4" })],
    ["a confirmation's lines", OrderConfirmationPages({ data: { ...confirmation, money }, paper: "A4" })],
    ["an offer's lines", ClubQuotePages({ data: { ...clubQuote, price }, paper: "A4" })],
    ["a club's members", ClubQuotePages({ data: { ...clubQuote, members }, paper: "A4" })],
    ["a cut list", BuildSheetPages({ data: { ...sheet, cuts }, paper: "A4" })],
    ["a stack", BuildSheetPages({ data: { ...sheet, stack }, paper: "A4" })],
    ["measures", BuildSheetPages({ data: { ...sheet, qc }, paper: "A4" })],
    ["stations", BuildSheetPages({ data: { ...sheet, stations }, paper: "A4" })],
    ["a kit list", KitListPages({ data: { ...list, rows }, paper: "A4" })],
  ])("may break: %s", (_, page) => {
    const kept = drawn(page).shapes.filter(({ props }) => props.wrap === false);
    expect(kept.filter(({ text }) => text.includes("line 1") && text.includes("line 78")).length).toBe(0);
    expect(kept.some(({ text }) => text.includes("line 78"))).toBe(true);
  });
});

describe("the faces", () => {
  it("are read once for all the papers of a process, and no word is broken", () => {
    const register = vi.spyOn(Font, "register");
    registerFonts();
    const faces = register.mock.calls.map(([face]) => ("src" in face ? `${face.family} ${face.fontWeight}` : ""));
    expect(faces).toEqual(["Plex Sans 400", "Plex Sans 600", "Plex Mono 400", "Plex Mono 600"]);
    registerFonts();
    expect(register).toHaveBeenCalledTimes(4);
    expect(Font.getHyphenationCallback()?.("withdrawal")).toEqual(["withdrawal"]);
    register.mockRestore();
  });
});

describe("rows and tables", () => {
  const textStyles = (shapes: readonly Shape[]) =>
    ofType(shapes, "TEXT").map((shape) => [shape.text, styleOf(shape)] as const);

  it("have labels smaller than what they stand for, options heavy and marked", () => {
    const rows = [
      { label: "Core", value: "ash" },
      { label: "Base", value: "black", isOption: true },
    ];
    const [label, value, , option, tag] = textStyles(drawn(Rows({ rows, size: 8, labelWidth: 50 })).shapes);
    expect(label?.[1]).toMatchObject({ width: 50, fontSize: 7.5 });
    expect(value).toMatchObject(["ash", { fontSize: 8, fontWeight: 400 }]);
    expect(option).toMatchObject(["black", { fontSize: 8, fontWeight: 600 }]);
    expect(tag?.[0]).toBe("OPTION");
    expect(textStyles(drawn(Rows({ rows: rows.slice(0, 1) })).shapes)).toHaveLength(2);
  });

  it("have each cell under its own head, as wide and to the same side", () => {
    const columns = [
      { title: "Part", flex: 3 },
      { title: "L", flex: 1, align: "right" as const, mono: true, gapBefore: 5 },
    ];
    const { shapes } = drawn(
      Table({ columns, rows: [{ key: "a", cells: ["Wall", "2"], isStrong: true }], height: 20 }),
    );
    const [part, left, wall, two] = textStyles(shapes);
    expect([part?.[0], left?.[0], wall?.[0], two?.[0]]).toEqual(["Part", "L", "Wall", "2"]);
    expect(part?.[1]).toMatchObject({ flexGrow: 3, textAlign: "left", paddingLeft: 0 });
    expect(left?.[1]).toMatchObject({ flexGrow: 1, textAlign: "right", paddingLeft: 5 });
    expect(wall?.[1]).toMatchObject({ textAlign: "left", fontWeight: 600 });
    expect(two?.[1]).toMatchObject({ textAlign: "right", fontFamily: "Plex Mono" });
    const cells = ofType(shapes, "VIEW").filter((shape) => styleOf(shape).justifyContent === "center");
    expect(cells.map((shape) => styleOf(shape).flexGrow)).toEqual([3, 1]);
    const head = ofType(shapes, "VIEW").find(({ props }) => props.fixed === true);
    expect(head?.text).toBe("PartL");
    const row = ofType(shapes, "VIEW").find(({ props }) => props.wrap === false);
    expect(row && styleOf(row).minHeight).toBe(20);
    const plain = drawn(Table({ columns, rows: [{ key: "a", cells: ["Wall", "2"] }] })).shapes;
    expect(textStyles(plain)[2]?.[1]).not.toHaveProperty("fontWeight");
  });

  it("have boxes to write in: as wide as asked, else as there is room, with a hint or empty", () => {
    const box = (props: Parameters<typeof WriteBox>[0]) => drawn(WriteBox(props)).shapes;
    const [asked] = box({ width: 40, height: 20, hint: "Date" });
    expect(asked && styleOf(asked)).toMatchObject({ width: 40, height: 20 });
    expect(asked?.text).toBe("Date");
    const [open] = box({});
    expect(open && styleOf(open)).toMatchObject({ alignSelf: "stretch" });
    expect(open?.text).toBe("");
    const ticks = drawn(TickLine({ text: "Edges degreased", strong: true })).shapes;
    expect(textStyles(ticks).map(([text]) => text)).toEqual(["L", "R", "Edges degreased"]);
    expect(textStyles(ticks)[2]?.[1]).toMatchObject({ fontWeight: 600 });
    expect(textStyles(drawn(TickLine({ text: "x" })).shapes)[2]?.[1]).toMatchObject({ fontWeight: 400 });
  });
});
