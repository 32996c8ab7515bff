/** A path to return to after the sign-in, only within the shop: an address from outside is never followed. */
export function safeBackPath(back: string | undefined): string {
  return back !== undefined && /^\/shop(\/[\w\-./]*)?(\?[\w\-./?=&%+,:~()@*]*)?$/.test(back) && !back.includes("//")
    ? back
    : "/shop";
}
