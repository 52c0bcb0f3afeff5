import { defineConfig } from "vitest/config";
import { notebooks } from "./src/notebook/plugin.ts";

// Which tests need which surroundings. `tests/run.ts` runs the projects one after the other.
const drawn = ["view", "inputs", "plots", "blocks", "shell"].map((room) => `tests/${room}/**/*.test.ts`);

export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: "structure",
          testTimeout: 240_000,
          environment: "node",
          include: ["tests/structure/**/*.test.ts"],
        },
      },
      {
        // With the notebook compiler, so that tests can run the notebooks.
        plugins: [notebooks()],
        test: {
          name: "unit",
          // Property tests fly hundreds of machines; how long that takes is no matter of tests.
          testTimeout: 240_000,
          environment: "node",
          include: ["tests/**/*.test.ts"],
          exclude: [...drawn, "tests/**/*.dom.test.ts", "tests/structure/**", "tests/browser/**"],
        },
      },
      {
        test: {
          name: "dom",
          testTimeout: 30_000,
          environment: "happy-dom",
          setupFiles: ["tests/support/still.ts"],
          include: [...drawn, "tests/**/*.dom.test.ts"],
        },
      },
      {
        // Node drives a real Chromium over the built site; one file at a time, because they share its processor.
        test: {
          name: "browser",
          environment: "node",
          include: ["tests/browser/**/*.test.ts"],
          globalSetup: ["tests/support/site-setup.ts"],
          fileParallelism: false,
          testTimeout: 240_000,
          hookTimeout: 60_000,
        },
      },
    ],
  },
});
