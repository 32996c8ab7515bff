/** Puts a proof into words and drawings. */
import words from "#content/copy/papers.json";
import { type BuildCatalog, type PairSpec, picturePrint } from "#engine/configuration";
import { measure, type SkiShape, shapeAtLength } from "#engine/geometry";
import type { PairLook } from "#engine/scene";
import { fill, type IsoDate } from "#engine/units";
import { composeDrawing } from "#papers/parts/compose-drawing";
import type { DrawingData, LocalDateTime, PrintStamp, ShopFacts, SkiPictures } from "#papers/parts/facts";
import { layoutText, lookOf, modelOf, pairTitle } from "#papers/parts/spec-rows";
import type { ProofFacts, ProofStanding } from "./facts";

const w = words.proof;

/** How a proof stands: laid out and not sent, sent and waited for, or answered. */
export type ProofAnswer =
  | { readonly state: "draft" }
  /** `ifLate` says what an answer after that day does to the date. */
  | { readonly state: "issued"; readonly answerBy: IsoDate | null; readonly ifLate: string }
  /** `by` is null on a copy for somebody who is not told the skier's full name. */
  | { readonly state: "approved"; readonly at: LocalDateTime; readonly by: string | null }
  | { readonly state: "changes-asked"; readonly at: LocalDateTime; readonly note: string };

export interface ProofData {
  readonly shop: ShopFacts;
  /** `revision` is the proof's. */
  readonly stamp: PrintStamp;
  readonly serial: string;
  readonly leftSerial: string;
  readonly rightSerial: string;
  readonly url: string;
  readonly title: string;
  readonly layout: string;
  readonly drawing: DrawingData;
  readonly look: PairLook;
  readonly safeMm: number;
  readonly bleedSideMm: number;
  readonly pictures: SkiPictures;
  readonly text: { readonly transcript: string; readonly xMm: number; readonly capHeightMm: number } | null;
  readonly resolution: string;
  readonly colourProfile: string;
  readonly mirrored: string;
  /** Null for a house graphic, which has no file. */
  readonly sourceHash: string | null;
  /** What the desk says with it. */
  readonly note: string | null;
  readonly answer: ProofAnswer;
}

/** @throws RangeError when the spec names a model the catalogue does not have */
export function composeProof(facts: ProofFacts): ProofData {
  const { spec, catalog } = facts;
  const { print, edge } = catalog.rules;
  const { text, artwork } = spec.graphic;
  const shape = shapeAtLength(modelOf(spec, catalog).shape, spec.lengthCm);
  return {
    shop: facts.shop,
    stamp: facts.stamp,
    serial: facts.serial,
    leftSerial: facts.leftSerial,
    rightSerial: facts.rightSerial,
    url: facts.url,
    title: pairTitle(spec, catalog),
    layout: layoutText(spec),
    drawing: composeDrawing({
      shape,
      measures: measure(shape, { edge }),
      spec,
      rules: catalog.rules,
    }),
    look: lookOf(spec, catalog),
    safeMm: print.safeMm,
    bleedSideMm: print.bleedMm,
    pictures: facts.pictures,
    text: text ? { transcript: text.text, xMm: text.xMm, capHeightMm: text.capHeightMm } : null,
    resolution: resolutionText(spec, shape, catalog),
    colourProfile: w.colours,
    mirrored: w.faces[facts.printFace],
    sourceHash: artwork?.sha256 ?? null,
    note: facts.note,
    answer: answerOf(facts.standing),
  };
}

function answerOf(standing: ProofStanding): ProofAnswer {
  if (standing.state !== "issued") return standing;
  return { state: "issued", answerBy: standing.answerBy, ifLate: w.ifLate[standing.order] };
}

function resolutionText({ graphic, mount }: PairSpec, shape: SkiShape, { rules }: BuildCatalog): string {
  const { artwork, ground } = graphic;
  if (artwork === undefined) return w.resolution.house;
  const field = { shape, mountOffsetMm: mount.offsetMm };
  const { effectiveDpi, verdict, coversCanvas } = picturePrint(artwork, graphic, field, rules.print);
  const sharpness = fill(w.resolution[verdict], { dpi: Math.floor(effectiveDpi + wholeDot) });
  if (coversCanvas) return sharpness;
  return `${sharpness}; ${ground === undefined ? w.resolution.bare : fill(w.resolution.ground, { ground })}`;
}

/** What a division leaves short of a whole dot is the whole dot. */
const wholeDot = 1e-6;
