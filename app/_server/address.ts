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

/** What a request says of where it came from. */
export interface Origin {
  readonly forwardedFor: string | null;
  readonly trustedProxies: number;
  /** The visitor, or a proxy that nobody has named, sent forwarded headers. */
  readonly isProxied: boolean;
  /** This browser's own mark, where it has one. */
  readonly device: string | null;
}

/**
 * By what one visitor is told from others. Behind a proxy that is not named all visitors have the proxy's address, and so may
 * those of this machine or house: they are told apart by their browsers, or not at all.
 */
export function visitorIdentity({ forwardedFor, trustedProxies, isProxied, device }: Origin): string | null {
  if (!isShared({ forwardedFor, trustedProxies, isProxied }))
    return `address ${visitorAddress(forwardedFor, trustedProxies)}`;
  return device === null ? null : `device ${device}`;
}

/** Several visitors may have this address, and nobody has said how many proxies stand before it. */
export function isShared({ forwardedFor, trustedProxies, isProxied }: Omit<Origin, "device">): boolean {
  return trustedProxies === 0 && (isProxied || isOfTheHouse(visitorAddress(forwardedFor, trustedProxies)));
}

/** Loopback, private and link-local addresses, and none at all: where proxies stand. */
function isOfTheHouse(address: string): boolean {
  const plain = address.toLowerCase().replace(/^::ffff:/, "");
  return (
    plain === "unknown" ||
    plain === "::1" ||
    /^(127|10)\./.test(plain) ||
    /^192\.168\./.test(plain) ||
    /^172\.(1[6-9]|2\d|3[01])\./.test(plain) ||
    /^169\.254\./.test(plain) ||
    /^f[cd][0-9a-f]{2}:/.test(plain) ||
    /^fe[89ab][0-9a-f]:/.test(plain)
  );
}
