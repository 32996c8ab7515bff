/**
 * Every independent thing that varies in a build, as the build moved by so many standard deviations of it. Strips: the
 * column of one position, symmetric about the centre line, holds one strip (C) or two, and is as stiff as their mean.
 * Resin: a cloth keeps its fibres, so thickness goes with Vf0/Vf, modulus with Vf/Vf0 (fibre-dominated), and what it
 * gains in weight is resin. Lots: all layers of one material vary together.
 */
import type { ScatterSettings, ScatterSource } from "./spread-types";
import type { BuildLayer, LayerMaterial, SkiBuild } from "./types";

export interface ScatterInput {
  readonly source: ScatterSource;
  /** Share of its variance that both skis of a pair have in common; of what it does to mass, where that differs. */
  readonly sharedByTwins: number;
  readonly sharedMass?: number;
  /** The build with this input off its mean, in standard deviations of it. */
  readonly moved: (deviations: number) => SkiBuild;
}

type ThinLayer = Exclude<BuildLayer, { readonly role: "core" }>;

/** What varies in this build; of materials, only those it holds. */
export function scatterInputs(build: SkiBuild, settings: ScatterSettings): readonly ScatterInput[] {
  const { coreThicknessMm, sharedByTwins } = settings;
  return [
    ...stripInputs(build, settings),
    {
      source: "core-thickness",
      sharedByTwins: sharedByTwins.coreThickness,
      moved: (z) => ({ ...build, coreOffsetMm: (build.coreOffsetMm ?? 0) + z * coreThicknessMm }),
    },
    ...clothInputs(build, settings),
    ...sheetInputs(build, settings),
  ];
}

/** A strip's modulus, which only stiffness feels, and its density, which only mass feels, may move in one step. */
function stripInputs(build: SkiBuild, { stripModulus, stripDensity, sharedByTwins }: ScatterSettings): ScatterInput[] {
  return build.columns.map((moving): ScatterInput => {
    const ofMean = 1 / Math.sqrt(moving.position === "C" ? 1 : 2);
    return {
      source: "strips",
      sharedByTwins: sharedByTwins.strips,
      sharedMass: sharedByTwins.stripDensity,
      moved: (z) => {
        const stiffer = 1 + z * stripModulus * ofMean;
        const column = {
          ...moving,
          axialModulusMpa: moving.axialModulusMpa * stiffer,
          shearModulusMpa: moving.shearModulusMpa * stiffer,
          densityKgM3: moving.densityKgM3 * (1 + z * stripDensity * ofMean),
        };
        return { ...build, columns: build.columns.map((each) => (each === moving ? column : each)) };
      },
    };
  });
}

function clothInputs(build: SkiBuild, settings: ScatterSettings): ScatterInput[] {
  const { fabricModulus, fibreVolume, sharedByTwins } = settings;
  const cloths = build.layers.filter(isCloth);
  const each = cloths.map(
    (cloth): ScatterInput => ({
      source: "fibre-volume",
      sharedByTwins: sharedByTwins.fibreVolume,
      moved: (z) => withLayers(build, (layer) => (layer === cloth ? wetter(layer, z * fibreVolume, settings) : layer)),
    }),
  );
  const lots = labelsOf(cloths).map(
    (label): ScatterInput => ({
      source: "fabric-modulus",
      sharedByTwins: sharedByTwins.fabricModulus,
      moved: (z) =>
        withLayers(build, (layer) =>
          isCloth(layer) && layer.material.label === label
            ? { ...layer, material: stiffened(layer.material, 1 + z * fabricModulus) }
            : layer,
        ),
    }),
  );
  return [...each, ...lots];
}

function sheetInputs(build: SkiBuild, { sheetThickness, sharedByTwins }: ScatterSettings): ScatterInput[] {
  const { plate } = build;
  const labels = labelsOf([...build.layers.filter(isSheet), ...(plate ? [plate] : [])]);
  return labels.map((label) => ({
    source: "sheet-thickness",
    sharedByTwins: sharedByTwins.sheetThickness,
    moved: (z) => {
      const factor = 1 + z * sheetThickness;
      const thicker = <T extends { readonly material: LayerMaterial; readonly thicknessMm: number }>(part: T): T =>
        part.material.label === label ? { ...part, thicknessMm: part.thicknessMm * factor } : part;
      const moved = withLayers(build, (layer) => (isSheet(layer) ? thicker(layer) : layer));
      return plate ? { ...moved, plate: thicker(plate) } : moved;
    },
  }));
}

/** A cloth pressed to another fibre volume: the same fibres in more or less resin. */
function wetter<T extends ThinLayer>(layer: T, fibreVolumeChange: number, settings: ScatterSettings): T {
  const { fibreVolumeNominal, resinDensityKgM3 } = settings;
  const fuller = 1 + fibreVolumeChange / fibreVolumeNominal;
  const { material } = layer;
  const densityKgM3 = resinDensityKgM3 + (material.densityKgM3 - resinDensityKgM3) * fuller;
  return {
    ...layer,
    thicknessMm: layer.thicknessMm / fuller,
    material: { ...stiffened(material, fuller), densityKgM3 },
  };
}

function stiffened(material: LayerMaterial, factor: number): LayerMaterial {
  const { exMpa, eyMpa, gxyMpa } = material;
  return { ...material, exMpa: exMpa * factor, eyMpa: eyMpa * factor, gxyMpa: gxyMpa * factor };
}

function isCloth(layer: BuildLayer): layer is ThinLayer {
  return layer.role === "fabric" || layer.role === "mat";
}

function isSheet(layer: BuildLayer): layer is ThinLayer {
  return layer.role === "base" || layer.role === "topsheet" || layer.role === "metal";
}

function withLayers(build: SkiBuild, change: (layer: BuildLayer) => BuildLayer): SkiBuild {
  return { ...build, layers: build.layers.map(change) };
}

function labelsOf(parts: readonly { readonly material: LayerMaterial }[]): readonly string[] {
  return [...new Set(parts.map(({ material }) => material.label))];
}
