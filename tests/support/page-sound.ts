/**
 * What every page and every part of one keeps to, whoever sees it in whatever state: each drawing of a test is held to it.
 * Each rule is what somebody relies on who cannot see the page, cannot use a mouse, or reads figures in a column.
 */
import { words } from "./page-reading";

/** Throws with everything that is wrong, one line each. */
export function keepSound(root: Element): void {
  const wrong = [...names(root), ...texts(root), ...fields(root), ...figures(root), ...drawings(root)];
  if (wrong.length > 0) throw new Error(`not sound:\n${wrong.join("\n")}`);
}

const shortened = (element: Element) => element.outerHTML.slice(0, 160);

/** Ids name one thing, references name something, the focus goes in the order of the page, one door of a row is the open one. */
function names(root: Element): readonly string[] {
  const ids = [...root.querySelectorAll("[id]")].map((each) => each.id);
  const known = new Set(ids);
  const twice = ids.filter((id, index) => id !== "" && ids.indexOf(id) !== index);
  const dangling = ["aria-labelledby", "aria-describedby", "for"].flatMap((name) =>
    [...root.querySelectorAll(`[${name}]`)].flatMap((each) =>
      (each.getAttribute(name) ?? "").split(" ").flatMap((id) => (known.has(id) ? [] : [`${name} of ${id}`])),
    ),
  );
  const early = [...root.querySelectorAll("[tabindex]")].filter((each) => Number(each.getAttribute("tabindex")) > 0);
  const silent = [...root.querySelectorAll("a[href], button")].filter(
    (each) => words(each) === "" && !each.hasAttribute("aria-label") && each.getAttribute("aria-hidden") !== "true",
  );
  const crowded = [...root.querySelectorAll("nav")].filter((nav) => nav.querySelectorAll("[aria-current]").length > 1);
  return [
    ...twice.map((id) => `two of id ${id}`),
    ...dangling.map((what) => `nothing for ${what}`),
    ...early.map((each) => `first in the order of the focus: ${shortened(each)}`),
    ...silent.map((each) => `without a name: ${shortened(each)}`),
    ...crowded.map((each) => `several are the current one: ${shortened(each)}`),
  ];
}

