"use client";
/**
 * The core on the bench, cut away: both skis' strips as they lie, the thickness along them, and a section where the line is
 * put. For a core of one's own each strip is taken up in the drawing and another wood laid in its place; its twins follow.
 */
import { type KeyboardEvent, useId, useState } from "react";
import { Marks, SceneDrawing } from "#app/_visuals/scene-drawing.tsx";
import type { Conflict, EngineCatalog } from "#engine/assessment";
import { type CoreStrips, coreIdFor, type OwnCore, type OwnCoreRules } from "#engine/configuration";
import type { ThicknessProfile } from "#engine/flex";
import { halfWidthAt } from "#engine/geometry";
import {
  corePlanMarks,
  coreSectionScene,
  coreThicknessAt,
  coreThicknessPath,
  greatestHalfWidthMm,
  type PairLook,
  type StripBand,
  stripBands,
  woodLook,
} from "#engine/scene";
import { roundForPeople, textForPeople } from "#engine/units";
import { cx } from "../cx";
import { SliderField } from "../slider-field.client";
import { fill } from "../words";
import type { SheetState } from "./use-sheet.client";
import type { SheetWords } from "./words";

type Position = keyof CoreStrips;

interface Props {
  readonly sheet: SheetState;
  readonly look: PairLook;
  readonly catalog: EngineCatalog;
  readonly words: SheetWords;
  /** Absent where the shop's own blend is only looked at. */
  readonly own?: { readonly core: OwnCore; readonly rules: OwnCoreRules } | undefined;
}

export function CoreBench(props: Props) {
  const { look, words, own, sheet } = props;
  const [taken, setTaken] = useState<Position>("C");
  const w = words.core.bench;
  const profile = sheet.assessment.core?.profile;
  return (
    <figure className="grid max-w-measure gap-4 border border-rule bg-sheet p-4">
      <figcaption className="font-medium">{w.title}</figcaption>
      <div className="grid gap-2">
        {(["left", "right"] as const).map((side) => (
          <div key={side}>
            <p className="text-sm text-pencil">{w.sides[side]}</p>
            <Strips {...props} isTwin={side === "right"} taken={own ? taken : null} onTake={setTaken} />
          </div>
        ))}
        <p className="text-sm text-pencil">{w.scale}</p>
      </div>
      {own ? <LayWood {...props} own={own} taken={taken} /> : null}
      {profile ? <Thickness look={look} profile={profile} words={words} /> : null}
    </figure>
  );
}

/** One ski's core, lying, drawn wider than it is; a strip of it can be taken up. */
function Strips({
  look,
  catalog,
  words,
  own,
  sheet,
  isTwin,
  taken,
  onTake,
}: Props & {
  readonly isTwin: boolean;
  readonly taken: Position | null;
  readonly onTake: (position: Position) => void;
}) {
  const half = greatestHalfWidthMm(look.shape);
  const bands = stripBands(look.strips).toSorted((a, b) => b.fromMm - a.fromMm);
  const broken = new Set(own ? conflictsOf(sheet).map(({ position }) => position) : []);
  const share = (mm: number) => `${((half - mm) / (2 * half)) * 100}%`;
  return (
    <div className={cx("relative", own && !isTwin ? "h-56" : "h-28")}>
      <svg
        viewBox={`0 ${-half} ${look.shape.lengthMm} ${2 * half}`}
        preserveAspectRatio="none"
        className="absolute inset-0 size-full"
        aria-hidden="true"
      >
        <g transform="rotate(-90)">
          <Marks marks={corePlanMarks(look)} />
          {bands
            .filter(({ strip }) => strip.position === taken || broken.has(strip.position))
            .map(({ fromMm, toMm, strip }) => (
              <rect
                key={fromMm}
                x={Math.max(fromMm, -half)}
                width={Math.min(toMm, half) - Math.max(fromMm, -half)}
                y={look.woodMm.fromMm}
                height={look.woodMm.toMm - look.woodMm.fromMm}
                fill="none"
                stroke={broken.has(strip.position) ? "var(--iron)" : "var(--larch)"}
                strokeWidth={2}
                vectorEffect="non-scaling-stroke"
                strokeDasharray={broken.has(strip.position) ? "6 3" : undefined}
              />
            ))}
        </g>
      </svg>
      {own && !isTwin
        ? bands.map((band) => (
            <button
              key={band.fromMm}
              type="button"
              aria-pressed={band.strip.position === taken}
              aria-label={stripName(band, words, catalog)}
              onClick={() => onTake(band.strip.position)}
              onKeyDown={(event) => alongStrips(event)}
              className="absolute right-0 left-0 min-h-6 border border-transparent hover:border-ink focus-visible:border-ink"
              style={{
                top: share(Math.min(half, band.toMm)),
                height: `${((Math.min(half, band.toMm) - Math.max(-half, band.fromMm)) / (2 * half)) * 100}%`,
              }}
            >
              <span
                className="measure absolute top-1/2 -translate-y-1/2 pl-2 text-xs text-(--on-wood)"
                style={{ left: `${(look.woodMm.fromMm / look.shape.lengthMm) * 100}%` }}
                aria-hidden="true"
              >
                {band.strip.position}
                {broken.has(band.strip.position) ? " !" : ""}
              </span>
            </button>
          ))
        : null}
    </div>
  );
}

/** Arrow keys go from strip to strip. */
function alongStrips(event: KeyboardEvent<HTMLButtonElement>) {
  const step = event.key === "ArrowDown" ? 1 : event.key === "ArrowUp" ? -1 : 0;
  if (step === 0) return;
  event.preventDefault();
  const all = [...(event.currentTarget.parentElement?.querySelectorAll("button") ?? [])];
  all[all.indexOf(event.currentTarget) + step]?.focus();
}

