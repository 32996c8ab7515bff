/** The shared parts of pages, drawn from props made by hand. */
import { describe, expect, it } from "vitest";
import { Button, ButtonLink } from "#app/_ui/button.tsx";
import { CheckGroup, RadioGroup } from "#app/_ui/choice-group.tsx";
import { csvText } from "#app/_ui/csv.ts";
import { DateRange, dateRangeText, dayText, instantText, weekdayText } from "#app/_ui/date-range.tsx";
import { causeText, Drivers } from "#app/_ui/drivers.tsx";
import { Empty } from "#app/_ui/empty.tsx";
import { ErrorSummary } from "#app/_ui/error-summary.tsx";
import { Facts } from "#app/_ui/facts.tsx";
import { CheckboxField, NumberField, SelectField, TextAreaField, TextField } from "#app/_ui/field.tsx";
import { moneyChangeText, moneyText } from "#app/_ui/money.ts";
import { Badge, Notice } from "#app/_ui/notice.tsx";
import { Page, Part } from "#app/_ui/page.tsx";
import { Paging } from "#app/_ui/paging.tsx";
import { plusMinus } from "#app/_ui/plus-minus.ts";
import { PriceDifferences } from "#app/_ui/price-differences.tsx";
import { PriceTable } from "#app/_ui/price-table.tsx";
import { Reasons } from "#app/_ui/reasons.tsx";
import { More, SheetSection } from "#app/_ui/section.tsx";
import {
  bendMm,
  coreLine,
  flexText,
  graphicLine,
  reasonsAbout,
  reinforcementLine,
  skiLine,
  youLine,
} from "#app/_ui/sheet/labels.ts";
import { SameFlexChart } from "#app/_ui/sheet/same-flex-chart.tsx";
import { signedText } from "#app/_ui/signed.ts";
import { specFacts } from "#app/_ui/spec-facts.ts";
import { Steps } from "#app/_ui/steps.tsx";
import { Table } from "#app/_ui/table.tsx";
import { heightText, massText, otherHeight, otherMass, plain } from "#app/_ui/typed-measures.ts";
import { fill, listText, wordOf } from "#app/_ui/words.ts";
import sheetWords from "#content/copy/sheet.json";
import skierWords from "#content/copy/skier.json";
import type { SameFlexOption } from "#engine/assessment";
import type { FitReason } from "#engine/fit";
import type { Price, PriceComparison } from "#engine/pricing";
import { catalog, specOf } from "../../engine/demo-catalog";
import { partly } from "../../support/builders/views";
import { drawn } from "../../support/drawn";

describe("money and numbers in words", () => {
  it("writes cents as dollars, whole ones short where they stand in a line", () => {
    expect([
      moneyText(123_456),
      moneyText(100),
      moneyText(100, "short"),
      moneyText(150, "short"),
      moneyText(0),
    ]).toEqual(["$1,234.56", "$1.00", "$1", "$1.50", "$0.00"]);
    expect([moneyChangeText(6000), moneyChangeText(-4000), moneyChangeText(0), moneyChangeText(1)]).toEqual([
      "+$60",
      "−$40",
      "same price",
      "+$0.01",
    ]);
  });

  it("signs differences, and gives no sign to what is none", () => {
    expect([12.4, -3, 0.4, -0.4, 0.6, -0.6].map(signedText)).toEqual(["+12", "−3", "0", "0", "+1", "−1"]);
  });

  it("gives a number with the band of nine in ten: 1.645 deviations to each side", () => {
    expect(plusMinus(1785, 60)).toBe("1785 ± 99");
    expect(plusMinus(3.456, undefined, 2)).toBe("3.46");
    expect(plusMinus(3.456, 0.1, 2)).toBe("3.46 ± 0.16");
  });

  it("keeps measures as typed, with the other system beside them", () => {
    expect(plain(182.5, 2)).toBe("182.5");
    expect(plain(182, 1)).toBe("182");
    // 6 ft 1 in is 73 in of 2.54 cm; 182 cm is 71.65 in; 82 kg is 180.8 lb of 0.45359237 kg.
    expect(otherHeight({ unit: "ft-in", feet: 6, inches: 1 })).toBe("185.4 cm");
    expect(otherHeight({ unit: "cm", cm: 182 })).toBe("5 ft 11.7 in");
    expect(otherMass({ unit: "kg", kg: 82 })).toBe("180.8 lb");
    expect(otherMass({ unit: "lb", lb: 180 })).toBe("81.6 kg");
    expect(heightText({ unit: "cm", cm: 182.25 })).toBe("182.25 cm");
    expect(heightText({ unit: "ft-in", feet: 5, inches: 7 })).toBe("5 ft 7 in");
    expect([massText({ unit: "kg", kg: 82 }), massText({ unit: "lb", lb: 180.5 })]).toEqual(["82 kg", "180.5 lb"]);
  });

  it("fills words by name, numbers with one decimal, and leaves what it does not know", () => {
    expect(fill("{a} of {b}: {c} {d}", { a: 3, b: 1.25, c: "x", d: null })).toBe("3 of 1.3: x {d}");
    expect(fill("{a}", { a: ["x"] })).toBe('["x"]');
    expect(wordOf({ a: "b" }, "a")).toBe("b");
    expect(wordOf({ a: "b" }, "c")).toBe("c");
    expect(listText(["Ada", "Bo", "Cleo"])).toBe("Ada, Bo and Cleo");
  });
});

