/** What of an uploaded picture stops the print, and what is only worth a look. */
import {
  betterOffers,
  type PairSpec,
  type PictureArrangement,
  picturePrint,
  type SpecWay,
} from "#engine/configuration";
import type { SkiShape } from "#engine/geometry";
import type { Refusal } from "#engine/units";
import type { Conflict, EngineCatalog } from "./types";

export interface ArtworkFindings {
  readonly warnings: readonly Conflict[];
  readonly blocks: readonly Refusal[];
}

/** Findings on the graphic of a spec; none for a house graphic. */
export function artworkFindings(
  { graphic, mount }: PairSpec,
  shape: SkiShape,
  isRightsConfirmed: boolean,
  { build }: EngineCatalog,
): ArtworkFindings {
  if (graphic.kind === "house") return { warnings: [], blocks: [] };
  const { artwork } = graphic;
  if (!artwork) return { warnings: [], blocks: [{ code: "artwork-missing", path: "graphic.artwork" }] };
  const { print } = build.rules;
  const field = { shape, mountOffsetMm: mount.offsetMm };
  const rights: Refusal[] = isRightsConfirmed ? [] : [{ code: "rights-not-confirmed", path: "graphic.artwork" }];
  const { effectiveDpi, verdict, crop, canvas } = picturePrint(artwork, graphic, field, print);
  if (verdict === "ok") return { warnings: [], blocks: rights };
  const ways = betterOffers(artwork, graphic, field, print).map(
    ({ arrangement, layout }): SpecWay => ({
      code: arrangement,
      label: wayLabels[arrangement],
      choices: { graphic: { ...graphic, arrangement, layout } },
    }),
  );
  const finding: Conflict = {
    code: verdict === "block" ? "artwork-too-coarse" : "artwork-coarse",
    path: "graphic.artwork",
    effectiveDpi,
    goodDpi: print.goodDpi,
    leastDpi: print.leastDpi,
    crop,
    canvas,
    ways: [...ways, askDesigner],
  };
  return { warnings: [finding], blocks: verdict === "block" ? [...rights, finding] : rights };
}

/** A person's word, and nothing that could be chosen. */
const askDesigner: SpecWay = { code: "designer", label: "Ask the designer", choices: {} };

const wayLabels: Readonly<Record<PictureArrangement, string>> = {
  fill: "Fill the skis with it",
  ends: "Lay it on shovel and tail, with a ground colour between",
  fade: "Lay it on the shovel and let it fade out",
  tiles: "Repeat it along the ski",
  motif: "Place it whole and sharp ahead of the boot",
  split: "Lay it across both skis, ahead of the boots",
};
