/**
 * What makes a pair the customer's own rather than picked from the shop's options: it decides which withdrawal notice
 * fits (the law is narrower than the trade thinks, so only real specifications count; a stiffness that the shop worked out
 * from its own classes is none).
 */

import names from "#content/copy/names.json";
import { ownCoreOf, type PairSpec } from "#engine/configuration";
import { fill } from "#engine/units";

const w = names.customerSpecified;

export function customerSpecified(spec: PairSpec): readonly string[] {
  const { graphic, base, mount } = spec;
  return [
    ...(graphic.kind === "own" ? [w.ownGraphic] : []),
    ...(graphic.text === undefined ? [] : [fill(w.lettering, { text: graphic.text.text })]),
    ...(graphic.windows.length > 0 ? [w.windows] : []),
    ...(base.inlay === "none"
      ? []
      : [base.inlayText === undefined ? w.inlay : fill(w.inlayText, { text: base.inlayText })]),
    ...(mount.offsetMm === 0 ? [] : [fill(w.mount, { offsetMm: mount.offsetMm })]),
    ...(ownCoreOf(spec.core) === null ? [] : [w.ownCore]),
  ];
}
