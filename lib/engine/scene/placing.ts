/** What helps to place a picture: the whole of it faintly, the safe line, what boot and binding will hide. */
import { offsetOutline } from "#engine/geometry";
import type { PairLook } from "./look";
import { type PairView, placesAcross } from "./pair";
import { closedPath, screenOutline, tenth } from "./paths";
import { graphicMarks } from "./ski";
import type { Mark, Scene } from "./types";

/** Under the skis: a picture that reaches across the pair is shown once, any other on each ski. */
export function ghostMarks(look: PairLook, view: PairView): readonly Mark[] {
  const { centres } = placesAcross(look, view);
  return centres.map(([side, x]): Mark => ({ kind: "group", shift: { x, y: 0 }, marks: graphicMarks(look, side) }));
}

/** Over the skis: the safe line inside the edge and a hatched binding zone. */
export function placingMarks(look: PairLook, view: PairView, safeMm: number): readonly Mark[] {
  const { shape, mountMm, bindingHalfMm } = look;
  const waist = shape.waistWidthMm / 2;
  const top = mountMm - bindingHalfMm;
  const zone = `M${tenth(-waist)} ${tenth(top)}h${tenth(2 * waist)}v${tenth(2 * bindingHalfMm)}h${tenth(-2 * waist)}Z`;
  const marks: readonly Mark[] = [
    {
      kind: "line",
      d: closedPath(offsetOutline(screenOutline(shape), -safeMm)),
      paint: "ink",
      widthMm: "hairline",
      opacity: 0.7,
      dash: "safe-line",
    },
    { kind: "fill", d: zone, paint: "sheet", opacity: 0.28 },
    { kind: "group", clip: zone, marks: [hatch(waist, top, 2 * bindingHalfMm)] },
  ];
  return placesAcross(look, view).centres.map(([, x]): Mark => ({ kind: "group", shift: { x, y: 0 }, marks }));
}

function hatch(halfMm: number, fromMm: number, longMm: number): Mark {
  const step = 10;
  const lines = Array.from({ length: Math.ceil((longMm + 2 * halfMm) / step) }, (_, i) => {
    const y = fromMm + i * step;
    return `M${tenth(-halfMm)} ${tenth(y)}l${tenth(2 * halfMm)} ${tenth(-2 * halfMm)}`;
  });
  return { kind: "line", d: lines.join(""), paint: "ink", widthMm: 1.2, opacity: 0.5 };
}

/** A pair with what helps to place its picture. */
export function withPlacing(scene: Scene, look: PairLook, view: PairView, safeMm: number): Scene {
  return { ...scene, marks: [...scene.marks, ...placingMarks(look, view, safeMm)] };
}