describe("days", () => {
  it("are written in full, a range with its years only where they differ", () => {
    expect(dayText("2027-01-12")).toBe("12 January 2027");
    expect(dayText("2026-12-01", false)).toBe("1 December");
    // 30 November 2026 is a Monday.
    expect(weekdayText("2026-12-08")).toBe("Tuesday 8 December");
    expect(dateRangeText("2027-01-12", "2027-01-23")).toBe("12–23 January");
    expect(dateRangeText("2027-01-12", "2027-01-23", true)).toBe("12–23 January 2027");
    expect(dateRangeText("2027-01-28", "2027-02-04", true)).toBe("28 January – 4 February 2027");
    expect(dateRangeText("2026-12-28", "2027-01-04")).toBe("28 December 2026 – 4 January 2027");
    expect(dateRangeText("2027-01-12", "2027-01-12")).toBe("12 January");
    // Winter in Denver is seven hours behind UTC.
    expect(instantText("2026-11-26T02:05:00.000Z", "America/Denver")).toBe("25 Nov 2026, 19:05");
    expect(drawn(<DateRange from="2027-01-12" to="2027-01-23" />).text).toBe(
      "ready 12–23 January, nine times out of ten by the later date",
    );
    expect(drawn(<DateRange verb="Ready" from="2027-01-12" to="2027-01-12" withYear />).text).toBe(
      "Ready 12 January 2027, nine times out of ten by then",
    );
    const shares = { p50: 0.74, p90: 0.912 };
    expect(drawn(<DateRange from="2027-01-12" to="2027-01-23" shares={shares} />).text).toBe(
      "ready 12–23 January, three of four by the first day, nine of ten by the last",
    );
    expect(drawn(<DateRange verb="Ready" from="2027-01-12" to="2027-01-12" shares={shares} />).text).toBe(
      "Ready 12 January, nine of ten by then",
    );
  });

  it("are spent on causes, with the days that can be named", () => {
    const words = sheetWords.date;
    const drivers = [
      { code: "press-queue", workingDays: 3.24, untilDate: "2027-01-12", mould: "M95", mouldDays: [] },
      { code: "mould", workingDays: 1, mould: "M95" },
      { code: "work", workingDays: 0.5 },
    ] as unknown as Parameters<typeof Drivers>[0]["drivers"];
    expect(drawn(<Drivers drivers={drivers} words={words} />).items).toEqual([
      "The press is full until 12 January: 3.2 working days",
      "Waiting for your mould, M95: 1 working day",
      "Work on your pair: 0.5 working days",
    ]);
    const cause = (known: object) => causeText(known as Parameters<typeof causeText>[0], words);
    expect(
      cause({ code: "mould", untilDate: "2027-01-12", mould: "M95", mouldDays: ["2027-01-14", "2027-01-20"] }),
    ).toBe("Your mould M95 is taken until 12 January; your mould runs on 14 January and 20 January");
    // Tuesdays: the 12th, 19th and 26th of January 2027.
    expect(
      cause({
        code: "mould",
        untilDate: "2027-01-12",
        mould: "M95",
        mouldDays: ["2027-01-12", "2027-01-19", "2027-01-26"],
      }),
    ).toBe("Your mould M95 is taken until 12 January; your mould runs on Tuesdays");
    expect(cause({ code: "work", untilDate: "2027-01-12" })).toBe("Work on your pair");
    expect(cause({ code: "mould", untilDate: "2027-01-12", mould: "M95", mouldDays: ["2027-01-14"] })).toMatch(
      /on 14 January$/,
    );
  });
});

