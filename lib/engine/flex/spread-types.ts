/** How sure the numbers of a ski are. Standard deviations; springs and EI as shares, mass in g, thickness in mm. */

/** How much what a ski is made of varies. Catalogue data; each with its source or marked as shop practice. */
export interface ScatterSettings {
  /** Of one strip that was measured on the strip bench: bench and moisture, share of the modulus. */
  readonly stripModulus: number;
  /** Of a strip's density, share; strips are chosen by stiffness, so this is the wood's own. */
  readonly stripDensity: number;
  /** Of the milled core, the same along one ski, mm. */
  readonly coreThicknessMm: number;
  /** Of the fibre volume fraction of each pressed cloth (its resin content), as difference. */
  readonly fibreVolume: number;
  /** What the cloths' thicknesses and moduli are given at. */
  readonly fibreVolumeNominal: number;
  readonly resinDensityKgM3: number;
  /** Of a cloth's modulus from lot to lot, share. */
  readonly fabricModulus: number;
  /** Of sheet thickness (base, topsheet, metal) from lot to lot, share. */
  readonly sheetThickness: number;
  /** Of what the model itself leaves out, share of springs and of mass, until enough pairs are measured. */
  readonly modelSpring: number;
  readonly modelMass: number;
  /** Share of each variance that the two skis of a pair have in common (same lot, same press programme). */
  readonly sharedByTwins: {
    readonly strips: number;
    readonly stripDensity: number;
    readonly coreThickness: number;
    readonly fibreVolume: number;
    readonly fabricModulus: number;
    readonly sheetThickness: number;
  };
}

export type ScatterSource =
  | "strips"
  | "core-thickness"
  | "fibre-volume"
  | "fabric-modulus"
  | "sheet-thickness"
  | "model";

/** One standard deviation of each value. */
export interface SpreadValues {
  /** Of the centre spring constant, share. */
  readonly springCentre: number;
  /** Of EI at the mount line, share. */
  readonly midBending: number;
  readonly massG: number;
}

export interface FlexSpread extends SpreadValues {
  /** Of the difference between the two skis of a pair, over their mean (mass in g). */
  readonly twins: SpreadValues;
  /** What it comes from; squares add up to those of the whole. */
  readonly bySource: readonly ({ readonly source: ScatterSource } & SpreadValues)[];
}
