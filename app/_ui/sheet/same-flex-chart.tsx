/** All builds of one flex as dots, price over mass; what nothing beats is filled and joined. Its text is the table. */
import { linearScale } from "#app/_visuals/linear-scale.ts";
import type { SameFlexOption } from "#engine/assessment";
import { moneyText } from "../money";
import { fill } from "../words";
import type { SheetWords } from "./words";

const size = { width: 360, height: 210, left: 56, right: 12, top: 10, bottom: 40 } as const;

interface Props {
  readonly options: readonly SameFlexOption[];
  readonly unbeaten: ReadonlySet<SameFlexOption>;
  readonly words: SheetWords;
}

function extent(values: readonly number[]): [number, number] {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  return low === high ? [low - 1, high + 1] : [low, high];
}

export function SameFlexChart({ options, unbeaten, words }: Props) {
  const w = words.sameFlex;
  const x = linearScale(extent(options.map((each) => each.massG)), [size.left + 8, size.width - size.right]);
  const y = linearScale(extent(options.map((each) => each.priceCents)), [size.height - size.bottom - 8, size.top]);
  const front = [...unbeaten].toSorted((a, b) => a.massG - b.massG);
  const floor = size.height - size.bottom;
  return (
    <figure className="max-w-lg">
      <svg
        viewBox={`0 0 ${size.width} ${size.height}`}
        role="img"
        aria-label={fill(w.chart, { count: options.length })}
        className="w-full font-mono text-[10px]"
      >
        {y.ticks(4).map((tick) => (
          <g key={tick}>
            <path d={`M${size.left} ${y(tick)}H${size.width - size.right}`} stroke="var(--rule)" />
            <text x={size.left - 6} y={y(tick)} dy="0.32em" textAnchor="end" fill="var(--pencil)">
              {moneyText(tick, "short")}
            </text>
          </g>
        ))}
        {x.ticks(5).map((tick) => (
          <g key={tick}>
            <path d={`M${x(tick)} ${floor}v5`} stroke="var(--control)" />
            <text x={x(tick)} y={floor + 16} textAnchor="middle" fill="var(--pencil)">
              {tick}
            </text>
          </g>
        ))}
        <path d={`M${size.left} ${size.top}V${floor}H${size.width - size.right}`} stroke="var(--control)" fill="none" />
        <text x={size.width - size.right} y={size.height - 6} textAnchor="end" fill="var(--pencil)">
          {w.chartMass}
        </text>
        <Dots options={options.filter((each) => !unbeaten.has(each) && !each.isCurrent)} x={x} y={y} />
        <path
          d={front.map((each, i) => `${i === 0 ? "M" : "L"}${x(each.massG)} ${y(each.priceCents)}`).join("")}
          fill="none"
          stroke="var(--ink)"
          strokeDasharray="4 3"
        />
        {front.map((each) => (
          <circle
            key={[each.core, ...each.reinforcements].join(" ")}
            cx={x(each.massG)}
            cy={y(each.priceCents)}
            r={4}
            fill="var(--ink)"
          />
        ))}
        {options
          .filter((each) => each.isCurrent)
          .map((each) => (
            <path
              key="now"
              d={`M${x(each.massG)} ${y(each.priceCents) - 9}l9 9l-9 9l-9-9z`}
              fill="none"
              stroke="var(--tarn)"
              strokeWidth={2}
            />
          ))}
      </svg>
      <figcaption className="text-sm text-pencil">{w.chartKey}</figcaption>
    </figure>
  );
}

type Scale = (value: number) => number;

function Dots({
  options,
  x,
  y,
}: {
  readonly options: readonly SameFlexOption[];
  readonly x: Scale;
  readonly y: Scale;
}) {
  return options.map((each) => (
    <circle
      key={[each.core, ...each.reinforcements].join(" ")}
      cx={x(each.massG)}
      cy={y(each.priceCents)}
      r={2.5}
      fill="none"
      stroke="var(--pencil)"
    />
  ));
}
