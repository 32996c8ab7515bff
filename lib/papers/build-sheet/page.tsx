/** The build sheet of one pair, page by page in the order of the work. */

import type { Paper } from "#papers/parts/facts";
import { pageBox } from "#papers/parts/theme";
import { Frame, type FrameProps } from "../parts/frame";
import { CoreDrawingPage } from "./core-drawing";
import { Cover } from "./cover";
import { CutList } from "./cut-list";
import type { BuildSheetData } from "./facts";
import { LayUp, ResinAndPress } from "./lay-up";
import { OutlineDrawing } from "./outline-drawing";
import { QualityCheck } from "./qc";
import { StationTable } from "./stations";

export function BuildSheetPages({ data, paper }: { readonly data: BuildSheetData; readonly paper: Paper }) {
  const frame: Omit<FrameProps, "children"> = {
    paper,
    kind: "Build sheet",
    subject: data.pair.number,
    subjectNote: data.title,
    codeText: data.pair.pageUrl,
    shop: data.shop,
    stamp: data.stamp,
    voidsOlder: true,
  };
  const landscapePt = pageBox(paper, "landscape").innerPt;
  const portraitPt = pageBox(paper, "portrait").innerPt;
  return (
    <>
      <Frame {...frame} part="1 · Pair">
        <Cover data={data} innerPt={portraitPt} />
      </Frame>
      <Frame {...frame} part="2 · Drawing: shape" orientation="landscape">
        <OutlineDrawing data={data} innerPt={landscapePt} />
      </Frame>
      <Frame {...frame} part="3 · Drawing: core" orientation="landscape">
        <CoreDrawingPage data={data} innerPt={landscapePt} />
      </Frame>
      <Frame {...frame} part="4 · Cut list">
        <CutList data={data} />
      </Frame>
      <Frame {...frame} part="5 · Lay-up and press">
        <LayUp data={data} />
        <ResinAndPress data={data} />
      </Frame>
      <Frame {...frame} part="6 · Stations">
        <StationTable data={data} />
      </Frame>
      <Frame {...frame} part="7 · Tune and quality check">
        <QualityCheck data={data} />
      </Frame>
    </>
  );
}
