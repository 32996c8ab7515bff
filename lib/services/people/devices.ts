/** Devices of the floor: an owner enrols the one they sit at, and gives it back from anywhere. */
import { deviceByToken, permit } from "#auth";
import { clearEnrolled, markEnrolled } from "#data/devices";
import { recordEvents } from "#data/events";
import { revokeSessions } from "#data/sessions";
import { transaction } from "#data/transaction";
import { accept, type Outcome, refuse } from "#engine/units";
import type { Context } from "#services/context";
import { eventOf, nameOf } from "#services/record";

/**
 * From now on people sign in by name and short code on this device. Owners only. Refuses `device-unknown` when the browser
 * keeps no cookie of ours, `device-enrolled` when it is one already.
 */
export async function enrolDevice(
  ctx: Context,
  input: { readonly deviceToken: string | undefined; readonly name: string },
): Promise<Outcome<void>> {
  const allowed = permit(ctx.actor, "device.enrol");
  if (!allowed.ok) return allowed;
  const device = await deviceByToken(ctx.db, input.deviceToken);
  if (device === null) return refuse({ code: "device-unknown" });
  const { name } = input;
  return transaction(ctx.db, async (tx) => {
    const enrolled = { floorName: name, enrolledAt: ctx.now, enrolledByName: nameOf(ctx.actor) };
    if (!(await markEnrolled(tx, device.id, enrolled))) return refuse({ code: "device-enrolled" });
    await recordEvents(tx, [eventOf(ctx, "device-enrolled", { kind: "device", id: device.id }, { name })]);
    return accept(undefined);
  });
}

/** No short code counts on the device any more, and who is signed in there by one is not. Owners only. */
export async function releaseDevice(ctx: Context, input: { readonly deviceId: string }): Promise<Outcome<void>> {
  const allowed = permit(ctx.actor, "device.enrol");
  if (!allowed.ok) return allowed;
  const { deviceId } = input;
  return transaction(ctx.db, async (tx) => {
    const name = await clearEnrolled(tx, deviceId);
    if (name === null) return refuse({ code: "device-not-enrolled" });
    const sessions = await revokeSessions(tx, { deviceId, kind: "floor" }, ctx.now);
    await recordEvents(tx, [eventOf(ctx, "device-released", { kind: "device", id: deviceId }, { name, sessions })]);
    return accept(undefined);
  });
}
