/** What is printed: plain words and numbers, composed from facts. */
import type { Price } from "#engine/pricing";
import type { IsoDate } from "#engine/units";
import type { LocalDateTime, PairFacts, PrintStamp, ShopFacts, SkiSide, StationFact } from "./facts";

/** Label and value, as printed. `isOption` marks what this order changed from the model's own build. */
export interface Row {
  readonly label: string;
  readonly value: string;
  readonly isOption?: boolean;
}

export interface XY {
  readonly x: number;
  readonly y: number;
}

export interface Span {
  readonly fromMm: number;
  readonly toMm: number;
}

export interface ProfileStation {
  readonly name: string;
  readonly xMm: number;
  readonly plannedMm: number;
}

/** The ski as it is drawn: everything in mm along x from the tip; outline y is the half width, profile y the height. */
export interface DrawingData {
  readonly lengthMm: number;
  readonly outline: readonly XY[];
  readonly profile: readonly XY[];
  readonly shoulder: { readonly xMm: number; readonly widthMm: number };
  readonly waist: { readonly xMm: number; readonly widthMm: number };
  readonly heel: { readonly xMm: number; readonly widthMm: number };
  readonly mountMm: number;
  /** Of this order against the model's line, positive = towards the tip. */
  readonly mountOffsetMm: number;
  readonly widthAtMountMm: number;
  /** ISO 6289 contact length: between the gauge points of the pressed-flat ski. */
  readonly contact: Span & { readonly lengthMm: number };
  readonly tangent: Span & { readonly lengthMm: number };
  /** Steel along each side (partial) or once around (full). */
  readonly edge: Span & { readonly lengthMm: number; readonly wrap: "partial" | "full" };
  readonly edgeWidthMm: number;
  readonly camberMm: number;
  readonly mouldCamberMm: number;
  readonly tipRiseMm: number;
  readonly tailRiseMm: number;
  readonly projectedLengthMm: number;
  readonly sidecutRadiusM: number;
  readonly federationRadiusM: number;
  readonly planAreaMm2: number;
  readonly windows: readonly (Span & { readonly halfWidthMm: number })[];
  /** Glass under the binding. */
  readonly matZone: Span;
  /** What boot and binding hide of a graphic. */
  readonly bindingZone: Span;
}

export interface CoreDrawing {
  /** Names the thickness programme: two cores with the same name are milled alike. */
  readonly profileId: string;
  readonly wood: Span;
  /** Core thickness along x; y in mm. */
  readonly thickness: readonly XY[];
  readonly stations: readonly ProfileStation[];
  /** From the centre line outward, both sides alike. */
  readonly strips: readonly {
    readonly position: string;
    readonly innerMm: number;
    readonly outerMm: number;
    readonly species: string;
  }[];
  readonly sidewall: { readonly widthMm: number; readonly material: string };
  readonly pocket:
    | (Span & {
        readonly widthMm: number;
        readonly depthMm: number;
        readonly plateLengthMm: number;
        readonly plateWidthMm: number;
        readonly plateMm: number;
        readonly rubberMm: number;
        readonly plate: string;
      })
    | null;
  readonly spacers: {
    readonly tipMm: number;
    readonly tailMm: number;
    readonly scarfMm: number;
    readonly tipThicknessMm: number;
    readonly tailThicknessMm: number;
    readonly material: string;
  };
  /** Wood of one core as milled, pocket out; from the strips' own densities where measured. */
  readonly plannedG: { readonly L: number; readonly R: number };
  /** At the mount line. */
  readonly thicknessAtMountMm: number;
}

export type FibreDirection = "0" | "±45" | "0 ±45" | "0 90" | "none";

export interface StackLayer {
  readonly name: string;
  readonly detail: string;
  readonly role: "base" | "edge" | "rubber" | "fabric" | "metal" | "core" | "plate" | "mat" | "topsheet";
  /** Null: varies, see the core drawing. */
  readonly thicknessMm: number | null;
  readonly directions: FibreDirection;
  readonly extent: string;
  readonly isOption: boolean;
}

export interface StripRow {
  readonly position: string;
  readonly place: string;
  readonly species: string;
  readonly id: string;
  readonly bin: string;
  readonly board: string;
  readonly modulus: string;
  readonly density: string;
}

