/** What is ordered, as name and value, in the sheet's words: for quote, progress and the shop's pages. */
import { type BuildCatalog, coreLabel, type PairSpec } from "#engine/configuration";
import { textForPeople } from "#engine/units";
import type { Fact } from "./facts";
import type { SheetWords } from "./sheet/words";

export function specFacts(spec: PairSpec, build: BuildCatalog, words: SheetWords): readonly Fact[] {
  const label = (items: readonly { readonly id: string; readonly label: string }[], id: string | undefined) =>
    items.find((each) => each.id === id)?.label ?? id ?? "";
  const model = build.models.find((each) => each.id === spec.model);
  const flexClass = build.flexClasses.find((each) => spec.flexRatio >= each.from && spec.flexRatio < each.below);
  const added = spec.reinforcements.map((id) => label(build.reinforcements, id));
  const plate = build.rules.plate.choices?.find((each) => each.id === spec.plate);
  if (plate) added.push(plate.label);
  if (spec.lightening && build.rules.lightening) added.push(build.rules.lightening.label);
  if (spec.tipTailProtectors) added.push(words.reinforcement.protectors);
  const { graphic, base, mount, finish } = spec;
  const layouts: Readonly<Record<string, { readonly label: string }>> = words.graphic.layouts;
  return [
    { name: "Model", value: model?.name ?? spec.model },
    { name: words.ski.length, value: `${spec.lengthCm} cm`, measure: true },
    {
      name: words.ski.flex,
      value: `${textForPeople(spec.flexRatio, 2)} ${words.ski.flexUnit}${flexClass ? `, class ${flexClass.number}` : ""}`,
      measure: true,
    },
    { name: words.sections.core, value: coreLabel(spec.core, build) },
    { name: words.sections.reinforcement, value: added.join(", ") || words.reinforcement.none },
    {
      name: words.sections.graphic,
      value: `${graphic.kind === "own" ? ownPicture(graphic, words) : label(build.houseGraphics, graphic.house)}, ${(layouts[graphic.layout]?.label ?? graphic.layout).toLowerCase()}`,
    },
    ...(graphic.text ? [{ name: words.graphic.text, value: `“${graphic.text.text}”` }] : []),
    ...graphic.windows.map((window, i) => ({
      name: i === 0 ? "Window" : `Window ${i + 1}`,
      value: `${window.fromXMm}–${window.toXMm} mm from the tip, ${2 * window.halfWidthMm} mm wide`,
      measure: true,
    })),
    {
      name: words.graphic.base,
      value: `left ${label(build.baseColours, base.left).toLowerCase()}, right ${label(build.baseColours, base.right).toLowerCase()}`,
    },
    ...(base.inlay === "none"
      ? []
      : [{ name: words.graphic.inlay, value: base.inlayText ?? words.graphic.inlays[base.inlay] }]),
    {
      name: "Mount line",
      value:
        mount.offsetMm === 0 ? "the model's own" : `${mount.offsetMm > 0 ? "+" : "−"}${Math.abs(mount.offsetMm)} mm`,
    },
    ...(mount.bootSoleMm ? [{ name: words.ski.bootSole, value: `${mount.bootSoleMm} mm`, measure: true }] : []),
    {
      name: "Edges",
      value: `base ${textForPeople(finish.baseBevelDeg, 2)}°, side ${textForPeople(finish.sideAngleDeg, 1)}°`,
      measure: true,
    },
    { name: "Structure", value: words.structures[finish.structure] },
  ];
}

/** With how it is laid out, where it does not fill the skis. */
function ownPicture({ arrangement }: PairSpec["graphic"], { graphic }: SheetWords): string {
  return arrangement === undefined || arrangement === "fill"
    ? graphic.own
    : `${graphic.own} (${graphic.arrangements[arrangement].label.toLowerCase()})`;
}