describe("tables", () => {
  const columns = [
    { key: "a", head: "Name", cell: (row: { name: string; count: number }) => row.name },
    { key: "b", head: "Count", numeric: true, cell: (row: { name: string; count: number }) => row.count },
  ];
  const rows = [{ name: "x", count: 2 }];
  it("head their columns and rows, go away as CSV, and say when nothing is in them", () => {
    const table = drawn(
      <Table caption="Things" columns={columns} rows={rows} rowKey={(row) => row.name} hideCaption stacks />,
    );
    expect(table.table("Things")).toEqual([{ Name: "x", Count: "2" }]);
    expect(table.all("th[scope=col]").map(({ text }) => text)).toEqual(["Name", "Count"]);
    expect(table.all("th[scope=row]").map(({ text }) => text)).toEqual(["x"]);
    expect(table.one("td").attribute("data-head")).toBe("Count");
    expect(table.one("caption").attribute("class")).toBe("sr-only");
    expect(table.one("[role=group]").attribute("aria-label")).toBe("Things");
    expect(table.one("td").attribute("class")).toBe("measure");
    expect(table.links).toEqual({});
    const shownCaption = drawn(
      <Table caption="Things" columns={columns} rows={rows} rowKey={(row) => row.name} csvUrl="/x.csv" />,
    );
    expect(shownCaption.one("caption").attribute("class")).not.toContain("sr-only");
    expect(shownCaption.one("td").attribute("data-head")).toBeNull();
    expect(shownCaption.links).toEqual({ "Download as CSV": "/x.csv" });
    const csv = { fileName: "t.csv", head: ["n"], rows: [["=1"], ["-2"], ['a"b,c'], [3]] };
    const away = drawn(<Table caption="Things" columns={columns} rows={rows} rowKey={(row) => row.name} csv={csv} />);
    expect(decodeURIComponent(away.links["Download as CSV"] ?? "")).toBe(
      'data:text/csv;charset=utf-8,n\r\n\'=1\r\n-2\r\n"a""b,c"\r\n3\r\n',
    );
    expect(
      drawn(<Table caption="Things" columns={columns} rows={[]} rowKey={(row) => row.name} empty={<p>none</p>} />).text,
    ).toBe("none");
    expect(
      drawn(<Table caption="Things" columns={columns} rows={[]} rowKey={(row) => row.name} />).all("table"),
    ).toHaveLength(1);
    expect(csvText(["a"], [["+1"], ["@x"], ["line\nbreak"], ["plain"]])).toBe(
      'a\r\n+1\r\n\'@x\r\n"line\nbreak"\r\nplain\r\n',
    );
  });

  it("are paged by links that stop at both ends", () => {
    const page = (at: number, count = 3) => drawn(<Paging page={at} pageCount={count} href={(to) => `?page=${to}`} />);
    expect(page(1).links).toEqual({ Older: "?page=2" });
    expect(page(2).links).toEqual({ Newer: "?page=1", Older: "?page=3" });
    expect(page(3).links).toEqual({ Newer: "?page=2" });
    expect(page(2).text).toBe("Newerpage 2 of 3Older");
    expect(page(1, 1).text).toBe("");
    expect(page(2).one("a[rel=prev]").text).toBe("Newer");
    expect(page(2).one("a[rel=next]").text).toBe("Older");
  });

  it("add a price up from its lines", () => {
    const line = (code: string, label: string, quantity: number, lineCents: number, reason?: string) => ({
      code,
      label,
      quantity,
      lineCents,
      reason,
    });
    const price = partly<Price>({
      currency: "USD",
      lines: [line("model", "Midlow 95", 1, 154_000), line("proof", "Proof round", 2, 6000, "asked twice")] as never,
      exTaxCents: 160_000,
      shippingCents: 2500,
      taxCents: 9600,
      totalCents: 172_100,
      depositCents: 80_000,
    });
    const seen = drawn(<PriceTable price={price} words={skierWords.priceWords} caption="Price" />);
    expect(seen.table("Price")).toEqual([
      { Line: "Midlow 95", USD: "$1,540.00" },
      { Line: "Proof round × 2asked twice", USD: "$60.00" },
      { Line: "Skis and services", USD: "$1,600.00" },
      { Line: "Shipping", USD: "$25.00" },
      { Line: "Tax", USD: "$96.00" },
      { Line: "Total", USD: "$1,721.00" },
      { Line: "Deposit, half of skis and services", USD: "$800.00" },
    ]);
    expect(seen.one("caption").attribute("class")).not.toContain("sr-only");
  });

  it("set two prices side by side, with what changed", () => {
    const comparison = {
      lines: [
        { code: "a", label: "Model", change: "same", beforeCents: 100, afterCents: 100, differenceCents: 0 },
        { code: "b", label: "Core", change: "changed", beforeCents: 2000, afterCents: 500, differenceCents: -1500 },
      ],
      exTaxBeforeCents: 2100,
      exTaxAfterCents: 600,
      exTaxDifferenceCents: -1500,
      totalDifferenceCents: 0,
    } as unknown as PriceComparison;
    const seen = drawn(
      <PriceDifferences
        title="Then and now"
        before={partly<Price>({ totalCents: 2200 })}
        after={partly<Price>({ totalCents: 700 })}
        comparison={comparison}
      />,
    );
    expect(seen.table("Then and now")).toEqual([
      { Line: "Model", Before: "$1.00", Today: "$1.00", Difference: "–" },
      { Line: "Core", Before: "$20.00", Today: "$5.00", Difference: "−$15" },
      { Line: "Skis and services", Before: "$21.00", Today: "$6.00", Difference: "−$15" },
      { Line: "Total", Before: "$22.00", Today: "$7.00", Difference: "–" },
    ]);
    expect(seen.all("strong").map(({ text }) => text)).toEqual(["Core"]);
    expect(seen.all("tr.font-semibold").map(({ text }) => text)).toEqual(["Total$22.00$7.00–"]);
  });
});

