"use client";
/** The sign-in stands before a page of this tab: what was typed there waits, unless somebody signed out on purpose. */
import { useEffect } from "react";
import { markAway } from "#app/_ui/typed.ts";

export function Away({ isOut }: { readonly isOut: boolean }) {
  useEffect(() => markAway(sessionStorage, isOut), [isOut]);
  return null;
}
