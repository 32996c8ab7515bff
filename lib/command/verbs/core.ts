import { z } from "zod";
import {
  type BuildCatalog,
  type ClothPreference,
  coreMachining,
  corePockets,
  massOfFlexG,
  type SolvedSpec,
  solveSpec,
} from "#engine/configuration";
import { outlineDxf, outlineSvg } from "#engine/geometry";
import { accept } from "#engine/units";
import { catalogue } from "../catalogue";
import { verb } from "../verb";
import { flexSpec } from "./schemas";

export const coreVerb = verb({
  name: "core",
  summary: "a spec → the core's thickness and the cloth that give the wanted flex ratio",
  input: flexSpec.extend({
    prefer: z.enum(["mass", "price"]).exactOptional(),
    plate: z.string().min(1).exactOptional(),
    lightening: z.boolean().exactOptional(),
    mount: z.strictObject({ offsetMm: z.number().min(-150).max(150) }).exactOptional(),
  }),
  output: z.object({
    profile: z.array(z.object({ xMm: z.number(), thicknessMm: z.number() })),
    achievedRatio: z.number(),
    limitedBy: z.array(z.string()),
    layers: z.array(
      z.object({ role: z.string(), material: z.string().optional(), thicknessMm: z.number().optional() }),
    ),
    pockets: z.array(
      z.object({
        name: z.string(),
        fromMm: z.number(),
        toMm: z.number(),
        widthMm: z.number(),
        depthMm: z.number(),
      }),
    ),
    cloth: z.object({ isOwn: z.boolean(), bottom: z.array(z.string()), top: z.array(z.string()) }),
    massOverClass3G: z.number().nullable(),
  }),
  fileFlags: {
    dxf: "writes the core with its pockets as the router cuts it, as DXF R12; a pocket lies at minus its depth",
    svg: "writes the same as SVG at true scale",
  },
  run: async ({ prefer, ...spec }, { files, write }) => {
    const build = preferring(prefer, catalogue().build);
    const solved = solveSpec(spec, build);
    if (!solved.ok) return solved;
    const { profile, achievedRatio, wantedRatio, limitedBy } = solved.value.core;
    const { laid, isOwn } = solved.value.cloth;
    const machining = coreMachining(
      `${spec.model} ${spec.lengthCm} cm, core, upper face up`,
      solved.value.build,
      build.rules,
    );
    if (files.dxf !== undefined) await write(files.dxf, outlineDxf(machining));
    if (files.svg !== undefined) await write(files.svg, outlineSvg(machining));
    // Class 3 of the same build may be one that the shop does not make.
    const costs = massOfFlexG(spec, build);
    return accept({
      profile: profile.stations,
      achievedRatio,
      wantedRatio,
      limitedBy,
      pockets: corePockets(solved.value.build, build.rules),
      layers: layersOf(solved.value),
      cloth: { isOwn, ...laid },
      massOverClass3G: costs.ok ? costs.value : null,
    });
  },
});

/** The shop's catalogue, choosing cloth by what this call asks for. */
function preferring(prefer: ClothPreference | undefined, build: BuildCatalog): BuildCatalog {
  const { cloth } = build.rules;
  if (prefer === undefined || !cloth) return build;
  return { ...build, rules: { ...build.rules, cloth: { ...cloth, prefer } } };
}

/** From the base up, each with what it is made of. */
function layersOf({ build }: SolvedSpec) {
  return build.layers.map((layer) =>
    layer.role === "core"
      ? { role: layer.role }
      : { role: layer.role, material: layer.material.label, thicknessMm: layer.thicknessMm },
  );
}
