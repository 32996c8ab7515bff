/**
 * One ski as a body: rings of points square to its running surface, from tip to tail, joined by triangles. Axes, mm: X to the
 * skier's right, Y from the tip along the bench, Z up from the bench. The same outline, profile, walls and thickness as the
 * drawings.
 */
import { halfWidthAt, topWidthMm } from "#engine/geometry";
import { interpolate } from "#engine/math";
import type { PairLook } from "./look";
import { greatestHalfWidthMm, screenOutline } from "./paths";
import { type SidePoint, sideLine } from "./side";

export type MeshPart = "top" | "wall" | "steel" | "base";

/** Triangles of one material. */
export interface PartMesh {
  readonly part: MeshPart;
  /** x, y, z of each point. */
  readonly positions: Float32Array;
  /** Unit normals, outwards. */
  readonly normals: Float32Array;
  /** u across (0 at the widest left, 1 at the widest right), v along (0 at the tip, 1 at the tail). */
  readonly uvs: Float32Array;
  /** Three points a triangle. */
  readonly indices: Uint16Array;
}

/** A point of a ring: across, up from the running surface, and the outward normal there. */
interface RingPoint {
  readonly y: number;
  readonly up: number;
  readonly normalY: number;
  readonly normalUp: number;
}

const acrossPoints = 7;

/** The four surfaces of a ski, a few thousand triangles together. */
export function skiMesh(look: PairLook): readonly PartMesh[] {
  const line = sideLine(look.shape, ringStations(look));
  const parts: readonly MeshPart[] = ["top", "wall", "steel", "base"];
  return parts.flatMap((part) =>
    part === "top" || part === "base"
      ? [meshOf(look, line, part, (xMm) => faceRing(look, part, xMm))]
      : [joined([1, -1].map((side) => meshOf(look, line, part, (xMm) => sideRing(look, part, xMm, side))))],
  );
}

/** Where the outline bends most there are most rings: its own points, and one where each edge begins and ends. */
function ringStations({ shape, edge }: PairLook): readonly number[] {
  const all = [...screenOutline(shape).map(({ xMm }) => xMm), edge.fromMm, edge.toMm];
  return [...new Set(all)].sort((a, b) => a - b);
}

interface Section {
  readonly half: number;
  readonly topHalf: number;
  readonly thicknessMm: number;
  readonly steelMm: number;
}

function sectionAt({ shape, thickness, wall, edge }: PairLook, xMm: number): Section {
  const half = halfWidthAt(shape, xMm);
  const thicknessMm = interpolate(
    thickness.map((each) => each.xMm),
    thickness.map((each) => each.thicknessMm),
    xMm,
  );
  const hasSteel = xMm >= edge.fromMm && xMm <= edge.toMm;
  return {
    half,
    topHalf: Math.max(0, topWidthMm(2 * half, thicknessMm, wall) / 2),
    thicknessMm,
    steelMm: hasSteel ? Math.min(edge.heightMm, thicknessMm) : 0,
  };
}

/** From left to right on top, from right to left below, so that triangles face outwards. */
function faceRing(look: PairLook, part: "top" | "base", xMm: number): readonly RingPoint[] {
  const { half, topHalf, thicknessMm } = sectionAt(look, xMm);
  return Array.from({ length: acrossPoints }, (_, i) => {
    const u = (2 * i) / (acrossPoints - 1) - 1;
    return part === "top"
      ? { y: u * topHalf, up: thicknessMm, normalY: 0, normalUp: 1 }
      : { y: -u * half, up: 0, normalY: 0, normalUp: -1 };
  });
}

/** The right side goes down from the topsheet, the left side up to it. */
function sideRing(look: PairLook, part: "wall" | "steel", xMm: number, side: number): readonly RingPoint[] {
  const { half, topHalf, thicknessMm, steelMm } = sectionAt(look, xMm);
  const upright = Math.min(thicknessMm, Math.max(steelMm, look.wall.uprightMm));
  const lean = (look.wall.bevelDeg * Math.PI) / 180;
  const up = { normalY: side, normalUp: 0 };
  const leaning = { normalY: side * Math.cos(lean), normalUp: Math.sin(lean) };
  const points: readonly RingPoint[] =
    part === "steel"
      ? [
          { y: side * half, up: steelMm, ...up },
          { y: side * half, up: 0, ...up },
        ]
      : [
          { y: side * topHalf, up: thicknessMm, ...leaning },
          { y: side * half, up: upright, ...leaning },
          { y: side * half, up: steelMm, ...up },
        ];
  return side > 0 ? points : [...points].reverse();
}

function meshOf(
  look: PairLook,
  line: readonly SidePoint[],
  part: MeshPart,
  ringAt: (xMm: number) => readonly RingPoint[],
): PartMesh {
  const wide = greatestHalfWidthMm(look.shape);
  const positions: number[] = [];
  const normals: number[] = [];
  const uvs: number[] = [];
  const indices: number[] = [];
  let ringLength = 0;
  for (const [row, { xMm, alongMm, heightMm, slope }] of line.entries()) {
    const cos = Math.sqrt(Math.max(0, 1 - slope ** 2));
    const ring = ringAt(xMm);
    ringLength = ring.length;
    for (const { y, up, normalY, normalUp } of ring) {
      // Square to the running surface: up leans back by its slope.
      positions.push(y, alongMm - up * slope, heightMm + up * cos);
      normals.push(normalY, -normalUp * slope, normalUp * cos);
      uvs.push((y + wide) / (2 * wide), xMm / look.shape.lengthMm);
    }
    if (row === 0) continue;
    for (let i = 0; i + 1 < ringLength; i++) {
      const [a, b] = [(row - 1) * ringLength + i, row * ringLength + i];
      indices.push(a, a + 1, b, a + 1, b + 1, b);
    }
  }
  return {
    part,
    positions: new Float32Array(positions),
    normals: new Float32Array(normals),
    uvs: new Float32Array(uvs),
    indices: new Uint16Array(indices),
  };
}

function joined(meshes: readonly PartMesh[]): PartMesh {
  const [first] = meshes;
  if (!first) throw new RangeError("joined: no mesh");
  const all = (pick: (mesh: PartMesh) => Float32Array) => new Float32Array(meshes.flatMap((mesh) => [...pick(mesh)]));
  let points = 0;
  const indices = meshes.flatMap((mesh) => {
    const shifted = [...mesh.indices].map((index) => index + points);
    points += mesh.positions.length / 3;
    return shifted;
  });
  return {
    part: first.part,
    positions: all((mesh) => mesh.positions),
    normals: all((mesh) => mesh.normals),
    uvs: all((mesh) => mesh.uvs),
    indices: new Uint16Array(indices),
  };
}
