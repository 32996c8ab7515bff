/** The demo's club: four skiers who want to ski in one palette; three have a quote, one has still to answer. Invented. */
import { addClubSkier, createQuote, openClub, saveSheet } from "#services";
import type { DemoPerson } from "./people";
import { at, type DemoShop, demoFields, done } from "./sales";

const skiers = ["Maud", "Nils", "Orla"] as const;
const stillToAnswer = "Per";
/** From here on the skiers of {@link demoFields} are others than those of the sales. */
const firstFitting = 41;

export async function seedClub(shop: DemoShop, now: Date, customer: DemoPerson): Promise<void> {
  const palette = {
    base: { left: "thistle", right: "bone", inlay: "none" },
    house: "contour-lines",
    isNamed: true,
    destination: "collect",
  } as const;
  const { name, phone, email } = customer;
  const club = { name: "Lower Fennick Ski Club", customer: { name, phone, email }, palette };
  const { clubId } = done(await openClub(at(shop, now), club), "a club");
  const minutesLater = (minutes: number) => at(shop, new Date(now.getTime() + minutes * 60_000));
  for (const [index, skierName] of skiers.entries()) {
    const ctx = minutesLater(10 * (index + 1));
    const { sheetId } = done(await addClubSkier(ctx, { clubId, skierName }), "a club's skier");
    const { "choices.graphic": _graphic, "choices.destination": _where, ...patch } = demoFields(firstFitting + index);
    done(await saveSheet(ctx, { sheetId, patch, baseVersion: 1 }), "a club's sheet");
    done(await createQuote(ctx, { sheetId }), "a club's quote");
  }
  done(await addClubSkier(minutesLater(50), { clubId, skierName: stillToAnswer }), "a club's skier");
}
