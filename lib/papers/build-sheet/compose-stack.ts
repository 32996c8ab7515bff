/**
 * The layer stack from the base up, in the order the layers go down on the bench: the engine's own list of layers, each with
 * the sizes that kit list and cut list have for it.
 */

import words from "#content/copy/papers.json";
import type { BuildCatalog } from "#engine/configuration";
import type { LayerExtent, SkiBuild } from "#engine/flex";
import {
  isBondedToCore,
  type LaidLayer,
  type LaidPart,
  laidLayers,
  type PartLine,
  type PartsList,
} from "#engine/parts";
import { fill } from "#engine/units";
import { mm, plainNumber } from "#papers/parts/format";
import type { StackLayer } from "./printed";

const w = words.buildSheet.stack;

interface StackFacts {
  readonly build: SkiBuild;
  readonly catalog: BuildCatalog;
  readonly parts: PartsList;
  readonly hasEndPatches: boolean;
}

export function composeStack(facts: StackFacts): readonly StackLayer[] {
  const layers = laidLayers(facts.build, facts.hasEndPatches).filter((layer) => !isBondedToCore(layer));
  return facts.parts.layUp === "words"
    ? layers.filter(({ role }) => role !== "end-patches").map((layer) => inWords(layer, facts))
    : layers.map((layer) => bySize(layer, facts));
}

/** Where the layer lies and the size it is cut to, as the parts list has it. */
function bySize(layer: LaidLayer, facts: StackFacts): StackLayer {
  const pieces = facts.parts.lines.filter((line) => line.layers?.includes(layer.id) && isPiece(line));
  const told = inWords(layer, facts);
  // What is let into a base or joins its steel is told by its number alone.
  const sized = layer.role === "end-patches" ? pieces : pieces.filter(isSized);
  const numbers = [...pieces, ...(layer.role === "core" ? bondedTo(facts) : [])].map(({ line }) => line);
  return {
    ...told,
    extent:
      layer.role === "core"
        ? told.extent
        : [...new Set(sized.map(({ cut, pieceCut }) => pieceCut ?? cut)), ...placeOf(layer, facts)].join("; "),
    lines: [...new Set(numbers)].sort((a, b) => a - b),
    isOption: told.isOption || (layer.role !== "core" && pieces.some(({ fromOption }) => fromOption !== undefined)),
  };
}

const isPiece = ({ unit }: PartLine): boolean => unit === "piece" || unit === "set";

function isSized(line: PartLine): boolean {
  return line.lengthMm !== undefined || line.areaMm2 !== undefined;
}

/** Sidewalls and spacers come with the core. */
function bondedTo({ build, parts, hasEndPatches }: StackFacts): readonly PartLine[] {
  const ids = laidLayers(build, hasEndPatches)
    .filter(isBondedToCore)
    .map(({ id }) => id);
  return parts.lines.filter((line) => isSized(line) && line.layers?.some((id) => ids.includes(id)));
}

/** What the cut size does not say: how bands lie. */
function placeOf(layer: LaidLayer, { build }: StackFacts): readonly string[] {
  if (!("face" in layer)) return [];
  const { kind } = layer.layer.extent;
  if (kind !== "bands" && kind !== "span") return [];
  return [extentText(layer.layer.extent, build)];
}

function inWords(layer: LaidLayer, { build, catalog }: StackFacts): StackLayer {
  const plain = { fibresDeg: [], lies: "whole", isOption: false, lines: [] } as const;
  if (layer.role === "base") {
    return {
      ...plain,
      name: w.base,
      detail: fill(w.baseDetail, { material: layer.layer.material.label }),
      role: "base",
      thicknessMm: layer.layer.thicknessMm,
      extent: w.insideTheEdges,
    };
  }
  if (!("face" in layer)) return { ...plain, ...partInWords(layer.role, build, catalog) };
  const { role, material, thicknessMm, extent, fromOption } = layer.layer;
  return {
    ...plain,
    name: NAMES[role],
    detail: material.label + (role === "topsheet" ? w.topsheetDetail : ""),
    role,
    thicknessMm,
    fibresDeg: material.fibresDeg ?? [],
    extent: extentText(extent, build),
    lies: role === "mat" ? "under-binding" : liesAs(extent, build),
    isOption: fromOption !== undefined,
  };
}

