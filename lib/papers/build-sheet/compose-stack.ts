/** The layer stack from the base up, in the order the layers go down on the bench. */

import words from "#content/copy/papers.json";
import type { BuildCatalog, PairSpec } from "#engine/configuration";
import type { BuildLayer, LayerExtent, LayerMaterial, SkiBuild } from "#engine/flex";
import { fill } from "#engine/units";
import { mm, plainNumber } from "#papers/parts/format";
import type { FibreDirection, StackLayer } from "./printed";

const w = words.buildSheet.stack;

export function composeStack(input: {
  readonly build: SkiBuild;
  readonly spec: PairSpec;
  readonly catalog: BuildCatalog;
}): readonly StackLayer[] {
  const { build, spec, catalog } = input;
  const layers: StackLayer[] = [];
  for (const layer of build.layers) {
    if (layer.role === "base") layers.push(baseLayer(layer), edgeLayer(build), edgeRubberLayer(build, catalog));
    else if (layer.role === "core") layers.push(coreLayer(build), ...plateLayers(build));
    else layers.push(sheetLayer(layer, spec, build));
  }
  return layers;
}

function baseLayer(layer: Extract<BuildLayer, { role: "base" }>): StackLayer {
  return {
    name: w.base,
    detail: fill(w.baseDetail, { material: layer.material.label }),
    role: "base",
    thicknessMm: layer.thicknessMm,
    directions: "none",
    extent: w.insideTheEdges,
    lies: "whole",
    isOption: false,
  };
}

function edgeLayer(build: SkiBuild): StackLayer {
  const { edge } = build;
  return {
    name: w.edges,
    detail: fill(w.edgeDetail, {
      material: edge.material.label,
      widthMm: plainNumber(edge.widthMm, 1),
      heightMm: plainNumber(edge.heightMm, 1),
    }),
    role: "edge",
    thicknessMm: edge.heightMm,
    directions: "none",
    extent: build.shape.edgeWrap === "full" ? w.allRound : fill(w.eachSide, { lengthMm: mm(edge.lengthMm) }),
    lies: "whole",
    isOption: false,
  };
}

function edgeRubberLayer(build: SkiBuild, catalog: BuildCatalog): StackLayer {
  const { edgeRubber, edge } = { edgeRubber: catalog.rules.edgeRubber, edge: build.edge };
  return {
    name: w.edgeRubber,
    detail: fill(w.edgeRubberDetail, { widthMm: plainNumber(edgeRubber.widthMm, 1) }),
    role: "rubber",
    thicknessMm: edgeRubber.thicknessMm,
    directions: "none",
    extent: fill(w.eachSide, { lengthMm: mm(edge.lengthMm) }),
    lies: "whole",
    isOption: false,
  };
}

function coreLayer(build: SkiBuild): StackLayer {
  return {
    name: w.core,
    detail: fill(w.coreDetail, {
      sidewall: build.sidewall.material.label,
      widthMm: plainNumber(build.sidewall.widthMm, 1),
    }),
    role: "core",
    thicknessMm: null,
    directions: "0",
    extent: w.coreExtent,
    lies: "whole",
    isOption: false,
  };
}

function plateLayers(build: SkiBuild): readonly StackLayer[] {
  const { plate } = build;
  if (!plate) return [];
  return [
    {
      name: w.plateRubber,
      detail: w.plateRubberDetail,
      role: "rubber",
      thicknessMm: plate.rubberMm,
      directions: "none",
      extent: fill(w.pocketExtent, { lengthMm: plainNumber(plate.lengthMm), widthMm: plainNumber(plate.widthMm) }),
      lies: "under-binding",
      isOption: false,
    },
    {
      name: w.bindingPlate,
      detail: plate.material.label,
      role: "plate",
      thicknessMm: plate.thicknessMm,
      directions: "none",
      extent: fill(w.plateExtent, {
        lengthMm: plainNumber(plate.lengthMm),
        widthMm: plainNumber(plate.widthMm),
        centreMm: mm(plate.centreMm),
      }),
      lies: "under-binding",
      isOption: false,
    },
  ];
}

type SheetLayer = Exclude<BuildLayer, { role: "base" } | { role: "core" }>;

/** A layer's id begins with the reinforcement that brought it, if one did. */
function sheetLayer(layer: SheetLayer, spec: PairSpec, build: SkiBuild): StackLayer {
  const isCloth = layer.role === "fabric" || layer.role === "mat";
  return {
    name: NAMES[layer.role],
    detail: layer.material.label + (layer.role === "topsheet" ? w.topsheetDetail : ""),
    role: layer.role,
    thicknessMm: layer.thicknessMm,
    directions: isCloth ? fibreDirection(layer.material) : "none",
    extent: extentText(layer.extent, build),
    lies: layer.role === "mat" ? "under-binding" : layer.extent.kind === "bands" ? "bands" : "whole",
    isOption: spec.reinforcements.some((id) => layer.id.startsWith(`${id}-`)),
  };
}

const NAMES: Readonly<Record<SheetLayer["role"], string>> = {
  fabric: w.fabric,
  metal: w.metalSheet,
  rubber: w.rubberFoil,
  topsheet: w.topsheet,
  mat: w.bindingZoneMat,
};

function extentText(extent: LayerExtent, build: SkiBuild): string {
  if (extent.kind === "full") return w.fullExtent;
  if (extent.kind === "bands") {
    return fill(w.bandsExtent, { count: extent.count, bandWidthMm: plainNumber(extent.bandWidthMm) });
  }
  const from = build.mountFromTipMm + extent.fromMountMm;
  const to = build.mountFromTipMm + extent.toMountMm;
  return fill(w.zoneExtent, {
    from: plainNumber(from),
    to: plainNumber(to),
    widthNote: extent.widthMm ? fill(w.zoneWidth, { widthMm: plainNumber(extent.widthMm) }) : "",
  });
}

/** Above this share of Ex the shear modulus is that of a cloth that carries by its diagonals only. */
const DIAGONAL_ABOVE = 0.5;
/** A weave is nearly as stiff across as along. */
const WOVEN_ABOVE = 0.8;
/** Below this share of Ex the shear modulus is that of fibres along the ski only. */
const UNIDIRECTIONAL_BELOW = 0.12;

/**
 * Which way a homogenised cloth's fibres run, read from its stiffness: shear over axial modulus is about 0.04 for all-0°,
 * 0.3 for 0/±45 and above 1 for ±45 alone; a 0/90 weave has equal moduli both ways (classical lamination of one ply).
 */
export function fibreDirection(cloth: LayerMaterial): FibreDirection {
  const shear = cloth.gxyMpa / cloth.exMpa;
  if (shear > DIAGONAL_ABOVE) return "±45";
  if (cloth.eyMpa / cloth.exMpa > WOVEN_ABOVE) return "0 90";
  return shear < UNIDIRECTIONAL_BELOW ? "0" : "0 ±45";
}
