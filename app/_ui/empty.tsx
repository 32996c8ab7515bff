/** A list with nothing in it: says what would be here and what to do next. */
import type { ReactNode } from "react";

export function Empty({ title, children }: { readonly title: string; readonly children?: ReactNode }) {
  return (
    <div className="hatch border border-rule p-6">
      <div className="max-w-measure bg-paper p-4">
        <p className="font-medium">{title}</p>
        {children ? <div className="mt-1 text-pencil">{children}</div> : null}
      </div>
    </div>
  );
}