function liesAs(extent: LayerExtent, { shape }: SkiBuild): StackLayer["lies"] {
  if (extent.kind === "span")
    return { fromShare: extent.fromMm / shape.lengthMm, toShare: extent.toMm / shape.lengthMm };
  return extent.kind === "bands" ? "bands" : "whole";
}

type Told = Pick<StackLayer, "name" | "detail" | "role" | "thicknessMm" | "extent"> & Partial<StackLayer>;

function partInWords(part: LaidPart, build: SkiBuild, catalog: BuildCatalog): Told {
  const { edge, plate, sidewall } = build;
  const { edgeRubber } = catalog.rules;
  const eachSide = fill(w.eachSide, { lengthMm: mm(edge.lengthMm) });
  switch (part) {
    case "edges":
      return {
        name: w.edges,
        detail: fill(w.edgeDetail, {
          material: edge.material.label,
          widthMm: plainNumber(edge.widthMm, 1),
          heightMm: plainNumber(edge.heightMm, 1),
        }),
        role: "edge",
        thicknessMm: edge.heightMm,
        extent: build.shape.edgeWrap === "full" ? w.allRound : eachSide,
      };
    case "edge-rubber":
      return {
        name: w.edgeRubber,
        detail: fill(w.edgeRubberDetail, { widthMm: plainNumber(edgeRubber.widthMm, 1) }),
        role: "rubber",
        thicknessMm: edgeRubber.thicknessMm,
        extent: eachSide,
      };
    case "end-patches":
      return { ...w.endPatches, role: "fabric", thicknessMm: null, extent: "", lies: "ends" };
    case "core":
    case "sidewalls":
    case "spacers":
      return {
        name: w.core,
        detail: fill(w.coreDetail, {
          sidewall: sidewall.material.label,
          widthMm: plainNumber(sidewall.widthMm, 1),
        }),
        role: "core",
        thicknessMm: null,
        fibresDeg: [0],
        extent: w.coreExtent,
      };
    case "plate-rubber":
      return {
        name: w.plateRubber,
        detail: w.plateRubberDetail,
        role: "rubber",
        thicknessMm: plate?.rubberMm ?? null,
        extent: plate
          ? fill(w.pocketExtent, { lengthMm: plainNumber(plate.lengthMm), widthMm: plainNumber(plate.widthMm) })
          : "",
        lies: "under-binding",
      };
    case "plate":
      return {
        name: w.bindingPlate,
        detail: plate?.material.label ?? "",
        role: "plate",
        thicknessMm: plate?.thicknessMm ?? null,
        extent: plate
          ? fill(w.plateExtent, {
              lengthMm: plainNumber(plate.lengthMm),
              widthMm: plainNumber(plate.widthMm),
              centreMm: mm(plate.centreMm),
            })
          : "",
        lies: "under-binding",
      };
  }
}

const NAMES = {
  fabric: w.fabric,
  metal: w.metalSheet,
  rubber: w.rubberFoil,
  topsheet: w.topsheet,
  mat: w.bindingZoneMat,
} as const;

function extentText(extent: LayerExtent, build: SkiBuild): string {
  if (extent.kind === "full") return w.fullExtent;
  if (extent.kind === "bands") {
    return fill(w.bandsExtent, { count: extent.count, bandWidthMm: plainNumber(extent.bandWidthMm) });
  }
  if (extent.kind === "span") {
    return fill(w.spanExtent, { fromMm: plainNumber(extent.fromMm), toMm: plainNumber(extent.toMm) });
  }
  const from = build.mountFromTipMm + extent.fromMountMm;
  const to = build.mountFromTipMm + extent.toMountMm;
  return fill(w.zoneExtent, {
    from: plainNumber(from),
    to: plainNumber(to),
    widthNote: extent.widthMm ? fill(w.zoneWidth, { widthMm: plainNumber(extent.widthMm) }) : "",
  });
}
