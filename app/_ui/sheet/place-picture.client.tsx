"use client";
/** The picture on the true outline: drag it, nudge it with the arrow keys, or type the numbers. */
import { type KeyboardEvent, type PointerEvent, useRef } from "react";
import { SkiPair } from "#app/_visuals/ski-drawing.tsx";
import {
  type ArtworkPlacement,
  fillingPlacement,
  type GraphicSpec,
  graphicResolution,
  type PrintRules,
  printCanvas,
} from "#engine/configuration";
import { drawnGapMm, type PairLook } from "#engine/scene";
import { textForPeople } from "#engine/units";
import { Button } from "../button";
import { Notice } from "../notice";
import { fill } from "../words";
import { DraftNumber } from "./draft-number.client";
import type { SheetWords } from "./words";

interface Props {
  readonly look: PairLook;
  readonly pictureBase: string;
  readonly spec: GraphicSpec;
  readonly rules: PrintRules;
  readonly words: SheetWords;
  /** "$75", a designer's hour. */
  readonly designerRate: string;
  readonly onPlace: (placement: ArtworkPlacement) => void;
}

const nudges: Readonly<Record<string, readonly [x: number, y: number]>> = {
  ArrowUp: [-5, 0],
  ArrowDown: [5, 0],
  ArrowLeft: [0, -5],
  ArrowRight: [0, 5],
};

const verdicts = { ok: "good", warn: "careful", block: "wrong" } as const;
const tones = { ok: "moss", warn: "amber", block: "iron" } as const;

export function PlacePicture(props: Props) {
  const { spec, look, rules, words, onPlace } = props;
  const { shape } = look;
  const { artwork, placement } = spec;
  if (!artwork || !placement) return null;
  const w = words.graphic;
  const set = (part: Partial<ArtworkPlacement>) => onPlace({ ...placement, ...part });
  const canvas = printCanvas(spec.layout, shape, rules);
  const resolution = graphicResolution(artwork, canvas, rules, placement);
  return (
    <section aria-label={w.place} className="grid grid-cols-1 gap-4">
      <p className="text-sm text-pencil">{w.placeHint}</p>
      <Board {...props} orientation="lying" className="max-md:hidden" />
      <Board {...props} orientation="upright" className="h-[34rem] md:hidden" />
      <Notice
        tone={tones[resolution.verdict]}
        title={fill(w.verdicts[verdicts[resolution.verdict]], {
          dpi: wholeDpi(resolution.effectiveDpi),
          rate: props.designerRate,
        })}
        live="polite"
      >
        {resolution.coversCanvas ? null : <p>{w.uncovered}</p>}
      </Notice>
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
      <Crop {...props} />
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

/** Never more than there is; what a division leaves short of a whole dot is the whole dot. */
const wholeDpi = (dpi: number) => Math.floor(dpi + 1e-6);

/** A piece of the left ski at about its true size on a screen: what the print will look like close up. */
function Crop({ look, pictureBase, words }: Props) {
  const { shape } = look;
  const half = shape.shoulderWidthMm / 2;
  const from = shape.tipLengthMm;
  const lengthMm = 110;
  return (
    <figure>
      <figcaption className="mb-1 text-sm text-pencil">
        {words.graphic.crop}: {lengthMm} mm of the left ski behind the tip, about true size
      </figcaption>
      <div
        className="max-w-full overflow-hidden border border-rule"
        style={{ width: `${2 * half}mm`, aspectRatio: `${2 * half} / ${lengthMm}` }}
      >
        <div
          className="relative"
          style={{
            width: "100%",
            height: `${(shape.lengthMm / lengthMm) * 100}%`,
            top: `-${(from / lengthMm) * 100}%`,
          }}
        >
          <SkiPair look={look} pictureBase={pictureBase} orientation="upright" sides={["left"]} className="w-full" />
        </div>
      </div>
    </figure>
  );
}
