/**
 * A pair of skis from the geometry that is cut: the true outline in millimetres with what is on it and in it. One SVG per
 * drawing, in true proportion; labels are the page's own text, so that they never shrink with the drawing.
 *
 * Works in server and client components. Upright has the tip at the top and the left ski on the left; lying has the tip
 * on the left and, as seen from above by the same skier, the right ski above the left one.
 */
import { type ReactNode, useId } from "react";
import { cx } from "#app/_ui/cx.ts";
import type { ArtworkPlacement, GraphicLayout, HouseGraphic } from "#engine/configuration";
import { offsetOutline, type SkiShape } from "#engine/geometry";
import { HousePattern } from "./house-pattern";
import { closedPath, greatestHalfWidthMm, screenOutline, sidePath } from "./paths";
import { type ClearWindow, Windows, type WoodStrip } from "./ski-wood";

export type SkiSide = "left" | "right";

export interface ArtworkPicture {
  readonly url: string;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly placement: ArtworkPlacement;
}

export interface SkiGraphic {
  readonly layout: GraphicLayout;
  /** A continuing picture is split as if the skis lay this far apart at their widest. */
  readonly splitGapMm?: number;
  readonly house?: HouseGraphic | undefined;
  readonly artwork?: ArtworkPicture | undefined;
  readonly text?: { readonly text: string; readonly xMm: number; readonly capHeightMm: number } | undefined;
  readonly windows?: readonly ClearWindow[];
}

export interface SkiMarks {
  /** The mount line of this order, mm from the tip. */
  readonly mountMm?: number;
  /** What a binding hides, mm to either side of the mount line. */
  readonly bindingHalfMm?: number;
  /** Keep type and frames this far inside the edge. */
  readonly safeMm?: number;
}

export interface SkiPairProps {
  readonly shape: SkiShape;
  readonly orientation: "lying" | "upright";
  /** Topsheet or base. */
  readonly view?: "top" | "base";
  readonly sides?: readonly SkiSide[];
  readonly graphic?: SkiGraphic | undefined;
  readonly wood?: readonly WoodStrip[];
  readonly baseColours?: { readonly left: string; readonly right: string } | undefined;
  readonly marks?: SkiMarks;
  /** mm between the skis. */
  readonly gapMm?: number;
  readonly className?: string;
  /** Says what is drawn; leave out where a neighbouring text already does. */
  readonly description?: string;
  /** Show the whole picture faintly, so that what the outline cuts away can be seen while it is placed. */
  readonly ghost?: boolean;
  /** More marks in ski coordinates (X across, Y from the tip), drawn over the ski at its centre line. */
  readonly overlay?: (side: SkiSide) => ReactNode;
}

/** mm between two skis of a pair in a drawing; a continuing graphic is split by the shop's own gap (gapMm). */
export const drawnGapMm = 24;

/** How far a pair reaches across, mm, and where the centre line of each ski is. */
function placesAcross({ shape, sides = ["left", "right"], gapMm = drawnGapMm }: SkiPairProps) {
  const half = greatestHalfWidthMm(shape);
  const across = sides.length * 2 * half + (sides.length - 1) * gapMm;
  return { across, sides, centre: (index: number) => -across / 2 + half + index * (2 * half + gapMm) };
}

/** A drawing in true proportion; with `drawnAs` it shows the {@link KeptPair} of that id, drawn once for several. */
export function SkiPair(props: SkiPairProps & { readonly drawnAs?: string }) {
  const { shape, orientation, className, description, drawnAs } = props;
  const { across } = placesAcross(props);
  const viewBox =
    orientation === "upright"
      ? `${-across / 2} 0 ${across} ${shape.lengthMm}`
      : `0 ${-across / 2} ${shape.lengthMm} ${across}`;
  return (
    <svg
      viewBox={viewBox}
      className={cx("block overflow-visible", className)}
      role={description ? "img" : undefined}
      aria-label={description}
      aria-hidden={description ? undefined : true}
    >
      <g transform={orientation === "lying" ? "rotate(-90)" : undefined} data-ski-axes="">
        {drawnAs === undefined ? <Skis {...props} /> : <use href={`#${drawnAs}`} />}
      </g>
    </svg>
  );
}

