/** The words that a skier answers with. */

export type Ability = "learning" | "improving" | "confident" | "expert";
export type Temperament = "calm" | "steady" | "fast";
export type HomeSnow = "icy" | "firm" | "mixed" | "soft" | "deep";
export type TurnSize = "short" | "medium" | "long";
export type Terrain = "bumps" | "trees" | "park" | "switch";
export type Priority = "quiet" | "lively" | "light" | "planted" | "forgiving" | "precise";
