"use client";
import type { ReactNode } from "react";
import { useFormStatus } from "react-dom";
import { Button, type ButtonSize, type ButtonTone } from "./button";

/** The submit button of a form whose action is a server action: says what it is doing while it does it. */
export function SubmitButton({
  children,
  busy = "One moment…",
  tone = "primary",
  size = "normal",
  name,
  value,
}: {
  readonly children: ReactNode;
  readonly busy?: string;
  readonly tone?: ButtonTone;
  readonly size?: ButtonSize;
  readonly name?: string;
  readonly value?: string;
}) {
  const { pending } = useFormStatus();
  return (
    <Button type="submit" tone={tone} size={size} name={name} value={value} aria-disabled={pending}>
      {pending ? busy : children}
    </Button>
  );
}
