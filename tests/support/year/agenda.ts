/** What is still to happen, by its time. What is entered for the same moment happens in the order it was entered. */

export interface Agenda {
  readonly enter: (at: Date, act: () => Promise<void>) => void;
  /** When the next thing happens; null when nothing is left. */
  readonly next: () => Date | null;
  /** Does all that is due by then. */
  readonly doDue: (now: Date) => Promise<void>;
}

export function openAgenda(): Agenda {
  const entries: { readonly at: Date; readonly act: () => Promise<void> }[] = [];
  return {
    enter(at, act) {
      const behind = entries.findIndex((entry) => entry.at > at);
      entries.splice(behind < 0 ? entries.length : behind, 0, { at, act });
    },
    next: () => entries[0]?.at ?? null,
    async doDue(now) {
      for (let first = entries[0]; first !== undefined && first.at <= now; first = entries[0]) {
        entries.shift();
        await first.act();
      }
    },
  };
}
