// The words of a name that a slip of the mind exchanges, and the factors that a slip of the unit leaves out.

const pairs = [
  ["left", "right"],
  ["min", "max"],
  ["minimum", "maximum"],
  ["first", "last"],
  ["tip", "tail"],
  ["start", "end"],
  ["begin", "end"],
  ["from", "to"],
  ["before", "after"],
  ["lower", "upper"],
  ["low", "high"],
  ["top", "bottom"],
  ["base", "top"],
  ["inner", "outer"],
  ["forebody", "afterbody"],
  ["earliest", "latest"],
  ["earlier", "later"],
  ["previous", "next"],
  ["width", "height"],
  ["width", "thickness"],
  ["length", "width"],
  ["x", "y"],
  ["x0", "x1"],
  ["p50", "p90"],
  ["floor", "ceil"],
  ["mirrored", "plain"],
  ["old", "new"],
  ["shorter", "longer"],
  ["wider", "narrower"],
  ["parent", "child"],
];

/** Whole names that are exchanged as they stand. */
const wholeNames = [
  ["L", "R"],
  ["some", "every"],
  ["find", "findLast"],
  ["findIndex", "findLastIndex"],
  ["indexOf", "lastIndexOf"],
  ["shift", "pop"],
  ["push", "unshift"],
  ["sin", "cos"],
  ["floor", "ceil"],
  ["startsWith", "endsWith"],
  ["gte", "gt"],
  ["lte", "lt"],
  ["asc", "desc"],
];

/** The names that a slip of the side makes of this one: tipWidthMm → tailWidthMm, tipHeightMm, … */
export function otherSides(name) {
  const found = new Set();
  for (const [one, other] of wholeNames) {
    if (name === one) found.add(other);
    if (name === other) found.add(one);
  }
  const parts = name.split(/(?=[A-Z])|(?<=[-_])|(?=[-_])/);
  parts.forEach((part, index) => {
    for (const [one, other] of pairs) {
      for (const [here, there] of [
        [one, other],
        [other, one],
      ]) {
        if (part.toLowerCase() !== here) continue;
        const written = part === here ? there : `${there[0].toUpperCase()}${there.slice(1)}`;
        found.add(replaced(parts, index, written));
      }
    }
  });
  found.delete(name);
  return [...found];
}

function replaced(parts, index, written) {
  return parts.map((part, at) => (at === index ? written : part)).join("");
}

const factors = [
  [/(Mm|MmPerM|MmAtMm)$/, 10],
  [/Cm$/, 10],
  [/(M|Km|G|Kg|N|Mpa|MPa|Gpa|Nm|Nmm2|Ms|Cents)$/, 1000],
  [/(Seconds|Minutes|Minute)$/, 60],
  [/(Hours|Days|Day)$/, 24],
  [/(Percent|Share|Ratio)$/, 100],
  [/(Radians|Degrees)$/, 180 / Math.PI],
];

/** The factor that is lost or counted twice where a name carries this unit, or null where it carries none. */
export function unitFactor(name) {
  const bare = { minutes: "Minutes", days: "Days", cents: "Cents", hours: "Hours", share: "Share" }[name];
  for (const [suffix, factor] of factors) if (suffix.test(bare ?? name) && name.length > 1) return factor;
  return null;
}
