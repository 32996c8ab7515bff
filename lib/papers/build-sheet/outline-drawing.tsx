/** Drawing 1: plan outline at true scale, side profile on the same axis, and every length and width as a number. */
import { Text, View } from "@react-pdf/renderer";
import words from "#content/copy/papers.json";
import { fill } from "#engine/units";
import type { DrawingData } from "#papers/parts/facts";
import { MONO } from "#papers/parts/fonts";
import { mm, numberText, plainNumber } from "#papers/parts/format";
import { PENCIL } from "#papers/parts/theme";
import { axisScale } from "../parts/drawing";
import { Rows, WriteBox } from "../parts/table";
import { PlanView } from "./plan-view";
import type { BuildSheetData } from "./printed";
import { ProfileView } from "./profile-view";

const w = words.buildSheet.shape;

export function OutlineDrawing({ data, innerPt }: { readonly data: BuildSheetData; readonly innerPt: number }) {
  const { drawing } = data;
  const scale = axisScale(drawing.lengthMm, 22, innerPt - 44);
  return (
    <View>
      <PlanView d={drawing} scale={scale} innerPt={innerPt} />
      <ProfileView d={drawing} scale={scale} innerPt={innerPt} />
      <View style={{ flexDirection: "row", marginTop: 4 }}>
        <View style={{ flexGrow: 1, flexBasis: 0, marginRight: 12 }}>
          <Rows rows={lengthRows(drawing)} labelWidth={118} size={8} />
        </View>
        <View style={{ flexGrow: 1, flexBasis: 0, marginRight: 12 }}>
          <Rows rows={edgeRows(drawing)} labelWidth={100} size={8} />
        </View>
        <View style={{ flexGrow: 1, flexBasis: 0 }}>
          <Rows rows={placeRows(data)} labelWidth={84} size={8} />
        </View>
      </View>
      <Checks d={drawing} />
    </View>
  );
}

/** Boxes for what is measured before the lay-up, when a wrong width can still be put right. */
function Checks({ d }: { readonly d: DrawingData }) {
  const items = [
    [w.shoulder, plainNumber(d.shoulder.widthMm, 1)],
    [w.waist, plainNumber(d.waist.widthMm, 1)],
    [w.heel, plainNumber(d.heel.widthMm, 1)],
    [w.length, plainNumber(d.lengthMm)],
    [w.flipTest, "0.5"],
  ] as const;
  return (
    <View style={{ marginTop: 8 }} wrap={false}>
      <Text style={{ fontSize: 9.5, fontWeight: 600 }}>
        {w.checks} <Text style={{ fontSize: 7.5, fontWeight: 400, color: PENCIL }}>{w.checksNote}</Text>
      </Text>
      <View style={{ flexDirection: "row", marginTop: 2 }}>
        {items.map(([label, target]) => (
          <View key={label} style={{ flexGrow: 1, flexBasis: 0, marginRight: 8 }}>
            <Text style={{ fontSize: 8 }}>
              {label} <Text style={{ fontFamily: MONO, fontWeight: 600 }}>{target}</Text>
            </Text>
            <View style={{ flexDirection: "row" }}>
              <WriteBox width="48%" height={18} hint="L" />
              <View style={{ width: "4%" }} />
              <WriteBox width="48%" height={18} hint="R" />
            </View>
          </View>
        ))}
      </View>
    </View>
  );
}

function lengthRows(d: DrawingData) {
  return [
    {
      label: w.widths,
      value: [d.shoulder, d.waist, d.heel].map((w) => plainNumber(w.widthMm, 1)).join(" – "),
    },
    { label: w.widthAtMount, value: mm(d.widthAtMountMm, 1) },
    { label: w.waistPlace, value: mm(d.waist.xMm) },
    {
      label: w.sidecutRadius,
      value: fill(w.radii, {
        sidecutRadiusM: numberText(d.sidecutRadiusM, 2),
        federationRadiusM: numberText(d.federationRadiusM, 2),
      }),
    },
    { label: w.projectedLength, value: mm(d.projectedLengthMm) },
  ];
}

function edgeRows(d: DrawingData) {
  return [
    { label: w.edgeWrap, value: d.edge.wrap === "full" ? w.full : w.partial },
    {
      label: w.edgeSteel,
      value:
        d.edge.wrap === "full"
          ? fill(w.edgeFull, { lengthMm: mm(d.edge.lengthMm) })
          : fill(w.edgePartial, { lengthMm: mm(d.edge.lengthMm) }),
    },
    {
      label: w.edgeFromTo,
      value:
        d.edge.wrap === "full"
          ? w.allRound
          : fill(w.edgeSpan, { fromMm: numberText(d.edge.fromMm), toMm: numberText(d.edge.toMm) }),
    },
    { label: w.baseSheet, value: fill(w.baseOutline, { edgeWidthMm: plainNumber(d.edgeWidthMm, 1) }) },
    { label: w.planArea, value: fill(w.areaEachSki, { areaM2: numberText(d.planAreaMm2 / 1e6, 4) }) },
  ];
}

function windowText({ fromMm, toMm, halfWidthMm }: DrawingData["windows"][number]): string {
  return fill(w.windowSpan, {
    fromMm: plainNumber(fromMm),
    toMm: plainNumber(toMm),
    widthMm: plainNumber(2 * halfWidthMm),
  });
}

function placeRows({ drawing: d }: BuildSheetData) {
  const offset = d.mountOffsetMm;
  const moved =
    offset === 0
      ? w.mountOwn
      : fill(w.mountMoved, { offsetMm: plainNumber(Math.abs(offset)), direction: offset > 0 ? w.forward : w.back });
  return [
    { label: w.mountLine, value: fill(w.mountPlace, { mountMm: mm(d.mountMm), moved }), isOption: offset !== 0 },
    { label: w.mouldCamber, value: mm(d.mouldCamberMm, 1) },
    { label: w.finishedCamber, value: mm(d.camberMm, 1) },
    { label: w.tipTailHeight, value: `${mm(d.tipRiseMm)}, ${mm(d.tailRiseMm)}` },
    ...(d.windows.length === 0
      ? []
      : [
          {
            label: w.clearWindows,
            value: d.windows
              .map((window, i) => fill(w.windowNumbered, { number: i + 1, span: windowText(window) }))
              .join("; "),
            isOption: true,
          },
        ]),
    { label: w.corners, value: w.cornersNote },
  ];
}
