/** Whether a request is somebody's own doing, or what a page asks by itself while nobody is there. */

/**
 * True for a form or an action that was sent and for a page that somebody went to. What scripts fetch (a page that follows the
 * queue, its events, a list read again) is not; typing and clicking are told by a call of their own.
 * @see Fetch Metadata Request Headers (W3C), Sec-Fetch-Mode: a browser says "navigate" only when a page is gone to
 */
export function isTheirDoing(headers: Pick<Headers, "get" | "has">): boolean {
  if (headers.has("next-action")) return true;
  const mode = headers.get("sec-fetch-mode");
  return mode === null || mode === "navigate";
}
