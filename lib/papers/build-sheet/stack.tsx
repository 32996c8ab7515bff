/** The lay-up picture: layers as they lie, base at the bottom, with fibre directions and a tick for each ski. */
import { G, Line, Path, Rect, Svg, Text, View } from "@react-pdf/renderer";
import words from "#content/copy/papers.json";
import { MONO } from "#papers/parts/fonts";
import { numberText } from "#papers/parts/format";
import { HAIRLINE, INK, PENCIL, RULE, THIN, TINT, WHITE } from "#papers/parts/theme";
import { hatch } from "../parts/drawing";
import { OptionTag } from "../parts/table";
import type { StackLayer } from "./printed";

const w = words.buildSheet.stack;

const BAND_WIDTH = 104;
const ROW_HEIGHT = 23;
const LINES_WIDTH = 40;

/** "1–4 6–8": line numbers with those that follow each other told by the first and the last. */
function runs(lines: readonly number[]): string {
  const starts = lines.filter((line) => !lines.includes(line - 1));
  return starts
    .map((from) => {
      let to = from;
      while (lines.includes(to + 1)) to += 1;
      return from === to ? String(from) : `${from}–${to}`;
    })
    .join(" ");
}

export function StackPicture({ stack }: { readonly stack: readonly StackLayer[] }) {
  const topFirst = stack.map((layer, index) => ({ layer, order: index + 1 })).reverse();
  const hasLines = stack.some(({ lines }) => lines.length > 0);
  return (
    <View style={{ borderTopWidth: THIN, borderTopColor: INK }}>
      <View style={{ flexDirection: "row", borderBottomWidth: THIN, borderBottomColor: INK }}>
        <Head text="" width={20} />
        <Head text={w.top} width={BAND_WIDTH + 8} />
        <Head text={w.layer} flex={hasLines ? 1.15 : 1.5} />
        <Head text={w.where} flex={1} />
        {hasLines ? <Head text={w.parts} width={LINES_WIDTH} /> : null}
        <Head text={w.mm} width={32} />
        <Head text={w.leftIn} width={24} />
        <Head text={w.rightIn} width={24} />
      </View>
      {topFirst.map(({ layer, order }) => (
        <LayerRow key={order} layer={layer} order={order} hasLines={hasLines} />
      ))}
      <Text style={{ fontSize: 7, color: PENCIL }}>{w.bottom}</Text>
    </View>
  );
}

function Head({ text, width, flex }: { readonly text: string; readonly width?: number; readonly flex?: number }) {
  return (
    <Text style={{ fontSize: 7, color: PENCIL, ...(width ? { width } : { flexGrow: flex ?? 1, flexBasis: 0 }) }}>
      {text}
    </Text>
  );
}

interface LayerRowProps {
  readonly layer: StackLayer;
  readonly order: number;
  /** Whether the page tells numbers of the shop's list. */
  readonly hasLines: boolean;
}

function LayerRow({ layer, order, hasLines }: LayerRowProps) {
  return (
    <View
      style={{
        flexDirection: "row",
        alignItems: "center",
        minHeight: ROW_HEIGHT,
        borderBottomWidth: HAIRLINE,
        borderBottomColor: RULE,
      }}
      wrap={false}
    >
      <Text style={{ width: 20, fontFamily: MONO, fontWeight: 600, fontSize: 9 }}>{order}</Text>
      <View style={{ width: BAND_WIDTH + 8 }}>
        <Band layer={layer} />
      </View>
      <View style={{ flexGrow: hasLines ? 1.15 : 1.5, flexBasis: 0, paddingRight: 4 }}>
        <View style={{ flexDirection: "row", alignItems: "center" }}>
          <Text style={{ fontSize: 8.5, fontWeight: 600, marginRight: 4 }}>{layer.name}</Text>
          {layer.isOption ? <OptionTag /> : null}
        </View>
        <Text style={{ fontSize: 7.5, lineHeight: 1.15 }}>{layer.detail}</Text>
      </View>
      <Text style={{ flexGrow: 1, flexBasis: 0, fontSize: 7.5, paddingRight: 8, lineHeight: 1.15 }}>
        {layer.extent}
      </Text>
      {hasLines ? (
        <Text style={{ width: LINES_WIDTH, fontFamily: MONO, fontSize: 7, paddingRight: 4 }}>{runs(layer.lines)}</Text>
      ) : null}
      <Text style={{ width: 32, fontFamily: MONO, fontSize: 8 }}>
        {layer.thicknessMm === null ? w.drawn : numberText(layer.thicknessMm, 2)}
      </Text>
      <TickBox />
      <TickBox />
    </View>
  );
}

function TickBox() {
  return <View style={{ width: 13, height: 13, marginRight: 11, borderWidth: THIN, borderColor: INK }} />;
}

