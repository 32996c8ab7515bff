/** What of an uploaded picture stops the print, and what is only worth a look. */
import { graphicResolution, type PairSpec, printCanvas, type ResolutionWay, type SpecWay } from "#engine/configuration";
import type { SkiShape } from "#engine/geometry";
import type { Refusal } from "#engine/units";
import type { Conflict, EngineCatalog } from "./types";

export interface ArtworkFindings {
  readonly warnings: readonly Conflict[];
  readonly blocks: readonly Refusal[];
}

/** Findings on the graphic of a spec; none for a house graphic. */
export function artworkFindings(
  { graphic }: PairSpec,
  shape: SkiShape,
  isRightsConfirmed: boolean,
  { build }: EngineCatalog,
): ArtworkFindings {
  if (graphic.kind === "house") return { warnings: [], blocks: [] };
  const { artwork, placement, layout } = graphic;
  if (!artwork) return { warnings: [], blocks: [{ code: "artwork-missing", path: "graphic.artwork" }] };
  const { print } = build.rules;
  const canvas = printCanvas(layout, shape, print);
  const { effectiveDpi, verdict, crop, ways } = graphicResolution(artwork, canvas, print, placement);
  const finding: Conflict = {
    code: verdict === "block" ? "artwork-too-coarse" : "artwork-coarse",
    path: "graphic.artwork",
    effectiveDpi,
    goodDpi: print.goodDpi,
    leastDpi: print.leastDpi,
    crop,
    canvas,
    ways: ways.map(
      (way): SpecWay => ({
        code: way.code,
        label: wayLabel(way),
        choices: way.code === "motif" ? { graphic: { ...graphic, placement: way.placement } } : {},
      }),
    ),
  };
  const rights: Refusal[] = isRightsConfirmed ? [] : [{ code: "rights-not-confirmed", path: "graphic.artwork" }];
  return {
    warnings: verdict === "ok" ? [] : [finding],
    blocks: verdict === "block" ? [...rights, finding] : rights,
  };
}

function wayLabel(way: ResolutionWay): string {
  switch (way.code) {
    case "tile":
      return "Repeat the picture as a pattern";
    case "motif":
      return `Place it sharp as a motif of ${Math.round(way.widthMm)} × ${Math.round(way.heightMm)} mm`;
    case "designer":
      return "Ask the designer";
  }
}
