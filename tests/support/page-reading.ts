/**
 * Reads a drawn page as people read it: a table by its caption, row and column; a fact by its name; a form by its fields.
 * The parser is the one of happy-dom, which also stands in for a browser where components are operated.
 */
import { Window } from "happy-dom";

const { DOMParser } = new Window();

export interface Field {
  readonly name: string;
  /** "text", "hidden", "select", "textarea", "radio" … */
  readonly kind: string;
  /** What is sent when nothing is changed; of several ticks those set, with commas between them. */
  readonly value: string;
  readonly label: string;
  /** Of radios, ticks and a select: value → words. */
  readonly choices: Readonly<Record<string, string>>;
  readonly error: string | null;
  readonly hint: string | null;
}

export interface Form {
  readonly fields: Readonly<Record<string, Field>>;
  readonly buttons: readonly string[];
  /** What is sent when nothing is changed. */
  readonly sent: Readonly<Record<string, string>>;
  /** Names of the fields that may be left out, as their labels say. */
  readonly optional: readonly string[];
  readonly reading: Reading;
}

export interface Reading {
  readonly element: Element;
  /** All words in order, blanks folded. */
  readonly text: string;
  readonly headings: readonly string[];
  /** words → address; the first of several of the same words. */
  readonly links: Readonly<Record<string, string>>;
  readonly buttons: readonly string[];
  readonly forms: readonly Form[];
  /** All facts lists together. */
  readonly facts: Readonly<Record<string, string>>;
  /** Items of all lists, nested ones within their own. */
  readonly items: readonly string[];
  /** The part of the page under this title. */
  part(title: string): Reading;
  hasPart(title: string): boolean;
  /** Rows of the table with this caption, each by the words of its columns. */
  table(caption: string): readonly Readonly<Record<string, string>>[];
  /** The columns of a table that stand right-aligned, as numbers do. */
  numbersOf(caption: string): readonly string[];
  /** The cells of a table that is taken away as CSV under this name. */
  csv(fileName: string): readonly (readonly string[])[];
  /** The form with this button. */
  form(button: string): Form;
  one(selector: string): Reading;
  all(selector: string): readonly Reading[];
  attribute(name: string): string | null;
}

export function parsed(html: string): Reading {
  const page = new DOMParser().parseFromString(html, "text/html");
  return reading(page.documentElement as unknown as Element);
}

/** Blanks folded; what a screen reader skips and the eye sees stays in. */
export function words(element: Element | null | undefined): string {
  return (element?.textContent ?? "").replace(/\s+/g, " ").trim();
}

export function reading(element: Element): Reading {
  const all = (selector: string) => [...element.querySelectorAll(selector)];
  return {
    element,
    get text() {
      return words(element);
    },
    get headings() {
      return all("h1, h2, h3, h4").map(words);
    },
    get links() {
      const found: Record<string, string> = {};
      for (const link of all("a[href]")) found[words(link)] ??= link.getAttribute("href") ?? "";
      return found;
    },
    get buttons() {
      return all("button").map(words).filter(Boolean);
    },
    get forms() {
      return all("form").map(formOf);
    },
    get facts() {
      return Object.fromEntries(all("dt").map((name) => [words(name), words(name.nextElementSibling)]));
    },
    get items() {
      return all("li").map(words);
    },
    part(title) {
      const found = partOf(element, title);
      if (!found) throw new Error(`no part "${title}" among: ${all("h2, h3").map(words).join(" | ")}`);
      return reading(found);
    },
    hasPart: (title) => partOf(element, title) !== undefined,
    table(caption) {
      const table = all("table").find((each) => words(each.querySelector("caption")) === caption);
      if (!table) throw new Error(`no table "${caption}" among: ${all("caption").map(words).join(" | ")}`);
      return rowsOf(table);
    },
    numbersOf(caption) {
      const table = all("table").find((each) => words(each.querySelector("caption")) === caption);
      const heads = [...(table?.querySelectorAll("thead th") ?? [])];
      return heads.filter((head) => head.classList.contains("text-right")).map(words);
    },
    csv(fileName) {
      const link = element.querySelector(`a[download="${fileName}"]`)?.getAttribute("href") ?? "";
      const text = decodeURIComponent(link.replace("data:text/csv;charset=utf-8,", ""));
      return text
        .split("\r\n")
        .slice(0, -1)
        .map((line) => line.split(","));
    },
    form(button) {
      const found = all("form").find((form) => [...form.querySelectorAll("button")].some((b) => words(b) === button));
      if (!found) throw new Error(`no form "${button}" among the buttons: ${all("button").map(words).join(" | ")}`);
      return formOf(found);
    },
    one(selector) {
      const found = element.querySelector(selector);
      if (!found) throw new Error(`nothing like ${selector}`);
      return reading(found);
    },
    all: (selector) => all(selector).map(reading),
    attribute: (name) => element.getAttribute(name),
  };
}

