/** A path to return to after the sign-in, only within the shop: an address from outside is never followed. */
export function safeBackPath(back: string | undefined): "/shop" {
  const isOurs = back !== undefined && /^\/shop(\/[\w\-./?=&%]*)?$/.test(back) && !back.includes("//");
  // Checked above; the type names the start of every such path.
  return (isOurs ? back : "/shop") as "/shop";
}
