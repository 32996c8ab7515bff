/** The build sheet of one pair, page by page in the order of the work. */
import { Frame, type FrameProps } from "../parts/frame";
import { pageBox } from "../parts/theme";
import type { BuildSheetData, Paper } from "../types";
import { Cover } from "./cover";

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
  const portraitPt = pageBox(paper, "portrait").innerPt;
  return (
    <>
      <Frame {...frame} part="1 · Pair">
        <Cover data={data} innerPt={portraitPt} />
      </Frame>
    </>
  );
}
