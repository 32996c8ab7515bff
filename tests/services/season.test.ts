import { expect, it } from "vitest";
import { isoDate } from "#engine/units";
import { readKeptPromises } from "#services";
import { seedWood } from "../../prisma/seed/wood";
import { must, openShop } from "../support/builders/shop";
import { databaseForTests } from "../support/db";
import { isWhole } from "../support/proof";
import { openAgenda } from "../support/year/agenda";
import { customersOf, expectCustomer, type Sale } from "../support/year/customers";
import { floorHands } from "../support/year/floor-hands";
import { expectNothingBroken } from "../support/year/invariants";
import { breaks, buildsOneSkiAgain, morning, tellTheLate } from "../support/year/office";
import { workingTime, yearShop } from "../support/year/year-shop";

const db = databaseForTests();
/** When customers come, and the working days from then on: those, and those in which the last orders are built. */
const { firstDay, lastDay, days } = isWhole("year")
  ? { firstDay: isoDate("2027-01-04"), lastDay: isoDate("2027-12-31"), days: 300 }
  : { firstDay: isoDate("2027-10-04"), lastDay: isoDate("2027-11-12"), days: 80 };
const isInside = (date: string) => firstDay <= date && date <= lastDay;

it(`goes from ${firstDay} to ${lastDay} with the shop's own use cases, and nothing breaks or is lost`, async () => {
  const people = await openShop(db());
  const shop = yearShop(db(), people);
  await seedWood(db(), workingTime(firstDay, 0, 7));
  const strips = await db().strip.count();
  const agenda = openAgenda();
  const hands = floorHands(shop, firstDay);
  const sales: Sale[] = [];
  const customers = customersOf(2027).filter(({ asksOn }) => isWhole("year") || isInside(asksOn));
  expect(customers.length).toBeGreaterThan(5);
  for (const customer of customers) expectCustomer({ shop, people, agenda, sales }, customer);

  let told = 0;
  const rebuilt: string[] = [];
  for (let day = 0; day < days; day += 1) {
    const at = workingTime(firstDay, day, 7, 20);
    agenda.enter(at, () => morning(shop, agenda, at));
    if (day % 5 !== 4) continue;
    const evening = workingTime(firstDay, day, 17);
    agenda.enter(evening, async () => {
      told += await tellTheLate(shop, evening);
      await expectNothingBroken(shop, evening, strips);
    });
  }
  const on = (date: string, hour: number, daysAfter = 0) => workingTime(isoDate(date), daysAfter, hour);
  const span = (date: string, length: number) => {
    const [from, until] = [on(date, 8), on(date, 16, length)];
    return { times: { now: from, over: until }, from: from.toISOString(), until: until.toISOString() };
  };
  const pressDown = span("2027-10-12", 3);
  const personAway = span("2027-11-15", 4);
  const late = span("2027-12-07", 5);
  const breakdowns = [
    [pressDown, { kind: "press-down", press: "press-1", from: pressDown.from, until: pressDown.until }],
    [personAway, { kind: "person-away", person: "c4", from: personAway.from, until: personAway.until }],
    [late, { kind: "supplier-late", station: "kit", material: "glass fibre", expectedOn: isoDate("2027-12-14") }],
  ] as const;
  const happening = breakdowns.filter(([{ from }]) => isInside(from.slice(0, 10)));
  for (const [when, input] of happening) {
    agenda.enter(when.times.now, () => breaks(shop, agenda, input, when.times));
  }
  const nicks = [
    ["2027-01-18", "L"],
    ["2027-09-14", "R"],
    ["2027-11-03", "L"],
  ] as const;
  const nicked = nicks.filter(([date]) => isInside(date));
  for (const [date, side] of nicked) {
    const wanted = on(date, 10);
    const rebuild = async (now: Date, tries: number): Promise<void> => {
      const pairId = await buildsOneSkiAgain(shop, now, side);
      if (pairId !== null) rebuilt.push(pairId);
      else if (tries > 0) {
        const later = on(date, 10, 16 - tries);
        agenda.enter(later, () => rebuild(later, tries - 1));
      }
    };
    agenda.enter(wanted, () => rebuild(wanted, 15));
  }

  for (let now = agenda.next(), due: Date | null = null; now !== null; ) {
    await agenda.doDue(now);
    due = await hands.work(now);
    const next = agenda.next();
    now = next === null || (due !== null && due < next) ? due : next;
  }

  const end = workingTime(firstDay, days, 8);
  await expectNothingBroken(shop, end, strips);
  const states = await db().order.findMany({ select: { id: true, state: true } });
  const kindsOf = (state: string) =>
    sales.filter(({ orderId }) => states.some((order) => order.id === orderId && order.state === state)).length;
  const by = (kind: string) => customers.filter((customer) => customer.kind === kind).length;
  expect(sales).toHaveLength(customers.length);
  expect(states).toHaveLength(customers.length - by("never-accepts"));
  expect(kindsOf("cancelled")).toBe(by("never-pays") + by("calls-off"));
  expect(kindsOf("delivered")).toBe(states.length - kindsOf("cancelled"));
  expect(rebuilt).toHaveLength(nicked.length);
  expect(await db().event.count({ where: { kind: "promise-changed" } })).toBe(told);
  const count = (kind: string) => db().event.count({ where: { kind } });
  expect(await count("slot-lost")).toBeGreaterThanOrEqual(by("pays-late") + by("never-pays") + by("ignores-proof"));
  expect(happening.length).toBeGreaterThan(0);
  expect(await count("incident-closed")).toBe(happening.length);
  const kept = must(await readKeptPromises(shop.owner(end)));
  expect(kept).toMatchObject({ open: 0, overdue: 0 });
  expect(kept.orders).toHaveLength(kindsOf("delivered"));
  expect(hands.ticks()).toBeGreaterThanOrEqual(2 * 14 * kindsOf("delivered"));
}, 600_000);
