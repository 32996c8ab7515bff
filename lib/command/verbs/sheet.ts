import { z } from "zod";
import { sha256Of } from "#catalog";
import { conflictsOf, resolveSpec, solveSpec } from "#engine/configuration";
import { measure } from "#engine/geometry";
import { partsFor } from "#engine/parts";
import { accept, refuse } from "#engine/units";
import { composeBuildSheet, composeKitList, renderDocument } from "#papers";
import { pairSpecSchema } from "#schemas";
import { floorFacts } from "#services/papers/floor-facts";
import { cautionFacts } from "#services/papers/terms";
import { skiSerial } from "#shop/names/serial";
import { catalogue } from "../catalogue";
import { verb } from "../verb";

const input = z.strictObject({
  spec: pairSpecSchema,
  document: z.enum(["build-sheet", "kit-list"]).default("build-sheet"),
  paper: z.enum(["A4", "LETTER"]).default("A4"),
  pairNumber: z.number().int().min(1).max(999_999).default(1),
  skierFirstName: z.string().max(60).default(""),
  notes: z.array(z.string().min(1).max(200)).max(10).default([]),
});

/** Without a record there is no page to scan back to: the code holds the serial alone. */
export const sheetVerb = verb({
  name: "sheet",
  summary: "a complete spec → its build sheet (or kit list) as PDF; strips, lots and dates are left to write in",
  input,
  output: z.object({ document: z.string(), bytes: z.number().int(), pdfBase64: z.string().optional() }),
  fileFlags: { pdf: "writes the PDF there instead of printing it as base64" },
  run: async ({ spec, document, paper, pairNumber, skierFirstName, notes }, flags) => {
    const { build, parts: partsRules, shop, safety, ...rest } = catalogue();
    const resolved = resolveSpec(spec, build);
    if (!resolved.ok) return resolved;
    const [conflict] = conflictsOf(spec, resolved.value, build);
    if (conflict) {
      const { ways: _ways, ...refusal } = conflict;
      return refuse(refusal);
    }
    const solved = solveSpec(spec, build);
    if (!solved.ok) return solved;
    const { shape } = solved.value.build;
    const prefix = shop.serialPrefix;
    const number = String(pairNumber).padStart(4, "0");
    const facts = {
      shop,
      stamp: { printedAt: `${flags.today}T00:00`, revision: 1, specHash: sha256Of(spec) },
      pair: {
        number,
        leftSerial: skiSerial(prefix, pairNumber, "L"),
        rightSerial: skiSerial(prefix, pairNumber, "R"),
        pageUrl: `${prefix}-${number}`,
        pressBy: null,
        readyBy: null,
        promiseClass: "estimate",
        skierFirstName,
      },
      catalog: build,
      spec,
      shape,
      measures: measure(shape, { edge: build.rules.edge }),
      solved: solved.value,
      parts: partsFor(spec, solved.value, build, partsRules),
      strips: null,
      lots: [],
      floor: floorFacts({ build, parts: partsRules, shop, ...rest }, safety),
      cassette: null,
      notes: notes.map((text) => ({ kind: "said", text }) as const),
    } as const;
    const pdf =
      document === "build-sheet"
        ? await renderDocument("build-sheet", composeBuildSheet(facts), paper)
        : await renderDocument(
            "kit-list",
            composeKitList({ ...facts, cautions: cautionFacts(safety, "kit-list") }),
            paper,
          );
    const file = flags.files.pdf;
    if (file !== undefined) await flags.write(file, pdf);
    const answer = { document, paper, bytes: pdf.byteLength, achievedRatio: solved.value.core.achievedRatio };
    return accept(
      file === undefined ? { ...answer, pdfBase64: Buffer.from(pdf).toString("base64") } : { ...answer, file },
    );
  },
});
