import type { SaleOptions } from "../../support/builders/sale";

/**
 * The pair of scenarios 10 to 12: Midlow 95 1,590 + carbon stringers 90 + own graphic 150 + counterchanged letters 95 = 1,925.
 * The picture is a stand-in that the quote takes as it is named; the letters need two base colours.
 */
export const midlow95: SaleOptions = {
  choices: {
    "choices.model": "midlow-95",
    "choices.lengthCm": 178,
    "choices.flexRatio": 1,
    "choices.reinforcements": ["carbon-stringers"],
    "choices.base": { left: "black", right: "yellow", inlay: "counterchange", inlayText: "ROBIN" },
    "choices.graphic": { kind: "own", layout: "same", windows: [] },
  },
};