function stripName({ strip }: StripBand, words: SheetWords, { build }: EngineCatalog): string {
  const wood = build.materials.woods.find(({ id }) => id === strip.wood)?.label ?? strip.wood;
  return fill(words.core.bench.strip, { place: words.core.own.places[strip.position], wood });
}

interface PlacedConflict extends Pick<Conflict, "code"> {
  readonly conflict: Conflict;
  readonly position: Position;
}

/** Rules that the woods break, each at the strip it is about; screws go into the strips beside the middle. */
function conflictsOf(sheet: SheetState): readonly PlacedConflict[] {
  return sheet.assessment.conflicts.flatMap((conflict): PlacedConflict[] => {
    if (!conflict.code.startsWith("own-core-")) return [];
    const position = conflict.code === "own-core-screw-hold" ? "I" : (conflict as { position?: Position }).position;
    return position === undefined ? [] : [{ code: conflict.code, conflict, position }];
  });
}

/** The woods of the shop for the strip that was taken up, each as it looks. */
function LayWood({
  sheet,
  catalog,
  words,
  own: { core, rules },
  taken,
}: Props & { readonly own: NonNullable<Props["own"]>; readonly taken: Position }) {
  const name = useId();
  const w = words.core.bench;
  const woods = catalog.build.materials.woods.filter(({ id }) => rules.woods.includes(id) || id === core.strips[taken]);
  const lay = (wood: string) =>
    sheet.setChoices({
      core: coreIdFor({ ...core, strips: { ...core.strips, [taken]: wood } }, catalog.build),
    });
  const here = conflictsOf(sheet).filter(({ position }) => position === taken);
  return (
    <fieldset className="grid gap-2">
      <legend className="mb-1 text-sm font-medium">
        {fill(w.lay, { place: words.core.own.places[taken].toLowerCase() })}
      </legend>
      <div className="flex flex-wrap gap-2">
        {woods.map((wood) => {
          const { ground, grain } = woodLook(wood);
          return (
            <label
              key={wood.id}
              className="flex min-h-11 items-center gap-2 border border-control bg-paper px-2 has-checked:border-2 has-checked:border-larch has-focus-visible:outline-2"
            >
              <input
                type="radio"
                name={name}
                value={wood.id}
                checked={core.strips[taken] === wood.id}
                onChange={() => lay(wood.id)}
              />
              <span
                aria-hidden="true"
                className="h-6 w-10 border border-rule"
                style={{
                  backgroundColor: ground,
                  backgroundImage: `repeating-linear-gradient(180deg, transparent 0 4px, ${grain} 4px 5px)`,
                }}
              />
              <span className="text-sm">
                {wood.label}
                <span className="measure block text-xs text-pencil">
                  {fill(w.wood, {
                    density: roundForPeople(wood.densityKgM3),
                    modulus: textForPeople(wood.bendingModulusMpa / 1000, 1),
                  })}
                </span>
              </span>
            </label>
          );
        })}
      </div>
      <div aria-live="polite" className="grid gap-1 text-sm">
        {here.map(({ code, conflict }) => (
          <p key={code} className="border-l-4 border-iron pl-3">
            {fill(w.broken[code as keyof typeof w.broken] ?? "", {
              ...conflict,
              wood: String((conflict as { wood?: string }).wood ?? ""),
            })}
          </p>
        ))}
      </div>
    </fieldset>
  );
}

/** Drawn this many times higher than it is. */
const tallFactor = 10;

function Thickness({
  look,
  profile,
  words,
}: {
  readonly look: PairLook;
  readonly profile: ThicknessProfile;
  readonly words: SheetWords;
}) {
  const { shape, mountMm } = look;
  const [cutMm, setCutMm] = useState(Math.round(mountMm));
  const at = Math.min(shape.lengthMm, cutMm);
  const coreMm = coreThicknessAt(profile.stations, at);
  const most = Math.max(...profile.stations.map(({ thicknessMm }) => thicknessMm));
  const w = words.core.bench;
  const scene = coreSectionScene(look, at, coreMm);
  return (
    <div className="grid gap-2">
      <svg
        viewBox={`0 ${-most * tallFactor} ${shape.lengthMm} ${most * tallFactor}`}
        className="block h-auto w-full"
        aria-hidden="true"
      >
        <g transform={`scale(1 ${tallFactor})`}>
          <path
            d={coreThicknessPath(profile.stations)}
            fill="var(--wood)"
            stroke="var(--ink)"
            strokeWidth={1}
            vectorEffect="non-scaling-stroke"
          />
          <path d={`M${at} 0V${-most}`} stroke="var(--larch)" strokeWidth={2} vectorEffect="non-scaling-stroke" />
        </g>
      </svg>
      <SliderField
        name="coreCut"
        label={w.cut}
        min={0}
        max={Math.round(shape.lengthMm)}
        step={10}
        decimals={0}
        unit="mm"
        ends={[w.tip, w.tail]}
        value={at}
        meaning={fill(w.cutHere, { mm: textForPeople(coreMm, 1), wide: roundForPeople(2 * halfWidthAt(shape, at)) })}
        onChange={(value) => setCutMm(value)}
      />
      <SceneDrawing
        box={scene.box}
        marks={scene.marks}
        turn="upright"
        className="h-auto w-full"
        description={fill(w.section, { x: roundForPeople(at), mm: textForPeople(coreMm, 1) })}
      />
      <p className="text-sm text-pencil">{w.sectionScale}</p>
    </div>
  );
}
