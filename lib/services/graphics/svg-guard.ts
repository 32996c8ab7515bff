/**
 * What an SVG must not bring: it is drawn once, from what is in the file itself. The drawing library fetches nothing and runs
 * nothing of its own accord; this refuses beforehand, and says why.
 */

export type SvgFault = "script" | "entities" | "outside" | "foreign" | "encoding" | "too-long";

/** Characters of the longest that is drawn. */
export const longestSvg = 10_000_000;

const faults: readonly (readonly [SvgFault, RegExp])[] = [
  ["entities", /<!ENTITY|<!DOCTYPE[^>[]*\[/i],
  ["script", /<(?:[\w.-]+:)?script[\s/>]|[\s"']on[a-z]+\s*=|javascript\s*:|<(?:[\w.-]+:)?handler[\s/>]/i],
  ["outside", /<\?xml-stylesheet|@import|\bxml:base\s*=/i],
  ["foreign", /<(?:[\w.-]+:)?(?:foreignObject|iframe|object|embed|audio|video)[\s/>]/i],
];

/** Only a part of this file, or a picture of pixels that the file itself carries. */
const inside = /^\s*(?:#|data:image\/(?:png|jpe?g|webp|gif);base64,)/i;
const references = [
  /(?:^|[\s"'])(?:[\w.-]+:)?(?:href|src)\s*=\s*(?:"([^"]*)"|'([^']*)')/gi,
  /url\(\s*(?:"([^"]*)"|'([^']*)'|([^)"'][^)]*))\s*\)/gi,
] as const;

const longestShown = 80;

/**
 * Why a file cannot be drawn, null when it can. `found` is the start of what stands in it.
 * The forms are those of SVG 1.1 (W3C), XML 1.0 and CSS 2.1.
 */
export function svgFault(bytes: Uint8Array): { readonly fault: SvgFault; readonly found: string } | null {
  if (bytes.length > longestSvg) return { fault: "too-long", found: String(bytes.length) };
  let text: string;
  try {
    text = new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return { fault: "encoding", found: "" };
  }
  const named = /<\?xml[^>]*\bencoding\s*=\s*["']([^"']+)/i.exec(text)?.[1];
  if (named !== undefined && !/^(utf-?8|us-ascii)$/i.test(named)) return { fault: "encoding", found: named };
  const plain = text.replaceAll(/<!--[\s\S]*?-->/g, " ");
  for (const [fault, pattern] of faults) {
    const found = pattern.exec(plain)?.[0];
    if (found !== undefined) return { fault, found: found.trim().slice(0, longestShown) };
  }
  for (const pattern of references) {
    for (const match of plain.matchAll(pattern)) {
      const target = match[1] ?? match[2] ?? match[3] ?? "";
      if (target !== "" && !inside.test(target)) return { fault: "outside", found: target.slice(0, longestShown) };
    }
  }
  return null;
}