/** The layer as a strip of paper: its hatching says what it is, its arrows say where the fibres run. */
function Band({ layer }: { readonly layer: StackLayer }) {
  const height = layer.role === "core" ? 18 : layer.role === "rubber" ? 6 : 13;
  const y = (ROW_HEIGHT - 3 - height) / 2;
  const isDark = layer.role === "edge" || layer.role === "plate" || layer.role === "rubber";
  return (
    <Svg width={BAND_WIDTH} height={ROW_HEIGHT - 3} viewBox={`0 0 ${BAND_WIDTH} ${ROW_HEIGHT - 3}`}>
      <Body layer={layer} y={y} height={height} isDark={isDark} />
      <Directions
        fibresDeg={layer.fibresDeg}
        cx={spanOf(layer).x + spanOf(layer).width / 2}
        cy={y + height / 2}
        isBanded={layer.lies === "bands"}
        reach={spanOf(layer).width / 2 - 4}
      />
    </Svg>
  );
}

function Body({
  layer,
  y,
  height,
  isDark,
}: {
  readonly layer: StackLayer;
  readonly y: number;
  readonly height: number;
  readonly isDark: boolean;
}) {
  const { x, width } = spanOf(layer);
  if (layer.role === "edge") {
    return (
      <G>
        <Rect x={x} y={y} width={width} height={2.2} fill={INK} />
        <Rect x={x} y={y + height - 2.2} width={width} height={2.2} fill={INK} />
      </G>
    );
  }
  if (layer.lies === "ends") {
    const piece = { y, width: width * 0.12, height, fill: isDark ? PENCIL : WHITE, stroke: INK, strokeWidth: THIN };
    return (
      <G>
        <Rect x={x} {...piece} />
        <Rect x={x + width - piece.width} {...piece} />
      </G>
    );
  }
  return (
    <G>
      <Rect
        x={x}
        y={y}
        width={width}
        height={height}
        fill={isDark ? PENCIL : layer.role === "core" ? TINT : WHITE}
        stroke={INK}
        strokeWidth={THIN}
      />
      {layer.role === "metal" ? <Path d={hatch(x, y, width, height, 3)} stroke={INK} strokeWidth={HAIRLINE} /> : null}
      {layer.role === "base" ? (
        <Path d={hatch(x, y, width, height, 6, -1)} stroke={PENCIL} strokeWidth={HAIRLINE} />
      ) : null}
      {layer.role === "core" ? <Grain x={x} y={y} width={width} height={height} /> : null}
    </G>
  );
}

/** A layer that lies only under the binding is drawn short, one over a stretch of the ski where it lies. */
function spanOf(layer: StackLayer): { readonly x: number; readonly width: number } {
  const whole = BAND_WIDTH - 2;
  if (typeof layer.lies === "object") {
    const { fromShare, toShare } = layer.lies;
    return { x: 1 + fromShare * whole, width: (toShare - fromShare) * whole };
  }
  return layer.lies === "under-binding" ? { x: BAND_WIDTH * 0.34, width: BAND_WIDTH * 0.34 } : { x: 1, width: whole };
}

function Grain({
  x,
  y,
  width,
  height,
}: {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}) {
  return (
    <G>
      {[0.2, 0.35, 0.5, 0.65, 0.8].map((share) => (
        <Line
          key={share}
          x1={x}
          x2={x + width}
          y1={y + height * share}
          y2={y + height * share}
          stroke={RULE}
          strokeWidth={HAIRLINE}
        />
      ))}
    </G>
  );
}

function Directions({
  fibresDeg,
  cx,
  cy,
  isBanded,
  reach,
}: {
  readonly fibresDeg: readonly number[];
  readonly cx: number;
  readonly cy: number;
  readonly isBanded: boolean;
  /** Half length that an arrow along the ski may take. */
  readonly reach: number;
}) {
  if (fibresDeg.length === 1 && fibresDeg[0] === 0) {
    const offsets = isBanded ? [-3, 3] : [0];
    return (
      <G>
        {offsets.map((dy) => (
          <FibreArrow key={dy} cx={cx} cy={cy + dy} angle={0} half={Math.min(38, reach)} />
        ))}
      </G>
    );
  }
  return (
    <G>
      {fibresDeg.map((angle) => (
        <FibreArrow
          key={angle}
          cx={cx}
          cy={cy}
          angle={angle}
          half={angle === 0 ? Math.min(26, reach) : angle === 90 ? 6 : 8}
        />
      ))}
    </G>
  );
}

/** Double-headed arrow; 0° runs along the ski. */
function FibreArrow({
  cx,
  cy,
  angle,
  half,
}: {
  readonly cx: number;
  readonly cy: number;
  readonly angle: number;
  readonly half: number;
}) {
  const rad = (-angle * Math.PI) / 180;
  const [dx, dy] = [Math.cos(rad), Math.sin(rad)];
  const head = (s: 1 | -1) => {
    const [tx, ty] = [cx + s * dx * half, cy + s * dy * half];
    const [bx, by] = [tx - s * dx * 3.4, ty - s * dy * 3.4];
    const side = (k: number) => `${(bx - dy * k).toFixed(2)} ${(by + dx * k).toFixed(2)}`;
    return `M${tx.toFixed(2)} ${ty.toFixed(2)}L${side(1.1)}L${side(-1.1)}Z`;
  };
  return (
    <G>
      <Line
        x1={cx - dx * half}
        y1={cy - dy * half}
        x2={cx + dx * half}
        y2={cy + dy * half}
        stroke={INK}
        strokeWidth={0.7}
      />
      <Path d={head(1) + head(-1)} fill={INK} />
    </G>
  );
}
