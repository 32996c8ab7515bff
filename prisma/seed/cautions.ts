/** The yes of the demo's people to this season's cautions: all but one, so that the owner sees who is still to say it. */
import { signIn, signOut } from "#auth";
import { readMyCautions, sayCautionsRead } from "#services";
import type { DemoStaff } from "./people";
import { at, type DemoShop, done } from "./sales";

const stillToSay = "desk2@thistle-yard.example";

const ourselves = { address: "first start", device: { name: "the first start" }, isOwnProcess: true } as const;

export async function seedCautions(shop: DemoShop, staff: readonly DemoStaff[], now: Date): Promise<void> {
  for (const { email, password } of staff.filter((each) => each.email !== stillToSay)) {
    const session = done(await signIn({ email, password, ...ourselves }, now), email);
    const ctx = at(shop, now, session.actor);
    const { textsHash } = done(await readMyCautions(ctx), email);
    done(await sayCautionsRead(ctx, { textsHash }), email);
    await signOut(session.token, now);
  }
}
