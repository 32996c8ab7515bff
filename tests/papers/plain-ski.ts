/** A ski of round numbers and a paper at 1 mm to 0.2 pt from 20 pt on: every place on a drawing is worked out in the head. */

import type { DrawingData } from "#papers/parts/facts";
import type { CoreDrawing } from "../../lib/papers/build-sheet/printed";
import type { AxisScale } from "../../lib/papers/parts/drawing";

export const scale: AxisScale = {
  denominator: 12.5,
  x: (alongMm) => 20 + alongMm / 5,
  len: (lengthMm) => lengthMm / 5,
};
export const innerPt = 240;

export const ski: DrawingData = {
  lengthMm: 1000,
  outline: [
    { x: 0, y: 0 },
    { x: 100, y: 50 },
    { x: 300, y: 42 },
    { x: 500, y: 33 },
    { x: 700, y: 40 },
    { x: 900, y: 45 },
    { x: 1000, y: 0 },
  ],
  profile: [
    { x: 0, y: 50 },
    { x: 150, y: 0 },
    { x: 545, y: 4 },
    { x: 940, y: 0 },
    { x: 1000, y: 20 },
  ],
  shoulder: { xMm: 100, widthMm: 100 },
  waist: { xMm: 500, widthMm: 66 },
  heel: { xMm: 900, widthMm: 90 },
  mountMm: 550,
  mountOffsetMm: 10,
  widthAtMountMm: 84,
  contact: { fromMm: 120, toMm: 880, lengthMm: 760, gaugeMm: 0.5 },
  tangent: { fromMm: 150, toMm: 940, lengthMm: 790 },
  edge: { fromMm: 60, toMm: 930, lengthMm: 870, wrap: "partial" },
  edgeWidthMm: 2,
  camberMm: 4,
  mouldCamberMm: 5.5,
  tipRiseMm: 50,
  tailRiseMm: 20,
  projectedLengthMm: 990,
  sidecutRadiusM: 17.5,
  federationRadiusM: 17.4,
  planAreaMm2: 80_000,
  windows: [
    { fromMm: 600, toMm: 700, halfWidthMm: 20 },
    { fromMm: 750, toMm: 800, halfWidthMm: 10 },
  ],
  matZone: { fromMm: 250, toMm: 850 },
  bindingZone: { fromMm: 390, toMm: 710 },
};

export const core: CoreDrawing = {
  profileId: "T-1",
  hollows: [],
  wood: { fromMm: 100, toMm: 900 },
  thickness: [
    { x: 0, y: 2 },
    { x: 100, y: 3 },
    { x: 550, y: 11.5 },
    { x: 900, y: 4 },
    { x: 1000, y: 2 },
  ],
  stations: [
    { name: "1", xMm: 100, plannedMm: 3 },
    { name: "2", xMm: 550, plannedMm: 11.5 },
    { name: "3", xMm: 900, plannedMm: 4 },
  ],
  strips: [
    { position: "C", innerMm: 0, outerMm: 10, species: "aspen" },
    { position: "I", innerMm: 10, outerMm: 20, species: "ash" },
    { position: "M", innerMm: 20, outerMm: 30, species: "poplar" },
    { position: "O", innerMm: 30, outerMm: 45, species: "beech" },
  ],
  sidewall: { widthMm: 5, material: "ABS" },
  pocket: {
    fromMm: 350,
    toMm: 750,
    widthMm: 60,
    depthMm: 0.7,
    plateLengthMm: 399,
    plateWidthMm: 59,
    plateMm: 0.5,
    rubberMm: 0.15,
    plate: "aluminium",
  },
  spacers: {
    tipMm: 100,
    tailMm: 100,
    scarfMm: 15,
    tipThicknessMm: 3,
    tailThicknessMm: 4,
    material: "spacer sheet",
  },
  plannedG: { L: 400, R: 410 },
  moisture: "",
  thicknessAtMountMm: 11.5,
};
