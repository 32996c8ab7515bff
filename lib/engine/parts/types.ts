/** The parts list of one pair: every line that the kit must hold, with cut sizes from the geometry. */
export type PartScope = "left" | "right" | "both" | "pair";

export interface PartLine {
  /** Line number of the shop's list (trade.md part 3). */
  readonly line: number;
  readonly code: string;
  readonly label: string;
  readonly material: string;
  readonly cut: string;
  readonly lengthMm?: number;
  readonly widthMm?: number;
  readonly thicknessMm?: number;
  readonly areaMm2?: number;
  readonly netMassG?: number;
  readonly quantityLeft: number;
  readonly quantityRight: number;
  /** Not split by ski (glue, resin, carton). */
  readonly quantityPair: number;
  readonly unit: "piece" | "mm" | "g" | "ml" | "set";
  readonly scrapFactor: number;
  /** Ordered because of an option: highlighted on the build sheet. */
  readonly fromOption?: string;
  readonly stationNumber: number;
  readonly mandatoryScan: boolean;
}

export interface ResinBatch {
  readonly resinG: number;
  readonly hardenerG: number;
  readonly system: string;
}

export interface PartsList {
  readonly lines: readonly PartLine[];
  readonly resin: ResinBatch;
}
