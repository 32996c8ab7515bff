// What pages and papers say, as text that changes only when they do.
import { execFileSync } from "node:child_process";
import { createHash } from "node:crypto";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import os from "node:os";
import path from "node:path";

const entities = { amp: "&", lt: "<", gt: ">", quot: '"', apos: "'", nbsp: " " };
const blocks =
  /^(address|article|aside|button|caption|dd|details|dialog|div|dl|dt|fieldset|figcaption|figure|footer|form|h[1-6]|header|legend|li|main|nav|ol|option|p|section|select|summary|table|tbody|td|tfoot|th|thead|tr|ul)$/;

/** One instance a file: the first id met is id-1, the first token token-1. */
export function neutral() {
  const seen = new Map();
  const named = (kind) => (text) => {
    if (!seen.has(text))
      seen.set(text, `${kind}-${[...seen.values()].filter((name) => name.startsWith(kind)).length + 1}`);
    return seen.get(text);
  };
  return (text) =>
    text
      .replace(/[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}/g, named("id"))
      .replace(/(?<![\w-])[A-Za-z0-9_-]{43}(?![\w-])/g, (token) =>
        /[A-Z]/.test(token) ? named("token")(token) : token,
      )
      .replace(/localhost:\d+/g, "localhost");
}

/** The words of a page line by line, with links, fields and their values; drawings by a digest. */
export function pageText(html) {
  const calm = neutral();
  const body = calm(html)
    .replace(/<!--[\s\S]*?-->|<!doctype html>/gi, "")
    .replace(/<(script|style|template|noscript)\b[\s\S]*?<\/\1>/g, "")
    .replace(/<svg\b[\s\S]*?<\/svg>/g, drawing)
    .replace(/<(?:link|meta|base)\b[^>]*>/g, "");
  const text = body.replace(/<(\/?)([a-z][a-z0-9]*)([^>]*)>/g, (_tag, closing, name, rest) =>
    spoken(name, closing, attributes(rest)),
  );
  return text
    .replace(/&(?:#x([0-9a-f]+)|#(\d+)|(\w+));/gi, (all, hex, decimal, name) =>
      hex
        ? String.fromCodePoint(Number.parseInt(hex, 16))
        : decimal
          ? String.fromCodePoint(Number(decimal))
          : (entities[name] ?? all),
    )
    .split("\n")
    .map((line) => line.replace(/\s+/g, " ").trim())
    .filter((line) => line !== "")
    .join("\n");
}

function drawing(svg) {
  const words = [...svg.matchAll(/<(?:text|title|desc|tspan)\b[^>]*>([^<]+)</g)].map((match) => match[1]);
  const shape = svg.replace(/\b(?:id|class|clip-path|aria-labelledby|href|fill)="[^"]*"/g, "");
  const digest = createHash("sha256").update(shape).digest("hex").slice(0, 10);
  return `\n[drawing ${digest}] ${words.join(" · ")}\n`;
}

function attributes(text) {
  return Object.fromEntries(
    [...text.matchAll(/([\w:-]+)(?:="([^"]*)")?/g)].map(([, name, value]) => [name, value ?? ""]),
  );
}

function spoken(name, closing, given) {
  const label = given["aria-label"] ? ` (${given["aria-label"]})` : "";
  if (name === "input" || name === "select" || name === "textarea") {
    if (closing) return "\n";
    if (given.name?.startsWith("$ACTION")) return "";
    const marks = ["checked", "disabled", "required"].filter((mark) => mark in given).join(" ");
    return `\n[${name} ${given.type ?? ""} ${given.name ?? ""}=${given.value ?? ""} ${marks}]${label} `;
  }
  if (name === "option" && !closing) return `\n${"selected" in given ? "(*)" : "( )"} `;
  if (name === "a") return closing ? "] " : ` [${given.href ?? ""}${label} `;
  if (name === "img" || name === "image") return ` [picture ${given.alt ?? ""}] `;
  if (/^h[1-6]$/.test(name) && !closing) return `\n${"#".repeat(Number(name[1]))} `;
  if (name === "td" || name === "th") return closing ? " | " : label;
  return blocks.test(name) || name === "br" ? `\n${closing ? "" : label}` : label;
}

/** The words of a PDF page by page; how far apart columns stand hangs on the width of a link nobody can foresee. */
export function paperText(bytes) {
  const folder = mkdtempSync(path.join(os.tmpdir(), "pairwright-paper-"));
  try {
    const file = path.join(folder, "paper.pdf");
    writeFileSync(file, bytes);
    const text = execFileSync("pdftotext", ["-enc", "UTF-8", "-layout", file, "-"], { encoding: "utf8" });
    const pages = text.split("\f").slice(0, -1);
    return neutral()(
      pages.map((page, index) => `--- page ${index + 1}\n${page.trimEnd().replace(/ {3,}/g, "   ")}`).join("\n"),
    );
  } finally {
    rmSync(folder, { recursive: true });
  }
}
