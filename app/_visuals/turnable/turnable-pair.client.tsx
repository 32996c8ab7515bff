"use client";
/** The pair to be turned in the hands: by finger, pointer or arrow keys. Fetched when it is asked for; a still picture otherwise. */
import { type KeyboardEvent, type PointerEvent, useEffect, useRef, useState } from "react";
import { Button } from "#app/_ui/button.tsx";
import { drawnGapMm, greatestHalfWidthMm, type PairLook, skiMesh } from "#engine/scene";
import type { Pose, Stage } from "./stage";

export interface TurnableWords {
  readonly ask: string;
  readonly stop: string;
  readonly wait: string;
  readonly how: string;
  readonly label: string;
  readonly none: string;
  readonly back: string;
  readonly under: string;
}

interface Props {
  readonly look: PairLook;
  readonly pictureBase: string;
  readonly words: TurnableWords;
}

const start: Pose = { turnDeg: -24, tiltDeg: 8, zoom: 1 };
const keyStepDeg = 8;
const mostTiltDeg = 80;
const sides = ["left", "right"] as const;

/** Fills the room it is given. */
export function TurnablePair({ look, pictureBase, words }: Props) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const stage = useRef<Stage | null>(null);
  const pose = useRef<Pose>(start);
  const grip = useRef<{ readonly x: number; readonly y: number; readonly pose: Pose } | null>(null);
  const [state, setState] = useState<"waiting" | "there" | "none">("waiting");

  useEffect(() => {
    let isGone = false;
    const open = async () => {
      const [{ openStage }, { topsheetPicture }] = await Promise.all([import("./stage"), import("./topsheet-picture")]);
      const tops = await Promise.all(sides.map((side) => topsheetPicture(look, side, pictureBase)));
      const target = canvas.current;
      if (isGone || !target) return;
      const meshes = skiMesh(look);
      const away = greatestHalfWidthMm(look.shape) + drawnGapMm / 2;
      stage.current?.end();
      stage.current = openStage(
        target,
        sides.flatMap((side, i) => {
          const top = tops[i];
          return top ? [{ side, meshes, top, base: look.base[side], acrossMm: side === "left" ? -away : away }] : [];
        }),
        look.shape.lengthMm,
      );
      stage.current.show(pose.current);
      setState("there");
    };
    open().catch(() => setState("none"));
    return () => {
      isGone = true;
      stage.current?.end();
      stage.current = null;
    };
  }, [look, pictureBase]);

  useEffect(() => {
    const target = canvas.current;
    if (!target) return;
    const watch = new ResizeObserver(() => stage.current?.resize());
    watch.observe(target);
    return () => watch.disconnect();
  }, []);

  const move = (next: Pose) => {
    pose.current = {
      turnDeg: next.turnDeg % 360,
      tiltDeg: Math.min(mostTiltDeg, Math.max(-mostTiltDeg, next.tiltDeg)),
      zoom: Math.min(4, Math.max(1, next.zoom)),
    };
    stage.current?.show(pose.current);
  };
  const grab = (event: PointerEvent<HTMLDivElement>) => {
    grip.current = { x: event.clientX, y: event.clientY, pose: pose.current };
    event.currentTarget.setPointerCapture(event.pointerId);
  };
  const drag = (event: PointerEvent) => {
    const held = grip.current;
    if (!held) return;
    move({
      ...held.pose,
      turnDeg: held.pose.turnDeg + (event.clientX - held.x) * 0.5,
      tiltDeg: held.pose.tiltDeg + (event.clientY - held.y) * 0.25,
    });
  };
  const release = () => {
    grip.current = null;
  };
  const key = (event: KeyboardEvent) => {
    const { turnDeg, tiltDeg, zoom } = pose.current;
    const next: Readonly<Record<string, Pose>> = {
      ArrowLeft: { turnDeg: turnDeg - keyStepDeg, tiltDeg, zoom },
      ArrowRight: { turnDeg: turnDeg + keyStepDeg, tiltDeg, zoom },
      ArrowUp: { turnDeg, tiltDeg: tiltDeg - keyStepDeg, zoom },
      ArrowDown: { turnDeg, tiltDeg: tiltDeg + keyStepDeg, zoom },
      "+": { turnDeg, tiltDeg, zoom: zoom * 1.2 },
      "-": { turnDeg, tiltDeg, zoom: zoom / 1.2 },
      Home: start,
    };
    const to = next[event.key];
    if (!to) return;
    event.preventDefault();
    move(to);
  };
  if (state === "none") return <p className="text-sm text-pencil">{words.none}</p>;
  return (
    <div className="flex min-h-0 w-full flex-1 flex-col gap-2">
      <div
        role="application"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: it is turned with the arrow keys
        tabIndex={0}
        aria-label={`${words.label}. ${words.how}`}
        onPointerDown={grab}
        onPointerMove={drag}
        onPointerUp={release}
        onPointerCancel={release}
        onKeyDown={key}
        className="min-h-64 flex-1 cursor-grab touch-none overflow-hidden border border-rule bg-sheet"
      >
        <canvas ref={canvas} className="block size-full" />
      </div>
      <p className="text-sm text-pencil" aria-live="polite">
        {state === "waiting" ? words.wait : words.how}
      </p>
      {state === "there" ? (
        <p className="flex flex-wrap gap-2">
          <Button size="small" onClick={() => move(start)}>
            {words.back}
          </Button>
          <Button size="small" onClick={() => move({ ...pose.current, turnDeg: 180 + start.turnDeg })}>
            {words.under}
          </Button>
        </p>
      ) : null}
    </div>
  );
}
