/** The cloth of a lay-up by face, and the lay-ups that the shop may build instead of a model's own. */
import type { CoreLimit } from "#engine/flex";
import { type Fabric, fabricById, type MaterialLibrary } from "#engine/materials";
import type { BuildCatalog, ClothPreference, LayupLayer } from "./types";

/** Plies of each face by the id of their cloth, from the outside in. */
export interface Cloth {
  readonly bottom: readonly string[];
  readonly top: readonly string[];
}

export function clothOf(layup: readonly LayupLayer[]): Cloth {
  const coreAt = layup.findIndex((layer) => layer.role === "core");
  const plies = (layers: readonly LayupLayer[]) =>
    layers.flatMap((layer) => (layer.role === "fabric" ? [layer.material] : []));
  return { bottom: plies(layup.slice(0, coreAt)), top: plies(layup.slice(coreAt + 1)).reverse() };
}

/** The lay-up with these plies where each face has its own; a face without cloth stays without. */
export function layupWithCloth(layup: readonly LayupLayer[], { bottom, top }: Cloth): readonly LayupLayer[] {
  const coreAt = layup.findIndex((layer) => layer.role === "core");
  const [below, core, above] = [layup.slice(0, coreAt), layup.slice(coreAt, coreAt + 1), layup.slice(coreAt + 1)];
  return [...faceWith(below, bottom), ...core, ...faceWith(above, top.toReversed())];
}

function faceWith(layers: readonly LayupLayer[], plies: readonly string[]): readonly LayupLayer[] {
  const firstAt = layers.findIndex((layer) => layer.role === "fabric");
  return layers.flatMap((layer, i): readonly LayupLayer[] => {
    if (layer.role !== "fabric") return [layer];
    return i === firstAt ? plies.map((material) => ({ role: "fabric", material })) : [];
  });
}

export function isSameCloth(a: Cloth, b: Cloth): boolean {
  return a.bottom.join() === b.bottom.join() && a.top.join() === b.top.join();
}

/** Both faces alike, counted from the outside in. */
export function isSymmetric({ bottom, top }: Cloth): boolean {
  return bottom.join() === top.join();
}

/**
 * What may be laid instead of a model's own cloth: the shop's faces, alike on both sides where the model's are, in any two
 * where they are not. The model's own cloth is not among them.
 */
export function otherCloths(own: Cloth, { rules }: Pick<BuildCatalog, "rules">): readonly Cloth[] {
  const faces = rules.cloth?.faces ?? [];
  const all = isSymmetric(own)
    ? faces.map((plies): Cloth => ({ bottom: plies, top: plies }))
    : faces.flatMap((bottom) => faces.map((top): Cloth => ({ bottom, top })));
  return all.filter((cloth) => !isSameCloth(cloth, own));
}

/** What the cloth of both faces costs, cents a square metre of ski. */
function costCentsM2({ bottom, top }: Cloth, { rules }: Pick<BuildCatalog, "rules">): number {
  return [...bottom, ...top].reduce((sum, id) => sum + (rules.cloth?.costCentsM2[id] ?? 0), 0);
}

function sumOf({ bottom, top }: Cloth, of: (fabric: Fabric) => number, materials: MaterialLibrary): number {
  return [...bottom, ...top].reduce((sum, id) => sum + of(fabricById(materials, id)), 0);
}

/** Stiffness of both faces along the ski, N/mm of width. */
export function clothStiffness(cloth: Cloth, { materials }: Pick<BuildCatalog, "materials">): number {
  return sumOf(cloth, ({ exMpa, thicknessMm }) => exMpa * thicknessMm, materials);
}

/**
 * The shop's cloths from the best to the worst by what it prefers: by mass the lightest first, since less glass saves more
 * than the thicker core that it needs costs, and of equally heavy ones the stiffer, whose core is thinner; by price the
 * cheapest first.
 */
export function byPreference(
  cloths: readonly Cloth[],
  catalog: Pick<BuildCatalog, "rules" | "materials">,
): readonly Cloth[] {
  const weight = (cloth: Cloth) => sumOf(cloth, ({ arealWeightGM2 }) => arealWeightGM2, catalog.materials);
  const cost = (cloth: Cloth) => (catalog.rules.cloth?.prefer === "price" ? costCentsM2(cloth, catalog) : 0);
  return cloths.toSorted(
    (a, b) => cost(a) - cost(b) || weight(a) - weight(b) || clothStiffness(b, catalog) - clothStiffness(a, catalog),
  );
}

/** What was laid, and why it is not the model's own. */
export interface ClothChoice {
  readonly laid: Cloth;
  readonly own: Cloth;
  readonly isOwn: boolean;
  /** What the core came up against with the model's own cloth; empty where that was laid. */
  readonly because: readonly CoreLimit[];
  /** Chosen by; null where the cloth is the model's own. */
  readonly by: ClothPreference | null;
}

/** Another cloth in words' pieces: how it differs, and what lies on the faces. */
export interface ClothChange {
  readonly kind: "lighter" | "heavier" | "softer";
  readonly laid: string;
  readonly own: string;
}

/** @returns null where the model's own cloth is laid */
export function clothChange(choice: ClothChoice, materials: MaterialLibrary): ClothChange | null {
  if (choice.isOwn) return null;
  const weight = (cloth: Cloth) => sumOf(cloth, ({ arealWeightGM2 }) => arealWeightGM2, materials);
  const [laid, own] = [weight(choice.laid), weight(choice.own)];
  const label = ({ bottom, top }: Cloth) => {
    const face = (plies: readonly string[]) => plies.map((id) => fabricById(materials, id).label).join(" + ");
    return isSymmetric({ bottom, top }) ? face(bottom) : `${face(bottom)} / ${face(top)}`;
  };
  const kind = laid < own ? "lighter" : laid > own ? "heavier" : "softer";
  return { kind, laid: label(choice.laid), own: label(choice.own) };
}
