/**
 * A scene of the engine on paper: the same marks as on the page, in daylight's colours. The library wants every clip and every
 * gradient in one list at the root of a drawing, hands a group's clip down to what it moves (each mark says that it has none of
 * its own), strokes no text, and shows no picture inside a drawing: where one belongs its place stays empty.
 */
import { ClipPath, Defs, G, LinearGradient, Path, Stop, Svg } from "@react-pdf/renderer";
import type { ReactElement, ReactNode } from "react";
import {
  capHeightShare,
  daylightColour,
  type GroupMark,
  type LettersMark,
  type LineMark,
  type Mark,
  type Scene,
  type ShadeMark,
} from "#engine/scene";
import { Label } from "./drawing";
import { HAIRLINE } from "./theme";

/** Begins every name of a drawing, as the names of two drawings on one page are one list to the library. */
interface Pen {
  readonly id: string;
  /** mm of the ski that are a hairline at the drawing's scale. */
  readonly hairlineMm: number;
  readonly kept: ReactElement[];
}

export interface SceneOnPaperProps {
  readonly id: string;
  readonly scene: Scene;
  /** The drawing's own width; its height follows, see `scenePt`. */
  readonly widthPt: number;
  /** Upright has the tip at the top, lying on the left. */
  readonly turn: "upright" | "lying";
}

/** Size on paper. */
export function scenePt({ scene: { box }, widthPt, turn }: Omit<SceneOnPaperProps, "id">) {
  const [across, down] = turn === "lying" ? [box.height, box.width] : [box.width, box.height];
  return { widthPt, heightPt: (widthPt * down) / across, ptPerMm: widthPt / across };
}

/** A drawing in true proportion. */
export function SceneOnPaper(props: SceneOnPaperProps) {
  const { id, scene, turn } = props;
  const { x, y, width, height } = scene.box;
  const { widthPt, heightPt, ptPerMm } = scenePt(props);
  const { drawn, kept } = markElements(scene.marks, { id, hairlineMm: HAIRLINE / ptPerMm });
  const axes = turn === "lying" ? lyingAt(-y, x + width, 1) : matrix(1, 0, 0, 1, -x, -y);
  const viewBox = turn === "lying" ? `0 0 ${height} ${width}` : `0 0 ${width} ${height}`;
  return (
    <Svg width={widthPt} height={heightPt} viewBox={viewBox}>
      <Defs>{kept}</Defs>
      <G transform={axes}>{drawn}</G>
    </Svg>
  );
}

/** Marks and what they name, for a drawing that already has its axes: `kept` belongs into the Defs at its root. */
export function markElements(
  marks: readonly Mark[],
  { id, hairlineMm }: { readonly id: string; readonly hairlineMm: number },
): { readonly drawn: ReactNode; readonly kept: readonly ReactElement[] } {
  const pen: Pen = { id, hairlineMm, kept: [] };
  return { drawn: elements(marks, pen), kept: pen.kept };
}

/** The axes of a ski that lies: its tip at `tipX`, its centre line at `axisY`, the skier's right upwards. */
export const lyingAt = (tipX: number, axisY: number, ptPerMm: number): string =>
  matrix(0, -ptPerMm, ptPerMm, 0, tipX, axisY);

const matrix = (...values: readonly number[]) => `matrix(${values.join(", ")})`;

/** A mark's own clip: none, said aloud. */
const unclipped = { clipPath: undefined } as unknown as { readonly clipPath?: string };

function elements(marks: readonly Mark[], pen: Pen): ReactNode {
  return marks.map((mark, i) => element(mark, `${mark.kind}${i}`, pen));
}

function element(mark: Mark, key: string, pen: Pen): ReactNode {
  switch (mark.kind) {
    case "fill":
      return (
        <Path
          key={key}
          {...unclipped}
          d={mark.d}
          fill={daylightColour(mark.paint)}
          {...(mark.evenOdd ? { fillRule: "evenodd" } : {})}
          {...(mark.opacity === undefined ? {} : { fillOpacity: mark.opacity })}
        />
      );
    case "line":
      return line(mark, key, pen);
    case "shade":
      return <Path key={key} {...unclipped} d={mark.d} fill={`url(#${gradient(mark, pen)})`} />;
    case "letters":
      return <Letters key={key} mark={mark} />;
    case "picture":
      return null;
    case "group":
      return group(mark, key, pen);
  }
}

function line({ d, paint, widthMm, opacity, dash }: LineMark, key: string, { hairlineMm }: Pen): ReactElement {
  const width = widthMm === "hairline" ? hairlineMm : widthMm;
  return (
    <Path
      key={key}
      {...unclipped}
      d={d}
      stroke={daylightColour(paint)}
      strokeWidth={width}
      strokeLinecap="round"
      {...(dash ? { strokeDasharray: `${8 * hairlineMm} ${5 * hairlineMm}` } : {})}
      {...(opacity === undefined ? {} : { strokeOpacity: opacity })}
    />
  );
}

function gradient({ from, to, stops }: ShadeMark, pen: Pen): string {
  const id = `${pen.id}${pen.kept.length}`;
  pen.kept.push(
    <LinearGradient key={id} id={id} gradientUnits="userSpaceOnUse" {...{ x1: from.x, y1: from.y, x2: to.x, y2: to.y }}>
      {stops.map(({ at, paint, opacity }) => (
        <Stop key={at} offset={at} stopColor={daylightColour(paint)} stopOpacity={opacity} />
      ))}
    </LinearGradient>,
  );
  return id;
}

function group({ shift, isMirrored, clip, marks }: GroupMark, key: string, pen: Pen): ReactElement {
  const moved = matrix(isMirrored ? -1 : 1, 0, 0, 1, shift?.x ?? 0, shift?.y ?? 0);
  if (clip === undefined) {
    return (
      <G key={key} {...unclipped} transform={moved}>
        {elements(marks, pen)}
      </G>
    );
  }
  const id = `${pen.id}${pen.kept.length}`;
  pen.kept.push(
    <ClipPath key={id} id={id}>
      <Path d={clip} />
    </ClipPath>,
  );
  // A clip lies in the axes around its group: the group within moves first.
  return (
    <G key={key} {...unclipped} transform={moved}>
      <G clipPath={`url(#${id})`}>{elements(marks, pen)}</G>
    </G>
  );
}

/** Width of the dark edge around a letter over the type size; wider, readers of a file take the copies for one word. */
const edgeShare = 0.045;
const copies = [0, 1, 2, 3, 4, 5, 6, 7];

/** Letters along the ski; the edge is the letters again, all around. */
function Letters({ mark }: { readonly mark: LettersMark }) {
  const size = mark.capHeightMm / capHeightShare;
  const half = mark.capHeightMm / 2;
  const away = edgeShare * size;
  const { edge } = mark;
  return (
    <G {...unclipped} transform={matrix(0, 1, -1, 0, mark.at.x, mark.at.y)}>
      {edge === undefined
        ? null
        : copies.map((eighth) => (
            <Label
              key={eighth}
              x={away * Math.cos((eighth * Math.PI) / 4)}
              y={half + away * Math.sin((eighth * Math.PI) / 4)}
              text={mark.text}
              size={size}
              anchor="middle"
              bold
              colour={daylightColour(edge)}
            />
          ))}
      <Label x={0} y={half} text={mark.text} size={size} anchor="middle" bold colour={daylightColour(mark.paint)} />
    </G>
  );
}
