/** Drawing 1: plan outline at true scale, side profile on the same axis, and every length and width as a number. */
import { Text, View } from "@react-pdf/renderer";
import type { DrawingData } from "#papers/parts/facts";
import { MONO } from "#papers/parts/fonts";
import { mm, numberText, plainNumber } from "#papers/parts/format";
import { PENCIL } from "#papers/parts/theme";
import { axisScale } from "../parts/drawing";
import { Rows, WriteBox } from "../parts/table";
import type { BuildSheetData } from "./facts";
import { PlanView } from "./plan-view";
import { ProfileView } from "./profile-view";

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
    ["Shoulder", plainNumber(d.shoulder.widthMm, 1)],
    ["Waist", plainNumber(d.waist.widthMm, 1)],
    ["Heel", plainNumber(d.heel.widthMm, 1)],
    ["Length", plainNumber(d.lengthMm)],
    ["Flip test, at most", "0.5"],
  ] as const;
  return (
    <View style={{ marginTop: 8 }} wrap={false}>
      <Text style={{ fontSize: 9.5, fontWeight: 600 }}>
        Bases with edges set, before lay-up
        <Text style={{ fontSize: 7.5, fontWeight: 400, color: PENCIL }}>
          {" "}
          mm over the steel; flip test: base turned over on its own outline; lay both bases on the drawing of their own
          length
        </Text>
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
      label: "Shoulder – waist – heel, mm",
      value: [d.shoulder, d.waist, d.heel].map((w) => plainNumber(w.widthMm, 1)).join(" – "),
    },
    { label: "Width at the mount line", value: mm(d.widthAtMountMm, 1) },
    { label: "Waist, from the tip", value: mm(d.waist.xMm) },
    {
      label: "Sidecut radius",
      value: `${numberText(d.sidecutRadiusM, 2)} m (one circle); S–H–W formula ${numberText(d.federationRadiusM, 2)} m`,
    },
    { label: "Projected length", value: mm(d.projectedLengthMm) },
  ];
}

function edgeRows(d: DrawingData) {
  return [
    { label: "Edge wrap", value: d.edge.wrap === "full" ? "full" : "partial" },
    {
      label: "Edge steel",
      value: d.edge.wrap === "full" ? `${mm(d.edge.lengthMm)} round each ski` : `2 × ${mm(d.edge.lengthMm)} each ski`,
    },
    {
      label: "Edge from – to",
      value:
        d.edge.wrap === "full"
          ? "all round"
          : `${numberText(d.edge.fromMm)} – ${numberText(d.edge.toMm)} mm from the tip`,
    },
    { label: "Base sheet", value: `this outline less ${plainNumber(d.edgeWidthMm, 1)} mm where steel runs` },
    { label: "Plan area", value: `${numberText(d.planAreaMm2 / 1e6, 4)} m² a ski` },
  ];
}

function windowText(w: DrawingData["windows"][number]): string {
  return `${plainNumber(w.fromMm)} to ${plainNumber(w.toMm)} mm from the tip, ${plainNumber(2 * w.halfWidthMm)} mm wide`;
}

function placeRows({ drawing: d }: BuildSheetData) {
  const offset = d.mountOffsetMm;
  const moved =
    offset === 0
      ? "the model's own"
      : `${plainNumber(Math.abs(offset))} mm ${offset > 0 ? "forward" : "back"} of the model's`;
  return [
    { label: "Mount line", value: `${mm(d.mountMm)} from the tip: ${moved}`, isOption: offset !== 0 },
    { label: "Mould camber", value: mm(d.mouldCamberMm, 1) },
    { label: "Finished camber", value: mm(d.camberMm, 1) },
    { label: "Tip, tail height", value: `${mm(d.tipRiseMm)}, ${mm(d.tailRiseMm)}` },
    ...(d.windows.length === 0
      ? []
      : [
          {
            label: "Clear windows",
            value: d.windows.map((w, i) => `${i + 1}: ${windowText(w)}`).join("; "),
            isOption: true,
          },
        ]),
    { label: "Corners", value: "shoulder and heel rounded R 150 on the machine file" },
  ];
}
