import { Badge } from "#app/_ui/notice.tsx";
import words from "#content/copy/shop.json";
import type { ClockStartCondition } from "#engine/floor";

/** What a pair or an order waits for, each in a word. */
export function WaitingBadges({ waitingFor }: { readonly waitingFor: readonly ClockStartCondition[] }) {
  return (
    <span className="flex flex-wrap gap-1">
      {waitingFor.map((condition) => (
        <Badge key={condition} tone="amber">
          {words.waitingFor[condition]}
        </Badge>
      ))}
    </span>
  );
}
