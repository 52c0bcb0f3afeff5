import type { Machine } from "#machine/machine";

/** What a flight mode is called: its name, or its number from 1 where it has none. Units: none. Source: definition. */
export const modeName = ({ modes }: Machine, mode: number): string => modes[mode]?.name.trim() || String(mode + 1);
