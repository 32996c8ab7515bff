/** Every value at the hairline, in one place that fits a phone; of several builds a column each, with the difference. */
import { textForPeople } from "#engine/units";
import { type AxisBuild, axisQuantities, axisReadout, readingFromMount } from "./axis-builds";
import { LineKey, lookOf } from "./axis-looks";

export function fromMountText(fromMountMm: number): string {
  const mm = Math.round(fromMountMm);
  return `${mm > 0 ? "+" : mm < 0 ? "−" : ""}${Math.abs(mm)} mm`;
}

/** "at the mount line", "120 mm behind the mount line". */
function whereInWords(fromMountMm: number): string {
  const mm = Math.round(fromMountMm);
  if (mm === 0) return "at the mount line";
  return `${Math.abs(mm)} mm ${mm < 0 ? "ahead of" : "behind"} the mount line`;
}

/** What a screen reader says of one station. */
export function spokenReading(builds: readonly AxisBuild[], fromMountMm: number): string {
  const isAlone = builds.length === 1;
  const values = builds.map((build, index) => {
    const reading = readingFromMount(build, fromMountMm);
    const name = isAlone ? "" : `${lookOf(index).letter}, ${build.label}: `;
    if (!reading) return `${name}has ended here`;
    const [, ...others] = axisQuantities;
    const each = others.map((q) => `${q.title} ${textForPeople(q.value(reading), q.decimals)} ${q.unit}`);
    return `${name}${textForPeople(reading.widthMm, 1)} mm wide, ${each.join(", ")}`;
  });
  const fromTip = isAlone && builds[0] ? `${Math.round(builds[0].mountMm + fromMountMm)} mm from the tip, ` : "";
  return `${fromTip}${whereInWords(fromMountMm)}: ${values.join("; ")}`;
}

interface ReadoutProps {
  readonly builds: readonly AxisBuild[];
  readonly fromMountMm: number;
}

export function AxisReadout({ builds, fromMountMm }: ReadoutProps) {
  const [main, ...others] = builds;
  if (!main) return null;
  return others.length === 0 ? (
    <ReadoutOfOne build={main} fromMountMm={fromMountMm} />
  ) : (
    <ReadoutOfSeveral builds={builds} fromMountMm={fromMountMm} />
  );
}

function ReadoutOfOne({ build, fromMountMm }: { readonly build: AxisBuild; readonly fromMountMm: number }) {
  const items: readonly (readonly [string, string])[] = [
    ["From the tip", `${Math.round(build.mountMm + fromMountMm)} mm`],
    ["From the mount line", fromMountText(fromMountMm)],
    ...axisReadout([build], fromMountMm).map(
      ({ quantity, cells }) => [quantity.title, `${cells[0]?.value ?? ""} ${quantity.unit}`] as const,
    ),
  ];
  return (
    <dl className="mt-4 grid grid-cols-2 gap-x-8 border-t border-rule text-sm sm:grid-cols-3">
      {items.map(([name, value]) => (
        <div key={name} className="flex flex-wrap items-baseline justify-between gap-x-3 border-b border-rule py-1">
          <dt className="text-pencil">{name}</dt>
          <dd className="measure">{value}</dd>
        </div>
      ))}
    </dl>
  );
}

function ReadoutOfSeveral({ builds, fromMountMm }: ReadoutProps) {
  return (
    <table className="mt-4 w-full border-collapse border-t border-rule text-sm">
      <caption className="py-1.5 text-left">
        <span className="text-pencil">Read </span>
        {whereInWords(fromMountMm)}
        <span className="text-pencil">; differences are to {lookOf(0).letter}</span>
      </caption>
      <thead>
        <tr className="border-b border-control">
          <td />
          {builds.map((build, index) => (
            <th
              key={lookOf(index).letter}
              scope="col"
              className="w-[22%] py-1 pl-2 text-right align-bottom font-medium"
            >
              <LineKey index={index} />
              <span className="block text-xs font-normal text-pencil max-sm:sr-only">{build.label}</span>
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {axisReadout(builds, fromMountMm).map(({ quantity, cells }) => (
          <tr key={quantity.title} className="border-b border-rule">
            <th scope="row" className="py-1 pr-1 text-left font-normal text-pencil">
              <span className="max-sm:hidden">{quantity.title}, </span>
              <span className="sm:hidden">{quantity.short} </span>
              {quantity.unit}
            </th>
            {cells.map((cell, index) => (
              <td key={lookOf(index).letter} className="measure py-1 pl-2 text-right">
                {cell ? cell.value : <span className="font-sans text-xs text-pencil">ended</span>}
                {cell?.difference ? (
                  <span className="text-xs text-pencil max-sm:block sm:ml-3 sm:inline-block sm:min-w-16">
                    {cell.difference}
                  </span>
                ) : null}
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
