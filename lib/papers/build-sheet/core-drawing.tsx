/** Drawing 2, the core card: thickness programme with boxes on the axis, strips and pocket in plan, the section at the mount. */
import { View } from "@react-pdf/renderer";
import { grams, mm, numberText, plainNumber } from "#papers/parts/format";
import { axisScale } from "../parts/drawing";
import { Rows } from "../parts/table";
import { CorePlan } from "./core-plan";
import { SectionAtMount } from "./core-section";
import { StripTables } from "./core-strips";
import { ThicknessView } from "./core-thickness";
import type { BuildSheetData, CoreDrawing } from "./facts";

export function CoreDrawingPage({ data, innerPt }: { readonly data: BuildSheetData; readonly innerPt: number }) {
  const { drawing, core } = data;
  const scale = axisScale(drawing.lengthMm, 22, innerPt - 44);
  return (
    <View>
      <ThicknessView d={drawing} core={core} scale={scale} innerPt={innerPt} />
      <CorePlan d={drawing} core={core} scale={scale} innerPt={innerPt} />
      <View style={{ flexDirection: "row", marginTop: 2 }}>
        <SectionAtMount d={drawing} core={core} />
        <View style={{ flexGrow: 1, flexBasis: 0, marginLeft: 10 }}>
          <Rows rows={pocketRows(core)} labelWidth={82} size={8} />
        </View>
        <View style={{ flexGrow: 1, flexBasis: 0, marginLeft: 10 }}>
          <Rows rows={spacerRows(core)} labelWidth={82} size={8} />
        </View>
      </View>
      <StripTables data={data} />
    </View>
  );
}

function pocketRows(core: CoreDrawing) {
  const { pocket } = core;
  if (!pocket) return [{ label: "Pocket", value: "none" }];
  const size = [pocket.plateLengthMm, pocket.plateWidthMm].map((v) => plainNumber(v, 1)).join(" × ");
  return [
    {
      label: "Pocket, upper face",
      value: `${numberText(pocket.toMm - pocket.fromMm, 1)} × ${numberText(pocket.widthMm, 1)} mm, ${numberText(pocket.depthMm, 2)} deep`,
    },
    {
      label: "From the tip",
      value: `${numberText(pocket.fromMm, 1)} to ${numberText(pocket.toMm, 1)} mm`,
    },
    { label: "Plate", value: `${pocket.plate}, ${size} × ${plainNumber(pocket.plateMm, 2)} mm` },
    { label: "Rubber under it", value: mm(pocket.rubberMm, 2) },
    { label: "Centred on", value: "this order's mount line" },
  ];
}

function spacerRows(core: CoreDrawing) {
  const { spacers } = core;
  const one = (lengthMm: number, thicknessMm: number) =>
    `${plainNumber(lengthMm)} + ${plainNumber(spacers.scarfMm)} mm scarf, ${numberText(thicknessMm, 2)} mm thick`;
  return [
    { label: "Spacers", value: spacers.material },
    { label: "Tip spacer", value: one(spacers.tipMm, spacers.tipThicknessMm) },
    { label: "Tail spacer", value: one(spacers.tailMm, spacers.tailThicknessMm) },
    { label: "Wood, planned", value: `L ${grams(core.plannedG.L)}, R ${grams(core.plannedG.R)} (milled, pocket out)` },
    { label: "Wood, weighed", value: "L ________ g   R ________ g" },
  ];
}
