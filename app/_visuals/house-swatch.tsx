/** A house graphic as it lies on one ski, from its own file: it is drawn once for all pages. */
import type { HouseGraphic } from "#engine/configuration";

export function HouseSwatch({ graphic, className }: { readonly graphic: HouseGraphic; readonly className?: string }) {
  // Another release may draw it otherwise: its colours and pattern are part of the address.
  const version = [graphic.pattern, ...graphic.colours].join("-").replaceAll("#", "");
  return (
    // biome-ignore lint/performance/noImgElement: a drawing in vectors, nothing to make smaller
    <img
      src={`/files/house/${graphic.id}?as=${version}`}
      alt=""
      width={1780}
      height={132}
      loading="lazy"
      className={className}
    />
  );
}
