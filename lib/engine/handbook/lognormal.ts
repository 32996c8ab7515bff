/**
 * The lognormal's quantile itself. Only checks use it: it holds the stored sampling tables of the math room against the
 * distribution they are drawn from (M. J. Wichura, Algorithm AS 241, Applied Statistics 37 (1988) 477–484).
 */
import { type Lognormal, normalQuantile, portableExp } from "#engine/math";

/** p-quantile of a lognormal. */
export function lognormalQuantile({ mu, sigma }: Lognormal, p: number): number {
  return portableExp(mu + sigma * normalQuantile(p));
}
