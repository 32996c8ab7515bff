/** The layer stack from the base up, in the order the layers go down on the bench. */
import type { BuildCatalog, Model, PairSpec, Reinforcement } from "../../engine/configuration";
import type { BuildLayer, LayerExtent, SkiBuild } from "../../engine/flex";
import type { Fabric } from "../../engine/materials";
import { mm, plainNumber } from "../format";
import type { FibreDirection, StackLayer } from "../types";

export function composeStack(input: {
  readonly build: SkiBuild;
  readonly spec: PairSpec;
  readonly model: Model;
  readonly catalog: BuildCatalog;
}): readonly StackLayer[] {
  const { build, spec, model, catalog } = input;
  const chosen = catalog.reinforcements.filter((r) => spec.reinforcements.includes(r.id));
  const own = countOwnLayers(model);
  const layers: StackLayer[] = [];
  for (const layer of build.layers) {
    if (layer.role === "base") layers.push(baseLayer(layer), edgeLayer(build), edgeRubberLayer(build, catalog));
    else if (layer.role === "core") layers.push(coreLayer(build), ...plateLayers(build));
    else layers.push(sheetLayer(layer, { catalog, chosen, own, build }));
  }
  return layers;
}

/** How many layers of each material the model brings by itself; what exceeds them was ordered. */
function countOwnLayers(model: Model): Map<string, number> {
  const own = new Map<string, number>();
  for (const layer of model.layup) {
    if (layer.role !== "core") own.set(layer.material, (own.get(layer.material) ?? 0) + 1);
  }
  return own;
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

function sheetLayer(
  layer: SheetLayer,
  context: {
    readonly catalog: BuildCatalog;
    readonly chosen: readonly Reinforcement[];
    readonly own: Map<string, number>;
    readonly build: SkiBuild;
  },
): StackLayer {
  const fabric = context.catalog.materials.fabrics.find((f) => f.id === layer.id);
  const left = context.own.get(layer.id) ?? 0;
  context.own.set(layer.id, left - 1);
  const option = context.chosen.find((r) => materialOf(r) === layer.id || r.id === layer.id);
  return {
    name: NAMES[layer.role],
    detail: layer.material.label + (layer.role === "topsheet" ? "; bonding face down" : ""),
    role: layer.role,
    thicknessMm: layer.thicknessMm,
    directions: fabric ? fibreDirection(fabric) : "none",
    extent: extentText(layer.extent, context.build),
    isOption: option !== undefined && left <= 0,
  };
}

const NAMES: Readonly<Record<SheetLayer["role"], string>> = {
  fabric: "Fabric",
  metal: "Metal sheet",
  rubber: "Rubber foil",
  topsheet: "Topsheet",
  mat: "Binding-zone mat",
};

function materialOf(reinforcement: Reinforcement): string {
  const { placement } = reinforcement;
  return placement.kind === "metal-pair" ? placement.sheet : placement.fabric;
}

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
export function fibreDirection(fabric: Fabric): FibreDirection {
  const shear = fabric.gxyMpa / fabric.exMpa;
  if (shear > DIAGONAL_ABOVE) return "±45";
  if (fabric.eyMpa / fabric.exMpa > WOVEN_ABOVE) return "0 90";
  return shear < UNIDIRECTIONAL_BELOW ? "0" : "0 ±45";
}
