interface IncomingRequest {
  readonly headers: Record<string, string | string[] | undefined>;
  readonly socket: { readonly remoteAddress?: string };
}
export function alwaysSent(address: string): Readonly<Record<string, string>>;
export function headerGuard(trustedProxies: number): (request: IncomingRequest) => boolean;
