import type { Verb } from "../verb";

/** Verbs load one by one, so that a small question does not pay for the whole house. */
const loaders: Readonly<Record<string, () => Promise<Verb>>> = {
  recommend: async () => (await import("./recommend")).recommendVerb,
  shape: async () => (await import("./shape")).shapeVerb,
  laminate: async () => (await import("./laminate")).laminateVerb,
  section: async () => (await import("./section")).sectionVerb,
  beam: async () => (await import("./beam")).beamVerb,
  flex: async () => (await import("./flex")).flexVerb,
  core: async () => (await import("./core")).coreVerb,
  alternatives: async () => (await import("./alternatives")).alternativesVerb,
  strips: async () => (await import("./strips")).stripsVerb,
  price: async () => (await import("./price")).priceVerb,
  schedule: async () => (await import("./schedule")).scheduleVerb,
  promise: async () => (await import("./promise")).promiseVerb,
  parts: async () => (await import("./parts")).partsVerb,
  sheet: async () => (await import("./sheet")).sheetVerb,
  artwork: async () => (await import("./artwork")).artworkVerb,
};

export const verbNames: readonly string[] = Object.keys(loaders);

export async function loadVerb(name: string): Promise<Verb | undefined> {
  return Object.hasOwn(loaders, name) ? loaders[name]?.() : undefined;
}
