/** Runs once when the server starts. */
export async function register(): Promise<void> {
  if (process.env.NEXT_RUNTIME === "nodejs") {
    const { startUp } = await import("#app/_server/start-up.ts");
    await startUp();
  }
}
