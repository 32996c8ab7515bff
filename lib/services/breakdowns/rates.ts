/** What extra capacity costs the demo shop: invented values, no source. */

/** One person for one hour after closing time. */
export const extraHourCents = 4200;
/** One more person for a week, with what comes on top of the wage. */
export const hireCentsPerWeek = 128_000;
/** A hired press for a week. */
export const secondPressCentsPerWeek = 60_000;
