/**
 * An expected refusal is data, not an exception. `code` names it, the other fields are its parameters,
 * `path` says which input it is about. Words are chosen at the edge, from content/copy.
 */
export interface Refusal {
  readonly code: string;
  readonly path?: string;
  readonly [parameter: string]: unknown;
}

export type Outcome<T, R extends Refusal = Refusal> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly refusal: R };

export function accept<T>(value: T): { readonly ok: true; readonly value: T } {
  return { ok: true, value };
}

export function refuse<const R extends Refusal>(refusal: R): { readonly ok: false; readonly refusal: R } {
  return { ok: false, refusal };
}
