// Requests that no page of ours sends: broken addresses, methods, forms, action arguments, sizes, keys.
const paths = [
  "/",
  "/sheet",
  "/method",
  "/shop",
  "/shop/sign-in",
  "/shop/queue",
  "/health",
  "/files/artwork/x",
  "/files/quotes/x",
  "/files/pairs/x/build-sheet",
  "/sheet/x",
  "/quote/x",
  "/club/x",
  "/pair/x",
  "/uploads/x",
  "/_next/static/x",
  "/shop/queue/live",
];
const tails = [
  "",
  "/%00",
  "/%E0%A4%A",
  "/..%2f..%2fetc%2fpasswd",
  `/${"A".repeat(43)}`,
  `/${"z".repeat(3000)}`,
  "?x=%00",
  "?x[]=1&x=2",
  "?_rsc=%",
  "?page=-1&take=1e9",
  "?id=' OR 1=1--",
  "/%F0%9F%8E%BF",
  "?q=%EF%BF%BF",
];
const methods = ["GET", "GET", "GET", "HEAD", "POST", "POST", "OPTIONS", "PUT", "DELETE", "PATCH"];
const bodies = [
  null,
  "",
  "garbage",
  '["$undefined"]',
  '["$@1"]',
  '[{"a":"\\u0000"}]',
  "[garbage",
  '{"__proto__":{"x":1}}',
  "a=%00&b=%E0%A4%A",
  "x".repeat(100_000),
  '["$K1"]',
  '["$F1"]',
  '["$Q1"]',
];
const types = [
  "text/plain;charset=UTF-8",
  "application/json",
  "multipart/form-data; boundary=x",
  "application/x-www-form-urlencoded",
  "image/png",
  "",
];
const origins = [null, null, "null", "https://elsewhere.example"];

/** Random numbers that are the same for a seed: 0 to 1 (linear congruence, Numerical Recipes). */
export function drawn(seed) {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

/**
 * One request that no page of ours sends.
 * @param actions ids of real actions
 */
export function hostileRequest(draw, actions) {
  const pick = (list) => list[Math.floor(draw() * list.length)];
  const method = pick(methods);
  const headers = { "content-type": pick(types) };
  const origin = pick(origins);
  if (origin !== null) headers.origin = origin;
  if (method === "POST" && draw() < 0.5) headers["next-action"] = draw() < 0.7 ? pick(actions) : "deadbeef";
  const body = ["POST", "PUT", "PATCH"].includes(method) ? pick(bodies) : null;
  return { method, headers, body, place: pick(paths), tail: pick(tails) };
}

/**
 * Sends `count` drawn requests.
 * @param actions ids of real actions
 * @returns counts of answers by status, and the requests that were answered with 5xx
 */
export async function fuzz(address, count, draw, actions) {
  const byStatus = {};
  const bad = [];
  for (let n = 0; n < count; n += 1) {
    const { method, headers, body, place, tail } = hostileRequest(draw, actions);
    const url = `${address}${place}${tail}`;
    const status = await statusOf(url, { method, headers, body, redirect: "manual" });
    byStatus[status] = (byStatus[status] ?? 0) + 1;
    if (status >= 500)
      bad.push(
        `${status} ${method} ${url.slice(address.length, address.length + 60)} ${JSON.stringify(body)?.slice(0, 40)} ${headers["content-type"]}`,
      );
  }
  return { byStatus, bad };
}

async function statusOf(url, options) {
  const ended = new AbortController();
  const timer = setTimeout(() => ended.abort(), 20_000);
  try {
    const answer = await fetch(url, { ...options, signal: ended.signal });
    // A live page never ends; its status is enough.
    await answer.body?.cancel();
    return answer.status;
  } catch (error) {
    return error?.name === "AbortError" ? "no answer in 20 s" : "closed";
  } finally {
    clearTimeout(timer);
  }
}
