/**
 * A ski's cross-section as torsion sees it: from the base up, each layer with its parts from the centre line out. The widths
 * are those of local-section.ts. What covers the ski only in part keeps its place: its layer is as thick as it is on average,
 * carries its whole G·t where it lies and nothing along the ski beside it, where its neighbours touch.
 */
import { halfWidthAt } from "#engine/geometry";
import type { TwistLayer, TwistPart, TwistSection } from "#engine/torsion";
import { coreParts, edgeWidthAt, hollowAt, laidLayer, plateWidthAt } from "./local-section";
import type { BuildLayer, LayerMaterial, SkiBuild } from "./types";

type SheetLayer = Exclude<BuildLayer, { readonly role: "core" }>;

const isotropic = (fromMm: number, toMm: number, shearMpa: number): TwistPart => ({
  fromMm,
  toMm,
  inPlaneMpa: shearMpa,
  throughMpa: shearMpa,
});

/** The half at y ≥ 0 of the section at x, with this thickness of core. */
export function twistSectionAt(build: SkiBuild, xMm: number, coreMm: number): TwistSection {
  const halfMm = halfWidthAt(build.shape, xMm);
  const steelMm = edgeWidthAt(build, xMm, halfMm) / 2;
  const layers: TwistLayer[] = [];
  let heightMm = 0;
  const add = (thicknessMm: number, parts: readonly TwistPart[]) => {
    if (thicknessMm > 0) layers.push({ thicknessMm, parts });
    heightMm += thicknessMm;
  };
  let isUnderCore = true;
  for (const layer of build.layers) {
    if (layer.role === "core") {
      for (const { thicknessMm, parts } of coreLayers(build, xMm, halfMm, coreMm)) add(thicknessMm, parts);
      isUnderCore = false;
      continue;
    }
    const laid = laidLayer(build, layer, xMm, halfMm);
    if (!laid) continue;
    const parts = partsOf(build, layer, halfMm, laid);
    const beside = isUnderCore && steelMm > 0 ? Math.max(0, build.edge.heightMm - heightMm) : 0;
    const low = Math.min(laid.thicknessMm, beside);
    add(low, withSteel(parts, halfMm - steelMm, isotropic(halfMm - steelMm, halfMm, build.edge.material.gxyMpa)));
    add(laid.thicknessMm - low, parts);
  }
  return { layers, isHalf: true };
}

function partsOf(
  build: SkiBuild,
  { material, ...layer }: SheetLayer,
  halfMm: number,
  { coveredMm, isSpread }: { readonly coveredMm: number; readonly isSpread: boolean },
): readonly TwistPart[] {
  if (!isSpread) return [isotropic(0, coveredMm / 2, material.gxyMpa)];
  const bands =
    layer.role !== "base" && layer.extent.kind === "bands"
      ? bandsOf(layer.extent, build.shape.waistWidthMm, halfMm)
      : [{ fromMm: 0, toMm: coveredMm / 2 }];
  const denser = (2 * halfMm) / coveredMm;
  const parts: TwistPart[] = [];
  let fromMm = 0;
  const touching = (toMm: number) => {
    if (toMm > fromMm) parts.push({ fromMm, toMm, inPlaneMpa: 0, throughMpa: material.gxyMpa });
  };
  for (const band of bands) {
    touching(band.fromMm);
    parts.push({ ...band, inPlaneMpa: material.gxyMpa * denser, throughMpa: material.gxyMpa });
    fromMm = band.toMm;
  }
  touching(halfMm);
  return parts;
}

/**
 * Bands run straight, in the middle of equal shares of the waist (common practice, no source), and move together where the ski
 * is narrower than they are.
 */
function bandsOf(
  { count, bandWidthMm }: { readonly count: number; readonly bandWidthMm: number },
  waistWidthMm: number,
  halfMm: number,
): readonly { readonly fromMm: number; readonly toMm: number }[] {
  const share = waistWidthMm / count;
  const widthMm = Math.min(bandWidthMm, (2 * halfMm) / count);
  const outermost = halfMm - widthMm / 2;
  return Array.from({ length: count }, (_, i) => (i - (count - 1) / 2) * share)
    .filter((centre) => centre >= 0)
    .map((centre, i) => {
      const free = outermost - (Math.floor(count / 2) - 1 - i + (count % 2 === 1 ? 1 : 0)) * widthMm;
      const at = Math.min(centre, Math.max(0, free));
      return { fromMm: Math.max(0, at - widthMm / 2), toMm: at + widthMm / 2 };
    });
}

/** Parts up to where the steel begins, then the steel. */
function withSteel(parts: readonly TwistPart[], untilMm: number, steel: TwistPart): readonly TwistPart[] {
  const left = parts.filter(({ fromMm }) => fromMm < untilMm);
  return [...left.map((part) => ({ ...part, toMm: Math.min(part.toMm, untilMm) })), steel];
}

/** The core, and over it the plate's pocket: foil and plate with core beside them. */
function coreLayers(build: SkiBuild, xMm: number, halfMm: number, coreMm: number): readonly TwistLayer[] {
  const wood = (fromMm: number) =>
    coreParts(build, xMm, fromMm, halfMm).map(({ fromMm: from, toMm, shearMpa }) => isotropic(from, toMm, shearMpa));
  const hollow = hollowAt(build, xMm);
  if (hollow) {
    const fromMm = Math.min(hollow.widthMm / 2, halfMm);
    return [
      { thicknessMm: coreMm - hollow.depthMm, parts: wood(0) },
      { thicknessMm: hollow.depthMm, parts: [isotropic(0, fromMm, 0), ...wood(fromMm)] },
    ];
  }
  const { plate } = build;
  const plateHalfMm = plateWidthAt(build, xMm, halfMm) / 2;
  if (!plate || plateHalfMm === 0) return [{ thicknessMm: coreMm, parts: wood(0) }];
  const pocket = (thicknessMm: number, material: LayerMaterial | undefined): TwistLayer => ({
    thicknessMm,
    parts: [pocketPart(plateHalfMm, material, plate.material), ...wood(plateHalfMm)],
  });
  return [
    { thicknessMm: coreMm - plate.rubberMm - plate.thicknessMm, parts: wood(0) },
    pocket(plate.rubberMm, plate.rubber),
    pocket(plate.thicknessMm, plate.material),
  ];
}

/** Without a foil the plate counts as bonded: what stands for the foil then carries nothing but holds. */
function pocketPart(toMm: number, material: LayerMaterial | undefined, plate: LayerMaterial): TwistPart {
  if (material) return isotropic(0, toMm, material.gxyMpa);
  return { fromMm: 0, toMm, inPlaneMpa: 0, throughMpa: plate.gxyMpa };
}
