/** What is otherwise since a version was stored, each with its reason; whatever else differs is a fault. */
import cautionWords from "#content/copy/cautions.json";
import paperWords from "#content/copy/papers.json";
import type { CautionPaper, Hazard } from "#engine/floor";
import { fill } from "#engine/units";
import { currentCatalog } from "#shop/catalogue/current";

/** Words that papers say otherwise; `$1` and so on stand for what both say. */
interface ChangedWords {
  readonly is: RegExp;
  readonly was: string;
  readonly why: string;
}

/** Hazards of stations that the version did not know. */
const addedAtStations = [
  ...["eyes-glue", "eyes-resin", "eyes-grinder", "hearing-grinder"],
  ...["lifting-moulds", "unattended-heat", "flex-bench"],
];

/** Whether a part of the specification may still change. */
const until = "(up to|closed with)";

const { hazards, localRules } = currentCatalog().safety;
const more = fill(cautionWords.paper.more, { localRules });

/** Texts as they are, of which any may be missing. */
function anyOf(texts: readonly string[]): string {
  return texts.map((text) => `(?:${escaped(text)})?`).join("");
}

function escaped(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\/]/g, "\\$&");
}

const linesWhere = (is: (hazard: Hazard) => boolean) => hazards.filter(is).map(({ line }) => line);
const onPaper = (paper: CautionPaper) => hazards.filter(({ papers }) => papers.includes(paper));
const linesOn = (paper: CautionPaper) => onPaper(paper).map(({ line }) => line);
const wholes = (paper: CautionPaper) =>
  onPaper(paper).map(({ line, full, reference }) => `${line} ${full} ${fill(cautionWords.reference, { reference })}`);

const oldNotes =
  "Please note · Bindings are mounted, adjusted and inspected by a certified technician following ISO 11088. This shop never quotes, stores or prints release settings. · Bindings are not included. A certified technician mounts, adjusts and inspects them following ISO 11088. · A recommendation is not a guarantee, and the ability asked for here is not a classification of skier type.";

