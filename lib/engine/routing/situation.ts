import type { FloorCatalog } from "./floor";
import type { FloorChange } from "./floor-changes";
import type { PairOnFloor, ShopMinute } from "./types";

/** Everything that dates depend on: the floor and what is different about it, the open pairs, and what time it is. */
export interface QueueSituation {
  readonly floor: FloorCatalog;
  readonly changes: readonly FloorChange[];
  readonly pairs: readonly PairOnFloor[];
  readonly now: ShopMinute;
}