describe("fields", () => {
  const field = (element: Parameters<typeof drawn>[0]) => drawn(<form>{element}</form>).forms[0]?.fields ?? {};
  it("tie hint and error to their control, and say what may be left out", () => {
    const text = field(
      <TextField name="a" label="Name" hint="as on paper" error="is missing" optional defaultValue="x" />,
    ).a;
    expect(text).toEqual({
      name: "a",
      kind: "text",
      value: "x",
      label: "Nameoptional",
      choices: {},
      error: "Error: is missing".replace(/^/, "✕"),
      hint: "as on paper",
    });
    const input = drawn(<TextField name="a" id="own" label="Name" hint="h" error="e" />).one("input");
    expect([input.attribute("id"), input.attribute("aria-describedby"), input.attribute("aria-invalid")]).toEqual([
      "own",
      "own-hint own-error",
      "true",
    ]);
    const plainInput = drawn(<TextField name="a" label="Name" />).one("input");
    expect([plainInput.attribute("aria-describedby"), plainInput.attribute("aria-invalid")]).toEqual([null, null]);
    expect(field(<NumberField name="n" label="Length" unit="cm" defaultValue="178" />).n?.value).toBe("178");
    expect(drawn(<NumberField name="n" label="Length" unit="cm" />).text).toBe("Lengthcm");
    expect(drawn(<NumberField name="n" label="Length" />).text).toBe("Length");
    expect(field(<TextAreaField name="t" label="Note" defaultValue="words" error="e" />).t).toMatchObject({
      kind: "textarea",
      value: "words",
      error: "✕Error: e",
    });
    const select = field(
      <SelectField
        name="s"
        label="Wood"
        empty="choose"
        defaultValue="b"
        options={[
          { value: "a", label: "Ash" },
          { value: "b", label: "Beech" },
        ]}
      />,
    ).s;
    expect(select).toMatchObject({ kind: "select", value: "b", choices: { "": "choose", a: "Ash", b: "Beech" } });
    expect(field(<SelectField name="s" label="Wood" options={[{ value: "a", label: "Ash" }]} />).s?.choices).toEqual({
      a: "Ash",
    });
    const tick = field(<CheckboxField name="c" label="Agreed" value="on" defaultChecked hint="h" error="e" />).c;
    expect(tick).toMatchObject({ kind: "checkbox", value: "on", hint: "h", error: "✕Error: e", label: "Agreed" });
    expect(
      drawn(<CheckboxField name="c" label="Agreed" />)
        .one("input")
        .attribute("aria-invalid"),
    ).toBeNull();
  });

  it("offer one of several, or some of several, with what is chosen marked", () => {
    const choices = [
      { value: "a", label: "First", detail: "the first", aside: "+$60", recommended: true },
      { value: "b", label: "Second", disabled: true },
    ];
    const radio = drawn(
      <form>
        <RadioGroup name="r" id="r-1" label="Which" hint="h" error="e" choices={choices} defaultValue="b" />
      </form>,
    );
    expect(radio.forms[0]?.fields.r).toMatchObject({
      kind: "radio",
      value: "b",
      label: "Which",
      hint: "h",
      error: "✕Error: e",
    });
    expect(radio.text).toContain("First◂ recommended+$60the first");
    expect(radio.all("input").map((input) => [input.attribute("id"), input.attribute("disabled")])).toEqual([
      ["r-1", null],
      [null, ""],
    ]);
    const chips = drawn(
      <RadioGroup name="r" label="Which" layout="chips" choices={choices} value="a" onChange={() => {}} />,
    );
    expect(chips.text).toBe("WhichFirstSecond");
    expect(chips.all("input").map((input) => input.attribute("checked"))).toEqual(["", null]);
    const checks = drawn(
      <form>
        <CheckGroup name="c" id="c-1" label="Some" choices={choices} defaultValues={["b"]} />
      </form>,
    );
    expect(checks.forms[0]?.fields.c).toMatchObject({ kind: "checkbox", value: "b", choices: { b: "Second" } });
    expect(checks.all("input").map((input) => [input.attribute("id"), input.attribute("disabled")])).toEqual([
      ["c-1", null],
      [null, ""],
    ]);
    const held = drawn(<CheckGroup name="c" label="Some" choices={choices} values={["a"]} onChange={() => {}} />);
    expect(held.all("input").map((input) => input.attribute("checked"))).toEqual(["", null]);
    expect(
      drawn(<CheckGroup name="c" label="Some" choices={choices} values={["a"]} />)
        .all("input")
        .map((input) => input.attribute("checked")),
    ).toEqual(["", null]);
  });

  it("sum their errors up with links to them, and take the focus", () => {
    const one = drawn(<ErrorSummary messages={[{ field: "name", message: "Name is missing" }]} />);
    expect(one.text).toContain("One thing to put right");
    expect(one.links).toEqual({ "Name is missing": "#name" });
    expect(one.one("[role=alert]").attribute("autofocus")).toBe("");
    const two = drawn(<ErrorSummary messages={[{ message: "Not now" }, { field: "b", message: "Other" }]} />);
    expect(two.text).toContain("2 things to put right");
    expect(two.links).toEqual({ Other: "#b" });
    expect(drawn(<ErrorSummary messages={[]} />).text).toBe("");
  });
});

