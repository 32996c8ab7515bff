"use client";
/** A piece of the left ski at about its true size on a screen, from the whole picture: what the print is close up. */
import { useState } from "react";
import { SkiPair } from "#app/_visuals/ski-drawing.tsx";
import type { PairLook } from "#engine/scene";
import { fill } from "../words";
import type { SheetWords } from "./words";

const lengthMm = 110;

interface Props {
  readonly look: PairLook;
  readonly pictureBase: string;
  readonly words: SheetWords;
}

/** The whole picture is fetched when somebody asks for it. */
export function TrueSize(props: Props) {
  const [isOpen, setOpen] = useState(false);
  return (
    <details id="true-size" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary className="min-h-11 cursor-pointer py-2 font-medium">{props.words.graphic.crop}</summary>
      {isOpen ? <Piece {...props} /> : null}
    </details>
  );
}

function Piece({ look, pictureBase, words }: Props) {
  const { shape, graphic } = look;
  const half = shape.shoulderWidthMm / 2;
  // About the middle of the picture's first piece, or behind the tip where it lies all along.
  const [first] = graphic.artwork?.copies ?? [];
  const isPiece = first !== undefined && first.placement.centreXMm < look.mountMm - look.bindingHalfMm;
  const fromMm = isPiece ? Math.max(0, first.placement.centreXMm - lengthMm / 2) : shape.tipLengthMm;
  return (
    <figure>
      <figcaption className="mb-1 text-sm text-pencil">
        {fill(words.graphic.cropWhere, { length: lengthMm, from: Math.round(fromMm) })}
      </figcaption>
      {/* A ski is wider than a phone: it keeps its size and is moved under the frame. */}
      <section
        aria-label={words.graphic.crop}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: the frame is scrolled with the arrow keys
        tabIndex={0}
        className="max-w-full overflow-x-auto overflow-y-hidden border border-rule"
        style={{ width: `${2 * half}mm` }}
      >
        <div className="relative overflow-hidden" style={{ width: `${2 * half}mm`, height: `${lengthMm}mm` }}>
          <div className="absolute left-0 w-full" style={{ top: `-${fromMm}mm`, height: `${shape.lengthMm}mm` }}>
            <SkiPair
              look={look}
              pictureBase={pictureBase}
              pictureSize="full"
              orientation="upright"
              sides={["left"]}
              className="w-full"
            />
          </div>
        </div>
      </section>
    </figure>
  );
}