/** A pair that is drawn here, out of sight, for every {@link SkiPair} of the page that names its id. */
export function KeptPair({ id, ...props }: Omit<SkiPairProps, "orientation"> & { readonly id: string }) {
  return (
    <svg className="absolute size-0" aria-hidden="true">
      <defs>
        <g id={id}>
          <Skis {...props} orientation="upright" />
        </g>
      </defs>
    </svg>
  );
}

function Skis(props: SkiPairProps) {
  const { graphic } = props;
  const { sides, centre } = placesAcross(props);
  const patternId = `${useId()}h`;
  // One pattern serves both skis, but for the palette that "alternate" turns round.
  const isShared = graphic?.house !== undefined && graphic.layout !== "alternate" && sides.length > 1;
  return (
    <>
      {props.ghost && graphic?.artwork ? (
        <g opacity={0.25}>
          {(graphic.layout === "continuing" ? [0] : sides.map((_, index) => centre(index))).map((x) => (
            <g key={x} transform={`translate(${x} 0)`}>
              <Picture artwork={graphic.artwork} />
            </g>
          ))}
        </g>
      ) : null}
      {sides.map((side, index) => (
        <g key={side} transform={`translate(${centre(index)} 0)`}>
          <Ski {...props} side={side} pattern={isShared ? { id: patternId, isDrawn: index > 0 } : undefined} />
        </g>
      ))}
    </>
  );
}

interface OfOneSki {
  readonly side: SkiSide;
  /** The pattern under this id, which another ski may have drawn already. */
  readonly pattern: { readonly id: string; readonly isDrawn: boolean } | undefined;
}

/** One ski about its own centre line. */
function Ski({ side, pattern, ...props }: SkiPairProps & OfOneSki) {
  const { shape, view = "top", graphic, wood = [], baseColours, marks = {}, overlay } = props;
  const id = useId();
  const outline = closedPath(screenOutline(shape));
  return (
    <>
      <clipPath id={`${id}o`}>
        <path d={outline} />
      </clipPath>
      <g clipPath={`url(#${id}o)`}>
        {view === "base" ? (
          <path d={outline} fill={baseColours?.[side] ?? "var(--pencil)"} />
        ) : (
          <>
            <path d={outline} fill="var(--sheet)" />
            {graphic ? <Graphic {...props} graphic={graphic} side={side} pattern={pattern} /> : null}
            {graphic?.windows?.length ? (
              <Windows id={`${id}w`} windows={graphic.windows} wood={wood} lengthMm={shape.lengthMm} />
            ) : null}
          </>
        )}
      </g>
      {view === "top" && graphic?.text ? <Lettering text={graphic.text} /> : null}
      <Edges shape={shape} view={view} />
      <path d={outline} fill="none" stroke="var(--ink)" strokeWidth={1.25} vectorEffect="non-scaling-stroke" />
      <Marks id={`${id}b`} shape={shape} marks={marks} view={view} />
      {overlay?.(side)}
    </>
  );
}

/** Ski art as the engine's pairArt has it: the graphic in the frame that its layout asks for: this ski's own, its mirror image, or its half of the pair's. */
function Graphic({ shape, graphic, side, pattern }: SkiPairProps & OfOneSki & { readonly graphic: SkiGraphic }) {
  const half = greatestHalfWidthMm(shape);
  const continuing = graphic.layout === "continuing";
  const gapMm = graphic.splitGapMm ?? drawnGapMm;
  const reachMm = continuing ? 2 * half + gapMm / 2 : half;
  const shift = continuing ? (side === "left" ? half + gapMm / 2 : -(half + gapMm / 2)) : 0;
  const mirror = graphic.layout === "mirrored" && side === "right";
  const { house, artwork } = graphic;
  return (
    <g transform={`translate(${shift} 0)${mirror ? " scale(-1 1)" : ""}`}>
      {house && pattern?.isDrawn ? <use href={`#${pattern.id}`} /> : null}
      {house && !pattern?.isDrawn ? (
        <g id={pattern?.id}>
          <HousePattern
            graphic={house}
            area={{ lengthMm: shape.lengthMm, reachMm }}
            swapColours={graphic.layout === "alternate" && side === "right"}
          />
        </g>
      ) : null}
      {artwork ? <Picture artwork={artwork} /> : null}
    </g>
  );
}

