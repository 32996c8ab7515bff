/** A pair as it will look, across a page: both skis from above and the left one from its side, to one scale. */
import { Image, Text, View } from "@react-pdf/renderer";
import words from "#content/copy/papers.json";
import {
  greatestHalfWidthMm,
  groundBeyondMm,
  type PairLook,
  pairOverPictures,
  pairScene,
  placesAcross,
  sideScene,
} from "#engine/scene";
import type { SkiPictures } from "./facts";
import { SceneOnPaper } from "./scene";
import { PENCIL, WHITE } from "./theme";

const w = words.pairDrawing;

interface Props {
  readonly id: string;
  readonly look: PairLook;
  /** Of a picture of the skier's own; without them its place stays empty. */
  readonly pictures: SkiPictures | null;
  readonly widthPt: number;
}

export function PairDrawing({ id, look, pictures, widthPt }: Props) {
  const isMissing = look.graphic.artwork !== undefined && pictures === null;
  return (
    <View style={{ marginTop: 3, marginBottom: 4 }}>
      {pictures === null ? (
        <SceneOnPaper id={`${id}-above`} scene={pairScene(look)} widthPt={widthPt} turn="lying" />
      ) : (
        <OverPictures id={`${id}-above`} look={look} pictures={pictures} widthPt={widthPt} />
      )}
      <View style={{ marginTop: 3 }}>
        <SceneOnPaper id={`${id}-side`} scene={sideScene(look)} widthPt={widthPt} turn="lying" />
      </View>
      <Text style={{ fontSize: 7, color: PENCIL }}>{isMissing ? `${w.caption} ${w.pictureGone}` : w.caption}</Text>
    </View>
  );
}

/** The pictures below, each in the box of its ski, and the skis over them. */
function OverPictures({ id, look, pictures, widthPt }: Props & { readonly pictures: SkiPictures }) {
  const scene = pairOverPictures(look, WHITE);
  const ptPerMm = widthPt / look.shape.lengthMm;
  const { acrossMm, centres } = placesAcross(look, {});
  const heightPt = acrossMm * ptPerMm;
  const skiPt = 2 * greatestHalfWidthMm(look.shape) * ptPerMm;
  const beyondPt = groundBeyondMm * ptPerMm;
  return (
    <View style={{ width: widthPt, height: heightPt }}>
      {centres.map(([side, x]) => (
        <Image
          key={side}
          src={side === "left" ? pictures.L : pictures.R}
          style={{
            position: "absolute",
            left: 0,
            top: heightPt / 2 - x * ptPerMm - skiPt / 2,
            width: widthPt,
            height: skiPt,
            objectFit: "fill",
          }}
        />
      ))}
      <View style={{ position: "absolute", left: -beyondPt, top: -beyondPt }}>
        <SceneOnPaper id={id} scene={scene} widthPt={widthPt + 2 * beyondPt} turn="lying" />
      </View>
    </View>
  );
}
