/** How the builds on one axis are told apart: by the line, by a letter, and only then by colour. */

export interface BuildLook {
  readonly letter: string;
  readonly stroke: string;
  readonly strokeWidth: number;
  readonly strokeDasharray?: string;
  readonly strokeLinecap?: "round";
}

const solid: BuildLook = { letter: "A", stroke: "var(--ink)", strokeWidth: 1.5 };
const looks: readonly BuildLook[] = [
  solid,
  { letter: "B", stroke: "var(--tarn)", strokeWidth: 1.75, strokeDasharray: "8 4" },
  { letter: "C", stroke: "var(--amber)", strokeWidth: 2.25, strokeDasharray: "0.1 4.5", strokeLinecap: "round" },
];

/** The look of the first, second and third build. */
export function lookOf(index: number): BuildLook {
  return looks[index] ?? solid;
}

/** What an SVG path takes of a look; lines keep their width however the drawing is stretched. */
export function lineOf(index: number) {
  const { letter: _letter, ...line } = lookOf(index);
  return { ...line, fill: "none", strokeLinejoin: "round", vectorEffect: "non-scaling-stroke" } as const;
}

/** A piece of the line and its letter. */
export function LineKey({ index }: { readonly index: number }) {
  return (
    <span className="inline-flex items-baseline gap-1 whitespace-nowrap">
      <svg viewBox="0 0 28 8" className="h-2 w-7 flex-none self-center" aria-hidden="true">
        <path d="M1 4H27" {...lineOf(index)} />
      </svg>
      <span className="font-semibold">{lookOf(index).letter}</span>
    </span>
  );
}