export interface QcRow {
  readonly measure: string;
  readonly method: string;
  readonly target: string;
  readonly toTarget: string;
  readonly twins: string;
}

export interface CutRow {
  readonly line: number;
  readonly part: string;
  readonly material: string;
  readonly cut: string;
  readonly left: string;
  readonly right: string;
  readonly pair: string;
  readonly isOption: boolean;
}

export interface BuildSheetData {
  readonly shop: ShopFacts;
  readonly stamp: PrintStamp;
  readonly pair: PairFacts;
  readonly title: string;
  readonly identity: readonly Row[];
  readonly options: readonly string[];
  readonly bases: readonly {
    readonly ski: SkiSide;
    readonly colour: string;
    readonly hex: string;
    readonly inlay: string;
  }[];
  readonly graphic: readonly Row[];
  readonly finish: readonly Row[];
  readonly notes: readonly string[];
  readonly drawing: DrawingData;
  readonly core: CoreDrawing;
  readonly stack: readonly StackLayer[];
  readonly strips: {
    readonly areAllocated: boolean;
    readonly left: readonly StripRow[];
    readonly right: readonly StripRow[];
  };
  readonly cuts: readonly CutRow[];
  readonly resin: readonly Row[];
  readonly press: readonly Row[];
  readonly workingTimes: readonly { readonly roomC: number; readonly minutes: number }[];
  readonly surfacePreparation: readonly string[];
  readonly stations: readonly StationFact[];
  readonly qc: readonly QcRow[];
  /** Ordered class and k, and the band the bench must read. */
  readonly orderedClass: string;
  readonly classBands: readonly Row[];
}

export interface KitRow extends CutRow {
  readonly code: string;
  readonly lot: string;
  readonly location: string;
  readonly isMandatory: boolean;
  readonly substitution: string;
}

export interface KitListData {
  readonly shop: ShopFacts;
  readonly stamp: PrintStamp;
  readonly pair: PairFacts;
  readonly title: string;
  readonly identity: readonly Row[];
  readonly rows: readonly KitRow[];
  readonly resin: readonly Row[];
}

/** Labels for the joins where left and right could be mixed up. */
export interface LabelsData {
  readonly shop: ShopFacts;
  readonly stamp: PrintStamp;
  readonly pair: PairFacts;
  readonly title: string;
  readonly mould: string;
}

/** A number that was computed and what it came from. */
export interface ReasonLine {
  readonly label: string;
  readonly amount: string;
}

export interface QuoteData {
  readonly shop: ShopFacts;
  readonly stamp: PrintStamp;
  readonly number: string;
  /** What the code opens. */
  readonly url: string;
  readonly urlNote: string;
  readonly madeAt: LocalDateTime;
  readonly validUntil: IsoDate;
  readonly seller: string;
  readonly skierName: string;
  /** Null when the skier buys for themself. */
  readonly buyerName: string | null;
  /** Fit answers with the unit they were typed in first. */
  readonly answers: readonly Row[];
  readonly recommendation: {
    readonly summary: string;
    readonly reasons: readonly ReasonLine[];
    readonly alternatives: readonly string[];
  };
  readonly flags: readonly { readonly message: string; readonly acknowledgedBy: string | null }[];
  /** From readableSpec(). */
  readonly specification: readonly Row[];
  readonly price: Price;
  readonly taxNote: string;
  readonly dates: {
    readonly from: IsoDate;
    readonly to: IsoDate;
    readonly confidence: string;
    readonly startsWhen: readonly string[];
  };
  readonly customerSpecified: readonly string[];
  readonly howToAccept: readonly string[];
  readonly cancellation: readonly Row[];
  readonly cautions: readonly string[];
}

/** Open quotes of a club as one paper: who rides what, one price, one day. */
export interface ClubQuoteData {
  readonly shop: ShopFacts;
  readonly stamp: PrintStamp;
  readonly number: string;
  readonly name: string;
  readonly url: string;
  readonly urlNote: string;
  readonly madeAt: LocalDateTime;
  /** The first of the quotes' last days. */
  readonly validUntil: IsoDate;
  readonly buyerName: string;
  readonly palette: readonly Row[];
  readonly members: readonly {
    readonly skierName: string;
    readonly quoteNumber: string;
    readonly ski: string;
    readonly flexClass: string;
    readonly lettering: string | null;
    readonly totalCents: number;
  }[];
  readonly price: Price;
  readonly taxNote: string;
  readonly dates: QuoteData["dates"];
  readonly howToAccept: readonly string[];
  readonly cancellation: readonly Row[];
  readonly cautions: readonly string[];
}

