import { describe, expect, it } from "vitest";
import { z } from "zod";
import { readingFields, readingsIn } from "#app/shop/(staff)/measured/reading-fields.ts";

const schema = z.strictObject(readingFields(""));
const none = {
  massKg: "",
  camberMm: "",
  springCentreNPerMm: "",
  springForebodyNPerMm: "",
  springAfterbodyNPerMm: "",
  twistNmPerDeg: "",
};

describe("the bench's form", () => {
  it("turns gram and N/cm into kg and N/mm, with a comma or a point, and leaves out what was not read", () => {
    const fields = schema.parse({ ...none, massKg: "1786", springCentreNPerMm: " 37,5 " });
    expect(readingsIn(fields, "")).toEqual({ massKg: 1.786, springCentreNPerMm: 3.75 });
  });

  it.each([
    ["massKg", "17000", "Mass 17000 g is above 4000 g"],
    ["camberMm", "4 mm", 'Camber "4 mm" is not a number'],
  ])("says of %s what is wrong with %s", (field, text, message) => {
    const parsed = schema.safeParse({ ...none, [field]: text });
    expect(parsed.error?.issues.map((issue) => [issue.path.join("."), issue.message])).toEqual([[field, message]]);
  });
});
