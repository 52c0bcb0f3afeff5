import { defineConfig } from "vite";
import { notebooks } from "./src/notebook/plugin.ts";
import { policy } from "./src/notebook/policy.ts";
import { offline } from "./src/offline/plugin.ts";

export default defineConfig({
  // Relative addresses: the built site works on any host and in any of its folders.
  base: "./",
  appType: "mpa",
  plugins: [notebooks({ later: /\/src\/(?:exercises\/|blocks\/exercise)/ }), offline()],
  build: {
    modulePreload: { polyfill: false },
    // Most of the build's time goes into drawing the pages, as it must.
    rolldownOptions: { checks: { pluginTimings: false } },
    // Fonts stay files, since the policy takes none from data: addresses.
    assetsInlineLimit: (file) => (file.endsWith(".woff2") ? false : undefined),
  },
  optimizeDeps: { entries: ["src/shell/page.ts", "src/kit.ts"] },
  preview: { headers: { "content-security-policy": policy } },
});
