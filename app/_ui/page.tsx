/** The frame inside the site's frame: one heading, an optional lead, the content. */
import type { ReactNode } from "react";
import { arrival } from "./arrival";
import { cx } from "./cx";

export function Page({
  title,
  lead,
  aside,
  wide,
  children,
}: {
  readonly title: ReactNode;
  readonly lead?: ReactNode;
  /** Beside the heading: a status, an action. */
  readonly aside?: ReactNode;
  readonly wide?: boolean;
  readonly children: ReactNode;
}) {
  return (
    <div className={cx("mx-auto w-full px-4 py-8 sm:px-6", wide ? "max-w-none" : "max-w-page")}>
      <div className="mb-8 flex flex-wrap items-start justify-between gap-4">
        <div>
          <h1 className="text-2xl">{title}</h1>
          {lead ? <p className="mt-2 max-w-measure text-pencil">{lead}</p> : null}
        </div>
        {/* A line of its own on a phone from the start: a status may come later, and nothing moves for it. */}
        {aside ? <div className="min-h-6 max-sm:w-full">{aside}</div> : null}
      </div>
      {children}
    </div>
  );
}

/** A titled part of a page. */
export function Part({
  title,
  id,
  arrives,
  children,
}: {
  readonly title: string;
  readonly id?: string;
  /** It answers what was just asked: reading goes on at its title. */
  readonly arrives?: boolean;
  readonly children: ReactNode;
}) {
  return (
    <section id={id} aria-labelledby={id ? `${id}-title` : undefined} className="mb-10">
      <h2
        id={id ? `${id}-title` : undefined}
        {...(arrives ? arrival : {})}
        className="mb-3 border-b border-rule pb-1 text-xl"
      >
        {title}
      </h2>
      {children}
    </section>
  );
}
