/** Everything about one person as a file. */
import { bytesOfImage } from "#data/artwork";
import { recordEvents } from "#data/events";
import { personKeys, personRows } from "#data/persons";
import type { CustomerId } from "#engine/units";
import { accept, type Outcome } from "#engine/units";
import type { Context } from "#services/context";
import { eventOf } from "#services/record";
import { currentCatalog } from "#shop/catalogue/current";
import { shopDay } from "#shop/time/shop-time";
import { findCustomer } from "./find-customer";
import type { PersonFile } from "./views";

/** As JSON, pictures in base64; owner only. That it was made is an event. */
export async function personFile(
  ctx: Context,
  input: { readonly customerId: CustomerId },
): Promise<Outcome<PersonFile>> {
  const found = await findCustomer(ctx, ctx.db, "person.export", input.customerId);
  if (!found.ok) return found;
  const { shop } = currentCatalog();
  const keys = await personKeys(ctx.db, found.value.id);
  const rows = await personRows(ctx.db, keys);
  const pictures = await Promise.all(
    rows.pictures.map(async ({ images, ...picture }) => ({
      ...picture,
      images: await Promise.all(images.map(withBytes)),
    })),
  );
  await recordEvents(ctx.db, [eventOf(ctx, "person-exported", { kind: "customer", id: found.value.id }, {})]);
  const made = { shop: shop.name, madeAt: ctx.now.toISOString() };
  return accept({
    fileName: `person-${shopDay(ctx.now, shop.timeZone)}.json`,
    text: JSON.stringify({ ...made, ...rows, pictures }, plain, 2),
  });
}

/** With the picture itself, wherever it is kept. */
async function withBytes<Image extends Parameters<typeof bytesOfImage>[0]>(image: Image) {
  return { ...image, bytes: await bytesOfImage(image) };
}

/** Whole numbers of the database as text, bytes as base64. */
function plain(_key: string, value: unknown): unknown {
  if (typeof value === "bigint") return value.toString();
  return value instanceof Uint8Array ? Buffer.from(value).toString("base64") : value;
}
