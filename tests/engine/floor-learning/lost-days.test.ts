import { describe, expect, it } from "vitest";
import { type FloorHistory, learnFloor } from "#engine/floor-learning";
import { at, floor, history, settings, visit } from "./small-floor";

const learn = (more: Partial<FloorHistory>, visits: FloorHistory["visits"] = []) =>
  learnFloor(floor, history(visits, more), settings, "FB-1");

describe("days lost", () => {
  it("count where at least half of the hours are gone", () => {
    // Four weeks from 7 June hold 20 working days. Down all of Tuesday and until 09:00 on Wednesday: one day.
    const press = (from: string, to: string) =>
      ({ kind: "press-down", press: "press-1", fromMinute: at(from), toMinute: at(to) }) as const;
    const away = {
      kind: "person-away",
      person: "c1",
      fromMinute: at("2027-06-10 00:00"),
      toMinute: at("2027-06-15 00:00"),
    };
    const learnt = learn({ changes: [press("2027-06-08 07:00", "2027-06-09 09:00"), away as never] });
    expect(learnt.workingDays).toBe(20);
    expect(learnt.pressDays).toMatchObject({ trials: 20, failures: 1 });
    // Thursday, Friday, Monday of one of seven who are no reserve.
    expect(learnt.personDays).toMatchObject({ trials: 140, failures: 3 });
    const { days } = settings.prior;
    expect(learnt.proposal.pressDayLostProbability).toBeCloseTo((1 + 0.04 * days) / (20 + days), 3);
    expect(learnt.proposal.personDayLostProbability).toBeCloseTo(3 / (140 + days), 3);
  });

  it("are not looked at where the shop was shut on purpose", () => {
    expect(learn({ plannedShut: ["2027-06-08", "2027-06-09"] as never }).workingDays).toBe(18);
  });
});

describe("the days looked at", () => {
  it("are told from the first working day to the day of asking", () => {
    // Saturday 5 June 2027 to Thursday the 10th: the first working day is the 7th.
    const span = (from: string, to: string) => {
      const { fromDate, toDate, workingDays } = learn({ fromMinute: at(`${from} 00:00`), toMinute: at(`${to} 09:00`) });
      return [fromDate, toDate, workingDays];
    };
    expect(span("2027-06-05", "2027-06-10")).toEqual(["2027-06-07", "2027-06-10", 3]);
    // A week-end alone has none: its own first day is told.
    expect(span("2027-06-05", "2027-06-06")).toEqual(["2027-06-05", "2027-06-06", 0]);
  });
});

describe("standstills", () => {
  const every = (pair: string, days: readonly string[]) =>
    days.map((day) => visit("edges", `2027-06-${day} 08:00`, `2027-06-${day} 09:00`, { pair }));

  it("are working days in a row without a tick while pairs are under way", () => {
    // Nothing from Thursday 10 to Tuesday 15: four working days. The 17th alone is no standstill.
    const busy = ["07", "08", "09", "16", "18", "21", "22", "23", "24", "25", "28", "29", "30"];
    const { shocks, proposal } = learn({}, [...every("a", busy), ...every("b", busy)]);
    expect(shocks.standstills).toEqual([{ from: "2027-06-10", workingDays: 4 }]);
    expect(shocks.failures).toBe(1);
    // The window is 30 working days, of which 20 were looked at: no fewer windows than standstills.
    expect(shocks.trials).toBe(1);
    const { windows, shocks: weight } = settings.prior;
    expect(proposal.sharedShock.probability).toBeCloseTo((1 + 0.25 * windows) / (1 + windows), 3);
    // 4 days against a mean of 7, one standstill against a weight of one: scale (4/7)^(1/2) = 0.76.
    const scale = (4 / 7) ** (1 / (1 + weight));
    expect(proposal.sharedShock.delayWorkingDays).toEqual({
      low: Math.round(2 * scale * 2) / 2,
      high: Math.round(12 * scale * 2) / 2,
    });
  });

  it("are none where one pair rests, or none is there", () => {
    const { shocks } = learn({}, [...every("a", ["07", "30"]), ...every("b", ["07"])]);
    expect(shocks.standstills).toEqual([]);
    expect(shocks.learnt).toBeLessThan(0.25);
  });
});
