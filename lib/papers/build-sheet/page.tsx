/** The build sheet of one pair, page by page in the order of the work. */

import words from "#content/copy/papers.json";
import type { Paper } from "#papers/parts/facts";
import { pageBox } from "#papers/parts/theme";
import { Frame, type FrameProps } from "../parts/frame";
import { CoreDrawingPage } from "./core-drawing";
import { Cover } from "./cover";
import { CutList } from "./cut-list";
import { LayUp, ResinAndPress } from "./lay-up";
import { OutlineDrawing } from "./outline-drawing";
import type { BuildSheetData } from "./printed";
import { QualityCheck } from "./qc";
import { StationTable } from "./stations";

const w = words.buildSheet.pages;

export function BuildSheetPages({ data, paper }: { readonly data: BuildSheetData; readonly paper: Paper }) {
  const frame: Omit<FrameProps, "children"> = {
    paper,
    kind: w.kind,
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
      <Frame {...frame} part={w.pair}>
        <Cover data={data} innerPt={portraitPt} />
      </Frame>
      <Frame {...frame} part={w.drawingShape} orientation="landscape">
        <OutlineDrawing data={data} innerPt={landscapePt} />
      </Frame>
      <Frame {...frame} part={w.drawingCore} orientation="landscape">
        <CoreDrawingPage data={data} innerPt={landscapePt} />
      </Frame>
      <Frame {...frame} part={w.cutList}>
        <CutList data={data} />
      </Frame>
      <Frame {...frame} part={w.layUpAndPress}>
        <LayUp data={data} />
        <ResinAndPress data={data} />
      </Frame>
      <Frame {...frame} part={w.stations}>
        <StationTable data={data} />
      </Frame>
      <Frame {...frame} part={w.tuneAndQualityCheck}>
        <QualityCheck data={data} />
      </Frame>
    </>
  );
}
