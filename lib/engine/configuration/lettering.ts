/** Lettering on the top: how long it is, what the binding hides of it, where it could go instead. */
import { halfWidthAt, mountLineMm, type SkiShape } from "#engine/geometry";
import type { GraphicText, PairSpec, PrintRules, SpecConflict, SpecWay } from "./types";

export interface LetteringFit {
  readonly fromXMm: number;
  readonly toXMm: number;
  /** Letters, spaces left out, that lie at least half under boot and binding. */
  readonly hiddenLetters: number;
  readonly letters: number;
  /** Nearest middle of the text where all of it shows; null when it fits nowhere or shows already. */
  readonly clearXMm: number | null;
}

/** Letters stand in a row along the ski, cap height across it; one takes `letterAdvance` cap heights of length. */
export function letteringFit(text: GraphicText, shape: SkiShape, mountMm: number, print: PrintRules): LetteringFit {
  const advanceMm = print.letterAdvance * text.capHeightMm;
  const characters = [...text.text];
  const lengthMm = characters.length * advanceMm;
  const fromXMm = text.xMm - lengthMm / 2;
  const hidden = (x: number) => Math.abs(x - mountMm) < print.bindingZoneMm / 2;
  const shown = characters
    .map((character, i) => ({ character, xMm: fromXMm + (i + 0.5) * advanceMm }))
    .filter(({ character }) => character.trim() !== "");
  const hiddenLetters = shown.filter(({ xMm }) => hidden(xMm)).length;
  return {
    fromXMm,
    toXMm: fromXMm + lengthMm,
    hiddenLetters,
    letters: shown.length,
    clearXMm: hiddenLetters === 0 ? null : nearestClear(text, lengthMm, shape, mountMm, print),
  };
}

/** Just ahead of or just behind the binding, whichever is nearer and wide enough for the letters. */
function nearestClear(
  text: GraphicText,
  lengthMm: number,
  shape: SkiShape,
  mountMm: number,
  print: PrintRules,
): number | null {
  const away = print.bindingZoneMm / 2 + lengthMm / 2;
  const places = [mountMm - away, mountMm + away].filter((middle) => isInside(middle, lengthMm, text, shape, print));
  return places.toSorted((a, b) => Math.abs(a - text.xMm) - Math.abs(b - text.xMm))[0] ?? null;
}

function isInside(middle: number, lengthMm: number, text: GraphicText, shape: SkiShape, print: PrintRules): boolean {
  const needMm = text.capHeightMm / 2 + print.safeMm;
  return [middle - lengthMm / 2, middle, middle + lengthMm / 2].every(
    (x) => x >= 0 && x <= shape.lengthMm && halfWidthAt(shape, x) >= needMm,
  );
}

/** Warnings about the lettering of a spec; they block nothing. */
export function letteringWarnings(spec: PairSpec, shape: SkiShape, print: PrintRules): readonly SpecConflict[] {
  const { text } = spec.graphic;
  if (!text || text.text.trim() === "") return [];
  const fit = letteringFit(text, shape, mountLineMm(shape, spec.mount.offsetMm), print);
  const withText = (change: Partial<GraphicText>) => ({ graphic: { ...spec.graphic, text: { ...text, ...change } } });
  const warnings: SpecConflict[] = [];
  if (fit.hiddenLetters > 0) {
    const shift: SpecWay[] =
      fit.clearXMm === null
        ? []
        : [
            {
              code: "shift-text",
              label: `Move the text ${Math.round(Math.abs(fit.clearXMm - text.xMm))} mm towards the ${fit.clearXMm < text.xMm ? "tip" : "tail"}`,
              choices: withText({ xMm: Math.round(fit.clearXMm) }),
            },
          ];
    const { hiddenLetters, letters } = fit;
    warnings.push({ code: "letters-hidden", path: "graphic.text.xMm", hiddenLetters, letters, ways: shift });
  }
  if (text.capHeightMm < print.leastCapHeightMm) {
    warnings.push({
      code: "text-too-small",
      path: "graphic.text.capHeightMm",
      capHeightMm: text.capHeightMm,
      leastMm: print.leastCapHeightMm,
      ways: [
        {
          code: "larger-text",
          label: `Letters ${print.leastCapHeightMm} mm high`,
          choices: withText({ capHeightMm: print.leastCapHeightMm }),
        },
      ],
    });
  }
  return warnings;
}
