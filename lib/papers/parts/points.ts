/** Curves given by points with rising x. */
import type { XY } from "./facts";

/** The outline's points from one place to another, both ends exactly. */
export function between(points: readonly XY[], fromMm: number, toMm: number): readonly XY[] {
  const inside = points.filter((p) => p.x > fromMm && p.x < toMm);
  return [{ x: fromMm, y: heightAt(points, fromMm) }, ...inside, { x: toMm, y: heightAt(points, toMm) }];
}

function heightAt(points: readonly XY[], x: number): number {
  const next = points.findIndex((p) => p.x >= x);
  const a = points[next - 1];
  const b = points[next];
  if (!a || !b) return b?.y ?? 0;
  return a.y + ((b.y - a.y) * (x - a.x)) / (b.x - a.x);
}
