/** The designed core: a flat middle that tapers to both ends. */
import { evenlySpaced } from "../math";
import type { ThicknessProfile } from "./types";

export interface CoreTaper {
  readonly coreFromMm: number;
  readonly coreToMm: number;
  readonly mountFromTipMm: number;
  readonly tipMm: number;
  readonly midMm: number;
  readonly tailMm: number;
  /** Length of the flat middle, centred on the mount line. */
  readonly flatMm: number;
  /** 1 is a straight taper, more is fuller towards the middle. */
  readonly taperPower: number;
}

const TAPER_PIECES = 24;

/**
 * t = tEnd + (tMid − tEnd)(1 − (1 − u)^power), u from 0 where the wood begins to 1 at the flat; straight between stations.
 *
 * @throws RangeError when the flat middle does not fit between the ends of the wood
 */
export function taperedProfile(taper: CoreTaper): ThicknessProfile {
  const { coreFromMm, coreToMm, mountFromTipMm, flatMm, midMm } = taper;
  const front = mountFromTipMm - flatMm / 2;
  const rear = mountFromTipMm + flatMm / 2;
  if (!(coreFromMm < front && rear < coreToMm && flatMm >= 0)) {
    throw new RangeError(
      `flatMm: ${flatMm} mm about ${mountFromTipMm} mm leaves no taper in ${coreFromMm} to ${coreToMm} mm`,
    );
  }
  const pieces = taper.taperPower === 1 ? 1 : TAPER_PIECES;
  const rise = (endMm: number, u: number) => endMm + (midMm - endMm) * (1 - (1 - u) ** taper.taperPower);
  const us = evenlySpaced(0, 1, pieces);
  return {
    stations: [
      ...us.map((u) => ({ xMm: coreFromMm + (front - coreFromMm) * u, thicknessMm: rise(taper.tipMm, u) })),
      ...us.map((u) => ({ xMm: rear + (coreToMm - rear) * u, thicknessMm: rise(taper.tailMm, 1 - u) })),
    ],
  };
}
