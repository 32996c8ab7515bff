/**
 * A pair of skis from the geometry that is cut, as the engine's scene has it. Upright has the tip at the top and the left ski
 * on the left; lying has the tip on the left and, as seen from above by the same skier, the right ski above the left one.
 */
import { ghostMarks, type PairLook, type PairView, pairScene, sideScene, withPlacing } from "#engine/scene";
import { SceneDrawing, type SceneTurn } from "./scene-drawing";

export interface SkiPairProps extends PairView {
  readonly look: PairLook;
  readonly orientation: SceneTurn;
  readonly pictureBase?: string | undefined;
  readonly pictureSize?: "full" | undefined;
  readonly className?: string | undefined;
  readonly description?: string | undefined;
  /** While a picture is placed: the whole of it faintly, what the binding hides, and a safe line this far inside the edge. */
  readonly placing?: { readonly safeMm: number };
}

/** Both skis, or one, in true proportion. */
export function SkiPair({ look, orientation, view, sides, gapMm, placing, ...rest }: SkiPairProps) {
  const how: PairView = {
    ...(view === undefined ? {} : { view }),
    ...(sides === undefined ? {} : { sides }),
    ...(gapMm === undefined ? {} : { gapMm }),
  };
  const scene = pairScene(look, how);
  const shown = placing ? withPlacing(scene, look, how, placing.safeMm) : scene;
  return (
    <SceneDrawing
      {...rest}
      box={shown.box}
      marks={shown.marks}
      turn={orientation}
      {...(placing ? { ghost: ghostMarks(look, how) } : {})}
    />
  );
}

/** The left ski from its side, free on the bench. */
export function SkiSideView({
  look,
  orientation,
  className,
  description,
}: Pick<SkiPairProps, "look" | "orientation" | "className" | "description">) {
  const { box, marks } = sideScene(look);
  return <SceneDrawing box={box} marks={marks} turn={orientation} className={className} description={description} />;
}
