/** Who bought, as a quote or an order keeps it. */
import type { PostalAddress } from "#schemas/stored/index";
import { asJson } from "./json";

export interface Buyer {
  readonly name: string;
  readonly email: string | null;
  /** As typed. */
  readonly phone: string | null;
  readonly address: PostalAddress | null;
}

/** The columns for it. */
export function buyerData({ name, email, phone, address }: Buyer) {
  return {
    buyerName: name,
    buyerEmail: email,
    buyerPhone: phone,
    ...(address === null ? {} : { buyerAddress: asJson(address) }),
  };
}

/** The same from a row that holds more. */
export function buyerFrom({ name, email, phone, address }: Buyer): Buyer {
  return { name, email, phone, address };
}
