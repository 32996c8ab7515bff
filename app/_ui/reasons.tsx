/**
 * Why a number is what it is: each factor, its size and its direction, then the sum. Longer bars are bigger effects;
 * the sign and the number say the same in words.
 */
export interface Reason {
  readonly factor: string;
  /** "+3.2 cm", "× 1.06", "costs 0.5" */
  readonly amount: string;
  readonly direction: "up" | "down" | "none";
  /** 0–1, against the largest in the list. */
  readonly share: number;
}

const arrows = { up: "▲", down: "▼", none: "·" } as const;
const words = { up: "raises", down: "lowers", none: "leaves" } as const;

/** From the middle: to the right what raises, to the left what lowers, all of a list on one scale. */
function SignedBar({ direction, share }: Reason) {
  const width = `${Math.round(Math.min(1, Math.max(0, share)) * 50)}%`;
  return (
    <span aria-hidden="true" className="relative h-3 border-x border-rule">
      <span className="absolute inset-y-0 left-1/2 w-px bg-control" />
      {direction === "up" ? <span className="absolute inset-y-0.5 left-1/2 bg-larch" style={{ width }} /> : null}
      {direction === "down" ? <span className="absolute inset-y-0.5 right-1/2 bg-tarn" style={{ width }} /> : null}
    </span>
  );
}

export function Reasons({
  title,
  reasons,
  result,
}: {
  readonly title: string;
  readonly reasons: readonly Reason[];
  readonly result?: string;
}) {
  return (
    <div className="max-w-measure">
      <p className="mb-1 text-sm font-medium">{title}</p>
      <ul className="border-t border-rule text-sm">
        {reasons.map((reason) => (
          <li
            key={reason.factor}
            className="grid grid-cols-[minmax(0,1fr)_minmax(2rem,6rem)_minmax(0,auto)] items-center gap-3 border-b border-rule py-1"
          >
            <span>{reason.factor}</span>
            <SignedBar {...reason} />
            <span className="measure text-right sm:whitespace-nowrap">
              <span className="sr-only">{words[reason.direction]} it: </span>
              <span aria-hidden="true">{arrows[reason.direction]} </span>
              {reason.amount}
            </span>
          </li>
        ))}
        {result ? (
          <li className="flex justify-between gap-3 py-1 font-medium">
            <span>together</span>
            <span className="measure">{result}</span>
          </li>
        ) : null}
      </ul>
    </div>
  );
}
