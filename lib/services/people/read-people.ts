/** An owner's page about people: who is here, where they are signed in, devices and screens, and what happened. */
import { deviceByToken, permit } from "#auth";
import { allStaff, type StaffMember } from "#data/access";
import { enrolledDevices } from "#data/devices";
import { type EventRecord, eventsSince, latestEvents } from "#data/events";
import { accept, type Outcome } from "#engine/units";
import type { Context } from "#services/context";
import { eventView } from "#shop/names/common-view";
import { openSignIns, signInViews } from "./sign-ins";
import type { GuessingView, PeopleView } from "./views";
import { openWalls } from "./walls";

const mostEvents = 200;
/** Guesses are told for a week: whoever was away over the weekend reads of them. Shop practice, no source. */
const guessingDays = 7;

/** Everything about people. Owners only. @param input.deviceToken of the browser that asks */
export async function readPeople(
  ctx: Context,
  input: { readonly deviceToken?: string | undefined } = {},
): Promise<Outcome<PeopleView>> {
  const allowed = permit(ctx.actor, "staff.manage");
  if (!allowed.ok) return allowed;
  const [members, sessions, devices, walls, guesses, events, here] = await Promise.all([
    allStaff(ctx.db),
    openSignIns(ctx),
    enrolledDevices(ctx.db),
    openWalls(ctx),
    guessesOf(ctx),
    latestEvents(ctx.db, ["staff", "device", "wall"], mostEvents),
    deviceByToken(ctx.db, input.deviceToken),
  ]);
  return accept({
    people: members.map((member) => ({
      staffId: member.id,
      name: member.name,
      email: member.email,
      role: member.role,
      since: member.createdAt.toISOString(),
      leftAt: member.closedAt?.toISOString() ?? null,
      hasFloorCode: member.hasFloorCode,
      isDemoPassword: member.isDemoPassword,
      signIns: signInViews(
        ctx,
        sessions.filter(({ staff }) => staff.id === member.id),
      ),
    })),
    devices: devices.map((device) => ({
      deviceId: device.id,
      name: device.floorName ?? "",
      browser: device.name,
      enrolledAt: (device.enrolledAt ?? device.createdAt).toISOString(),
      enrolledBy: device.enrolledByName ?? "",
      lastSeenAt: device.lastSeenAt.toISOString(),
      isThis: device.id === here?.id,
    })),
    thisBrowser: here === null || here.enrolledAt !== null ? null : here.name,
    walls,
    guessing: guessingViews(guesses, members),
    record: events.map((event) => ({ ...eventView(event), about: aboutOf(event, members) })),
  });
}

/** Whose sign-in was guessed at in the last week, for the owner's desk; nobody else is told. */
export async function readGuessing(ctx: Context): Promise<Outcome<readonly GuessingView[]>> {
  const allowed = permit(ctx.actor, "staff.manage");
  if (!allowed.ok) return allowed;
  const guesses = await guessesOf(ctx);
  return accept(guesses.length === 0 ? [] : guessingViews(guesses, await allStaff(ctx.db)));
}

function guessesOf(ctx: Context): Promise<readonly EventRecord[]> {
  return eventsSince(ctx.db, "sign-in-guessed", new Date(ctx.now.getTime() - guessingDays * 86_400_000));
}

/** @param guesses the newest first */
function guessingViews(guesses: readonly EventRecord[], members: readonly StaffMember[]): readonly GuessingView[] {
  return members.flatMap(({ id, name }) => {
    const own = guesses.filter(({ subjectId }) => subjectId === id);
    const [last] = own;
    return last === undefined ? [] : [{ staffId: id, name, lastAt: last.at.toISOString(), times: own.length }];
  });
}

/** The name of whom or what it happened to: a device's and a screen's stands in the event itself. */
function aboutOf({ subjectId, data }: EventRecord, members: readonly StaffMember[]): string {
  const person = members.find(({ id }) => id === subjectId);
  return person?.name ?? (typeof data.name === "string" ? data.name : "");
}
