/** Base letters, and whether the binding plate still covers the binding when the mount line moves. */
import { shapeAtLength } from "#engine/geometry";
import { letterRow } from "./base-letters";
import type { ResolvedSpec } from "./build";
import type { BuildCatalog, BuildRules, PairSpec, SpecConflict, SpecWay } from "./types";

export function inlayConflicts(
  { base, lengthCm }: PairSpec,
  { model }: ResolvedSpec,
  { rules }: BuildCatalog,
): SpecConflict[] {
  if (base.inlay === "none") return [];
  const plain: SpecWay = {
    code: "no-inlay",
    label: "No letters in the base",
    choices: { base: { left: base.left, right: base.right, inlay: "none" } },
  };
  const conflicts: SpecConflict[] = [];
  if ((base.inlayText ?? "").trim() === "") {
    conflicts.push({ code: "inlay-needs-text", path: "base.inlayText", ways: [plain] });
  }
  if (base.inlay === "counterchange" && base.left === base.right) {
    conflicts.push({ code: "counterchange-needs-two-colours", path: "base.right", colour: base.left, ways: [plain] });
  }
  if (!rules.baseLetters) return conflicts;
  if (base.inlay === "complex") {
    return [{ code: "drawn-inlay-not-sold", path: "base.inlay", ways: [plain] }];
  }
  const shape = shapeAtLength(model.shape, lengthCm);
  const text = base.inlayText ?? "";
  if (text.trim() !== "" && letterRow(text, shape, rules.edge.widthMm, rules.baseLetters) === null) {
    const leastMm = rules.baseLetters.leastCapHeightMm;
    conflicts.push({ code: "base-letters-too-long", path: "base.inlayText", leastMm, ways: [plain] });
  }
  return conflicts;
}

/** The plate's pocket follows the mount line until it is milled, so only a binding too long for the plate clashes then. */
export function mountConflicts(spec: PairSpec, { rules }: BuildCatalog): SpecConflict[] {
  const { bindingTrackMm } = spec.mount;
  if (bindingTrackMm === undefined) return [];
  const marginMm = plateMarginMm(
    { bindingTrackMm, offsetMm: spec.mount.offsetMm, pocketOffsetMm: spec.mount.offsetMm },
    rules,
  );
  if (marginMm >= rules.plate.minMarginMm) return [];
  return [
    {
      code: "plate-margin",
      path: "mount.bindingTrackMm",
      bindingTrackMm,
      plateMm: rules.plate.lengthMm,
      marginMm,
      leastMm: rules.plate.minMarginMm,
      ways: [],
    },
  ];
}

/**
 * Plate left beyond the binding's track at its nearer end, mm.
 *
 * @param offsetMm       of the wanted mount line from the model's own, positive towards the tip
 * @param pocketOffsetMm of the line that the pocket is milled to
 */
export function plateMarginMm(
  where: { readonly bindingTrackMm: number; readonly offsetMm: number; readonly pocketOffsetMm: number },
  { plate }: BuildRules,
): number {
  return (plate.lengthMm - where.bindingTrackMm) / 2 - Math.abs(where.offsetMm - where.pocketOffsetMm);
}
