/**
 * The yes to the cautions: once a season, by everybody of the staff, with a mark of the very texts. A missing yes is reminded
 * and stops nothing: work that is refused a tick is done without one, and then neither the record nor the plan knows of it.
 */
import { permit } from "#auth";
import { sha256Of } from "#catalog";
import type { StaffRole } from "#data/access";
import { type CautionYes, cautionYesesOf, insertCautionYes, staffWithYes } from "#data/caution-yeses";
import { recordEvents } from "#data/events";
import { transaction } from "#data/transaction";
import { cautionsOfStation, type Hazard, stationPages } from "#engine/floor";
import { accept, type Outcome, refuse } from "#engine/units";
import type { Context } from "#services/context";
import { eventOf } from "#services/record";
import { currentCatalog } from "#shop/catalogue/current";
import { seasonLabel, seasonOf } from "#shop/time/season";
import { shopDay } from "#shop/time/shop-time";
import type { CautionAnswer, CautionState, MyCautions } from "./views";

/** What concerns somebody of this role: makers the floor, the desk what leaves it, owners both. */
function hazardsFor(role: StaffRole): readonly Hazard[] {
  const { hazards } = currentCatalog().safety;
  const isOfFloor = ({ stations, pages }: Hazard) =>
    stations.length > 0 || pages.some((page) => stationPages.includes(page));
  const isOfDesk = ({ stations, pages, papers }: Hazard) =>
    stations.includes("release") || papers.length > 0 || pages.some((page) => !stationPages.includes(page));
  if (role === "owner") return hazards;
  return hazards.filter(role === "maker" ? isOfFloor : isOfDesk);
}

function textsHash(hazards: readonly Hazard[]): string {
  const { localRules } = currentCatalog().safety;
  return sha256Of({
    localRules,
    hazards: hazards.map(({ id, line, full, reference }) => ({ id, line, full, reference })),
  });
}

function seasonNow(now: Date): number {
  const { shop, safety } = currentCatalog();
  return seasonOf(shopDay(now, shop.timeZone), safety.seasonStartsOn);
}

/** @param yeses the latest first */
function standing(yeses: readonly CautionYes[], season: number, hash: string) {
  const [latest] = yeses;
  const holding = yeses.find((yes) => yes.season === season && yes.textsHash === hash);
  return { state: stateOf(latest, season, holding), saidAt: (holding ?? latest)?.saidAt.toISOString() ?? null };
}

function stateOf(latest: CautionYes | undefined, season: number, holding: CautionYes | undefined): CautionState {
  if (holding !== undefined) return "said";
  if (latest === undefined) return "never";
  return latest.season === season ? "texts-changed" : "new-season";
}

/** The cautions that concern who asks, by station, and whether their yes still holds. Staff only. */
export async function readMyCautions(ctx: Context): Promise<Outcome<MyCautions>> {
  const allowed = permit(ctx.actor, "cautions.read");
  if (!allowed.ok) return allowed;
  if (ctx.actor.kind !== "staff") return refuse({ code: "not-allowed", action: "cautions.read", signIn: true });
  const { safety, floor } = currentCatalog();
  const { staffId, name, role } = ctx.actor;
  const hazards = hazardsFor(role);
  const yeses = await cautionYesesOf(ctx.db, staffId);
  const season = seasonNow(ctx.now);
  const hash = textsHash(hazards);
  return accept({
    name,
    season: seasonLabel(season, safety.seasonStartsOn),
    ...standing(yeses, season, hash),
    textsHash: hash,
    stations: floor.stations.flatMap(({ id, number, label }) => {
      const own = cautionsOfStation(hazards, floor, id);
      return own.length === 0 ? [] : [{ station: id, number, name: label, cautions: own }];
    }),
    general: hazards.filter(({ stations }) => stations.length === 0),
  });
}

/**
 * Keeps the yes of who asks, with the season and the mark of the texts they read. Refuses `cautions-changed` when a text has
 * changed since the page was shown.
 */
export async function sayCautionsRead(
  ctx: Context,
  input: { readonly textsHash: string },
): Promise<Outcome<{ readonly season: string }>> {
  const allowed = permit(ctx.actor, "cautions.read");
  if (!allowed.ok) return allowed;
  const { actor } = ctx;
  if (actor.kind !== "staff") return refuse({ code: "not-allowed", action: "cautions.read", signIn: true });
  const hash = textsHash(hazardsFor(actor.role));
  if (hash !== input.textsHash) return refuse({ code: "cautions-changed", path: "textsHash" });
  const season = seasonNow(ctx.now);
  return transaction(ctx.db, async (tx) => {
    const yes = { id: ctx.newId(), staffId: actor.staffId, season, textsHash: hash, saidAt: ctx.now };
    if (await insertCautionYes(tx, yes)) {
      const subject = { kind: "staff", id: actor.staffId } as const;
      await recordEvents(tx, [eventOf(ctx, "cautions-read", subject, { season, textsHash: hash })]);
    }
    return accept({ season: seasonLabel(season, currentCatalog().safety.seasonStartsOn) });
  });
}

/** Everybody of the staff with their yes of this season, those who still owe it first. Owners only. */
export async function listCautionAnswers(ctx: Context): Promise<Outcome<readonly CautionAnswer[]>> {
  const allowed = permit(ctx.actor, "cautions.list");
  if (!allowed.ok) return allowed;
  const season = seasonNow(ctx.now);
  const answers = (await staffWithYes(ctx.db)).map(({ id, name, role, yeses }) => ({
    staffId: id,
    name,
    role,
    ...standing(yeses, season, textsHash(hazardsFor(role))),
  }));
  return accept([
    ...answers.filter(({ state }) => state !== "said"),
    ...answers.filter(({ state }) => state === "said"),
  ]);
}