/** Nothing that a program left there. */
function texts(root: Element): readonly string[] {
  const scripts = [...root.querySelectorAll("script, style")].map(words).filter(Boolean);
  const seen = scripts.reduce((text, script) => text.replace(script, ""), words(root));
  const left = /.{0,30}(\b(undefined|NaN|null|Infinity)\b|\[object |\{[a-z]\w*\})/.exec(seen);
  const links = [...root.querySelectorAll("a[href], form[action], img[src]")]
    .map((each) => each.getAttribute("href") ?? each.getAttribute("action") ?? each.getAttribute("src") ?? "")
    .filter((to) => !to.startsWith("data:") && /undefined|NaN|\[object|null/.test(to));
  return [...(left ? [`a program's word: ${left[0]}`] : []), ...links.map((to) => `a program's word: ${to}`)];
}

/** A field has a label; it is marked as wrong where words say what is wrong, and only there; a text field is of a sheet's height. */
function fields(root: Element): readonly string[] {
  const controls = [...root.querySelectorAll("input, select, textarea")].filter(
    (each) => each.getAttribute("type") !== "hidden",
  );
  return controls.flatMap((each) => {
    const id = each.getAttribute("id");
    const label = each.closest("label") ?? (id ? root.querySelector(`label[for="${id}"]`) : null);
    const isNamed = words(label) !== "" || each.hasAttribute("aria-label") || each.hasAttribute("aria-labelledby");
    const described = each.getAttribute("aria-describedby") ?? "";
    const isWrong = each.getAttribute("aria-invalid") === "true";
    const rows = Number(each.getAttribute("rows") ?? 3);
    return [
      ...(isNamed ? [] : [`no label: ${shortened(each)}`]),
      ...(isWrong === /-error( |$)/.test(described)
        ? []
        : [`wrong without words, or words without: ${shortened(each)}`]),
      ...(rows >= 2 && rows <= 12 ? [] : [`a field of ${rows} rows`]),
    ];
  });
}

/** "1,820", "−0.3", "$12", "3/14", "1.73 ± 0.10 kg", "25.0 N/cm". */
const isFigure = (text: string) =>
  /^[+−±-]? ?\$?\d[\d,.]*(\/\d+)?( ± [\d.]+)?( ?(%|mm|cm|m|g|kg|min|N\/cm|MPa|kg\/m³))?$/.test(text);

/** Figures stand one under the other: to the right in a table, in the hand of measures in a list of facts. */
function figures(root: Element): readonly string[] {
  const columns = [...root.querySelectorAll("table")].flatMap((table) => {
    const heads = [...table.querySelectorAll("thead tr:last-child > *")];
    const rows = [...table.querySelectorAll("tbody tr")];
    return heads.flatMap((head, index) => {
      const cells = rows.map((row) => words(row.children[index])).filter((text) => text !== "" && text !== "–");
      if (cells.length === 0 || !cells.every(isFigure)) return [];
      return head.classList.contains("text-right") || table.classList.contains("text-right")
        ? []
        : [`figures not to the right: ${words(head)}: ${cells[0]}`];
    });
  });
  const facts = [...root.querySelectorAll("dd")].filter(
    (each) => isFigure(words(each)) && !each.classList.contains("measure"),
  );
  return [...columns, ...facts.map((each) => `a figure in the hand of words: ${words(each.previousElementSibling)}`)];
}

/** What is drawn lies on its sheet, in lines and letters that can be told from one another. */
function drawings(root: Element): readonly string[] {
  return [...root.querySelectorAll("svg[viewBox]")].flatMap((svg) => {
    const [left = 0, top = 0, width = 0, height = 0] = (svg.getAttribute("viewBox") ?? "").split(" ").map(Number);
    const number = (each: Element, name: string) => Number(each.getAttribute(name) ?? Number.NaN);
    const isIn = (each: Element, across: string, down: string) =>
      !(number(each, across) < left - 1 || number(each, across) > left + width + 1) &&
      !(number(each, down) < top - 1 || number(each, down) > top + height + 1);
    const lies = [...svg.querySelectorAll("text, line, circle")].filter((each) => !each.closest("[transform], defs"));
    const out = lies.filter(
      (each) => !isIn(each, "x", "y") || !isIn(each, "cx", "cy") || !isIn(each, "x1", "y1") || !isIn(each, "x2", "y2"),
    );
    const letters = [...svg.querySelectorAll("text")]
      .filter((each) => !each.closest("[transform], defs") && words(each) !== "")
      .map((each) => boxOf(each));
    const crossed = letters.flatMap((one, index) =>
      letters
        .slice(index + 1)
        .filter((other) => isOver(one, other))
        .map((other) => `${one.text} over ${other.text}`),
    );
    // A chart's own units are the page's, near enough; elsewhere lines that keep their width are as wide.
    const inPixels = letters.length > 0 ? [...svg.querySelectorAll("*")] : [...svg.querySelectorAll("[vector-effect]")];
    const thick = inPixels.filter(
      (each) => number(each, "stroke-width") > 3.5 || number(each, "r") > 6 || number(each, "font-size") > 14,
    );
    const faint = [...svg.querySelectorAll("*")].filter((each) =>
      ["opacity", "fill-opacity", "stroke-opacity"].some((name) => number(each, name) > 1),
    );
    return [
      ...out.map((each) => `off its sheet ${svg.getAttribute("viewBox")}: ${shortened(each)}`),
      ...crossed.map((what) => `words over one another: ${what}`),
      ...thick.map((each) => `too thick to tell apart: ${shortened(each)}`),
      ...faint.map((each) => `more than opaque: ${shortened(each)}`),
    ];
  });
}

interface Box {
  readonly text: string;
  readonly from: number;
  readonly to: number;
  readonly y: number;
  readonly height: number;
}

/** Where a word lies, narrower than any face would set it: half of its height a letter, in which 0.4 is meant with room to spare. */
function boxOf(element: Element): Box {
  const text = words(element);
  const height = Number(element.getAttribute("font-size") ?? 10);
  const wide = 0.4 * height * text.length;
  const x = Number(element.getAttribute("x") ?? 0);
  const anchor = element.getAttribute("text-anchor") ?? "start";
  const from = anchor === "middle" ? x - wide / 2 : anchor === "end" ? x - wide : x;
  return { text, from, to: from + wide, y: Number(element.getAttribute("y") ?? 0), height };
}

const isOver = (one: Box, other: Box) =>
  Math.abs(one.y - other.y) < 0.6 * Math.min(one.height, other.height) && one.from < other.to && other.from < one.to;
