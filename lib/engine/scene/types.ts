/**
 * A drawing of a pair as plain data. Two thin renderers (a page's SVG and a paper's) turn the same marks into ink, so that
 * screen, proof and quote can show nothing different.
 *
 * Axes of a ski seen from above: X to the skier's right of the centre line, Y from the tip, mm. Later marks lie on earlier ones.
 */

/** A colour of the ski itself, or one of the page's own that follows its theme. */
export type Paint = `#${string}` | "sheet" | "ink" | "pencil" | "larch" | "steel";

export interface GradientStop {
  /** 0 at `from`, 1 at `to`. */
  readonly at: number;
  readonly paint: Paint;
  readonly opacity: number;
}

export interface XY {
  readonly x: number;
  readonly y: number;
}

/** A closed shape in one colour. */
export interface FillMark {
  readonly kind: "fill";
  /** SVG path data, mm. */
  readonly d: string;
  readonly paint: Paint;
  readonly opacity?: number;
  /** Holes are where two outlines overlap. */
  readonly evenOdd?: boolean;
}

/** A stroke. A hairline keeps its width at every scale; any other is `widthMm` of the ski. */
export interface LineMark {
  readonly kind: "line";
  readonly d: string;
  readonly paint: Paint;
  readonly widthMm: number | "hairline";
  readonly opacity?: number;
  readonly dash?: "safe-line";
}

/** Light: a shape filled along a straight line from one stop to the next. */
export interface ShadeMark {
  readonly kind: "shade";
  readonly d: string;
  readonly from: XY;
  readonly to: XY;
  readonly stops: readonly GradientStop[];
}

/** A skier's picture: `widthMm` × `heightMm` about its middle, turned clockwise on the drawing by `turnDeg`. */
export interface PictureMark {
  readonly kind: "picture";
  readonly artworkId: string;
  readonly centre: XY;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly turnDeg: number;
  /** Only this of it, as shares of its width and height, reflected about the part's middle along one of them. */
  readonly part?: { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
  readonly reflected?: "width" | "height";
}

/** Letters along the ski, read from tip to tail, about their middle. */
export interface LettersMark {
  readonly kind: "letters";
  readonly text: string;
  readonly at: XY;
  readonly capHeightMm: number;
  readonly paint: Paint;
  /** A dark edge around each letter that keeps it readable on any picture. */
  readonly edge?: Paint;
  /** How far they run; absent = as the face has them. */
  readonly runMm?: number;
}

/** Marks in a place of their own: moved, mirrored about their centre line, cut to an outline. */
export interface GroupMark {
  readonly kind: "group";
  readonly shift?: XY;
  readonly isMirrored?: boolean;
  /** Only what lies inside is seen; in the group's own axes. */
  readonly clip?: string;
  readonly marks: readonly Mark[];
}

export type Mark = FillMark | LineMark | ShadeMark | PictureMark | LettersMark | GroupMark;

/** What a drawing covers, mm. */
export interface SceneBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface Scene {
  readonly box: SceneBox;
  readonly marks: readonly Mark[];
}

export type SkiSide = "left" | "right";
