import { catalogue } from "./catalogue";
import { loadVerb, verbNames } from "./verbs";

/** What there is, and every fixed id a verb's input may name. */
export async function helpText(): Promise<string> {
  const verbs = await Promise.all(verbNames.map(loadVerb));
  const { build, fit, priceBooks } = catalogue();
  const rows = verbs.map((verb) => (verb ? `  ${verb.name.padEnd(10)} ${verb.summary}` : ""));
  const ids = (label: string, list: readonly { readonly id: string }[]) =>
    `  ${label.padEnd(15)} ${list.map((each) => each.id).join(" ")}`;
  return [
    "npm run -s pairwright -- VERB < input.json > output.json",
    'Exit 0 with the result; 1 with {"refusal": {…}}; 2 with {"invalid": [{path, message}]}.',
    "VERB --schema prints the JSON Schema of input and output; VERB --help the file flags.",
    "",
    "Verbs",
    ...rows,
    "",
    "Ids",
    ids("model", build.models),
    ids("core", build.blends),
    ids("reinforcements", build.reinforcements),
    ids("base", build.baseColours),
    ids("house", build.houseGraphics),
    ids("priceBook", priceBooks),
    `  ${"flag codes".padEnd(15)} ${Object.keys(fit.flags).join(" ")}`,
    "",
  ].join("\n");
}
