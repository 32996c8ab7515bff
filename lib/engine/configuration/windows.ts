/** Clear windows: what must be clear above the wood, and where one may lie. */

import { halfWidthAt, type SkiShape, shapeAtLength } from "#engine/geometry";
import { fabricById, sheetById } from "#engine/materials";
import type { ResolvedSpec } from "./build";
import { ownBlend, ownCoreConflicts, ownCoreId, ownCoreOf } from "./own-core";
import type { BuildCatalog, GraphicSpec, PairSpec, PrintRules, Reinforcement, SpecConflict, SpecWay } from "./types";

type Window = GraphicSpec["windows"][number];

export function windowConflicts(spec: PairSpec, resolved: ResolvedSpec, catalog: BuildCatalog): SpecConflict[] {
  if (spec.graphic.windows.length === 0) return [];
  const noWindow: SpecWay = {
    code: "no-window",
    label: "No window",
    choices: { graphic: { ...spec.graphic, windows: [] } },
  };
  const shape = shapeAtLength(resolved.model.shape, spec.lengthCm);
  return [
    ...opaqueReinforcements(resolved, catalog, noWindow),
    ...opaqueOwnLayers(resolved, catalog, noWindow),
    ...coreGrade(resolved, catalog, noWindow),
    ...spec.graphic.windows.flatMap((window, i) => placeConflicts(window, i, shape, catalog.rules.print, spec)),
  ];
}

/** A ply over the wood that hides it: glass alone on top, or no window. */
function opaqueReinforcements(resolved: ResolvedSpec, catalog: BuildCatalog, noWindow: SpecWay): SpecConflict[] {
  return resolved.reinforcements
    .filter((each) => hidesWood(each, resolved, catalog))
    .map((each) => ({
      code: "window-under-opaque-ply",
      path: "graphic.windows",
      reinforcement: each.id,
      layer: each.label,
      ways: [glassOnlyTop(each, resolved, catalog), noWindow],
    }));
}

function hidesWood({ placement }: Reinforcement, { model }: ResolvedSpec, { materials }: BuildCatalog): boolean {
  // On a model with metal of its own the ordered pair adds nothing; its own layer is told of separately.
  if (placement.kind === "metal-pair") return !model.hasMetal && sheetById(materials, placement.sheet).isOpaque;
  return placement.faces.includes("top") && fabricById(materials, placement.fabric).isOpaque;
}

/** The same cloth under the core only, where the catalogue has it so; else without it. */
function glassOnlyTop(opaque: Reinforcement, resolved: ResolvedSpec, catalog: BuildCatalog): SpecWay {
  const below = catalog.reinforcements.find((each) => isSameBelow(each, opaque));
  const others = resolved.reinforcements.filter((each) => each.id !== opaque.id).map((each) => each.id);
  return {
    code: "glass-only-top",
    label: below ? `Glass only on top: ${below.label}` : `Glass only on top: leave out ${opaque.label}`,
    choices: { reinforcements: below ? [...new Set([...others, below.id])] : others },
  };
}

function isSameBelow(candidate: Reinforcement, opaque: Reinforcement): boolean {
  const [a, b] = [candidate.placement, opaque.placement];
  if (a.kind === "metal-pair" || b.kind === "metal-pair") return false;
  return a.kind === b.kind && a.fabric === b.fabric && !a.faces.includes("top");
}

function opaqueOwnLayers({ model }: ResolvedSpec, { materials }: BuildCatalog, noWindow: SpecWay): SpecConflict[] {
  const coreAt = model.layup.findIndex((layer) => layer.role === "core");
  return model.layup.slice(coreAt + 1).flatMap((layer): SpecConflict[] => {
    // The foil between metal and glass goes with its metal; telling of it as well would say the same twice.
    if (layer.role === "core" || layer.role === "base" || layer.role === "rubber") return [];
    const material =
      layer.role === "fabric" ? fabricById(materials, layer.material) : sheetById(materials, layer.material);
    if (!material.isOpaque) return [];
    return [
      {
        code: "window-under-own-layer",
        path: "graphic.windows",
        model: model.id,
        layer: material.label,
        ways: [noWindow],
      },
    ];
  });
}

function coreGrade({ model, blend }: ResolvedSpec, catalog: BuildCatalog, noWindow: SpecWay): SpecConflict[] {
  if (blend.isWindowGrade) return [];
  const own = ownCoreOf(blend.id);
  const sameSelected = own === null ? [] : [ownBlend(ownCoreId({ ...own, isWindowGrade: true }), catalog)];
  const clean = [...sameSelected, ...catalog.blends]
    .filter((each) => each !== null)
    .filter((each) => each.isWindowGrade && each.forUses.includes(model.use))
    .filter((each) => ownCoreConflicts(each, catalog).length === 0)
    .map((each): SpecWay => ({ code: `window-core-${each.id}`, label: each.label, choices: { core: each.id } }));
  return [{ code: "window-needs-clean-core", path: "core", core: blend.id, ways: [...clean, noWindow] }];
}

/** A window has a least size and keeps clear of the outline (common practice, no source). */
function placeConflicts(
  window: Window,
  index: number,
  shape: SkiShape,
  print: PrintRules,
  { graphic }: PairSpec,
): SpecConflict[] {
  const path = `graphic.windows.${index}`;
  const without: SpecWay = {
    code: "no-window",
    label: "Without this window",
    choices: { graphic: { ...graphic, windows: graphic.windows.filter((_, i) => i !== index) } },
  };
  const lengthMm = window.toXMm - window.fromXMm;
  const widthMm = 2 * window.halfWidthMm;
  if (lengthMm < print.windowLeastMm || widthMm < print.windowLeastMm) {
    const size = { lengthMm, widthMm, leastMm: print.windowLeastMm };
    return [{ code: "window-too-small", path, ...size, ways: [without] }];
  }
  const roomMm = halfRoomMm(window, shape) - print.windowFromEdgeMm;
  if (window.halfWidthMm <= roomMm) return [];
  const narrower: SpecWay = {
    code: "narrower-window",
    label: `A window ${Math.floor(2 * roomMm)} mm wide`,
    choices: {
      graphic: {
        ...graphic,
        windows: graphic.windows.map((each, i) => (i === index ? { ...each, halfWidthMm: Math.floor(roomMm) } : each)),
      },
    },
  };
  const fits = 2 * Math.floor(roomMm) >= print.windowLeastMm;
  return [
    {
      code: "window-near-edge",
      path,
      widthMm,
      mostMm: Math.max(0, 2 * roomMm),
      clearMm: print.windowFromEdgeMm,
      ways: fits ? [narrower, without] : [without],
    },
  ];
}

/** Narrowest half width of the ski along the window; 0 where it leaves the ski. */
function halfRoomMm({ fromXMm, toXMm }: Window, shape: SkiShape): number {
  if (fromXMm < 0 || toXMm > shape.lengthMm) return 0;
  const waist = Math.min(Math.max(shape.waistFromTipMm, fromXMm), toXMm);
  return Math.min(...[fromXMm, waist, toXMm].map((x) => halfWidthAt(shape, x)));
}
