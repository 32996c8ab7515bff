/** What can hurt at a station, with targets for gloves. */
import { Cautions } from "#app/_ui/cautions.tsx";
import { cautionsOfStation, type StationId } from "#engine/floor";
import { settings } from "#services";

export function StationCautions({ station }: { readonly station: StationId }) {
  const { safety, floor } = settings();
  return (
    <Cautions
      size="floor"
      cautions={cautionsOfStation(safety.hazards, floor, station)}
      localRules={safety.localRules}
    />
  );
}
