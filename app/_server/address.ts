/** Where a request came from, as far as that can be believed. */

/**
 * The visitor's address from X-Forwarded-For. Our own server puts the connection's address there and drops what the
 * visitor sent; behind `trustedProxies` proxies each of them appended one, and the visitor's is that many from the end.
 */
export function visitorAddress(forwardedFor: string | null, trustedProxies: number): string {
  const addresses = (forwardedFor ?? "").split(",").map((part) => part.trim());
  const index = Math.max(0, addresses.length - Math.max(1, trustedProxies));
  return addresses[index] || "unknown";
}
