/**
 * Buttons and links that look like buttons. `size="floor"` is the 48 px target for gloves and old phones;
 * the normal size already meets 44 px. A primary button is larch: at most one in a view.
 */
import type { ComponentProps, ReactNode } from "react";
import { cx } from "./cx";

export type ButtonTone = "primary" | "plain" | "quiet" | "danger";
export type ButtonSize = "normal" | "small" | "floor";

const tones: Readonly<Record<ButtonTone, string>> = {
  primary: "bg-larch text-on-fill border-larch hover:brightness-110",
  plain: "bg-sheet text-ink border-control hover:border-ink",
  quiet: "bg-transparent text-tarn border-transparent underline underline-offset-4 decoration-1 hover:decoration-2",
  danger: "bg-sheet text-iron border-iron hover:bg-iron hover:text-on-fill",
};

const sizes: Readonly<Record<ButtonSize, string>> = {
  normal: "min-h-11 px-4 py-2 text-base",
  small: "min-h-9 px-3 py-1 text-sm",
  floor: "min-h-14 min-w-14 px-6 py-3 text-lg font-semibold",
};

export function buttonClass(tone: ButtonTone = "plain", size: ButtonSize = "normal", extra?: string): string {
  return cx(
    "inline-flex items-center justify-center gap-2 border rounded font-medium no-underline transition-colors",
    // Waiting or not to be pressed: paper and pencil at full contrast, never a faded fill.
    "disabled:bg-sheet disabled:text-pencil disabled:border-control disabled:border-dashed",
    "aria-disabled:bg-sheet aria-disabled:text-pencil aria-disabled:border-control aria-disabled:border-dashed",
    tones[tone],
    sizes[size],
    extra,
  );
}

interface Look {
  readonly tone?: ButtonTone;
  readonly size?: ButtonSize;
  readonly children: ReactNode;
}

export function Button({ tone, size, className, type = "button", ...rest }: Look & ComponentProps<"button">) {
  return <button type={type} className={buttonClass(tone, size, className)} {...rest} />;
}

/** A plain anchor in a button's clothes: for files and for pages that must load without JavaScript. */
export function ButtonLink({ tone, size, className, children, ...rest }: Look & ComponentProps<"a">) {
  return (
    <a className={buttonClass(tone, size, className)} {...rest}>
      {children}
    </a>
  );
}