function partOf(element: Element, title: string): Element | undefined {
  const heading = [...element.querySelectorAll("h2, h3, legend, summary")].find((each) => words(each) === title);
  return heading?.closest("section, fieldset, details") ?? heading?.parentElement ?? undefined;
}

/** A table's rows by the words of its columns; a row's own heading is in the column it stands in. */
function rowsOf(table: Element): readonly Readonly<Record<string, string>>[] {
  const heads = [...table.querySelectorAll("thead tr:last-child > *")].map(words);
  return [...table.querySelectorAll("tbody tr, tfoot tr")].map((row) =>
    Object.fromEntries([...row.children].map((cell, index) => [heads[index] ?? String(index), words(cell)])),
  );
}

function formOf(form: Element): Form {
  const fields: Record<string, Field> = {};
  for (const control of form.querySelectorAll("input, select, textarea")) {
    const name = control.getAttribute("name") ?? "";
    fields[name] = joined(fields[name], fieldOf(form, control, name));
  }
  const set = Object.values(fields).filter(
    ({ kind, value }) => !(["radio", "checkbox"].includes(kind) && value === ""),
  );
  return {
    fields,
    buttons: [...form.querySelectorAll("button")].map(words).filter(Boolean),
    sent: Object.fromEntries(set.map(({ name, value }) => [name, value])),
    optional: Object.values(fields).flatMap(({ name, label }) => (label.endsWith("optional") ? [name] : [])),
    reading: reading(form),
  };
}

function fieldOf(form: Element, control: Element, name: string): Field {
  const kind = control.tagName === "INPUT" ? (control.getAttribute("type") ?? "text") : control.tagName.toLowerCase();
  const id = control.getAttribute("id");
  const label = control.closest("label") ?? (id ? form.querySelector(`label[for="${id}"]`) : null);
  const isTick = kind === "radio" || kind === "checkbox";
  // What is said of several ticks is said of the group they stand in.
  const told = isTick ? (control.closest("fieldset") ?? control) : control;
  const described = told.getAttribute("aria-describedby") ?? "";
  const about = (end: string) =>
    described
      .split(" ")
      .filter((each) => each.endsWith(end))
      .map((each) => words(form.querySelector(`[id="${each}"]`)))[0] ?? null;
  const value = control.getAttribute("value") ?? (kind === "checkbox" ? "on" : "");
  const options = [...control.querySelectorAll("option")];
  const chosen = options.find((option) => option.hasAttribute("selected")) ?? options[0];
  const choices = isTick
    ? { [value]: words(label) }
    : Object.fromEntries(options.map((option) => [option.getAttribute("value") ?? words(option), words(option)]));
  return {
    name,
    kind,
    value: isTick
      ? control.hasAttribute("checked")
        ? value
        : ""
      : kind === "textarea"
        ? (control.textContent ?? "")
        : kind === "select"
          ? (chosen?.getAttribute("value") ?? "")
          : value,
    label: isTick ? words(control.closest("fieldset")?.querySelector("legend") ?? label) : words(label),
    choices,
    error: control.hasAttribute("aria-invalid") || isTick ? about("-error") : null,
    hint: about("-hint"),
  };
}

/** Radios and ticks of one name are one field. */
function joined(before: Field | undefined, field: Field): Field {
  if (before === undefined) return field;
  const value = [before.value, field.value].filter(Boolean).join(",");
  return { ...before, value, choices: { ...before.choices, ...field.choices } };
}
