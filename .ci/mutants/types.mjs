// Only what compiles is planted. The compiler stays loaded and sees the fault in memory: nothing is written.
import { readFileSync } from "node:fs";
import path from "node:path";
import { API } from "typescript/unstable/async";

/** Left over, not wrong: a name that nobody uses any more since a fault dropped its use. */
const leftOver = new Set([6133, 6138, 6192, 6196, 6198, 6199, 7027]);
/** How many of the files that use the faulty declaration are asked. */
const mostUsers = 40;

export async function openTypes(root) {
  const overlay = new Map();
  const api = new API({ cwd: root, fs: { readFile: (file) => overlay.get(file) } });
  const project = path.join(root, "tsconfig.json");
  // A snapshot holds a whole program until it is disposed: a few hundred would be tens of gigabytes.
  let newest = await api.updateSnapshot({ openProjects: [project] });

  async function next(changed) {
    const older = newest;
    newest = await api.updateSnapshot({ fileChanges: { changed: [changed] } });
    await older.dispose();
    return newest;
  }

  async function errorsWith(file, text, users) {
    const changed = path.join(root, file);
    overlay.set(changed, text);
    const snapshot = await next(changed);
    const { program } = snapshot.getProject(project);
    for (const one of [file, ...users.slice(0, mostUsers)]) {
      const name = path.join(root, one);
      const found = [...(await program.getSyntacticDiagnostics(name)), ...(await program.getSemanticDiagnostics(name))];
      const error = found.find(({ code }) => !leftOver.has(code));
      if (error) return `${one}: ${error.text}`;
    }
    return null;
  }

  return {
    /** The first error that the text would bring into its file or into the files that use it; null when it compiles. */
    async errorIn(file, text, users = []) {
      try {
        return await errorsWith(file, text, users);
      } finally {
        const changed = path.join(root, file);
        overlay.set(changed, readFileSync(changed, "utf8"));
        await next(changed);
        overlay.delete(changed);
      }
    },
    close: () => api.close(),
  };
}
