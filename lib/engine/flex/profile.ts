/** A core's thickness programme as the mill and the maker read it: thickness anywhere, marks to check, a name. */
import { interpolate } from "#engine/math";
import type { ThicknessProfile } from "./types";

/** Thickness at x, mm: linear between the programme's own stations, level beyond them. @throws RangeError without stations */
export function thicknessAt({ stations }: ThicknessProfile, xMm: number): number {
  return interpolate(
    stations.map((station) => station.xMm),
    stations.map((station) => station.thicknessMm),
    xMm,
  );
}

export interface ProfileMark {
  readonly xMm: number;
  readonly thicknessMm: number;
}

/**
 * `count` places evenly from one end of the wood to the other, moved to the nearest multiple of `gridMm` that lies on the
 * wood: what a maker finds with a tape and measures with a caliper.
 *
 * @throws RangeError for fewer than two marks
 */
export function profileMarks(
  profile: ThicknessProfile,
  wood: { readonly fromMm: number; readonly toMm: number },
  count: number,
  gridMm: number,
): readonly ProfileMark[] {
  if (count < 2) throw new RangeError(`count: ${count} marks, at least 2 are needed`);
  const { fromMm, toMm } = wood;
  return Array.from({ length: count }, (_, i) => {
    const exact = fromMm + ((toMm - fromMm) * i) / (count - 1);
    const xMm = Math.min(toMm, Math.max(fromMm, Math.round(exact / gridMm) * gridMm));
    return { xMm, thicknessMm: thicknessAt(profile, xMm) };
  });
}

/**
 * Name of a thickness programme on a mould: two cores with the same name are milled alike. Six hexadecimal digits of FNV-1a
 * (32 bits, Fowler, Noll and Vo) over the stations in millimetres and hundredths of a millimetre: a name, not a secret.
 */
export function profileName(mould: string, { stations }: ThicknessProfile): string {
  const text = stations.map((s) => `${Math.round(s.xMm)}:${Math.round(s.thicknessMm * 100)}`).join(",");
  let hash = 0x811c9dc5;
  for (const character of text) hash = Math.imul(hash ^ character.charCodeAt(0), 0x01000193);
  return `${mould}-${(hash >>> 0).toString(16).toUpperCase().padStart(8, "0").slice(-6)}`;
}
