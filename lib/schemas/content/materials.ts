import { z } from "zod";
import type { Fabric, MaterialLibrary, Sheet, Wood } from "#engine/materials";
import { about, distinctBy, id, label, positive, source } from "./shared";

const density = z.number().min(50).max(20_000);

const colour = z.string().regex(/^#[0-9a-f]{6}$/);

const woodSchema = z.strictObject({
  id,
  label,
  bendingModulusMpa: z.number().min(1000).max(30_000),
  densityKgM3: z.number().min(80).max(1300),
  modulusToShearRatio: z.number().min(5).max(40),
  modulusVariation: z.number().min(0).max(0.5),
  look: z.strictObject({ ground: colour, grain: colour, linesPer10Mm: z.number().min(1).max(20) }).exactOptional(),
  source,
}) satisfies z.ZodType<Wood>;

const fibresDeg = z.array(z.number().min(-90).max(90)).min(1).max(8);

/**
 * A release from before the directions of the fibres were written down: as papers then took them from the cloth's stiffness.
 * Shear over axial modulus is about 0.04 for fibres along alone, 0.3 for 0/±45 and above 1 for ±45 alone; a 0/90 weave has
 * equal moduli both ways (classical lamination of one ply).
 */
function fibresOfOldRelease({ exMpa, eyMpa, gxyMpa }: Pick<Fabric, "exMpa" | "eyMpa" | "gxyMpa">): readonly number[] {
  const shear = gxyMpa / exMpa;
  if (shear > 0.5) return [45, -45];
  if (eyMpa / exMpa > 0.8) return [0, 90];
  return shear < 0.12 ? [0] : [0, 45, -45];
}

const fabricSchema = z
  .strictObject({
    id,
    label,
    arealWeightGM2: z.number().min(20).max(3000),
    thicknessMm: positive.max(5),
    exMpa: z.number().min(100).max(400_000),
    eyMpa: z.number().min(100).max(400_000),
    gxyMpa: z.number().min(50).max(150_000),
    nuXy: z.number().min(0).max(1),
    fibresDeg: fibresDeg.optional(),
    densityKgM3: density,
    isOpaque: z.boolean(),
    source,
  })
  .transform((fabric) => ({
    ...fabric,
    fibresDeg: fabric.fibresDeg ?? fibresOfOldRelease(fabric),
  })) satisfies z.ZodType<Fabric>;

const sheetSchema = z.strictObject({
  id,
  label,
  modulusMpa: positive,
  shearModulusMpa: positive,
  densityKgM3: density,
  isOpaque: z.boolean(),
  source,
}) satisfies z.ZodType<Sheet>;

export const materialsFileSchema = z.strictObject({
  about,
  woods: z.array(woodSchema).superRefine(distinctBy((wood) => wood.id)),
  fabrics: z.array(fabricSchema).superRefine(distinctBy((fabric) => fabric.id)),
  sheets: z.array(sheetSchema).superRefine(distinctBy((sheet) => sheet.id)),
}) satisfies z.ZodType<MaterialLibrary>;
