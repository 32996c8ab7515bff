"use client";
/** The picture on the true outline: drag it, nudge it with the arrow keys, or type the numbers. */
import { type KeyboardEvent, type PointerEvent, useRef } from "react";
import { SkiPair } from "#app/_visuals/ski-drawing.tsx";
import {
  type ArtworkPlacement,
  fillingPlacement,
  type GraphicSpec,
  type PrintRules,
  printCanvas,
} from "#engine/configuration";
import { drawnGapMm, type PairLook } from "#engine/scene";
import { textForPeople } from "#engine/units";
import { Button } from "../button";
import { DraftNumber } from "./draft-number.client";
import type { SheetWords } from "./words";

interface Props {
  readonly look: PairLook;
  readonly pictureBase: string;
  readonly spec: GraphicSpec;
  readonly rules: PrintRules;
  readonly words: SheetWords;
  readonly onPlace: (placement: ArtworkPlacement) => void;
}

const nudges: Readonly<Record<string, readonly [x: number, y: number]>> = {
  ArrowUp: [-5, 0],
  ArrowDown: [5, 0],
  ArrowLeft: [0, -5],
  ArrowRight: [0, 5],
};

export function PlacePicture(props: Props) {
  const { spec, look, rules, words, onPlace } = props;
  const { shape } = look;
  const { artwork, placement } = spec;
  if (!artwork || !placement) return null;
  const w = words.graphic;
  const set = (part: Partial<ArtworkPlacement>) => onPlace({ ...placement, ...part });
  const canvas = printCanvas(spec.layout, shape, rules);
  return (
    <section aria-label={w.place} className="grid grid-cols-1 gap-4">
      <p className="text-sm text-pencil">{w.placeHint}</p>
      <Board {...props} orientation="lying" className="max-md:hidden" />
      <Board {...props} orientation="upright" className="h-[34rem] md:hidden" />
      <div className="flex flex-wrap gap-3">
        <Button size="small" onClick={() => onPlace(fillingPlacement(artwork, canvas))}>
          {w.cover}
        </Button>
        <Button size="small" onClick={() => set({ angleDeg: ((placement.angleDeg + 270) % 360) - 180 })}>
          {w.quarter}
        </Button>
      </div>
      <div className="grid gap-4 sm:grid-cols-2">
        <DraftNumber
          name="centreX"
          label={w.centreX}
          unit="mm"
          decimals={1}
          value={placement.centreXMm}
          onChange={(value) => (value === undefined ? undefined : set({ centreXMm: value }))}
        />
        <DraftNumber
          name="centreY"
          label={w.centreY}
          unit="mm"
          decimals={1}
          value={placement.centreYMm}
          onChange={(value) => (value === undefined ? undefined : set({ centreYMm: value }))}
        />
        <DraftNumber
          name="pictureSize"
          label={w.size}
          unit="mm"
          decimals={1}
          value={placement.mmPerPixel * artwork.widthPx}
          onChange={(value) => (value && value > 0 ? set({ mmPerPixel: value / artwork.widthPx }) : undefined)}
        />
        <DraftNumber
          name="pictureAngle"
          label={w.angle}
          unit="°"
          decimals={1}
          value={placement.angleDeg}
          onChange={(value) => (value === undefined ? undefined : set({ angleDeg: value }))}
        />
      </div>
    </section>
  );
}

/** The drawing that can be dragged. Pointer positions are read in the ski's own axes, whichever way it lies. */
function Board({
  look,
  pictureBase,
  spec,
  rules,
  words,
  onPlace,
  orientation,
  className,
}: Props & {
  readonly orientation: "lying" | "upright";
  readonly className: string;
}) {
  const box = useRef<HTMLDivElement>(null);
  const grip = useRef<{ readonly x: number; readonly y: number } | null>(null);
  const placement = spec.placement;
  if (!placement) return null;

  const inSkiAxes = (event: PointerEvent) => {
    const axes = box.current?.querySelector<SVGGElement>("[data-ski-axes]");
    const matrix = axes?.getScreenCTM()?.inverse();
    if (!matrix) return null;
    const point = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix);
    return { x: point.y, y: point.x };
  };
  const grab = (event: PointerEvent<HTMLDivElement>) => {
    const at = inSkiAxes(event);
    if (!at) return;
    grip.current = { x: at.x - placement.centreXMm, y: at.y - placement.centreYMm };
    event.currentTarget.setPointerCapture(event.pointerId);
  };
  const drag = (event: PointerEvent) => {
    const at = grip.current && inSkiAxes(event);
    if (!at || !grip.current) return;
    onPlace({ ...placement, centreXMm: round(at.x - grip.current.x), centreYMm: round(at.y - grip.current.y) });
  };
  const release = () => {
    grip.current = null;
  };
  const key = (event: KeyboardEvent) => {
    const step = nudges[event.key];
    if (!step) return;
    event.preventDefault();
    const [along, across] = orientation === "lying" ? [step[1], -step[0]] : step;
    onPlace({ ...placement, centreXMm: placement.centreXMm + along, centreYMm: placement.centreYMm + across });
  };
  return (
    <div
      ref={box}
      role="application"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: the picture is moved with the arrow keys
      tabIndex={0}
      aria-label={`${words.graphic.place}. ${textForPeople(placement.centreXMm, 0)} mm from the tip, ${textForPeople(placement.centreYMm, 0)} mm to the right`}
      onPointerDown={grab}
      onPointerMove={drag}
      onPointerUp={release}
      onPointerCancel={release}
      onKeyDown={key}
      className={`cursor-move touch-none overflow-hidden border border-rule bg-sheet p-3 ${className}`}
    >
      <SkiPair
        look={look}
        pictureBase={pictureBase}
        orientation={orientation}
        gapMm={spec.layout === "continuing" ? rules.pairGapMm : drawnGapMm}
        placing={{ safeMm: rules.safeMm }}
        className={orientation === "lying" ? "w-full" : "mx-auto h-full"}
      />
    </div>
  );
}

const round = (value: number) => Math.round(value * 10) / 10;
