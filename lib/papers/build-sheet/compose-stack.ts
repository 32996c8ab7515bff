/** The layer stack from the base up, in the order the layers go down on the bench. */
import type { BuildCatalog, PairSpec } from "#engine/configuration";
import type { BuildLayer, LayerExtent, LayerMaterial, SkiBuild } from "#engine/flex";
import { mm, plainNumber } from "#papers/parts/format";
import type { FibreDirection, StackLayer } from "./facts";

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
    name: "Base",
    detail: `${layer.material.label}; flamed or sanded face up`,
    role: "base",
    thicknessMm: layer.thicknessMm,
    directions: "none",
    extent: "inside the edges",
    isOption: false,
  };
}

function edgeLayer(build: SkiBuild): StackLayer {
  const { edge } = build;
  return {
    name: "Edges",
    detail: `${edge.material.label}, ${plainNumber(edge.widthMm, 1)} × ${plainNumber(edge.heightMm, 1)} mm, anchors inward`,
    role: "edge",
    thicknessMm: edge.heightMm,
    directions: "none",
    extent: build.shape.edgeWrap === "full" ? "all round" : `each side, ${mm(edge.lengthMm)}`,
    isOption: false,
  };
}

function edgeRubberLayer(build: SkiBuild, catalog: BuildCatalog): StackLayer {
  const { edgeRubber, edge } = { edgeRubber: catalog.rules.edgeRubber, edge: build.edge };
  return {
    name: "Edge rubber",
    detail: `foil over the edge anchors, ${plainNumber(edgeRubber.widthMm, 1)} mm wide`,
    role: "rubber",
    thicknessMm: edgeRubber.thicknessMm,
    directions: "none",
    extent: `each side, ${mm(edge.lengthMm)}`,
    isOption: false,
  };
}

function coreLayer(build: SkiBuild): StackLayer {
  return {
    name: "Core",
    detail: `wood, sidewalls ${build.sidewall.material.label} ${plainNumber(build.sidewall.widthMm, 1)} mm, spacers; pocket face up, tip mark forward`,
    role: "core",
    thicknessMm: null,
    directions: "0",
    extent: "L core in L, R core in R",
    isOption: false,
  };
}

function plateLayers(build: SkiBuild): readonly StackLayer[] {
  const { plate } = build;
  if (!plate) return [];
  return [
    {
      name: "Plate rubber",
      detail: "in the pocket, under the plate",
      role: "rubber",
      thicknessMm: plate.rubberMm,
      directions: "none",
      extent: `${plainNumber(plate.lengthMm)} × ${plainNumber(plate.widthMm)} mm, in the pocket`,
      isOption: false,
    },
    {
      name: "Binding plate",
      detail: plate.material.label,
      role: "plate",
      thicknessMm: plate.thicknessMm,
      directions: "none",
      extent: `${plainNumber(plate.lengthMm)} × ${plainNumber(plate.widthMm)} mm, centred ${mm(plate.centreMm)} from tip`,
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
    detail: layer.material.label + (layer.role === "topsheet" ? "; bonding side towards the cloth below" : ""),
    role: layer.role,
    thicknessMm: layer.thicknessMm,
    directions: isCloth ? fibreDirection(layer.material) : "none",
    extent: extentText(layer.extent, build),
    isOption: spec.reinforcements.some((id) => layer.id.startsWith(`${id}-`)),
  };
}

const NAMES: Readonly<Record<SheetLayer["role"], string>> = {
  fabric: "Fabric",
  metal: "Metal sheet",
  rubber: "Rubber foil",
  topsheet: "Topsheet",
  mat: "Binding-zone mat",
};

function extentText(extent: LayerExtent, build: SkiBuild): string {
  if (extent.kind === "full") return "whole outline + flash";
  if (extent.kind === "bands") {
    return `${extent.count} bands of ${plainNumber(extent.bandWidthMm)} mm, symmetric`;
  }
  const from = build.mountFromTipMm + extent.fromMountMm;
  const to = build.mountFromTipMm + extent.toMountMm;
  return `${plainNumber(from)} to ${plainNumber(to)} mm from tip${extent.widthMm ? `, ${plainNumber(extent.widthMm)} mm wide` : ""}`;
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
