/** Drawing tools in points: dimension lines with arrows, hatching, labels, and one scale along the ski for everything. */
import { G, Line, Path, Rect, Text } from "@react-pdf/renderer";
import type { XY } from "./facts";
import { MONO, SANS } from "./fonts";
import { HAIRLINE, INK, PENCIL, PT_PER_MM, THIN, WHITE } from "./theme";

/** Drawing scales in use, largest first: a tape and a small sum get back to the ski. */
const SCALES = [5, 7.5, 8, 10, 12.5, 15, 20] as const;

export interface AxisScale {
  /** 7.5 stands for 1 : 7.5. */
  readonly denominator: number;
  /** Paper x of a place on the ski. */
  readonly x: (alongMm: number) => number;
  /** Paper length of a length on the ski. */
  readonly len: (lengthMm: number) => number;
}

/** The largest scale at which the ski fits between `leftPt` and `leftPt + widthPt`; the ski is centred there. */
export function axisScale(lengthMm: number, leftPt: number, widthPt: number): AxisScale {
  const fit = (lengthMm * PT_PER_MM) / widthPt;
  const denominator = SCALES.find((s) => s >= fit);
  if (denominator === undefined) throw new RangeError(`lengthMm: ${lengthMm} does not fit the paper at any scale`);
  const perMm = PT_PER_MM / denominator;
  const start = leftPt + (widthPt - lengthMm * perMm) / 2;
  return { denominator, x: (alongMm) => start + alongMm * perMm, len: (value) => value * perMm };
}

const fixed = (value: number) => Number(value.toFixed(2));

export function polyline(points: readonly XY[]): string {
  return points.map((p, i) => `${i === 0 ? "M" : "L"}${fixed(p.x)} ${fixed(p.y)}`).join("");
}

/** Closed outline from a half outline mirrored about the axis at `axisY`. */
export function mirroredOutline(half: readonly XY[], scale: AxisScale, axisY: number): string {
  const upper = half.map((p) => ({ x: scale.x(p.x), y: axisY - scale.len(p.y) }));
  const lower = half.map((p) => ({ x: scale.x(p.x), y: axisY + scale.len(p.y) })).reverse();
  return `${polyline([...upper, ...lower])}Z`;
}

const ARROW_LONG = 4.6;
const ARROW_HALF = 1.1;
/** Below this the arrows stand outside and point in. */
const ARROWS_OUTSIDE_BELOW = 14;

interface LabelProps {
  readonly x: number;
  readonly y: number;
  readonly text: string;
  readonly size?: number;
  readonly anchor?: "start" | "middle" | "end";
  readonly mono?: boolean;
  readonly bold?: boolean;
  readonly colour?: string;
  /** On white paper, over whatever was drawn before. */
  readonly backed?: boolean;
}

/** Advance of one monospaced character over the type size. */
const MONO_ADVANCE = 0.6;
/** The text face runs narrower on average. */
const SANS_SHARE = 0.88;

/** White paper under a text, so that no line runs through it. */
function Backing({
  x,
  y,
  text,
  size,
  anchor,
}: {
  readonly x: number;
  readonly y: number;
  readonly text: string;
  readonly size: number;
  readonly anchor: "start" | "middle" | "end";
}) {
  const width = text.length * size * MONO_ADVANCE + 2;
  const left = anchor === "middle" ? x - width / 2 : anchor === "end" ? x - width + 1 : x - 1;
  return <Rect x={left} y={y - size * 0.78} width={width} height={size * 0.98} fill={WHITE} />;
}

export function Label({ x, y, text, size = 7, anchor = "start", mono, bold, colour = INK, backed }: LabelProps) {
  const label = (
    <Text
      x={x}
      y={y}
      fill={colour}
      textAnchor={anchor}
      style={{ fontSize: size, fontFamily: mono ? MONO : SANS, fontWeight: bold ? 600 : 400 }}
    >
      {text}
    </Text>
  );
  if (!backed) return label;
  return (
    <G>
      <Backing x={x} y={y} text={text} size={mono ? size : size * SANS_SHARE} anchor={anchor} />
      {label}
    </G>
  );
}

function Arrow({ x, y, dx, dy }: { readonly x: number; readonly y: number; readonly dx: number; readonly dy: number }) {
  const bx = x - dx * ARROW_LONG;
  const by = y - dy * ARROW_LONG;
  const tip = `M${fixed(x)} ${fixed(y)}L${fixed(bx - dy * ARROW_HALF)} ${fixed(by + dx * ARROW_HALF)}`;
  return <Path d={`${tip}L${fixed(bx + dy * ARROW_HALF)} ${fixed(by - dx * ARROW_HALF)}Z`} fill={INK} />;
}

