/** The demo's first incident: the press was to be down for six days and was back the same day. One letter still waits. */
import { systemActor } from "#auth";
import { chooseOption, closeIncident, dropNotice, listNotices, reportBreakdown } from "#services";
import { at, type DemoShop, done } from "./sales";

const sixDaysMs = 6 * 86_400_000;

export async function seedBreakdown(shop: DemoShop, now: Date): Promise<void> {
  const maker = at(shop, now, systemActor("Press lead"));
  const owner = at(shop, now, systemActor("Owner"));
  const breakdown = {
    kind: "press-down",
    press: "press-1",
    from: now.toISOString(),
    until: new Date(now.getTime() + sixDaysMs).toISOString(),
  } as const;
  const note = "Upper heating plate stays cold";
  const incident = done(await reportBreakdown(maker, { reportId: shop.newId(), breakdown, note }), "an incident");
  const { incidentId } = incident;
  const choice = { incidentId, version: incident.version, option: "wait", reason: "The fitter comes at noon" };
  const decided = done(await chooseOption(owner, choice), "a decision");
  done(await closeIncident(maker, { incidentId, version: decided.version }), "the end of an incident");
  const [, ...others] = done(await listNotices(owner), "the letters");
  for (const { noticeId, version } of others) {
    done(await dropNotice(owner, { noticeId, version, reason: "The press is back, told on the phone" }), "a letter");
  }
}
