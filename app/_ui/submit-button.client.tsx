"use client";
import type { ReactNode } from "react";
import { useFormStatus } from "react-dom";
import { Button, type ButtonSize, type ButtonTone } from "./button";

/**
 * The submit button of a form whose action is a server action: says what it is doing while it does it. One of several in a form
 * has a name and a value; the main one, without a name, stays silent while the one named in `unless` was pressed.
 */
export function SubmitButton({
  children,
  busy = "One moment…",
  tone = "primary",
  size = "normal",
  name,
  value,
  unless,
}: {
  readonly children: ReactNode;
  readonly busy?: string;
  readonly tone?: ButtonTone;
  readonly size?: ButtonSize;
  readonly name?: string;
  readonly value?: string;
  readonly unless?: string | undefined;
}) {
  const { pending, data } = useFormStatus();
  const isPressed =
    pending && (name === undefined ? unless === undefined || !data.has(unless) : data.get(name) === value);
  return (
    <Button type="submit" tone={tone} size={size} name={name} value={value} aria-disabled={pending}>
      {isPressed ? busy : children}
    </Button>
  );
}