/** Horizontal dimension with its text in the middle above the line; witness lines run to `fromY` when given. */
export function HDim(props: {
  readonly x1: number;
  readonly x2: number;
  readonly y: number;
  readonly text: string;
  readonly fromY?: number;
  readonly size?: number;
  readonly bold?: boolean;
  /** Where the text stands: in the middle, or beyond an end of a short dimension. */
  readonly textAt?: "middle" | "after" | "before";
}) {
  const { x1, x2, y, text, fromY, size = 7, bold, textAt = "middle" } = props;
  const outside = Math.abs(x2 - x1) < ARROWS_OUTSIDE_BELOW;
  const textX =
    textAt === "middle" ? (x1 + x2) / 2 : textAt === "after" ? x2 + (outside ? 9 : 3) : x1 - (outside ? 9 : 3);
  const textY = textAt === "middle" ? y - 2 : y + size * 0.35;
  const anchor = textAt === "middle" ? "middle" : textAt === "after" ? "start" : "end";
  return (
    <G>
      {fromY === undefined ? null : (
        <G>
          <Witness x={x1} from={fromY} to={y} />
          <Witness x={x2} from={fromY} to={y} />
        </G>
      )}
      <Line
        x1={outside ? x1 - 8 : x1}
        x2={outside ? x2 + 8 : x2}
        y1={y}
        y2={y}
        stroke={PENCIL}
        strokeWidth={HAIRLINE}
      />
      <Arrow x={x1} y={y} dx={outside ? 1 : -1} dy={0} />
      <Arrow x={x2} y={y} dx={outside ? -1 : 1} dy={0} />
      <Backing x={textX} y={textY} text={text} size={size} anchor={anchor} />
      <Label x={textX} y={textY} text={text} size={size} anchor={anchor} mono {...(bold ? { bold } : {})} />
    </G>
  );
}

function Witness({ x, from, to }: { readonly x: number; readonly from: number; readonly to: number }) {
  const past = to > from ? 2 : -2;
  const gap = to > from ? 1.5 : -1.5;
  return <Line x1={x} x2={x} y1={from + gap} y2={to + past} stroke={PENCIL} strokeWidth={HAIRLINE} />;
}

/** Vertical dimension; the text stands beside the line, or below or above it. */
export function VDim(props: {
  readonly x: number;
  readonly y1: number;
  readonly y2: number;
  readonly text: string;
  readonly side?: "left" | "right";
  readonly size?: number;
  readonly bold?: boolean;
  /** Share of the way down at which the text stands. */
  readonly textAt?: number;
}) {
  const { x, y1, y2, text, side = "right", size = 7, bold, textAt = 0.5 } = props;
  const outside = Math.abs(y2 - y1) < ARROWS_OUTSIDE_BELOW;
  const textX = side === "right" ? x + 3 : x - 3;
  const textY = y1 + (y2 - y1) * textAt + size * 0.35;
  const anchor = side === "right" ? "start" : "end";
  return (
    <G>
      <Line
        x1={x}
        x2={x}
        y1={outside ? y1 - 8 : y1}
        y2={outside ? y2 + 8 : y2}
        stroke={PENCIL}
        strokeWidth={HAIRLINE}
      />
      <Arrow x={x} y={y1} dx={0} dy={outside ? 1 : -1} />
      <Arrow x={x} y={y2} dx={0} dy={outside ? -1 : 1} />
      <Backing x={textX} y={textY} text={text} size={size} anchor={anchor} />
      <Label x={textX} y={textY} text={text} size={size} anchor={anchor} mono {...(bold ? { bold } : {})} />
    </G>
  );
}

/** Slanted hatching of a rectangle, clipped by arithmetic so that every viewer draws the same. */
export function hatch(x: number, y: number, width: number, height: number, step: number, lean: 1 | -1 = 1): string {
  const parts: string[] = [];
  for (let s = step / 2; s < width + height; s += step) {
    // A 45° line starting s along the left-bottom boundary.
    const ax = Math.max(0, s - height);
    const ay = Math.min(height, s);
    const bx = Math.min(width, s);
    const by = Math.max(0, s - width);
    const mapX = (v: number) => fixed(lean === 1 ? x + v : x + width - v);
    parts.push(`M${mapX(ax)} ${fixed(y + ay)}L${mapX(bx)} ${fixed(y + by)}`);
  }
  return parts.join("");
}

/** The long-dash-dot line of an axis. */
export function CentreLine({ x1, x2, y }: { readonly x1: number; readonly x2: number; readonly y: number }) {
  return <Line x1={x1} x2={x2} y1={y} y2={y} stroke={PENCIL} strokeWidth={HAIRLINE} strokeDasharray="9 2 1.5 2" />;
}

/** The mount line: a heavy tick across with its name. */
export function MountMark({ x, y1, y2 }: { readonly x: number; readonly y1: number; readonly y2: number }) {
  return (
    <G>
      <Line x1={x} x2={x} y1={y1} y2={y2} stroke={INK} strokeWidth={THIN} strokeDasharray="4 1.5" />
      <Path
        d={`M${fixed(x - 2.6)} ${fixed(y1 - 4.5)}L${fixed(x + 2.6)} ${fixed(y1 - 4.5)}L${fixed(x)} ${fixed(y1)}Z`}
        fill={INK}
      />
    </G>
  );
}
