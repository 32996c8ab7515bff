"use client";
/** The ways to lay the picture out, each drawn to scale with its resolution in words; the ground colour beside them. */
import { useId, useMemo } from "react";
import { SkiPair } from "#app/_visuals/ski-drawing.tsx";
import { type Artwork, type GraphicSpec, type PictureOffer, pictureOffers } from "#engine/configuration";
import { drawnGapMm, type PairLook, seenGraphic } from "#engine/scene";
import { Button } from "../button";
import { RadioGroup } from "../choice-group";
import { fill } from "../words";
import { type GraphicPartProps, optionPrice } from "./graphic-parts";
import { plainGround } from "./rim-colour.client";
import type { SheetWords } from "./words";

interface Props extends GraphicPartProps {
  readonly artwork: Artwork;
  readonly look: PairLook;
}

export function ArrangePicture({ artwork, look, catalog, words, pictures, spec, shape, set }: Props) {
  const w = words.graphic;
  const { graphic, mount } = spec;
  const { build } = catalog;
  const { print } = build.rules;
  const now = graphic.arrangement ?? "fill";
  const drawn = useMemo(
    () =>
      pictureOffers(artwork, graphic, { shape, mountOffsetMm: mount.offsetMm }, print).map((offer) => {
        const { arrangement, layout } = offer;
        const as: GraphicSpec = { ...graphic, arrangement, layout };
        return { offer, look: { ...look, graphic: seenGraphic({ graphic: as, mount }, shape, build) } };
      }),
    [artwork, graphic, mount, shape, print, build, look],
  );
  const take = (arrangement: string) => {
    const offer = drawn.find((each) => each.offer.arrangement === arrangement)?.offer;
    if (offer) set({ arrangement: offer.arrangement, layout: offer.layout });
  };
  return (
    <>
      <RadioGroup
        name="arrangement"
        label={w.arrangement}
        hint={w.arrangementHint}
        choices={drawn.map(({ offer, look: shown }) => ({
          value: offer.arrangement,
          label: w.arrangements[offer.arrangement].label,
          aside: sharpnessText(offer, words),
          detail: (
            <>
              {w.arrangements[offer.arrangement].detail}
              {offer.arrangement === "split" ? ` ${optionPrice(catalog, "graphic-own-pair")}.` : null}
              <SkiPair
                look={shown}
                pictureBase={pictures.pictureBase}
                orientation="lying"
                gapMm={offer.layout === "continuing" ? print.pairGapMm : drawnGapMm}
                className="mt-2 w-full"
              />
            </>
          ),
        }))}
        value={now}
        onChange={take}
      />
      <Ground words={words} value={graphic.ground} onChange={(ground) => set({ ground })} />
      {now === "fill" ? null : (
        <div className="flex max-w-measure flex-wrap items-center gap-4">
          <Button size="small" onClick={() => set({ quarterTurns: ((graphic.quarterTurns ?? 0) + 1) % 4 })}>
            {w.quarter}
          </Button>
          {now === "motif" || now === "tiles" ? null : (
            <label className="flex min-w-0 flex-1 flex-wrap items-center gap-x-3">
              {w.sideways}
              <input
                type="range"
                name="sideShift"
                min={-1}
                max={1}
                step={0.05}
                value={graphic.sideShift ?? 0}
                onChange={(event) => set({ sideShift: Number(event.target.value) })}
                className="h-11 min-w-32 flex-1 accent-larch"
              />
            </label>
          )}
        </div>
      )}
    </>
  );
}

/** Never more than there is; what a division leaves short of a whole dot is the whole dot. */
export const wholeDpi = (dpi: number) => Math.floor(dpi + 1e-6);

function sharpnessText({ print }: PictureOffer, words: SheetWords): string {
  return fill(words.graphic.sharpness[print.verdict], { dpi: wholeDpi(print.effectiveDpi) });
}

function Ground({
  words,
  value,
  onChange,
}: {
  readonly words: SheetWords;
  readonly value: string | undefined;
  readonly onChange: (ground: string) => void;
}) {
  const id = useId();
  return (
    <div className="grid max-w-measure justify-items-start gap-1">
      <label htmlFor={id} className="font-medium">
        {words.graphic.ground}
      </label>
      <p id={`${id}-hint`} className="text-sm text-pencil">
        {words.graphic.groundHint}
      </p>
      <input
        id={id}
        type="color"
        name="ground"
        aria-describedby={`${id}-hint`}
        value={value ?? plainGround}
        onChange={(event) => onChange(event.target.value.toLowerCase())}
        className="h-11 w-20 cursor-pointer rounded border border-control bg-sheet p-1"
      />
    </div>
  );
}
