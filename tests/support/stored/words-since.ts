/** What is otherwise since a version was stored, each with its reason; whatever else differs is a fault. */

/** Words that papers say otherwise; `$1` and so on stand for what both say. */
interface ChangedWords {
  readonly is: RegExp;
  readonly was: string;
  readonly why: string;
}

/** Whether a part of the specification may still change. */
const until = "(up to|closed with)";

const changedWords: readonly ChangedWords[] = [
  {
    is: words(
      `Model and length ${until} the start of bonding the sidewalls Core ${until} the start of gluing the core Reinforcements, flex, mount line \\1 the start of shaping the core`,
    ),
    was: "Model and length, reinforcements, flex, mount line $1 the start of shaping the core Core $2 the start of gluing the core",
    why: "sidewalls, cut to the ski's length, are bonded to the blank before it is milled",
  },
  {
    is: words(`Protectors ${until} the start of (laying up|sidewalls and plates)`),
    was: "Protectors until their station",
    why: "protectors are laid up with the cloths, not bonded with the sidewalls: some are open again",
  },
  {
    is: words("Press by Thu 3 Dec 2026"),
    was: "Press by Fri 4 Dec 2026",
    why: "the plan is today's: the sidewalls cure before the milling, no longer between it and the lay-up",
  },
  {
    is: words("Thu 17 Dec 2026 to Mon 28 Dec 2026"),
    was: "Fri 18 Dec 2026 to Mon 4 Jan 2027",
    why: "an open offer to a club is dated by today's plan",
  },
  {
    is: words("All ready, [a-z0-9]+ by the first day, [a-z0-9]+ by the last"),
    was: "All ready, nine times out of ten by the later day",
    why: "so its days have their shares, which days that were stored have not",
  },
  {
    is: words("all of these pairs are ready: [a-z0-9]+ by the first day, [a-z0-9]+ by the last"),
    was: "nine times out of ten all of these pairs are ready by the later date",
    why: "the same in a sentence",
  },
];

// Where lines break is the drawing's business.
function bare(text: string): string {
  return text.replace(/\s/g, "");
}

function words(pattern: string): RegExp {
  return new RegExp(bare(pattern), "g");
}

/** The letters of a page as the stored version would have put it. */
export function inOldWords(page: string): string {
  return changedWords.reduce((text, { was, is }) => text.replace(is, bare(was)), bare(page));
}

interface PairOnFloor {
  /** "<station> <visit and side> <state>" */
  readonly operations: readonly string[];
  /** Start and end of those that were begun, in the same order. */
  readonly ticked: readonly (readonly (string | null)[])[];
}

const walls = "Sidewalls and spacers bonded to the blank";
const profile = "Profile thickness with sidewalls, pockets, outline";
const todaysName: Readonly<Record<string, string>> = {
  "Sidewalls, spacers, plates bonded": walls,
  "Profile thickness, pockets, outline": profile,
};

/**
 * A stored pair as it stands on today's floor: sidewalls come before the milling. A blank that was ready to be milled gets its
 * sidewalls first; one that was already being milled may get them at once.
 */
export function onTodaysFloor<P extends PairOnFloor>(pair: P): P {
  let ticks = 0;
  const visits = pair.operations.map((text) => {
    const [, station = "", visit = "", state = ""] = /^(.*) (\d+[LR]?) (\w+)$/.exec(text) ?? [];
    const isBegun = !["blocked", "ready"].includes(state);
    return { station: todaysName[station] ?? station, visit, state, tick: isBegun ? pair.ticked[ticks++] : undefined };
  });
  const last = (name: string) => visits.filter(({ station }) => station === name).at(-1);
  const isGlued = last("Core lay-up and glue")?.state === "done";
  const isBonded = last(walls)?.state === "done";
  const settled = visits.map((each) => {
    if (each.station === walls && each.state === "blocked" && isGlued) return { ...each, state: "ready" };
    if (each.station === profile && each.state === "ready" && !isBonded) return { ...each, state: "blocked" };
    return each;
  });
  const at = settled.findIndex(({ station }) => station === profile);
  const of = (name: string) => settled.filter(({ station }) => station === name);
  const others = settled.filter(({ station }) => station !== walls && station !== profile);
  const ordered = [...others.slice(0, at), ...of(walls), ...of(profile), ...others.slice(at)];
  return {
    ...pair,
    operations: ordered.map(({ station, visit, state }) => `${station} ${visit} ${state}`),
    ticked: ordered.flatMap(({ tick }) => (tick === undefined ? [] : [tick])),
  };
}
