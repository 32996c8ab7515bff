/**
 * The one list of a ski's layers, from the base up: what is laid, bonded to the core before, or set into it. The parts list
 * has a size for each of them, and the lay-up page shows them in this order.
 */
import type { BuildLayer, SkiBuild } from "#engine/flex";

export type SheetLayer = Extract<BuildLayer, { readonly id: string }>;

export type LaidLayer =
  | { readonly role: "base"; readonly id: string; readonly layer: Extract<BuildLayer, { readonly role: "base" }> }
  | { readonly role: SheetLayer["role"]; readonly id: string; readonly face: Face; readonly layer: SheetLayer }
  /** Parts that are no layer of the section's sum: steel and its rubber, what the core is made of, the plate in its pocket. */
  | { readonly role: LaidPart; readonly id: LaidPart };

/** Which side of the core. */
export type Face = "under" | "over";

export type LaidPart =
  | "edges"
  | "edge-rubber"
  | "core"
  | "sidewalls"
  | "spacers"
  | "plate-rubber"
  | "plate"
  | "end-patches";

/** Bonded to the core and milled with it, before the lay-up. */
export const isBondedToCore = ({ role }: LaidLayer): boolean => role === "sidewalls" || role === "spacers";

const part = (id: LaidPart): LaidLayer => ({ role: id, id });

/** @param hasEndPatches fibre patches under the topsheet at tip and tail */
export function laidLayers(build: SkiBuild, hasEndPatches: boolean): readonly LaidLayer[] {
  const coreAt = build.layers.findIndex(({ role }) => role === "core");
  return build.layers.flatMap((layer, index): readonly LaidLayer[] => {
    const face = index < coreAt ? "under" : "over";
    if (layer.role === "base") return [{ role: "base", id: "base", layer }, part("edges"), part("edge-rubber")];
    if (layer.role === "core") return [part("core"), part("sidewalls"), part("spacers"), ...plateOf(build)];
    const laid: LaidLayer = { role: layer.role, id: layer.id, face, layer };
    return layer.role === "topsheet" && hasEndPatches ? [part("end-patches"), laid] : [laid];
  });
}

function plateOf({ plate }: SkiBuild): readonly LaidLayer[] {
  return plate ? [part("plate-rubber"), part("plate")] : [];
}