describe("frames", () => {
  it("have one heading, parts with their titles, and sections that say how far they are", () => {
    const page = drawn(
      <Page title="Title" lead="lead" aside="aside">
        <Part title="One" id="one" arrives>
          in it
        </Part>
        <Part title="Two">more</Part>
      </Page>,
    );
    expect(page.headings).toEqual(["Title", "One", "Two"]);
    expect(page.text).toBe("TitleleadasideOnein itTwomore");
    const [one, two] = page.all("section");
    expect([
      one?.attribute("aria-labelledby"),
      one?.one("h2").attribute("id"),
      one?.one("h2").attribute("autofocus"),
    ]).toEqual(["one-title", "one-title", ""]);
    expect([two?.attribute("aria-labelledby"), two?.one("h2").attribute("autofocus")]).toEqual([null, null]);
    expect(drawn(<Page title="T">x</Page>).all("p")).toEqual([]);
    expect(
      drawn(
        <Page title="T" wide>
          x
        </Page>,
      )
        .one("div")
        .attribute("class"),
    ).toContain("max-w-none");
    expect(
      drawn(<Page title="T">x</Page>)
        .one("div")
        .attribute("class"),
    ).not.toContain("max-w-none");
    const section = (state?: "todo" | "done" | "attention") =>
      drawn(
        <SheetSection id="s" title="Ski" answer="Midlow" {...(state ? { state } : {})} open>
          body
        </SheetSection>,
      );
    expect([section(), section("done"), section("attention")].map((each) => each.one("summary").text)).toEqual([
      "○Ski, to doMidlow",
      "✓Ski, answeredMidlow",
      "!Ski, needs a wordMidlow",
    ]);
    expect(section().one("details").attribute("open")).toBe("");
    expect(
      drawn(<More summary="Why">because</More>)
        .one("details")
        .attribute("open"),
    ).toBeNull();
  });

  it("say a state with a sign and a word beside the colour", () => {
    const notices = (["info", "moss", "amber", "iron"] as const).map(
      (tone) => drawn(<Notice tone={tone}>x</Notice>).text,
    );
    expect(notices).toEqual(["iNotex", "✓Goodx", "!Carefulx", "✕Stopx"]);
    expect(drawn(<Notice tone="iron" title="Check" />).text).toBe("✕Check");
    expect(
      drawn(<Notice tone="iron" live="assertive" />)
        .one("div")
        .attribute("role"),
    ).toBe("alert");
    expect(
      drawn(<Notice tone="iron" live="polite" takesFocus />)
        .one("div")
        .attribute("role"),
    ).toBe("status");
    expect(
      drawn(<Notice tone="iron" live="polite" takesFocus />)
        .one("div")
        .attribute("autofocus"),
    ).toBe("");
    expect(
      drawn(<Notice tone="iron" />)
        .one("div")
        .attribute("role"),
    ).toBeNull();
    expect(drawn(<Badge tone="moss">on time</Badge>).text).toBe("✓on time");
    expect(drawn(<Empty title="Nothing">Go on</Empty>).text).toBe("NothingGo on");
    expect(drawn(<Empty title="Nothing" />).all("div > div > div")).toEqual([]);
    const facts = drawn(
      <Facts
        columns={3}
        facts={[
          { name: "Length", value: "178 cm", measure: true },
          { name: "Core", value: "ash" },
        ]}
      />,
    );
    expect(facts.facts).toEqual({ Length: "178 cm", Core: "ash" });
    expect(facts.all("dd").map((dd) => dd.attribute("class")?.includes("measure"))).toEqual([true, false]);
    expect(facts.one("dl").attribute("class")).toContain("lg:grid-cols-3");
    const button = drawn(
      <Button tone="danger" size="floor" className="extra">
        Go
      </Button>,
    ).one("button");
    expect(button.attribute("type")).toBe("button");
    for (const part of ["border-iron", "min-h-14", "extra"]) expect(button.attribute("class")).toContain(part);
    expect(
      drawn(
        <ButtonLink href="/x" tone="primary">
          Go
        </ButtonLink>,
      )
        .one("a")
        .attribute("class"),
    ).toContain("bg-larch");
  });

  it("tell steps apart as done, now and to come", () => {
    const steps = drawn(
      <Steps
        label="Way"
        steps={[
          { title: "A", state: "done", detail: "1 May" },
          { title: "B", state: "now" },
          { title: "C", state: "next" },
        ]}
      />,
    );
    expect(steps.items).toEqual(["✓A, done1 May", "▸B, now", "C, to come"]);
    expect(steps.all("li").map((li) => li.attribute("aria-current"))).toEqual([null, "step", null]);
    expect(steps.all("li > span.absolute")).toHaveLength(2);
    expect(steps.all("li p").map((p) => p.attribute("class"))).toEqual(["", "font-semibold", "text-pencil"]);
  });
});

