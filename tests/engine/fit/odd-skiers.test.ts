/** Skiers whose answers were once absurd, each with what a maker says of it (the maker's judgement, no source). */
import { describe, expect, it } from "vitest";
import { loadCatalog } from "#catalog";
import { type FitAnswers, recommend } from "#engine/fit";

const { build, fit } = loadCatalog();

function ask(answers: FitAnswers) {
  const { choices, flags, wantedWaistMm } = recommend(answers, build, fit);
  const [first] = choices;
  if (first === undefined) return expect.fail("no choice");
  const model = build.models.find(({ id }) => id === first.model) ?? expect.fail(first.model);
  const codes = flags.filter((flag) => flag.model === undefined || flag.model === first.model).map(({ code }) => code);
  return { first, model, codes, flags, wantedWaistMm, choices };
}

describe("the fit", () => {
  it("gives a small expert in deep snow a ski that is built in that size, and says what is not", () => {
    const { first, codes, flags } = ask({
      heightCm: 160,
      massKg: 54,
      ability: "expert",
      offPistePercent: 100,
      homeSnow: "deep",
    });
    expect([first.model, first.lengthCm]).toEqual(["midlow-95", 162]);
    expect(codes).toContain("not-built-in-length");
    const told = flags.find(({ code }) => code === "not-built-in-length");
    expect(told?.message).toMatch(/Drifthold 117 .* from 172 to 196 cm/);
    expect(told).toMatchObject({ blocks: "nothing" });
  });

  it("gives a tall, light learner no metal carver, and a ski between chin and nose", () => {
    for (const offPistePercent of [0, 10, 20]) {
      const { first, model } = ask({ heightCm: 192, massKg: 68, ability: "learning", offPistePercent });
      expect(model.hasMetal).toBe(false);
      expect(first.wantedLengthCm / 192).toBeGreaterThan(0.87);
      expect(first.wantedLengthCm / 192).toBeLessThan(0.91);
    }
  });

  it("keeps a short, strong carver's ski below the head", () => {
    const { first, codes } = ask({ heightCm: 168, massKg: 88, ability: "expert", offPistePercent: 0 });
    expect(first.model).toBe("kerfline-68");
    expect(first.lengthCm).toBe(162);
    expect(first.neighbourLengthCm ?? 162).toBeLessThan(168);
    expect(codes).toEqual([]);
  });

  it("gives a racer of short turns a slalom's length: men's slalom skis are at least 165 cm (FIS)", () => {
    const { first, model } = ask({
      heightCm: 178,
      massKg: 76,
      ability: "expert",
      temperament: "fast",
      turnSize: "short",
      priorities: ["precise"],
      offPistePercent: 0,
    });
    expect([model.use, first.lengthCm]).toEqual(["carving", 168]);
    expect(first.neighbourLengthCm).toBeUndefined();
  });

  it("gives a calm woman of 68 no metal, and a ski that is shorter and softer than at 50", () => {
    const answers = {
      heightCm: 164,
      massKg: 62,
      ability: "confident",
      temperament: "calm",
      offPistePercent: 0,
    } as const;
    const [older, younger] = [ask({ ...answers, ageYears: 68 }), ask({ ...answers, ageYears: 50 })];
    expect([older.model.use, older.model.hasMetal]).toEqual(["frontside", false]);
    expect(older.first.wantedLengthCm).toBeLessThan(younger.first.wantedLengthCm);
    expect(older.first.flexRatio).toBeLessThan(younger.first.flexRatio);
  });

  it("answers the park with width and a tail that turns up, not with the narrowest ski, and says that no park ski is built", () => {
    for (const offPistePercent of [0, 10, 30]) {
      const { model, codes } = ask({
        heightCm: 176,
        massKg: 70,
        ability: "confident",
        offPistePercent,
        terrain: ["park", "switch"],
      });
      expect(model.shape.waistWidthMm).toBeGreaterThanOrEqual(84);
      expect(codes).toContain("use-not-built");
    }
    const active = { ...build, models: build.models.map((each) => ({ ...each, state: "active" as const })) };
    const parked = recommend({ heightCm: 176, massKg: 70, ability: "confident", terrain: ["park"] }, active, fit);
    expect(parked.choices[0]?.model).toBe("skeward-90");
    expect(parked.flags.map(({ code }) => code)).not.toContain("use-not-built");
  });

  it("has a ski and a price for a tall, heavy expert in deep snow", () => {
    const { first, codes } = ask({
      heightCm: 190,
      massKg: 98,
      ability: "expert",
      offPistePercent: 100,
      homeSnow: "deep",
    });
    expect([first.model, first.lengthCm]).toEqual(["drifthold-117", 196]);
    expect(first.wantedLengthCm).toBeLessThan(199);
    expect(codes).toEqual([]);
  });

  it("stays beside a pair that is right: 186 cm, 100 mm", () => {
    const currentSki = { lengthCm: 186, waistMm: 100, length: "right", flex: "right" } as const;
    for (const heightCm of [172, 178, 184])
      for (const offPistePercent of [10, 40, 80]) {
        const answers: FitAnswers = { heightCm, massKg: 80, ability: "confident", offPistePercent };
        const { first, model } = ask({ ...answers, currentSki });
        expect(Math.abs(first.lengthCm - 186)).toBeLessThanOrEqual(8);
        expect(Math.abs(model.shape.waistWidthMm - 100)).toBeLessThanOrEqual(6);
        // For something else it says nothing.
        const other = ask({ ...answers, currentSki: { ...currentSki, newPairFor: "something else" } });
        expect(other.first).toEqual(ask(answers).first);
      }
    const plain = ask({ heightCm: 180, massKg: 80, ability: "confident", offPistePercent: 40, currentSki });
    expect([plain.first.model, plain.first.lengthCm]).toEqual(["midlow-95", 186]);
    expect(plain.codes).toEqual([]);
  });

  it("counts the pack as weight on the skis", () => {
    const answers: FitAnswers = { heightCm: 178, massKg: 72, ability: "confident", offPistePercent: 80 };
    const [without, withPack] = [ask(answers), ask({ ...answers, packKg: 12 })];
    expect(withPack.first.flexRatio).toBeGreaterThan(without.first.flexRatio);
    expect(withPack.first.wantedLengthCm).toBeGreaterThan(without.first.wantedLengthCm);
    expect(withPack.wantedWaistMm).toBeGreaterThan(without.wantedWaistMm);
  });

  it("offers another kind where no touring ski is built in the length, and says so", () => {
    const { model, codes, choices } = ask({ heightCm: 156, massKg: 52, ability: "confident", touringPercent: 80 });
    expect(model.use).not.toBe("touring");
    expect(codes).toContain("not-built-in-length");
    expect(choices.map((each) => each.model)).not.toEqual(["upleigh-92"]);
    const tall = ask({ heightCm: 176, massKg: 70, ability: "confident", touringPercent: 80 });
    expect([tall.model.id, tall.choices.length]).toEqual(["upleigh-92", 1]);
  });
});
