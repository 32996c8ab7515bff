/** How twist is read: clamp, arm and weight on the ski from above, with the shop's own torque, arm and span. */
import { fill } from "#app/_ui/words.ts";
import words from "#content/copy/learning.json";
import { textForPeople } from "#engine/units";
import type { BenchRow, PairBenchView } from "#services";

const w = words.bench;
type TwistTest = NonNullable<PairBenchView["twistTest"]>;

/** Of the drawing, in its own units. */
const view = { width: 320, height: 150, skiTop: 40, skiHeight: 18, left: 12 } as const;

export function TwistBench(props: {
  readonly test: TwistTest;
  readonly lengthMm: number;
  readonly rows: readonly BenchRow[];
}) {
  const { test, lengthMm, rows } = props;
  const target = rows.find(({ measure }) => measure === "twistNmPerDeg")?.target;
  const facts = {
    torqueNm: textForPeople(test.torqueNm, 1),
    armMm: textForPeople(test.armMm, 0),
    weightN: textForPeople((1000 * test.torqueNm) / test.armMm, 1),
    clampMm: textForPeople(test.clampMm, 0),
    armAtMm: textForPeople(test.armAtMm, 0),
    spanMm: textForPeople(Math.abs(test.clampMm - test.armAtMm), 0),
  };
  return (
    <figure className="grid max-w-measure gap-2">
      <figcaption className="font-semibold">{w.twist}</figcaption>
      <Drawing test={test} lengthMm={lengthMm} facts={facts} />
      {target ? (
        <p className="text-pencil">
          {fill(w.twistText, {
            ...facts,
            angle: textForPeople(test.torqueNm / target, 1),
            twist: textForPeople(target, 2),
          })}
        </p>
      ) : null}
      <p>{w.twistCaution}</p>
    </figure>
  );
}

function Drawing(props: {
  readonly test: TwistTest;
  readonly lengthMm: number;
  readonly facts: Readonly<Record<string, string>>;
}) {
  const { test, lengthMm, facts } = props;
  const scale = (view.width - 2 * view.left) / lengthMm;
  const at = (xMm: number) => view.left + xMm * scale;
  const [clamp, arm] = [at(test.clampMm), at(test.armAtMm)];
  const middle = view.skiTop + view.skiHeight / 2;
  const end = Math.min(view.height - 22, middle + Math.max(30, test.armMm * scale));
  return (
    <svg
      viewBox={`0 0 ${view.width} ${view.height}`}
      role="img"
      aria-label={fill(w.twistDrawing, facts)}
      className="w-full text-ink"
      fill="none"
      stroke="currentColor"
      fontSize="11"
    >
      <rect x={view.left} y={view.skiTop} width={view.width - 2 * view.left} height={view.skiHeight} rx={9} />
      <rect x={clamp - 7} y={view.skiTop - 5} width={14} height={view.skiHeight + 10} fill="currentColor" />
      <path d={`M${arm} ${view.skiTop - 5} V${end}`} strokeWidth={3} />
      <path d={`M${arm} ${end} v14 m-4 -5 l4 5 l4 -5`} />
      <path
        d={`M${Math.min(arm, clamp)} 24 H${Math.max(arm, clamp)} M${arm} 19 v10 M${clamp} 19 v10`}
        strokeWidth={0.75}
      />
      <g fill="currentColor" stroke="none">
        <text x={(arm + clamp) / 2} y={18} textAnchor="middle">
          {fill(w.twistSpan, facts)}
        </text>
        <text x={clamp} y={view.skiTop + view.skiHeight + 20} textAnchor="middle">
          {w.twistClamp}
        </text>
        <text x={arm + 8} y={(view.skiTop + view.skiHeight + end) / 2 + 4}>
          {fill(w.twistArm, facts)}
        </text>
        <text x={arm + 10} y={end + 12}>
          {fill(w.twistWeight, facts)}
        </text>
      </g>
    </svg>
  );
}
