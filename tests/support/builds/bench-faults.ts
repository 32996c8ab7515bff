/**
 * What a maker would send back of one build: an independent reading of the bench rules, straight from rules, shape and core
 * programme. Nothing here asks the solver what it meant.
 */
import type { BuildRules, Model } from "#engine/configuration";
import type { BuildLayer, SkiBuild, ThicknessProfile } from "#engine/flex";
import { gaugePointsMm } from "#engine/geometry";

interface Built {
  readonly model: Model;
  readonly bare: SkiBuild;
  readonly profile: ThicknessProfile;
}

const tiny = 1e-6;

export function benchFaults({ model, bare, profile }: Built, rules: BuildRules): readonly string[] {
  const { bench, core, edge, plate } = rules;
  if (!bench) throw new RangeError("these rules have no bench");
  const { stations } = profile;
  const faults: string[] = [];
  const mount = bare.shape.mountFromTipMm;
  const own = plate.byUse?.[model.use] ?? plate;
  const depth = own.thicknessMm + plate.rubberMm + plate.pocketClearanceMm;
  const boot = [mount - bench.bootZoneMm / 2, mount + bench.bootZoneMm / 2] as const;
  const pocketHalf = plate.lengthMm / 2 + plate.pocketPlanMm;
  const thinnest = (from: number, to: number) => {
    const inside = stations.filter(({ xMm }) => xMm > from && xMm < to).map(({ thicknessMm }) => thicknessMm);
    return Math.min(at(profile, from), at(profile, to), ...inside);
  };
  if (thinnest(...boot) < bench.bootCore.leastMm - tiny) faults.push(`boot ${thinnest(...boot)} mm`);
  const wood = thinnest(mount - pocketHalf, mount + pocketHalf) - depth;
  if (wood < bench.woodUnderPocket.leastMm - tiny) faults.push(`wood under the pocket ${wood} mm`);
  stations.forEach(({ xMm, thicknessMm }, i) => {
    const next = stations[i + 1];
    if (thicknessMm > core.maxMm + tiny) faults.push(`${thicknessMm} mm at ${xMm}`);
    if (!next) return;
    if (Math.abs(next.thicknessMm - thicknessMm) > core.maxSlope * (next.xMm - xMm) + tiny)
      faults.push(`slope at ${xMm}`);
    // Outwards is towards lower x before the boot and towards higher x behind it.
    if (next.xMm <= boot[0] && thicknessMm > next.thicknessMm + tiny) faults.push(`rises towards the tip at ${xMm}`);
    if (xMm >= boot[1] && next.thicknessMm > thicknessMm + tiny) faults.push(`rises towards the tail at ${next.xMm}`);
  });
  for (const end of [stations[0], stations.at(-1)]) {
    const sheet = bench.endSheets.sheetsMm.some((each) => Math.abs(each - (end?.thicknessMm ?? 0)) < tiny);
    if (!sheet) faults.push(`end of ${end?.thicknessMm} mm`);
  }
  const contact = gaugePointsMm(bare.shape, 0.5);
  const margin = edge.pastContactMm ?? 0;
  const steel = bare.edge.span;
  if (!steel || steel.fromMm > contact.tipMm - margin + tiny || steel.toMm < contact.tailMm + margin - tiny)
    faults.push(`steel ${steel?.fromMm} to ${steel?.toMm} mm, contact ${contact.tipMm} to ${contact.tailMm}`);
  if (!isMirrored(bare.layers)) faults.push("glass differs between the faces");
  return faults;
}

function at({ stations }: ThicknessProfile, xMm: number): number {
  for (const [i, right] of stations.entries()) {
    const left = stations[i - 1];
    if (!left || xMm > right.xMm) continue;
    const share = (xMm - left.xMm) / (right.xMm - left.xMm);
    return left.thicknessMm + Math.max(0, share) * (right.thicknessMm - left.thicknessMm);
  }
  return stations.at(-1)?.thicknessMm ?? Number.NaN;
}

/** The model's own glass, options left out, reads the same from both outsides. */
function isMirrored(layers: readonly BuildLayer[]): boolean {
  const coreAt = layers.findIndex(({ role }) => role === "core");
  const glass = (part: readonly BuildLayer[]) =>
    part.flatMap((layer) => (layer.role === "fabric" && layer.fromOption === undefined ? [layer.material.label] : []));
  return (
    glass(layers.slice(0, coreAt)).join() ===
    glass(layers.slice(coreAt + 1))
      .reverse()
      .join()
  );
}
