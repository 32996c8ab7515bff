import { readFile } from "node:fs/promises";
import { z } from "zod";
import {
  betterOffers,
  modelById,
  modelLength,
  type PlacedGraphic,
  pictureArrangements,
  picturePrint,
} from "#engine/configuration";
import { shapeAtLength } from "#engine/geometry";
import { accept, type Outcome, refuse } from "#engine/units";
import { placementSchema } from "#schemas";
import { decodeArtwork } from "#services/graphics/decode";
import { catalogue } from "../catalogue";
import { verb } from "../verb";

const pixels = z.number().int().min(1).max(100_000);
const ski = {
  model: z.string().min(1),
  lengthCm: z.number().positive().max(220),
  layout: z.enum(["same", "mirrored", "continuing", "alternate", "independent"]).default("same"),
  placement: placementSchema.exactOptional(),
  arrangement: z.enum(pictureArrangements).exactOptional(),
  quarterTurns: z.number().int().min(0).max(3).exactOptional(),
};
const input = z.union([
  z.strictObject({ file: z.string().min(1), ...ski }),
  z.strictObject({ widthPx: pixels, heightPx: pixels, ...ski }),
]);

interface Picture {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly type?: string;
  readonly sha256?: string;
}

async function pictureOf(file: string): Promise<Outcome<Picture>> {
  let bytes: Uint8Array;
  try {
    bytes = await readFile(file);
  } catch {
    return refuse({ code: "file-not-readable", path: "file", file });
  }
  const decoded = await decodeArtwork(bytes);
  if (!decoded.ok) return decoded;
  const { type, widthPx, heightPx, sha256 } = decoded.value;
  return accept({ type, widthPx, heightPx, sha256 });
}

export const artworkVerb = verb({
  name: "artwork",
  summary: "a picture (file or pixels) on a ski → print resolution, copies, verdict and what would print better",
  input,
  output: z.object({
    effectiveDpi: z.number(),
    verdict: z.enum(["ok", "warn", "block"]),
    crop: z.object({ widthPx: z.number(), heightPx: z.number() }),
    canvas: z.object({ lengthMm: z.number(), widthMm: z.number() }),
  }),
  run: async (request) => {
    const { build } = catalogue();
    const model = modelById(build, request.model);
    if (!model.ok) return model;
    const offered = modelLength(model.value, request.lengthCm);
    if (!offered.ok) return offered;
    const picture = "file" in request ? await pictureOf(request.file) : accept<Picture>(request);
    if (!picture.ok) return picture;
    const { print } = build.rules;
    const { widthPx, heightPx, type, sha256 } = picture.value;
    const field = { shape: shapeAtLength(model.value.shape, request.lengthCm), mountOffsetMm: 0 };
    const { layout, placement, arrangement, quarterTurns } = request;
    const graphic: PlacedGraphic = {
      layout,
      ...(placement ? { placement } : {}),
      ...(arrangement ? { arrangement } : {}),
      ...(quarterTurns === undefined ? {} : { quarterTurns }),
    };
    const { copies, fades: _, ...resolution } = picturePrint(picture.value, graphic, field, print);
    const ways = betterOffers(picture.value, graphic, field, print).map((offer) => ({
      arrangement: offer.arrangement,
      layout: offer.layout,
      effectiveDpi: offer.print.effectiveDpi,
    }));
    return accept({ widthPx, heightPx, type, sha256, ...resolution, copies, ways });
  },
});
