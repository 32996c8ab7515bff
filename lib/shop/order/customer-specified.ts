/**
 * What makes a pair the customer's own rather than picked from the shop's options: it decides which withdrawal notice
 * fits (the law is narrower than the trade thinks, so only real specifications count).
 */
import type { PairSpec } from "#engine/configuration";

export function customerSpecified(spec: PairSpec): readonly string[] {
  const { graphic, base, mount } = spec;
  return [
    ...(graphic.kind === "own" ? ["own graphic"] : []),
    ...(graphic.text === undefined ? [] : [`lettering “${graphic.text.text}”`]),
    ...(graphic.windows.length > 0 ? ["windows where you placed them"] : []),
    ...(base.inlay === "none" ? [] : [`base inlay${base.inlayText === undefined ? "" : ` “${base.inlayText}”`}`]),
    ...(mount.offsetMm === 0 ? [] : [`mount line moved by ${mount.offsetMm} mm`]),
    `stiffness made for your measures (flex ratio ${spec.flexRatio.toFixed(2)})`,
  ];
}
