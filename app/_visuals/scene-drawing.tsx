/** A scene of the engine on a page: one svg, its marks written by the engine, its colours the page's own. */
import { type CSSProperties, useId } from "react";
import { cx } from "#app/_ui/cx.ts";
import { type Mark, pageColour, type SceneBox, svgMarks } from "#engine/scene";

/** Upright has the tip at the top; lying has it on the left. */
export type SceneTurn = "upright" | "lying";

export interface MarksProps {
  readonly marks: readonly Mark[];
  /** Skiers' pictures are at this address, a slash and their id; without it their place stays empty. */
  readonly pictureBase?: string | undefined;
  /** As they are printed; absent = small, for a screen. */
  readonly pictureSize?: "full" | undefined;
  readonly opacity?: number;
}

/** Marks inside a drawing that already has its axes. */
export function Marks({ marks, pictureBase, pictureSize, opacity }: MarksProps) {
  const id = `s${useId().replace(/[^\w-]/g, "")}`;
  const __html = svgMarks(marks, {
    id,
    colour: pageColour,
    picture: (artworkId) =>
      pictureBase === undefined
        ? null
        : `${pictureBase}/${artworkId}${pictureSize === undefined ? "" : `?size=${pictureSize}`}`,
    font: "var(--font-sans), sans-serif",
  });
  // biome-ignore lint/security/noDangerouslySetInnerHtml: the engine writes these marks and escapes every text among them
  return <g opacity={opacity} dangerouslySetInnerHTML={{ __html }} />;
}

export interface SceneDrawingProps extends MarksProps {
  readonly box: SceneBox;
  readonly turn: SceneTurn;
  readonly className?: string | undefined;
  readonly style?: CSSProperties | undefined;
  /** Says what is drawn; leave out where a neighbouring text already does. */
  readonly description?: string | undefined;
  /** Faintly under the marks. */
  readonly ghost?: readonly Mark[];
}

/** A drawing in true proportion. */
export function SceneDrawing(props: SceneDrawingProps) {
  const { box, turn, description, ghost } = props;
  const viewBox =
    turn === "upright"
      ? `${box.x} ${box.y} ${box.width} ${box.height}`
      : `${box.y} ${-(box.x + box.width)} ${box.height} ${box.width}`;
  return (
    <svg
      viewBox={viewBox}
      className={cx("block overflow-visible", props.className)}
      style={props.style}
      role={description ? "img" : undefined}
      aria-label={description}
      aria-hidden={description ? undefined : true}
    >
      <g transform={turn === "lying" ? "rotate(-90)" : undefined} data-ski-axes="">
        {ghost ? <Marks marks={ghost} pictureBase={props.pictureBase} opacity={0.25} /> : null}
        <Marks marks={props.marks} pictureBase={props.pictureBase} pictureSize={props.pictureSize} />
      </g>
    </svg>
  );
}
