interface HostileRequest {
  readonly method: string;
  readonly headers: Record<string, string>;
  readonly body: string | null;
  readonly place: string;
  readonly tail: string;
}
export function drawn(seed: number): () => number;
export function hostileRequest(draw: () => number, actions: readonly string[]): HostileRequest;