/**
 * At angle 0 the picture's width runs from tip to tail; a positive angle turns it from the tail towards the skier's right,
 * as in the engine's graphicResolution.
 */
function Picture({ artwork }: { readonly artwork: ArtworkPicture | undefined }) {
  if (!artwork) return null;
  const { centreXMm, centreYMm, mmPerPixel, angleDeg } = artwork.placement;
  const width = artwork.widthPx * mmPerPixel;
  const height = artwork.heightPx * mmPerPixel;
  return (
    <g transform={`translate(${centreYMm} ${centreXMm}) rotate(${90 - angleDeg})`}>
      <image
        href={artwork.url}
        x={-width / 2}
        y={-height / 2}
        width={width}
        height={height}
        preserveAspectRatio="none"
      />
    </g>
  );
}

/** Lettering runs from tip to tail about its middle and is never mirrored, whatever the layout does with the picture. */
function Lettering({ text }: { readonly text: NonNullable<SkiGraphic["text"]> }) {
  // A cap is about 0.7 em high in the text face.
  const size = text.capHeightMm / 0.698;
  return (
    <text
      transform={`translate(0 ${text.xMm}) rotate(90)`}
      fontSize={size}
      textAnchor="middle"
      dominantBaseline="central"
      fontFamily="var(--font-sans), sans-serif"
      fontWeight={600}
      fill="#fffdf9"
      stroke="#1b2023"
      strokeWidth={size * 0.12}
      paintOrder="stroke"
    >
      {text.text}
    </text>
  );
}

function Edges({ shape, view }: { readonly shape: SkiShape; readonly view: "top" | "base" }) {
  const full = shape.edgeWrap === "full";
  const from = full ? 2 : Math.max(0, shape.tipLengthMm - 30);
  const to = full ? shape.lengthMm - 2 : Math.min(shape.lengthMm, shape.lengthMm - shape.tailLengthMm + 30);
  const width = view === "base" ? 4 : 2;
  return (
    <>
      {([1, -1] as const).map((side) => (
        <path
          key={side}
          d={sidePath(shape, from, to, side, width / 2)}
          fill="none"
          stroke="var(--steel)"
          strokeWidth={width}
        />
      ))}
    </>
  );
}

function Marks({
  id,
  shape,
  marks,
  view,
}: {
  readonly id: string;
  readonly shape: SkiShape;
  readonly marks: SkiMarks;
  readonly view: "top" | "base";
}) {
  const { mountMm, bindingHalfMm, safeMm } = marks;
  const half = greatestHalfWidthMm(shape);
  const waist = shape.waistWidthMm / 2;
  return (
    <>
      {view === "top" && safeMm ? (
        <path
          d={closedPath(offsetOutline(screenOutline(shape), -safeMm))}
          fill="none"
          stroke="var(--ink)"
          strokeOpacity={0.7}
          strokeDasharray="3 3"
          strokeWidth={0.75}
          vectorEffect="non-scaling-stroke"
        />
      ) : null}
      {view === "top" && mountMm !== undefined && bindingHalfMm ? (
        <>
          <pattern id={id} width={7} height={7} patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
            <rect width={7} height={7} fill="var(--sheet)" fillOpacity={0.28} />
            <path d="M0 0V7" stroke="var(--ink)" strokeOpacity={0.55} strokeWidth={1.2} />
          </pattern>
          <rect
            x={-waist}
            y={mountMm - bindingHalfMm}
            width={2 * waist}
            height={2 * bindingHalfMm}
            fill={`url(#${id})`}
          />
        </>
      ) : null}
      {mountMm === undefined ? null : (
        <path
          d={`M${-half - 6} ${mountMm}H${half + 6}`}
          stroke="var(--larch)"
          strokeWidth={1.5}
          vectorEffect="non-scaling-stroke"
        />
      )}
    </>
  );
}