/** A date as it is promised at the hour of the print: a range, or one day. */
export type PromiseFact = (
  | { readonly class: "estimate"; readonly from: IsoDate; readonly to: IsoDate }
  | { readonly class: "promise"; readonly on: IsoDate }
  | { readonly class: "hard-date"; readonly on: IsoDate; readonly planB: string }
) & {
  /** What is still missing before the clock starts. */
  readonly waitingFor: readonly string[];
  /** Something that went wrong with its place; null as a rule. */
  readonly note: string | null;
};

/** The frozen price and what has been paid on it. */
export interface ConfirmedMoney {
  readonly price: Price;
  readonly taxNote: string;
  readonly deposit: { readonly cents: number; readonly on: IsoDate; readonly how: string } | null;
  /** The fee of a hard date, tax in. */
  readonly rush: { readonly cents: number; readonly isPaid: boolean } | null;
  readonly totalCents: number;
  readonly paidCents: number;
  readonly openCents: number;
  readonly cancellation: readonly Row[];
}

export interface OrderConfirmationData {
  readonly shop: ShopFacts;
  readonly stamp: PrintStamp;
  readonly orderNumber: string;
  readonly url: string;
  readonly urlNote: string;
  /** One as a rule; one for each pair of an order that a club placed. */
  readonly quotes: readonly string[];
  readonly club: string | null;
  readonly customerName: string;
  readonly acceptedBy: string;
  readonly acceptedAt: LocalDateTime;
  readonly acceptedHow: string;
  readonly pairs: readonly {
    readonly serial: string;
    readonly skierName: string;
    readonly revision: number;
    readonly specification: readonly Row[];
    readonly specHash: string;
  }[];
  /** Null on a copy without prices, for somebody who is given the pair. */
  readonly money: ConfirmedMoney | null;
  readonly promise: PromiseFact;
  readonly changeCutOffs: readonly Row[];
  readonly notices: readonly string[];
  readonly cautions: readonly string[];
}

/** How a proof stands: laid out and not sent, sent and waited for, or answered. */
export type ProofAnswer =
  | { readonly state: "draft" }
  /** `ifLate` says what an answer after that day does to the date. */
  | { readonly state: "issued"; readonly answerBy: IsoDate | null; readonly ifLate: string }
  /** `by` is null on a copy for somebody who is not told the skier's full name. */
  | { readonly state: "approved"; readonly at: LocalDateTime; readonly by: string | null }
  | { readonly state: "changes-asked"; readonly at: LocalDateTime; readonly note: string };

export interface ProofData {
  readonly shop: ShopFacts;
  /** `revision` is the proof's. */
  readonly stamp: PrintStamp;
  readonly serial: string;
  readonly leftSerial: string;
  readonly rightSerial: string;
  readonly url: string;
  readonly title: string;
  readonly layout: string;
  readonly drawing: DrawingData;
  readonly safeMm: number;
  readonly bleedSideMm: number;
  /** Each ski's picture, already cropped to the ski's box (PNG or JPEG data URI). */
  readonly pictures: { readonly L: string; readonly R: string };
  readonly text: { readonly transcript: string; readonly xMm: number; readonly capHeightMm: number } | null;
  readonly resolution: string;
  readonly colourProfile: string;
  readonly mirrored: string;
  /** Null for a house graphic, which has no file. */
  readonly sourceHash: string | null;
  /** What the desk says with it. */
  readonly note: string | null;
  readonly answer: ProofAnswer;
}

export interface DocumentData {
  readonly "build-sheet": BuildSheetData;
  readonly "kit-list": KitListData;
  readonly labels: LabelsData;
  readonly quote: QuoteData;
  readonly "club-quote": ClubQuoteData;
  readonly "order-confirmation": OrderConfirmationData;
  readonly proof: ProofData;
}

export type DocumentKind = keyof DocumentData;
