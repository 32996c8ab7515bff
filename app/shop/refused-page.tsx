import { notFound } from "next/navigation";
import { Empty } from "#app/_ui/empty.tsx";
import { Page } from "#app/_ui/page.tsx";
import words from "#content/copy/shop.json";
import type { Refusal } from "#engine/units";
import { say } from "./say";

/** A page whose row cannot be read says which and why; what else is refused to staff is not there for them. */
export function refusedPage(refusal: Refusal) {
  if (refusal.code !== "unreadable-row") notFound();
  return (
    <Page title={words.desk.unreadable}>
      <Empty title={say(refusal)}>{words.desk.unreadableNote}</Empty>
    </Page>
  );
}
