/** The layer stack from the base up, in the order the layers go down on the bench. */

import words from "#content/copy/papers.json";
import type { BuildCatalog } from "#engine/configuration";
import type { BuildLayer, LayerExtent, SkiBuild } from "#engine/flex";
import { fill } from "#engine/units";
import { mm, plainNumber } from "#papers/parts/format";
import type { StackLayer } from "./printed";

const w = words.buildSheet.stack;

export function composeStack(input: {
  readonly build: SkiBuild;
  readonly catalog: BuildCatalog;
}): readonly StackLayer[] {
  const { build, catalog } = input;
  const layers: StackLayer[] = [];
  for (const layer of build.layers) {
    if (layer.role === "base") layers.push(baseLayer(layer), edgeLayer(build), edgeRubberLayer(build, catalog));
    else if (layer.role === "core") layers.push(coreLayer(build), ...plateLayers(build));
    else layers.push(sheetLayer(layer, build));
  }
  return layers;
}

function baseLayer(layer: Extract<BuildLayer, { role: "base" }>): StackLayer {
  return {
    name: w.base,
    detail: fill(w.baseDetail, { material: layer.material.label }),
    role: "base",
    thicknessMm: layer.thicknessMm,
    fibresDeg: [],
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
    fibresDeg: [],
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
    fibresDeg: [],
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
    fibresDeg: [0],
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
      fibresDeg: [],
      extent: fill(w.pocketExtent, { lengthMm: plainNumber(plate.lengthMm), widthMm: plainNumber(plate.widthMm) }),
      lies: "under-binding",
      isOption: false,
    },
    {
      name: w.bindingPlate,
      detail: plate.material.label,
      role: "plate",
      thicknessMm: plate.thicknessMm,
      fibresDeg: [],
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

function sheetLayer(layer: SheetLayer, build: SkiBuild): StackLayer {
  return {
    name: NAMES[layer.role],
    detail: layer.material.label + (layer.role === "topsheet" ? w.topsheetDetail : ""),
    role: layer.role,
    thicknessMm: layer.thicknessMm,
    fibresDeg: layer.material.fibresDeg ?? [],
    extent: extentText(layer.extent, build),
    lies: layer.role === "mat" ? "under-binding" : layer.extent.kind === "bands" ? "bands" : "whole",
    isOption: layer.fromOption !== undefined,
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
