/** Where somebody stands who signs in, and whether the demo's published passwords count there. */
import { config } from "#config";

export interface Door {
  /** Where the request came from, as far as it can be believed. */
  readonly address: string;
  /** The name the browser asked for, without its port; unknown where nobody asked by a name. */
  readonly host?: string | undefined;
  /** The program itself, which fills in the demo; no request can say so. */
  readonly isOwnProcess?: boolean;
}

const loopbackHosts = ["localhost", "::1"];

/** RFC 1122 and RFC 4291: 127.0.0.0/8 and ::1, which no other machine can send from; also as IPv6 writes an IPv4 address. */
export function isLoopback(address: string): boolean {
  const plain = address.replace(/^\[|\]$/g, "").replace(/^::ffff:/i, "");
  return /^127(\.\d{1,3}){3}$/.test(plain) || loopbackHosts.includes(plain);
}

/**
 * Everybody knows the demo's passwords, so they count for whoever sits at the machine: the request comes from it and asks for
 * it by a name of its own, and the shop has no public address. A setting opens them to everybody.
 */
export function demoMayEnter({ address, host, isOwnProcess = false }: Door): boolean {
  const { demoSignIns, publicOrigin } = config();
  if (isOwnProcess || demoSignIns === "anywhere") return true;
  const names = [address, new URL(publicOrigin).hostname, ...(host === undefined ? [] : [host])];
  return names.every(isLoopback);
}
