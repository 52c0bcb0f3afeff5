/** The Vite plugin that writes the service worker with the list of all files of the built site. */
import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { type Plugin, transformWithOxc } from "vite";

/** Where it stands in the built site: beside the pages, so that it may answer for all of them. */
const NAME = "offline.js";

/** Files from `public/` that pages show. */
const PUBLIC = ["icon.svg"];

/** Adds `offline.js` to a build. The dev server has none: an author wants what was just saved. */
export function offline(): Plugin {
  return {
    name: "offline",
    apply: "build",
    enforce: "post",
    async generateBundle(_, bundle) {
      const files = [...Object.keys(bundle).filter((name) => !name.endsWith(".map")), ...PUBLIC].sort();
      const contents = createHash("sha256");
      for (const name of files) {
        const file = bundle[name];
        contents.update(name);
        if (file) contents.update(file.type === "chunk" ? file.code : file.source);
      }
      const path = new URL("keeper.ts", import.meta.url);
      const { code } = await transformWithOxc(readFileSync(path, "utf8"), path.pathname, { sourcemap: false });
      const head = `const files = ${JSON.stringify(files)};\nconst edition = ${JSON.stringify(contents.digest("hex").slice(0, 12))};\n`;
      this.emitFile({ type: "asset", fileName: NAME, source: head + code });
    },
  };
}
