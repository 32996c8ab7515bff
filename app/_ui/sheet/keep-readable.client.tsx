"use client";
/** Words in a mirrored picture flip with it; a box around them keeps them as they read. Drawn by pointer, typed by numbers. */
import { type PointerEvent, useRef } from "react";
import type { PicturePart } from "#engine/configuration";
import { Button } from "../button";
import { Notice } from "../notice";
import { DraftNumber } from "./draft-number.client";
import type { SheetWords } from "./words";

/** Of the picture's width and height: a box to begin with, and the least there is. */
const firstPart: PicturePart = { x: 0.25, y: 0.4, width: 0.5, height: 0.2 };
const least = 0.01;

const clamped = (value: number, from: number, to: number) => Math.min(to, Math.max(from, value));
const tidy = (value: number) => Math.round(value * 1000) / 1000;

/** The part inside the picture, its sides as shares with three decimals. */
export function partOnPicture({ x, y, width, height }: PicturePart): PicturePart {
  const [left, upper] = [clamped(x, 0, 1 - least), clamped(y, 0, 1 - least)];
  return {
    x: tidy(left),
    y: tidy(upper),
    width: tidy(clamped(width, least, 1 - tidy(left))),
    height: tidy(clamped(height, least, 1 - tidy(upper))),
  };
}

export function KeepReadable({
  address,
  part,
  words,
  onChange,
}: {
  /** Of the picture. */
  readonly address: string;
  readonly part: PicturePart | undefined;
  readonly words: SheetWords;
  readonly onChange: (part: PicturePart | undefined) => void;
}) {
  const w = words.graphic;
  if (part === undefined) {
    return (
      <Notice tone="amber" title={w.wordsFlip}>
        <p>
          <Button size="small" onClick={() => onChange(firstPart)}>
            {w.keepPart}
          </Button>
        </p>
      </Notice>
    );
  }
  const box = (side: keyof PicturePart) => (
    <DraftNumber
      key={side}
      name={`part-${side}`}
      label={w.part[side]}
      unit="%"
      decimals={1}
      value={100 * part[side]}
      onChange={(percent) =>
        percent === undefined ? undefined : onChange(partOnPicture({ ...part, [side]: percent / 100 }))
      }
    />
  );
  return (
    <fieldset className="grid min-w-0 gap-3">
      <legend className="mb-1 font-medium">{w.keepPart}</legend>
      <p className="text-sm text-pencil">{w.keepPartHint}</p>
      <BoxOnPicture address={address} part={part} onChange={onChange} />
      <div className="grid gap-4 sm:grid-cols-2">{(["x", "y", "width", "height"] as const).map(box)}</div>
      <p>
        <Button size="small" onClick={() => onChange(undefined)}>
          {w.dropPart}
        </Button>
      </p>
    </fieldset>
  );
}

/** For the pointer; the numbers beside it say the same to everybody. */
function BoxOnPicture({
  address,
  part,
  onChange,
}: {
  readonly address: string;
  readonly part: PicturePart;
  readonly onChange: (part: PicturePart) => void;
}) {
  const from = useRef<{ readonly x: number; readonly y: number } | null>(null);
  const shareAt = (event: PointerEvent<HTMLDivElement>) => {
    const { left, top, width, height } = event.currentTarget.getBoundingClientRect();
    return {
      x: clamped((event.clientX - left) / width, 0, 1),
      y: clamped((event.clientY - top) / height, 0, 1),
    };
  };
  const draw = (event: PointerEvent<HTMLDivElement>) => {
    const begun = from.current;
    if (begun === null) return;
    const now = shareAt(event);
    const [x, y] = [Math.min(begun.x, now.x), Math.min(begun.y, now.y)];
    onChange(partOnPicture({ x, y, width: Math.abs(now.x - begun.x), height: Math.abs(now.y - begun.y) }));
  };
  return (
    <div
      aria-hidden="true"
      className="relative max-w-md touch-none cursor-crosshair select-none border border-rule"
      onPointerDown={(event) => {
        from.current = shareAt(event);
        event.currentTarget.setPointerCapture(event.pointerId);
      }}
      onPointerMove={draw}
      onPointerUp={() => {
        from.current = null;
      }}
      onPointerCancel={() => {
        from.current = null;
      }}
    >
      {/* biome-ignore lint/performance/noImgElement: a private picture of the sheet, already small */}
      <img src={address} alt="" draggable={false} className="block w-full" />
      <div
        className="pointer-events-none absolute border-2 border-larch bg-sheet/30"
        style={{
          left: `${100 * part.x}%`,
          top: `${100 * part.y}%`,
          width: `${100 * part.width}%`,
          height: `${100 * part.height}%`,
        }}
      />
    </div>
  );
}
