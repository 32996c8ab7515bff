/** A path to return to after the sign-in, only within the shop: an address from outside is never followed. */
export function safeBackPath(back: string | undefined): "/shop" {
  const isOwn =
    back !== undefined && /^\/shop(\/[\w\-./]*)?(\?[\w\-./?=&%+,:~()@*]*)?$/.test(back) && !back.includes("//");
  return (isOwn ? back : "/shop") as "/shop";
}