describe("the sheet in words", () => {
  const words = sheetWords;
  it("names what was answered, as it was typed", () => {
    expect(youLine({}, {}, words)).toBe(words.you.empty);
    expect(
      youLine(
        { heightCm: 182, massKg: 81.6, ability: "confident", offPistePercent: 0 },
        { mass: { unit: "lb", lb: 180 } },
        words,
      ),
    ).toBe("182.0 cm, 180 lb, confident, 0 % off-piste");
    expect(youLine({ massKg: 82 }, { height: { unit: "ft-in", feet: 6, inches: 0 } }, words)).toBe(
      "6 ft 0 in, 82.0 kg",
    );
  });

  it("names ski, core, reinforcement and graphic", () => {
    const spec = specOf();
    const own = (classes: readonly { number: number; label: string; from: number; below: number }[], ratio: number) =>
      classes.find((each) => ratio >= each.from && ratio < each.below);
    const cls = own(catalog.build.flexClasses, 1);
    expect(skiLine(spec, catalog, words)).toBe(`Midlow 95, 178 cm, class 3, ${cls?.label.toLowerCase()}`);
    expect(skiLine(null, catalog, words)).toBe(words.ski.empty);
    expect(flexText(1, catalog, 4)).toMatch(/^class 3, .*, near 4$/);
    expect(flexText(9, catalog)).toBe("outside our classes, for the owner to look at");
    // Half-open: where one class ends the next begins.
    const third = catalog.build.flexClasses.find(({ number }) => number === 3);
    expect(flexText(third?.from ?? 0, catalog)).toMatch(/^class 3/);
    expect(flexText(third?.below ?? 0, catalog)).toMatch(/^class 4/);
    const blend = catalog.build.blends.find(({ id }) => id === spec.core);
    expect(coreLine(spec, catalog)).toBe(blend?.label);
    expect(coreLine({ ...spec, core: "other" }, catalog)).toBe("other");
    expect([
      coreLine(null, catalog),
      reinforcementLine(null, catalog, words),
      graphicLine(null, catalog, words),
    ]).toEqual(["", "", ""]);
    const [added] = catalog.build.reinforcements;
    expect(reinforcementLine({ ...spec, reinforcements: [], tipTailProtectors: false }, catalog, words)).toBe(
      "Glass only, as the model is",
    );
    expect(
      reinforcementLine({ ...spec, reinforcements: [added?.id ?? ""], tipTailProtectors: true }, catalog, words),
    ).toBe(`${added?.label}, Metal protectors at tip and tail`);
    const house = catalog.build.houseGraphics.find(({ id }) => id === spec.graphic.house)?.label;
    expect(graphicLine({ ...spec, graphic: { ...spec.graphic, layout: "mirrored" } }, catalog, words)).toBe(
      `${house}, mirrored`,
    );
    const text = { text: "ADA", xMm: 400, capHeightMm: 28 };
    const windows = [{ fromXMm: 300, toXMm: 500, halfWidthMm: 20 }];
    expect(
      graphicLine(
        { ...spec, graphic: { ...spec.graphic, kind: "own", layout: "same", text, windows } },
        catalog,
        words,
      ),
    ).toBe("My own picture, same, “ADA”, window");
  });

  it("gives a pair's facts with their units and sides", () => {
    const spec = specOf();
    const [left, right] = catalog.build.baseColours;
    const facts = (known: object) =>
      Object.fromEntries(
        specFacts({ ...spec, ...known } as typeof spec, catalog.build, words).map(({ name, value }) => [name, value]),
      );
    const plainFacts = facts({ base: { left: left?.id, right: right?.id, inlay: "none" } });
    expect(plainFacts).toMatchObject({
      Model: "Midlow 95",
      Length: "178 cm",
      Flex: "1.00 × reference, class 3",
      Base: `left ${left?.label.toLowerCase()}, right ${right?.label.toLowerCase()}`,
      "Mount line": "the model's own",
      Edges: "base 1.00°, side 2.0°",
      Structure: "medium, for settled snow (M)",
    });
    expect(Object.keys(plainFacts)).not.toContain("Letters in the base");
    expect(Object.keys(plainFacts)).not.toContain("Boot sole length");
    const rich = facts({
      flexRatio: 9,
      mount: { offsetMm: -12, bootSoleMm: 315 },
      base: { left: left?.id, right: right?.id, inlay: "complex" },
      graphic: {
        ...spec.graphic,
        text: { text: "ADA", xMm: 1, capHeightMm: 1 },
        windows: [
          { fromXMm: 300, toXMm: 500, halfWidthMm: 20 },
          { fromXMm: 600, toXMm: 700, halfWidthMm: 10 },
        ],
      },
    });
    expect(rich).toMatchObject({
      Flex: "9.00 × reference",
      "Mount line": "−12 mm",
      "Boot sole length": "315 mm",
      "Letters in the base": "A drawn inlay",
      Lettering: "“ADA”",
      Window: "300–500 mm from the tip, 40 mm wide",
      "Window 2": "600–700 mm from the tip, 20 mm wide",
    });
    expect(facts({ mount: { offsetMm: 15 } })["Mount line"]).toBe("+15 mm");
    expect(facts({ base: { ...spec.base, inlay: "complex", inlayText: "TY" } })["Letters in the base"]).toBe("TY");
  });

  it("weighs the reasons of one number against the largest of them", () => {
    const reason = (known: object) => ({ about: "length", effect: "adds", unit: "cm", ...known }) as FitReason;
    const reasons = reasonsAbout(
      "length",
      [
        reason({ factor: "reference-length", amount: 178 }),
        reason({ factor: "height", amount: 4 }),
        reason({ factor: "mass", amount: -2 }),
        // Less than half of the last digit shown: it would read as nothing.
        reason({ factor: "ability", amount: 0.049 }),
        reason({ about: "rank", factor: "waist-distance", amount: 9 }),
      ],
      words,
    );
    expect(reasons).toEqual([
      { factor: "The model's own length", amount: "178.0 cm", direction: "none", share: 0 },
      { factor: "Your height", amount: "+4.0 cm", direction: "up", share: 1 },
      { factor: "Your weight", amount: "−2.0 cm", direction: "down", share: 0.5 },
    ]);
    const times = reasonsAbout(
      "flexRatio",
      [
        reason({ about: "flexRatio", effect: "multiplies", factor: "mass", amount: 1.2 }),
        reason({ about: "flexRatio", effect: "multiplies", factor: "ability", amount: 0.9 }),
      ],
      words,
    );
    expect(times.map(({ amount, direction, share }) => [amount, direction, Math.round(share * 100)])).toEqual([
      ["× 1.20", "up", 100],
      ["× 0.90", "down", 50],
    ]);
    expect(
      reasonsAbout(
        "rank",
        [reason({ about: "rank", unit: "score", factor: "waist-distance", amount: 0.125 })],
        words,
      )[0]?.amount,
    ).toBe("+0.13");
    const list = drawn(<Reasons title="Length, cm" reasons={reasons} result="180 cm" />);
    expect(list.items).toEqual([
      "The model's own lengthleaves it: · 178.0 cm",
      "Your heightraises it: ▲ +4.0 cm",
      "Your weightlowers it: ▼ −2.0 cm",
      "together180 cm",
    ]);
    expect(list.all("li span span[style]").map((bar) => [bar.attribute("style"), bar.attribute("class")])).toEqual([
      // From the middle: what raises goes right, what lowers left, all on one scale.
      ["width:50%", "absolute inset-y-0.5 left-1/2 bg-larch"],
      ["width:25%", "absolute inset-y-0.5 right-1/2 bg-tarn"],
    ]);
    expect(drawn(<Reasons title="T" reasons={[]} />).items).toEqual([]);
  });

  it("bends under 10 kg: 98.0665 N over the spring", () => {
    expect(bendMm(4.903325)).toBe("20.0");
    // 5 % of 20 mm, 1.645 times.
    expect(bendMm(4.903325, 0.05)).toBe("20.0 ± 1.6");
  });

  it("places each build of one flex by mass and price", () => {
    const option = (core: string, massG: number, priceCents: number, isCurrent = false) =>
      partly<SameFlexOption>({ core, reinforcements: [], massG, priceCents, isCurrent });
    const options = [
      option("a", 3000, 200_000),
      option("b", 3400, 100_000),
      option("c", 3200, 180_000),
      option("now", 3400, 200_000, true),
    ];
    const chart = drawn(<SameFlexChart options={options} unbeaten={new Set(options.slice(0, 2))} words={words} />);
    // Mass from 3000 g at 64 to 3400 g at 348; price from $1,000 at 162 to $2,000 at 10.
    const circles = chart
      .all("circle")
      .map((dot) =>
        [dot.attribute("cx"), dot.attribute("cy"), dot.attribute("r")].map(
          (text) => Math.round(Number(text) * 10) / 10,
        ),
      );
    expect(circles).toEqual([
      [206, 40.4, 2.5],
      [64, 10, 4],
      [348, 162, 4],
    ]);
    const paths = chart.all("svg > path").map((path) => path.attribute("d"));
    expect(paths).toContain("M64 10L348 162");
    expect(paths).toContain("M348 1l9 9l-9 9l-9-9z");
    expect(paths[0]).toBe("M56 10V170H348");
    const alone = drawn(
      <SameFlexChart options={options.slice(0, 1)} unbeaten={new Set(options.slice(0, 1))} words={words} />,
    );
    expect(alone.all("circle").map((dot) => [dot.attribute("cx"), dot.attribute("cy")].map(Number))).toEqual([
      [206, 86],
    ]);
  });
});
