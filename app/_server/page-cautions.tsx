/** What can hurt at what a page is for. */
import { Cautions } from "#app/_ui/cautions.tsx";
import { type CautionPage, cautionsAt, type SoldFor } from "#engine/floor";
import { settings } from "#services";

export function PageCautions(props: {
  readonly page: CautionPage;
  readonly size?: "normal" | "floor";
  readonly soldFor?: readonly SoldFor[];
}) {
  const { safety } = settings();
  const { page, size = "normal", soldFor } = props;
  return (
    <Cautions size={size} cautions={cautionsAt(safety.hazards, { page }, soldFor)} localRules={safety.localRules} />
  );
}

/** What the sheet may have to say: it knows the ski and the skier only while they are typed. */
export function sheetCautions() {
  const { hazards, localRules } = settings().safety;
  return { hazards: hazards.filter(({ pages }) => pages.includes("sheet")), localRules };
}
