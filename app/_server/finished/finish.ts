/**
 * A page of words and drawings as finished HTML: the framework's scripts, and with them its second copy of the page, are
 * taken out, and the one script that such a page needs is put in. Its content security policy names that script by its hash
 * (CSP Level 3, section 2.3.1), so that the same bytes serve everybody.
 */
import { createHash } from "node:crypto";

/** `script` is the text of the page's one script. Null where the page comes in parts that scripts would put in place. */
export function finishedHtml(html: string, script: string): string | null {
  if (/<template id="B:|<div hidden="" id="S:/.test(html)) return null;
  const bare = html
    .replaceAll(/<script\b[^>]*>[\s\S]*?<\/script>/g, "")
    .replaceAll(/<link\b[^>]*(?:\bas="script"|\brel="(?:modulepreload|expect)")[^>]*>/g, "")
    .replaceAll(/<!--[\s\S]*?-->/g, "")
    .replaceAll(/ nonce="[^"]*"/g, "");
  const end = bare.lastIndexOf("</body>");
  return end < 0 ? null : `${bare.slice(0, end)}<script>${script}</script>${bare.slice(end)}`;
}

/** The policy of a page made for one request, with hashes of the finished page's scripts in place of the nonce. */
export function policyByHashes(policy: string, html: string): string {
  const scripts = [...html.matchAll(/<script>([\s\S]*?)<\/script>/g)].map(([, text = ""]) => hashSource(text));
  return policy
    .split("; ")
    .map((rule) => (rule.startsWith("script-src ") ? ["script-src", ...scripts].join(" ") : rule))
    .map((rule) => rule.replaceAll(/ 'nonce-[^']*'/g, ""))
    .join("; ");
}

/** A script by the SHA-256 of its text, as a policy names it. */
export function hashSource(script: string): string {
  return `'sha256-${createHash("sha256").update(script, "utf8").digest("base64")}'`;
}
