import type { Wood, WoodLook } from "#engine/materials";

export type { WoodLook } from "#engine/materials";

/** From this density up a wood without a look of its own is drawn dark: the dense strips that hold the screws. */
const denseKgM3 = 500;
const dark: WoodLook = { ground: "#b98d54", grain: "#7a5a30", linesPer10Mm: 6 };
const pale: WoodLook = { ground: "#d9b988", grain: "#a98a58", linesPer10Mm: 4 };

/** How a wood is drawn; a release from before woods had looks is drawn by density. */
export function woodLook(wood: Wood | undefined): WoodLook {
  return wood?.look ?? ((wood?.densityKgM3 ?? 0) > denseKgM3 ? dark : pale);
}
