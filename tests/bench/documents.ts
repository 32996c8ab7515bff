/** The build sheet as PDF, drawn in this process as the command line draws it. */
import { deflateSync } from "node:zlib";
import { engineCatalog, priceBookNamed } from "#catalog";
import { assessSheet } from "#engine/assessment";
import { isoDate } from "#engine/units";
import { catalogue } from "#lib/command/catalogue";
import { sheetVerb } from "#lib/command/verbs/sheet";
import { type Measured, measured } from "./measure";

export async function documentMeasures(): Promise<Measured[]> {
  const catalog = engineCatalog(catalogue(), priceBookNamed(catalogue(), "PB-3"));
  const answers = { heightCm: 182, massKg: 82, ability: "confident", offPistePercent: 40 } as const;
  const { spec } = assessSheet({ answers, choices: {} }, catalog);
  const input = sheetVerb.input.parse({ spec });
  const flags = { files: {}, write: async () => undefined, clock: () => 0, today: isoDate("2026-11-25") };
  const draw = async () => {
    const drawn = await sheetVerb.run(input, flags);
    if (!drawn.ok) throw new Error(JSON.stringify(drawn.refusal));
    return drawn.value;
  };
  const { bytes } = (await draw()) as { readonly bytes: number };
  const plain = Buffer.alloc(10 * bytes, "Thistle Yard ");
  return [await measured("build sheet as PDF", draw, "deflating ten times its bytes", () => deflateSync(plain), 5)];
}