const changedWords: readonly ChangedWords[] = [
  {
    is: words("; what it leaves bare stays the plain sheet"),
    was: "",
    why: "a proof says what lies where the picture does not",
  },
  {
    is: words(escaped(paperWords.pairDrawing.caption)),
    was: "",
    why: "quote and confirmation show the pair, drawn",
  },
  {
    is: words("(?:Made to your specification )?· stiffness made for your measures \\(flex ratio \\d\\.\\d\\d\\)"),
    was: "",
    why: "a stiffness that the shop works out from its own classes is no specification of the customer's",
  },
  {
    is: words("Made to your specification Nothing: chosen from the shop's own options\\."),
    was: "",
    why: "so nothing is, where the stiffness was all",
  },
  {
    is: words("scan to read and accept it"),
    was: "the shop's page of this quote",
    why: "a customer's paper carries the customer's link, also when the shop prints it",
  },
  {
    is: words("scan to read the offer and accept it"),
    was: "the shop's page of this offer",
    why: "the same for a club's offer",
  },
  {
    is: words("scan to follow the order"),
    was: "the shop's page of this order",
    why: "the same for the confirmation",
  },
  {
    is: words("Scan the code above, or open http://localhost:3000/quote/[\\w-]{43}"),
    was: "Open the private link you were sent with this quote",
    why: "the same in a sentence",
  },
  {
    is: words("Cutting wheel and shears: mind the other hand\\.Magnesium dust and chips burn: never water\\."),
    was: "Cutting wheel and shears: mind the other hand.",
    why: "magnesium plate can be ordered since, and its hazard is told at the kit",
  },
  {
    is: words("Part the panel, trim flash, sidewall bevel"),
    was: "Trim flash, sidewall bevel",
    why: "the station says that it parts what was pressed as one",
  },
  ...(["quote", "order-confirmation"] as const).map((paper) => ({
    is: words(`Please note${anyOf(wholes(paper))}${escaped(localRules)}`),
    was: oldNotes,
    why: "what can hurt is told whole, by name and not by its place among the terms",
  })),
  {
    is: words(`Please note${anyOf(linesOn("club-quote"))}${escaped(more)}`),
    was: oldNotes,
    why: "what can hurt is told by name and not by its place among the terms",
  },
  {
    is: words(`(?:${anyOf(linesOn("kit-list"))}|${anyOf(linesOn("labels"))})${escaped(more)}`),
    was: "",
    why: "kit list and labels say what can hurt",
  },
  {
    is: words(
      `(print revision \\d+)(?:${linesWhere(({ labels }) => labels.length > 0)
        .map(escaped)
        .join("|")})`,
    ),
    was: "$1",
    why: "each label says what can hurt where it is stuck on",
  },
  {
    is: words(
      "Hardwood dust: extraction on, mask on. Hearing protection. Eye protection. Machine doors shut; locked out for a bit change. No gloves at the router.",
    ),
    was: "Machine doors shut; locked out for a bit change. No gloves at the router. Hardwood dust: extraction on, mask on. Hearing protection.",
    why: "eyes at the router; what holds at several machines stands first",
  },
  {
    is: words(
      `(?:${linesWhere(({ id }) => addedAtStations.includes(id))
        .map(escaped)
        .join("|")})`,
    ),
    was: "",
    why: "hazards that no station told of",
  },
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
    is: words("Press by Tue 8 Dec 2026"),
    was: "Press by Wed 9 Dec 2026",
    why: "the plan is today's: pressings of one mould come together where there is time in hand",
  },
  {
    is: words("Thu 17 Dec 2026 to Thu 31 Dec 2026"),
    was: "Fri 18 Dec 2026 to Mon 4 Jan 2027",
    why: "an open offer to a club is dated by today's plan",
  },
  {
    is: words("supports (shoulder and heel|\\d+ mm and \\d+ mm from tip), over \\d+ mm, load"),
    was: "supports $1, load",
    why: "springs over different lengths are told with their length",
  },
  {
    is: words("held at mount, load at (shoulder|heel), over \\d+ mm"),
    was: "held at mount, load at $1",
    why: "springs over different lengths are told with their length",
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
function inOldWords(page: string): string {
  return changedWords.reduce((text, { was, is }) => text.replace(is, bare(was)), bare(page));
}

/** The pages of a paper as the stored version would have put them: its shorter notes found room on the page before. */
export function inOldPages(pages: readonly string[]): readonly string[] {
  const texts = pages.map(inOldWords);
  const [before, last] = texts.slice(-2);
  const notes = bare(oldNotes);
  const head = last?.slice(0, last.indexOf(notes)) ?? "";
  const count = texts.length;
  const foot = last?.slice(head.length + notes.length) ?? "";
  const isAlone = last?.includes(notes) && before?.startsWith(head) && foot.endsWith(`page${count}/${count}`);
  if (!isAlone || before === undefined) return texts;
  const footBefore = foot.replace(`page${count}/`, `page${count - 1}/`);
  const joined = [...texts.slice(0, -2), before.replace(footBefore, notes + footBefore)];
  return joined.map((text) => text.replace(new RegExp(`(page\\d+/)${count}$`), `$1${count - 1}`));
}

/**
 * Quote and confirmation hold a drawing since, and their pages break elsewhere: what runs through all pages, without the head
 * and the foot that each page repeats.
 */
export function inOldFlow(pages: readonly string[]): string {
  const texts = inOldPages(pages).map((text) =>
    text
      .replace(/(?:Quote|Orderconfirmation)[QO]-\d+·revision\d+spec\w+·printed.*?page\d+\/\d+$/, "")
      // Letters on a drawing are edged by copies of themselves.
      .replace(/(\p{Lu}{2,24}?)\1{8,}/gu, ""),
  );
  const [first = "", ...others] = texts;
  let head = first.length;
  for (const other of others) while (!other.startsWith(first.slice(0, head))) head -= 1;
  return first + others.map((text) => text.slice(head)).join("");
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
  "Trim flash, sidewall bevel": "Part the panel, trim flash, sidewall bevel",
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
