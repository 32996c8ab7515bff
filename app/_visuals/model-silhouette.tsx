/** A model in two lines: its plan and, below it, its side view, all models to one scale so that they differ as they truly do. */
import { closedPath, type PairLook, screenOutline, sideSilhouette, tenth } from "#engine/scene";

const planMm = 150;
const sideMm = 92;

export function ModelSilhouette({
  look,
  scaleLengthMm,
}: {
  readonly look: PairLook;
  /** The length that fills the frame: the longest of the group. */
  readonly scaleLengthMm: number;
}) {
  const { shape, mountMm } = look;
  const waist = shape.waistWidthMm / 2;
  return (
    <svg
      viewBox={`0 ${-planMm / 2} ${scaleLengthMm} ${planMm + sideMm}`}
      className="block h-auto w-full"
      aria-hidden="true"
    >
      <g transform="rotate(-90)">
        <path
          d={closedPath(screenOutline(shape))}
          fill="var(--sheet)"
          stroke="var(--ink)"
          strokeWidth={1.25}
          vectorEffect="non-scaling-stroke"
        />
        <path
          d={`M${tenth(-waist)} ${tenth(mountMm)}H${tenth(waist)}`}
          stroke="var(--larch)"
          strokeWidth={1.5}
          vectorEffect="non-scaling-stroke"
        />
      </g>
      <g transform={`translate(0 ${planMm / 2 + sideMm - 4}) rotate(-90)`}>
        <path d={sideSilhouette(look)} fill="var(--ink)" />
      </g>
    </svg>
  );
}
