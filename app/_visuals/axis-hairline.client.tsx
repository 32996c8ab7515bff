"use client";
/** The line across the whole drawing is one slider: it takes the keys, the pointer and the spoken value. */
import type { KeyboardEvent, PointerEvent, ReactNode } from "react";
import { type AxisBuild, axisFrame } from "./axis-builds";
import type { Orientation } from "./axis-plot";
import { spokenReading } from "./axis-readout";

const keySteps: Readonly<Record<string, number>> = {
  ArrowLeft: -10,
  ArrowUp: -10,
  ArrowRight: 10,
  ArrowDown: 10,
  PageUp: -100,
  PageDown: 100,
};

export function Hairline({
  orientation,
  builds,
  fromMountMm,
  onMove,
  children,
  className,
}: {
  readonly orientation: Orientation;
  readonly builds: readonly [AxisBuild, ...AxisBuild[]];
  readonly fromMountMm: number;
  readonly onMove: (fromMountMm: number) => void;
  readonly children: ReactNode;
  readonly className: string;
}) {
  const { fromMm, toMm } = axisFrame(builds);
  const held = (mm: number) => Math.min(toMm, Math.max(fromMm, mm));
  const lying = orientation === "lying";
  const pointed = (event: PointerEvent<HTMLDivElement>) => {
    if (event.pointerType === "touch" && event.type === "pointermove" && event.buttons === 0) return;
    const box = event.currentTarget.getBoundingClientRect();
    const share = lying ? (event.clientX - box.left) / box.width : (event.clientY - box.top) / box.height;
    onMove(held(Math.round(fromMm + share * (toMm - fromMm))));
  };
  const keyed = (event: KeyboardEvent) => {
    const step = keySteps[event.key];
    if (step !== undefined) onMove(held(fromMountMm + step));
    else if (event.key === "Home") onMove(fromMm);
    else if (event.key === "End") onMove(toMm);
    else return;
    event.preventDefault();
  };
  // A build alone counts from its tip, several from the mount line that they share.
  const zero = builds.length === 1 ? fromMm : 0;
  const at = `${((fromMountMm - fromMm) / (toMm - fromMm)) * 100}%`;
  return (
    <div
      role="slider"
      tabIndex={0}
      aria-label={builds.length === 1 ? "Station along the ski" : "Station along the skis"}
      aria-orientation={lying ? "horizontal" : "vertical"}
      aria-valuemin={Math.round(fromMm - zero)}
      aria-valuemax={Math.round(toMm - zero)}
      aria-valuenow={Math.round(fromMountMm - zero)}
      aria-valuetext={spokenReading(builds, fromMountMm)}
      onKeyDown={keyed}
      onPointerDown={pointed}
      onPointerMove={pointed}
      className={`relative cursor-crosshair ${className}`}
    >
      {children}
      <span
        aria-hidden="true"
        className={
          lying
            ? "pointer-events-none absolute -top-1 -bottom-1 border-l border-larch"
            : "pointer-events-none absolute -right-1 -left-1 border-t border-larch"
        }
        style={lying ? { left: at } : { top: at }}
      />
    </div>
  );
}
