/** A pair as it will look, across a page: both skis from above and the left one from its side, to one scale. */
import { Text, View } from "@react-pdf/renderer";
import words from "#content/copy/papers.json";
import { type PairLook, pairScene, sideScene } from "#engine/scene";
import { SceneOnPaper } from "./scene";
import { PENCIL } from "./theme";

const w = words.pairDrawing;

export function PairDrawing({
  id,
  look,
  widthPt,
}: {
  readonly id: string;
  readonly look: PairLook;
  readonly widthPt: number;
}) {
  const isOwn = look.graphic.artwork !== undefined;
  return (
    <View style={{ marginTop: 3, marginBottom: 4 }}>
      <SceneOnPaper id={`${id}-above`} scene={pairScene(look)} widthPt={widthPt} turn="lying" />
      <View style={{ marginTop: 3 }}>
        <SceneOnPaper id={`${id}-side`} scene={sideScene(look)} widthPt={widthPt} turn="lying" />
      </View>
      <Text style={{ fontSize: 7, color: PENCIL }}>{isOwn ? `${w.caption} ${w.ownPicture}` : w.caption}</Text>
    </View>
  );
}
