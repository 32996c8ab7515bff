/**
 * A core of one's own: any of the shop's woods at C, I, M and O, mirrored about the centre line and twinned like every core.
 * Its id says its woods, so a spec that names it is complete and recomputes for ever.
 *
 * Rules (common practice, no source): dense wood under the screws, woods that the shop's glue holds, and for a core that is
 * seen only woods that the shop selects. The limits are the catalogue's.
 */
import { woodById } from "#engine/materials";
import { fill } from "#engine/units";
import {
  type BuildCatalog,
  type CoreBlend,
  type CoreStrips,
  modelUses,
  type OwnCoreRules,
  type SpecConflict,
  type SpecWay,
} from "./types";

const OWN = /^own:([a-z0-9-]+)\.([a-z0-9-]+)\.([a-z0-9-]+)\.([a-z0-9-]+)(:window)?$/;
const WINDOW = ":window";
/** Ways out that a refused wood is answered with, at most. */
const MOST_WAYS = 3;

/** Woods from the centre line out, and whether they are selected to be seen. */
export interface OwnCore {
  readonly strips: CoreStrips;
  readonly isWindowGrade: boolean;
}

/** "own:aspen.ash.aspen.aspen", with ":window" behind it when the wood is selected to be seen. */
export function ownCoreId({ strips: { C, I, M, O }, isWindowGrade }: OwnCore): string {
  return `own:${C}.${I}.${M}.${O}${isWindowGrade ? WINDOW : ""}`;
}

/** @returns the woods that an own core's id says, or null for any other id */
export function ownCoreOf(id: string): OwnCore | null {
  const [, C, I, M, O, window] = OWN.exec(id) ?? [];
  if (C === undefined || I === undefined || M === undefined || O === undefined) return null;
  return { strips: { C, I, M, O }, isWindowGrade: window !== undefined };
}

/** The id to order these woods by: the shop's own blend where it is the same, so that nobody pays for a name. */
export function coreIdFor(core: OwnCore, { blends }: Pick<BuildCatalog, "blends">): string {
  const { C, I, M, O } = core.strips;
  const same = blends.find(
    ({ strips, isWindowGrade }) =>
      strips.C === C && strips.I === I && strips.M === M && strips.O === O && isWindowGrade === core.isWindowGrade,
  );
  return same?.id ?? ownCoreId(core);
}

/** An own core as a blend like any other; null when the id is no own core, or names a wood that this shop does not offer. */
export function ownBlend(
  id: string,
  { ownCore, materials }: Pick<BuildCatalog, "ownCore" | "materials">,
): CoreBlend | null {
  const own = ownCoreOf(id);
  if (own === null || ownCore === undefined) return null;
  const woods = [own.strips.C, own.strips.I, own.strips.M, own.strips.O];
  if (woods.some((wood) => !ownCore.woods.includes(wood))) return null;
  const strips = woods.map((wood) => woodById(materials, wood).label).join(", ");
  return {
    id,
    label: fill(own.isWindowGrade ? ownCore.windowLabel : ownCore.label, { strips }),
    summary: ownCore.summary,
    strips: own.strips,
    isWindowGrade: own.isWindowGrade,
    priceCode: own.isWindowGrade ? ownCore.windowPriceCode : ownCore.priceCode,
    forUses: modelUses,
  };
}

/** What of an own core the shop does not build, each with the woods that would do; empty for the shop's own blends. */
export function ownCoreConflicts(blend: CoreBlend, catalog: BuildCatalog): SpecConflict[] {
  const { ownCore } = catalog;
  const own = ownCoreOf(blend.id);
  if (own === null || ownCore === undefined) return [];
  return [
    ...screwConflicts(own, ownCore, catalog),
    ...woodConflicts(own, ownCore, catalog, "own-core-glue", (wood) => !ownCore.resinousWoods.includes(wood)),
    ...(own.isWindowGrade
      ? woodConflicts(own, ownCore, catalog, "own-core-not-selected", (wood) => ownCore.windowWoods.includes(wood))
      : []),
  ];
}

/** The strips at I carry the binding's screws. */
function screwConflicts(own: OwnCore, rules: OwnCoreRules, catalog: BuildCatalog): SpecConflict[] {
  const { materials } = catalog;
  const densityOf = (wood: string) => woodById(materials, wood).densityKgM3;
  const densityKgM3 = densityOf(own.strips.I);
  if (densityKgM3 >= rules.leastScrewDensityKgM3) return [];
  const holds = (wood: string) => densityOf(wood) >= rules.leastScrewDensityKgM3 && isAllowed(wood, own, rules);
  const ways = rules.woods
    .filter(holds)
    .toSorted((a, b) => densityOf(a) - densityOf(b))
    .slice(0, MOST_WAYS)
    .map((wood) => wayWith("I", wood, own, catalog));
  const wood = woodById(materials, own.strips.I).label;
  return [
    { code: "own-core-screw-hold", path: "core", wood, densityKgM3, leastKgM3: rules.leastScrewDensityKgM3, ways },
  ];
}

function woodConflicts(
  own: OwnCore,
  rules: OwnCoreRules,
  catalog: BuildCatalog,
  code: "own-core-glue" | "own-core-not-selected",
  isGood: (wood: string) => boolean,
): SpecConflict[] {
  const { materials } = catalog;
  const modulusOf = (wood: string) => woodById(materials, wood).bendingModulusMpa;
  return (["C", "I", "M", "O"] as const)
    .filter((position) => !isGood(own.strips[position]))
    .map((position) => {
      const refused = own.strips[position];
      const away = (wood: string) => Math.abs(modulusOf(wood) - modulusOf(refused));
      const isDense = (wood: string) =>
        position !== "I" || woodById(materials, wood).densityKgM3 >= rules.leastScrewDensityKgM3;
      const ways = rules.woods
        .filter((wood) => isAllowed(wood, own, rules) && isDense(wood))
        .toSorted((a, b) => away(a) - away(b))
        .slice(0, MOST_WAYS)
        .map((wood) => wayWith(position, wood, own, catalog));
      return { code, path: "core", wood: woodById(materials, refused).label, position, ways };
    });
}

function isAllowed(wood: string, own: OwnCore, { resinousWoods, windowWoods }: OwnCoreRules): boolean {
  return !resinousWoods.includes(wood) && (!own.isWindowGrade || windowWoods.includes(wood));
}

/** The same core with another wood in one place. */
function wayWith(position: keyof CoreStrips, wood: string, own: OwnCore, catalog: BuildCatalog): SpecWay {
  const core = coreIdFor({ ...own, strips: { ...own.strips, [position]: wood } }, catalog);
  const label = `${woodById(catalog.materials, wood).label} at ${position}`;
  return { code: `own-core-${position}-${wood}`, label, choices: { core } };
}
