import { gaugePointsMm } from "./profile";
import type { SkiShape } from "./types";

/** ISO 6289:2025: the contact length of an alpine ski lies between two lines where a 0.5 mm gauge meets the surface. */
export const CONTACT_GAUGE_MM = 0.5;

/** How far the steel of a partial wrap reaches. */
export interface EdgeReach {
  /** Beyond shoulder and heel together, mm. */
  readonly beyondSidecutMm: number;
  /** Beyond each contact point, mm; absent = the contact points do not count. */
  readonly pastContactMm?: number;
}

/**
 * Where the steel of a partial wrap begins and ends, mm from the tip: half of the surplus beyond shoulder and heel each, and
 * past the contact points at the least, so that all that touches snow has an edge.
 */
export function edgeSpanMm(
  shape: SkiShape,
  { beyondSidecutMm, pastContactMm }: EdgeReach,
): { readonly fromMm: number; readonly toMm: number } {
  const heelMm = shape.lengthMm - shape.tailLengthMm;
  const sidecut = { fromMm: shape.tipLengthMm - beyondSidecutMm / 2, toMm: heelMm + beyondSidecutMm / 2 };
  if (pastContactMm === undefined) return sidecut;
  const contact = gaugePointsMm(shape, CONTACT_GAUGE_MM);
  return {
    fromMm: Math.max(0, Math.min(sidecut.fromMm, contact.tipMm - pastContactMm)),
    toMm: Math.min(shape.lengthMm, Math.max(sidecut.toMm, contact.tailMm + pastContactMm)),
  };
}
