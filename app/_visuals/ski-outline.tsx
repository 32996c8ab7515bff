/** A thumbnail: outlines to one scale, so that two models side by side show their true difference. */
import type { SkiShape } from "#engine/geometry";
import { closedPath, screenOutline } from "./paths";

export function SkiOutline({
  shape,
  scaleLengthMm,
  className,
}: {
  readonly shape: SkiShape;
  /** The length that fills the frame: the longest of the group. */
  readonly scaleLengthMm: number;
  readonly className?: string;
}) {
  const widest = 150;
  return (
    <svg
      viewBox={`0 ${-widest / 2} ${scaleLengthMm} ${widest}`}
      className={className ?? "block w-full"}
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
          d={`M${-shape.waistWidthMm / 2} ${shape.mountFromTipMm}H${shape.waistWidthMm / 2}`}
          stroke="var(--larch)"
          strokeWidth={1.5}
          vectorEffect="non-scaling-stroke"
        />
      </g>
    </svg>
  );
}
