import type { Instrumentation } from "next";

/** Runs once when the server starts. */
export async function register(): Promise<void> {
  if (process.env.NEXT_RUNTIME === "nodejs") {
    const { startUp } = await import("#app/_server/start-up.ts");
    await startUp();
  }
}

/** Runs at every fault while a page is drawn. The route goes to the log, never the path: that may hold a private link. */
export const onRequestError: Instrumentation.onRequestError = async (error, _request, { routePath }) => {
  if (process.env.NEXT_RUNTIME === "nodejs") {
    const { reportPageFault } = await import("#app/_server/faults.ts");
    reportPageFault(error, routePath);
  }
};
