/** Drawing 2, the core card: thickness programme with boxes on the axis, strips and pocket in plan, the section at the mount. */
import { View } from "@react-pdf/renderer";
import words from "#content/copy/papers.json";
import { fill } from "#engine/units";
import { grams, mm, numberText, plainNumber } from "#papers/parts/format";
import { axisScale } from "../parts/drawing";
import { Rows } from "../parts/table";
import { CorePlan } from "./core-plan";
import { SectionAtMount } from "./core-section";
import { StripTables } from "./core-strips";
import { ThicknessView } from "./core-thickness";
import type { BuildSheetData, CoreDrawing } from "./printed";

const w = words.buildSheet.core;

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
  if (!pocket) return [{ label: w.pocket, value: w.noPocket }];
  const size = [pocket.plateLengthMm, pocket.plateWidthMm].map((v) => plainNumber(v, 1)).join(" × ");
  return [
    {
      label: w.pocketUpperFace,
      value: fill(w.pocketSize, {
        lengthMm: numberText(pocket.toMm - pocket.fromMm, 1),
        widthMm: numberText(pocket.widthMm, 1),
        depthMm: numberText(pocket.depthMm, 2),
      }),
    },
    {
      label: w.pocketPlace,
      value: fill(w.pocketSpan, { fromMm: numberText(pocket.fromMm, 1), toMm: numberText(pocket.toMm, 1) }),
    },
    {
      label: w.plate,
      value: fill(w.plateValue, { plate: pocket.plate, size, thicknessMm: plainNumber(pocket.plateMm, 2) }),
    },
    { label: w.plateRubber, value: mm(pocket.rubberMm, 2) },
    { label: w.centredOn, value: w.centredOnMount },
  ];
}

function spacerRows(core: CoreDrawing) {
  const { spacers } = core;
  const one = (lengthMm: number, thicknessMm: number) =>
    fill(w.spacerSize, {
      lengthMm: plainNumber(lengthMm),
      scarfMm: plainNumber(spacers.scarfMm),
      thicknessMm: numberText(thicknessMm, 2),
    });
  return [
    { label: w.spacers, value: spacers.material },
    { label: w.tipSpacer, value: one(spacers.tipMm, spacers.tipThicknessMm) },
    { label: w.tailSpacer, value: one(spacers.tailMm, spacers.tailThicknessMm) },
    {
      label: w.woodPlanned,
      value: fill(core.hollows.length > 0 ? w.plannedMassHollow : w.plannedMass, {
        left: grams(core.plannedG.L),
        right: grams(core.plannedG.R),
      }),
    },
    { label: w.woodWeighed, value: w.weighed },
    ...(core.moisture === "" ? [] : [{ label: w.moisture, value: core.moisture }]),
  ];
}
